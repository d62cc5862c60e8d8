"""Values as people type them."""

import math
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import InputError
from krume.calc.values import is_unknown, items, number, quantity, yes_no


@pytest.mark.parametrize(
    ("raw", "value", "unit"),
    [
        ("8in", 8.0, "in"), ("8 in", 8.0, "in"), ("8-in", 8.0, "in"), ("-12", -12.0, ""),
        ("\u221212 C", -12.0, "C"), ("+3", 3.0, ""), ("1 1/2 cups", 1.5, "cups"),
        ("½ tsp", 0.5, "tsp"), ("10 000 ft", 10_000.0, "ft"),
        ("0,25g", 0.25, "g"), ("1e-3", 0.001, ""), (".5", 0.5, ""), ("12.5%", 12.5, "%"),
        ("٨٥ g", 85.0, "g"), ("20 mg/kg", 20.0, "mg/kg"), (3, 3.0, ""), (Decimal("0.5"), 0.5, ""),
        (Fraction(1, 4), 0.25, ""),
    ],
)  # fmt: skip
def test_a_number_is_read_with_its_unit(raw: object, value: float, unit: str) -> None:
    found = quantity(raw, field="x")
    assert (found.value, found.unit) == (value, unit)


@pytest.mark.parametrize(
    "raw", ["", "abc", "nan", "inf", "1,500", "--3", "1/0", True, None, [1], math.nan,
            math.inf, "=1+1", "<b>1</b>"]
)  # fmt: skip
def test_what_is_no_number_is_refused(raw: object) -> None:
    with pytest.raises(InputError) as caught:
        quantity(raw, field="x")
    assert caught.value.field == "x"


def test_the_digits_are_kept_as_typed() -> None:
    assert quantity("0.75", field="x").exact == Decimal("0.75")
    assert quantity(0.75, field="x").exact == Decimal("0.75")
    assert quantity("0,1", field="x").exact == Decimal("0.1")


def test_amounts_of_one_kind_may_be_added() -> None:
    assert number("1 lb + 4 oz", field="x", unit="oz") == pytest.approx(20.0)
    with pytest.raises(InputError, match="volume"):
        number("250 g + 30 mL", field="mass", unit="g")


def test_a_unit_where_none_is_wanted_is_refused() -> None:
    with pytest.raises(InputError, match="no unit"):
        number("3 g", field="biot", unit="")


@pytest.mark.parametrize(
    ("raw", "expected"),
    [("1,2;3", ["1", "2", "3"]), ("[1, 2]", ["1", "2"]), ([1, "2"], [1, "2"]), ((1,), [1]),
     (5, [5])],
)  # fmt: skip
def test_a_list_is_a_text_with_commas_or_a_python_list(raw: object, expected: list[object]) -> None:
    assert items(raw, field="x") == expected


@pytest.mark.parametrize("raw", ["", " , ", [], list(range(2001))])
def test_an_empty_or_endless_list_is_refused(raw: object) -> None:
    with pytest.raises(InputError, match="list"):
        items(raw, field="x")


def test_yes_and_no_are_words_too() -> None:
    assert (
        yes_no("Yes", field="x") and yes_no(raw=True, field="x") and not yes_no("nein", field="x")
    )
    with pytest.raises(InputError):
        yes_no("perhaps", field="x")


def test_unknown_is_said_by_a_question_mark() -> None:
    assert is_unknown("?") and is_unknown(None) and not is_unknown(0)


@given(text=st.text(max_size=20))
def test_no_text_breaks_the_reader_of_numbers(text: str) -> None:
    try:
        found = quantity(text, field="x")
    except InputError:
        return
    assert math.isfinite(found.value)
