"""Figures for a person: digits, thousands, ranges, strips."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.cli.figures import fixed, number, span, strip


@pytest.mark.parametrize(
    ("value", "digits", "text"),
    [
        (1194.94, 1, "1\u2009194.9"),
        (1234567.0, 0, "1\u2009234\u2009567"),
        (5.0, 1, "5"),
        (-8.24, 1, "-8.2"),
        (-0.001, 1, "0"),
        (0.25, 2, "0.25"),
        (None, 1, "unknown"),
    ],
)
def test_a_number_is_set_with_its_thousands_apart(
    value: float | None, digits: int, text: str
) -> None:
    assert number(value, digits) == text


def test_a_fixed_number_keeps_its_zeros() -> None:
    assert [fixed(5.0), fixed(0.046, 2), fixed(None)] == ["5.0", "0.05", "unknown"]


def test_a_range_says_which_end_is_missing() -> None:
    assert span(0.45, 0.65) == "0.45–0.65"
    assert span(None, 60) == "at most 60"
    assert span(12, None) == "at least 12"


@given(
    low=st.floats(0, 100), width=st.floats(1, 100), share=st.floats(0, 1), cells=st.integers(8, 60)
)
def test_a_value_inside_its_band_stands_between_the_brackets(
    low: float, width: float, share: float, cells: int
) -> None:
    drawn = strip(low + share * width, low, low + width, cells)
    assert len(drawn) == cells
    assert drawn.count("*") == 1
    quarter = cells // 4
    assert quarter <= drawn.index("*") <= cells - quarter - 1


@pytest.mark.parametrize("value", [-1000.0, 0.0, 29.0])
def test_a_value_below_its_band_stands_left_of_it(value: float) -> None:
    drawn = strip(value, 30, 50, 40)
    assert drawn.index("*") < drawn.index("[")


@pytest.mark.parametrize("value", [51.5, 70.0, 1000.0])
def test_a_value_above_its_band_stands_right_of_it(value: float) -> None:
    drawn = strip(value, 30, 50, 40)
    assert drawn.index("*") > drawn.index("]")
