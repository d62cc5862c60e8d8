"""A load as it is typed."""

import pytest

from krume.base import InputError
from krume.usecases import LoadWish, read_load


@pytest.mark.parametrize(
    ("text", "wish"),
    [
        ("F1", LoadWish("F1")),
        (" 2 F1 ", LoadWish("F1", tins=2)),
        ("2x F1", LoadWish("F1", tins=2)),
        ("3 × F1 @10", LoadWish("F1", tins=3, in_min=10.0)),
        ("F3 @ 7,5 min", LoadWish("F3", in_min=7.5)),
        ("F1 in round 18 x 7 cm", LoadWish("F1", tin="round 18 x 7 cm")),
        ("2 F3 in sheet 13x9x1 in @5", LoadWish("F3", "sheet 13x9x1 in", 2, 5.0)),
        ("F3 on low", LoadWish("F3", rack="low")),
        (
            "2 F1 in round 18 x 7 cm on the high shelf @5",
            LoadWish("F1", "round 18 x 7 cm", 2, 5.0, "high"),
        ),
        ("Orl hazel sponge", LoadWish("Orl hazel sponge")),
        ("my/texts/f1.txt @3", LoadWish("my/texts/f1.txt", in_min=3.0)),
    ],
)
def test_how_many_what_in_which_tin_and_when(text: str, wish: LoadWish) -> None:
    assert read_load(text) == wish


@pytest.mark.parametrize("text", ["", "  ", "F1 @ten", "@10", "F1 @-3", "F1 @5 @6"])
def test_what_is_no_load_is_said_with_what_to_type(text: str) -> None:
    with pytest.raises(InputError, match="Type how many, what, its tin"):
        read_load(text)
