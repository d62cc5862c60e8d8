"""One spelling of a name: case, umlauts, plural, hyphens, brackets, percent figures, pictures."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.pantry.words import singular, spelled


@pytest.mark.parametrize(
    ("text", "tokens"),
    [
        ("Rice Flour", ("rice", "flour")),
        ("self-raising flour", ("self", "raising", "flour")),
        ("confectioners' sugar", ("confectioner", "sugar")),
        ("confectioner’s sugar", ("confectioner", "sugar")),
        ("Kartoffelstärke", ("kartoffelstaerke",)),
        ("Kartoffelstaerke", ("kartoffelstaerke",)),
        ("Eiweiß", ("eiweiss",)),
        ("crème fraîche", ("creme", "fraiche")),
        ("potato starch (not flour)", ("potato", "starch", "not", "flour")),
        ("butter, 20 °C", ("butter",)),
        ("powdered gelatine, 200 bloom", ("powdered", "gelatine")),
        ("🥜 flour", ("nut", "flour")),
        ("T45 flour", ("t45", "flour")),
        ("  ", ()),
    ],
)
def test_a_name_has_one_spelling(text: str, tokens: tuple[str, ...]) -> None:
    assert spelled(text).tokens == tokens


@pytest.mark.parametrize(
    ("text", "percent"),
    [
        ("whipping cream, 35 % fat", 35.0),
        ("cream 30-33 %", 31.5),
        ("70% dark chocolate", 70.0),
        ("Milch, 3,5 % Fett", 3.5),
        ("cream, 35 per cent", 35.0),
        ("butter", None),
        ("3 eggs", None),
    ],
)
def test_a_percent_figure_is_kept_apart(text: str, percent: float | None) -> None:
    assert spelled(text).percent == percent


def test_pieces_between_commas_stay_apart() -> None:
    assert spelled("butter, cold, cubed").parts == (("butter",), ("cold",), ("cubed",))


@pytest.mark.parametrize(
    ("many", "one"),
    [
        ("eggs", "egg"),
        ("cherries", "cherry"),
        ("peaches", "peach"),
        ("leaves", "leaf"),
        ("halves", "half"),
        ("bananas", "banana"),
        ("squashes", "squash"),
        ("haselnuss", "haselnuss"),
        ("citrus", "citrus"),
        ("reis", "reis"),
        ("gas", "gas"),
    ],
)
def test_plural_and_singular_meet(many: str, one: str) -> None:
    assert singular(many) == one


@given(st.text(max_size=60))
def test_any_text_is_spelled_without_failing_and_a_second_time_stays(text: str) -> None:
    tokens = spelled(text).tokens
    assert all(token and " " not in token for token in tokens)


@given(st.from_regex(r"[a-z]{3,12}", fullmatch=True))
def test_the_singular_of_a_singular_is_itself_unless_it_ends_on_s(word: str) -> None:
    assert singular(word) == word or word.endswith("s")
