"""Units of a tin's numbers: typed, inherited, guessed or asked."""

import pytest

from krume.size.asking import Asking
from krume.size.measures import measures
from krume.size.sizes import Sizes, sizes


def settled(text: str, shape: str | None = "round") -> tuple[Sizes | None, Asking]:
    asking = Asking(text, "tin")
    return sizes(measures(text), shape, asking), asking


@pytest.mark.parametrize(
    ("text", "groups"),
    [
        ("20 x 5 cm", [[20.0], [5.0]]),
        ("8in x 3in", [[20.32], [7.62]]),
        ("8 in x 5 cm", [[20.32], [5.0]]),
        ("200 x 50 mm", [[20.0], [5.0]]),
        ("26er", [[26.0]]),
        ("8in x 3", [[20.32], [7.62]]),
    ],
)
def test_a_bare_number_takes_the_next_unit_or_the_last(
    text: str, groups: list[list[float]]
) -> None:
    found, _ = settled(text)
    assert found is not None and found.groups == groups


def test_bare_numbers_take_the_only_usual_unit() -> None:
    found, asking = settled("13 x 9", "sheet")
    assert found is not None and found.unit == "in"
    assert asking.notices[0].code == "tin-unit-assumed"
    wide, _ = settled("24")
    assert wide is not None and wide.unit == "cm"


@pytest.mark.parametrize(
    ("text", "code"),
    [("8", "tin-unit-missing"), ("0 cm", "tin-number"), ("-3 cm", "tin-number"),
     ("300 cm", "tin-size-outside"), ("0.1 cm", "tin-size-outside")],
)  # fmt: skip
def test_numbers_that_cannot_be_are_asked(text: str, code: str) -> None:
    found, asking = settled(text)
    assert found is None
    assert asking.problems[0].code == code


def test_a_length_is_told_in_the_persons_unit() -> None:
    assert Sizes("in").text(20.32) == "8"
    assert Sizes("cm").text(20.32) == "20.32"
