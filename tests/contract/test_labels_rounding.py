"""US panel figures at every exact half and step, against the rule written down a second time."""

from decimal import ROUND_HALF_UP, Decimal
from typing import Any

import pytest

from krume.calc import run

# 21 CFR 101.9(c)(1)-(7), (c)(9): the step of each band, with its upper end inside or outside.
LESS_THAN_ONE = "less than 1 g"
LESS_THAN_FIVE = "less than 5 mg"
FATS = ("fat", "saturated", "trans")
GRAMS = ("carbohydrate", "fibre", "sugars", "added-sugars", "protein")
GRID = sorted(
    {Decimal(n) / 100 for n in range(0, 620, 5)}
    | {Decimal(n) / 2 for n in range(330)}
    | {Decimal(text) for text in ("0.4999", "1.9999", "4.9999", "50.0001", "140.0001", "5.4999")}
)
# 21 CFR 101.9(c)(8)(iii), (c)(9), (d)(7)(ii).
DAILY = {"fat": 78, "saturated": 20, "cholesterol": 300, "sodium": 2300, "carbohydrate": 275}
DAILY |= {"fibre": 28, "added-sugars": 50}
MINERALS = {"vitamin-d": 20, "calcium": 1300, "iron": 18, "potassium": 4700}


def _nearest(amount: Decimal, step: str) -> Decimal:
    return (amount / Decimal(step)).quantize(Decimal(1), ROUND_HALF_UP) * Decimal(step)


def _law(nutrient: str, amount: Decimal) -> Decimal | str:
    if nutrient == "calories":
        return Decimal(0) if amount < 5 else _nearest(amount, "5" if amount <= 50 else "10")
    if nutrient == "sodium":
        return Decimal(0) if amount < 5 else _nearest(amount, "5" if amount <= 140 else "10")
    if nutrient == "cholesterol":
        words = LESS_THAN_FIVE if amount <= 5 else _nearest(amount, "5")
        return Decimal(0) if amount < 2 else words
    if amount < Decimal("0.5"):
        return Decimal(0)
    if nutrient in FATS:
        return _nearest(amount, "0.5" if amount < 5 else "1")
    return LESS_THAN_ONE if amount < 1 else _nearest(amount, "1")


@pytest.mark.parametrize("nutrient", ["calories", "sodium", "cholesterol", *FATS, *GRAMS])
def test_a_panel_figure_is_the_laws_at_each_half_and_each_change_of_step(nutrient: str) -> None:
    wrong: list[tuple[Decimal, Any]] = []
    for amount in GRID:
        due = _law(nutrient, amount)
        got = run("us-amount", nutrient=nutrient, amount=float(amount))
        right = got["text"] == due if isinstance(due, str) else got["value"] == float(due)
        wrong += [] if right else [(amount, got)]
    assert wrong == []


def _percent(nutrient: str, amount: Decimal) -> Decimal:
    if nutrient in DAILY:
        return _nearest(amount * 100 / DAILY[nutrient], "1")
    share = amount * 100 / MINERALS[nutrient]
    step = "2" if share <= 10 else "5" if share <= 50 else "10"
    return _nearest(share, step)


@pytest.mark.parametrize("nutrient", [*DAILY, *MINERALS])
def test_a_daily_value_at_each_exact_half_goes_up(nutrient: str) -> None:
    whole = Decimal((DAILY | MINERALS)[nutrient])
    wrong: list[tuple[Decimal, Any]] = []
    for quarter in range(8, 480):
        amount = whole * quarter / 400
        got = run("us-daily-value", nutrient=nutrient, amount=float(amount))["percent"]
        if got != float(_percent(nutrient, amount)):
            wrong.append((amount, got))
    assert wrong == []


@pytest.mark.parametrize("amount", ["-0.1", "nan", "inf", "much"])
def test_an_amount_that_cannot_be_has_no_figure(amount: str, told: Any) -> None:
    code, said = told("calc", "us-amount", "nutrient=fat", f"amount={amount}")
    assert code == 3
    assert said["problems"] and "value" not in said["result"]
