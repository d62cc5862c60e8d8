"""Numbers as people write them."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import as_text, read_number
from krume.base.numbers import plain_digits


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("85", 85.0),
        ("0085", 85.0),
        ("1.5", 1.5),
        ("1,5", 1.5),
        ("0,25", 0.25),
        (".5", 0.5),
        (",5", 0.5),
        ("½", 0.5),
        ("1½", 1.5),
        ("1 ½", 1.5),
        ("1 1/2", 1.5),
        ("1-1/2", 1.5),
        ("1 & 1/2", 1.5),
        ("1⁄2", 0.5),
        ("1 1⁄2", 1.5),
        ("3 / 4", 0.75),
        ("⅓", 1 / 3),
        ("⅞", 0.875),
        ("٨٥", 85.0),
        ("٨٥٫٥", 85.5),
        ("८५", 85.0),
        ("1 000", 1000.0),
        ("1\u00a0000", 1000.0),
        ("1\u202f250,5", 1250.5),
        ("1'000", 1000.0),
        ("1’000.5", 1000.5),
        ("1.000.000", 1_000_000.0),
        ("1.000.000,5", 1_000_000.5),
        ("1,000,000", 1_000_000.0),
        ("1,250.75", 1250.75),
    ],
)
def test_a_numeral_is_read_as_it_is_meant(text: str, value: float) -> None:
    number = read_number(text)
    assert number is not None
    assert number.value == pytest.approx(value, rel=1e-12)
    assert number.other is None


@pytest.mark.parametrize(
    "text",
    [
        *("", " ", "NaN", "nan", "inf", "-inf", "-30", "+3", "1e9", "0x10", "1_000", "one"),
        *("1/0", "1 1/0", "1/2/3", "1..5", "1,,5", "5.", "1,00,000", "12 34", "½½", "1½ ½", "VIII"),
        "9" * 400,
        "1/" + "9" * 13,
    ],
)
def test_what_is_no_numeral_is_not_read(text: str) -> None:
    assert read_number(text) is None


def test_a_comma_before_three_digits_keeps_its_second_meaning() -> None:
    assert read_number("1,500") == read_number(" 1,500 ")
    thousand, one_and_a_half = read_number("1,500"), read_number("1,500", comma_is_decimal=True)
    assert thousand is not None
    assert one_and_a_half is not None
    assert (thousand.value, thousand.other) == (1500.0, 1.5)
    assert (one_and_a_half.value, one_and_a_half.other) == (1.5, 1500.0)


@pytest.mark.parametrize("text", ["1,500.5", "1,500,000"])
def test_a_comma_that_can_only_group_has_one_meaning(text: str) -> None:
    number = read_number(text, comma_is_decimal=True)
    assert number is not None
    assert number.other is None
    assert number.value > 1000


@pytest.mark.parametrize("text", ["0,500", "0500,250"])
def test_a_leading_zero_never_starts_a_group_of_thousands(text: str) -> None:
    number = read_number(text)
    assert number is not None
    assert number.other is None
    assert number.value != pytest.approx(float(text.replace(",", "")), rel=1e-6)


def test_digits_of_other_scripts_become_plain_ones() -> None:
    assert plain_digits("٨٥ g ४ ½ 1½ ٫ ∕") == "85 g 4 1/2 1 1/2 . /"


@given(st.integers(0, 10**9), st.integers(0, 999))
def test_what_is_written_in_plain_digits_is_read_back(whole: int, thousandths: int) -> None:
    text = f"{whole}.{thousandths:03d}"
    number = read_number(text)
    assert number is not None
    assert number.value == float(text)


@given(st.text(max_size=20))
def test_any_text_gives_a_finite_number_or_none(text: str) -> None:
    number = read_number(text)
    assert number is None or (math.isfinite(number.value) and number.value >= 0)


@given(st.floats(-1e9, 1e9), st.integers(0, 6))
def test_a_printed_number_is_as_near_as_its_digits_allow(value: float, digits: int) -> None:
    assert abs(float(as_text(value, digits)) - value) <= 0.5001 * 10**-digits


@pytest.mark.parametrize(
    ("value", "digits", "text"),
    [
        (5.0, 6, "5"),
        (100.0, 0, "100"),
        (0.1 + 0.2, 6, "0.3"),
        (-0.0000001, 6, "0"),
        (-0.04, 1, "0"),
        (1194.96, 1, "1195"),
        (1e-7, 6, "0"),
        (12.50, 2, "12.5"),
    ],
)
def test_a_printed_number_carries_no_idle_digits(value: float, digits: int, text: str) -> None:
    assert as_text(value, digits) == text
