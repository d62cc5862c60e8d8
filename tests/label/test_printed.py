"""How a panel prints an amount: halves up, rounded once, by the first row that holds it."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import NotFoundError, OutOfRangeError
from krume.evidence import load
from krume.label.printed import not_negative, printed, row_of, to_step
from krume.label.us_panel import NUTRIENT_COLUMNS

STEPS = [Decimal(text) for text in ("0.01", "0.1", "0.5", "1", "5", "10")]


@given(st.decimals(0, 5000, places=4), st.sampled_from(STEPS))
def test_a_rounded_amount_is_a_multiple_and_never_further_than_half_a_step(
    amount: Decimal, step: Decimal
) -> None:
    found = to_step(amount, step)
    assert found % step == 0
    assert -step / 2 < amount - found < step / 2 or found - amount == step / 2


@given(st.integers(0, 2000), st.sampled_from(STEPS))
def test_an_exact_half_goes_up(count: int, step: Decimal) -> None:
    assert to_step((count + Decimal("0.5")) * step, step) == (count + 1) * step


def test_a_step_of_nothing_prints_nothing() -> None:
    assert printed(Decimal("4.9"), "us_rounding.csv", "calories").text == "0"


@pytest.mark.parametrize("amount", ["-0.1", "NaN", "Infinity", "-Infinity"])
def test_what_no_panel_can_hold_is_refused(amount: str) -> None:
    with pytest.raises(OutOfRangeError, match="0 or more"):
        not_negative(Decimal(amount))


@pytest.mark.parametrize("amount", ["1e10", "1e99", "1" * 60])
def test_an_absurd_amount_is_refused_in_words(amount: str) -> None:
    with pytest.raises(OutOfRangeError, match="at most 1000000000"):
        printed(Decimal(amount), "us_rounding.csv", "fat")


@given(st.decimals(0, 10**9, allow_nan=False))
def test_every_amount_up_to_that_can_be_printed(amount: Decimal) -> None:
    for file, rule in (("us_rounding.csv", "sodium"), ("eu_rounding.csv", "salt")):
        assert printed(amount, file, rule).text


def test_an_unknown_nutrient_is_answered_with_those_there_are() -> None:
    rows = load("us_nutrients.csv", NUTRIENT_COLUMNS)
    with pytest.raises(NotFoundError, match="Type one of calories, fat"):
        row_of("caffeine", rows, where="The panel")
