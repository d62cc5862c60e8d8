"""Lines that differ only in figures are read once, and read as each of them would be alone."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.design import read
from krume.design.reader import claims, dates, mentions, steps, tinsaid, twins
from krume.design.reader.blanks import blanked

MODULES = (claims, dates, mentions, steps, tinsaid, twins)
GRAMS = st.decimals(0, 9999, places=2).map(str) | st.integers(0, 9999).map(str)
COUNT = st.integers(0, 999).map(str)
TEXT = """Walnut sponge {n}
Tin: round {n} x 7 cm

{a} g buckwheat flour
butter {b} g
- {c} g sugar
5 eggs, medium
{n} g egg
about {b} g honey
{n} yolks

Beat {b} g of the sugar with the {n} yolks for {n} minutes.
Add the remaining {c} g sugar, bake at {n} C for {n} to 60 minutes. See page {n}.
In a greased {n} cm round tin. It keeps {n} days, use by 12/{n}/2027.
"""


def as_read_alone(text: str, monkeypatch: pytest.MonkeyPatch) -> str:
    """What a text is read as when no line stands for another."""
    with monkeypatch.context() as patch:
        for module in MODULES:
            patch.setattr(module, "blanked", lambda line: line)
        return repr(read(text))


@pytest.fixture(scope="module")
def patches() -> Iterator[pytest.MonkeyPatch]:
    with pytest.MonkeyPatch.context() as patch:
        yield patch


@given(a=GRAMS, b=GRAMS, c=GRAMS, n=COUNT)
def test_blanking_figures_changes_no_reading(
    a: str, b: str, c: str, n: str, patches: pytest.MonkeyPatch
) -> None:
    text = TEXT.format(a=a, b=b, c=c, n=n)
    assert repr(read(text)) == as_read_alone(text, patches)


def test_blanking_figures_changes_no_reading_of_the_corpus(patches: pytest.MonkeyPatch) -> None:
    texts = sorted((Path(__file__).parents[1] / "corpus" / "texts").glob("**/*.txt"))
    read_texts = [text.read_text(encoding="utf-8", errors="replace") for text in texts]
    assert len(read_texts) > 100
    assert [repr(read(x)) for x in read_texts] == [as_read_alone(x, patches) for x in read_texts]


@pytest.mark.parametrize(
    "line",
    ["1/2 cup sugar", "cream 35 %", "1 000 g flour", "ready at 24:00", "flour type 405", "2-3 g"],
)
def test_a_line_whose_figures_say_more_than_how_much_keeps_them(line: str) -> None:
    assert blanked(line) == line


@pytest.mark.parametrize(
    ("line", "blank"),
    [
        ("135.25 g sugar", "777.77 g sugar"),
        ("0.25 g xanthan", "0.77 g xanthan"),
        ("Fold in 12 g flour for 3 minutes.", "Fold in 77 g flour for 7 minutes."),
        ("3 eggs", "3 eggs"),
    ],
)
def test_a_blanked_line_is_as_long_as_its_line(line: str, blank: str) -> None:
    assert blanked(line) == blank
    assert len(blank) == len(line)
