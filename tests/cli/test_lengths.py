"""A length may say its own unit; a bare number is in centimetres."""

import click
import pytest

from krume.cli.lengths import LengthCm


@pytest.mark.parametrize(
    ("typed", "length_cm"),
    [
        ("1.1", 1.1),
        ("1,1", 1.1),
        ("11 mm", 1.1),
        ("11mm", 1.1),
        ("3.5cm", 3.5),
        ("1/2 in", 1.27),
        ("1 1/2 inches", 3.81),
        ("½ in", 1.27),
        ('2"', 5.08),
        ("100", 100.0),
    ],
)
def test_a_length_is_read_in_its_own_unit(typed: str, length_cm: float) -> None:
    assert LengthCm().convert(typed, None, None) == pytest.approx(length_cm)


@pytest.mark.parametrize("typed", ["", "deep", "5 g", "5 minutes", "nan", "inf", "1e3", "mm"])
def test_what_is_no_length_is_told_with_examples(typed: str) -> None:
    with pytest.raises(click.BadParameter, match="is no length"):
        LengthCm().convert(typed, None, None)


@pytest.mark.parametrize("typed", ["0", "0 mm", "100.1", "2 m"])
def test_a_length_out_of_reach_is_told(typed: str) -> None:
    with pytest.raises(click.BadParameter, match="is not between 0 and 100 cm"):
        LengthCm().convert(typed, None, None)


def test_a_negative_length_is_none() -> None:
    with pytest.raises(click.BadParameter):
        LengthCm().convert("-1", None, None)
