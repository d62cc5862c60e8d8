"""Amounts as the EU's declaration prints them."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import NotFoundError, OutOfRangeError
from krume.label import eu_amount, eu_intake_pct, eu_nutrients
from tests.agreement import agrees, reads


@pytest.mark.source("eu-tolerances-2012", "rounding table: R44")
@pytest.mark.parametrize(
    ("nutrient", "amount", "printed"),
    [
        ("energy-kj", "1549.5", "1550 kJ"),
        ("energy-kcal", "370.4", "370 kcal"),
        ("fat", "10", "10 g"),
        ("fat", "10.5", "11 g"),
        ("fat", "9.95", "10 g"),
        ("fat", "9.94", "9.9 g"),
        ("sugars", "0.5", "<0.5 g"),
        ("sugars", "0.51", "0.5 g"),
        ("saturated", "0.1", "<0.1 g"),
        ("saturated", "0.15", "0.2 g"),
        ("salt", "1", "1 g"),
        ("salt", "1.25", "1.3 g"),
        ("salt", "0.625", "0.63 g"),
        ("salt", "0.0125", "<0.01 g"),
        ("salt", "0.013", "0.01 g"),
        ("protein", "0", "0 g"),
    ],
)
def test_each_nutrient_is_rounded_by_its_own_row(nutrient: str, amount: str, printed: str) -> None:
    assert reads(eu_amount(nutrient, Decimal(amount)).text, printed)


@pytest.mark.source("eu-tolerances-2012", "rounding table: each threshold and each exact half")
@pytest.mark.parametrize(
    ("nutrient", "amount", "printed"),
    [
        ("energy-kj", "1549.49", "1549 kJ"), ("energy-kcal", "370.5", "371 kcal"),
        ("fat", "0", "0 g"), ("fat", "0.5", "<0.5 g"), ("fat", "0.501", "0.5 g"),
        ("fat", "0.55", "0.6 g"), ("fat", "9.949", "9.9 g"), ("fat", "10.49", "10 g"),
        ("carbohydrate", "31.5", "32 g"), ("sugars", "9.95", "10 g"), ("fibre", "0.65", "0.7 g"),
        ("protein", "5.25", "5.3 g"), ("saturated", "0.1", "<0.1 g"),
        ("saturated", "0.101", "0.1 g"), ("saturated", "9.65", "9.7 g"),
        ("saturated", "10.5", "11 g"), ("salt", "0.01251", "0.01 g"), ("salt", "0.015", "0.02 g"),
        ("salt", "0.994", "0.99 g"), ("salt", "0.995", "1 g"), ("salt", "1.05", "1.1 g"),
    ],
)  # fmt: skip
def test_an_exact_half_goes_up_on_both_sides_of_a_threshold(
    nutrient: str, amount: str, printed: str
) -> None:
    assert reads(eu_amount(nutrient, Decimal(amount)).text, printed)


@pytest.mark.source("eu-1169-2011", "annex XIII B: R50")
def test_the_share_of_a_days_reference_intake() -> None:
    assert agrees(eu_intake_pct("energy-kj", Decimal(1549)), "18")
    assert agrees(eu_intake_pct("fat", Decimal(18)), "26")
    assert agrees(eu_intake_pct("energy-kcal", Decimal(2000)), "100")
    assert agrees(eu_intake_pct("saturated", Decimal("9.5")), "48")
    assert agrees(eu_intake_pct("carbohydrate", Decimal(13)), "5")
    assert agrees(eu_intake_pct("sugars", Decimal(45)), "50")
    assert agrees(eu_intake_pct("protein", Decimal("0.25")), "1")
    assert agrees(eu_intake_pct("salt", Decimal("0.03")), "1")


@given(st.decimals(0, 100, places=3), st.decimals(0, 5, places=3))
def test_more_never_prints_less(amount: Decimal, more: Decimal) -> None:
    for row in eu_nutrients():
        less = eu_amount(row.key, amount).value
        above = eu_amount(row.key, amount + more).value
        assert less is None or above is None or less <= above


def test_what_is_not_in_the_declaration_is_refused() -> None:
    with pytest.raises(NotFoundError):
        eu_amount("cholesterol", Decimal(1))
    with pytest.raises(OutOfRangeError):
        eu_intake_pct("fibre", Decimal(1))
    with pytest.raises(OutOfRangeError):
        eu_amount("fat", Decimal(-1))
