"""Panel figures of the US: every printed row, and the laws of rounding."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import NotFoundError, OutOfRangeError
from krume.label import panel_unit, us_amount, us_daily_value_pct, us_nutrients
from tests.agreement import agrees, reads


@pytest.mark.source("us-21-cfr-101-9", "(c)(1) to (c)(7): R01 to R05")
@pytest.mark.parametrize(
    ("nutrient", "amount", "text"),
    [
        ("calories", "4.9", "0"), ("calories", "47", "45"), ("calories", "50", "50"),
        ("calories", "52", "50"), ("calories", "55", "60"),
        ("fat", "0.49", "0 g"), ("fat", "0.75", "1 g"), ("fat", "4.76", "5 g"),
        ("fat", "5.4", "5 g"), ("saturated", "4.74", "4.5 g"),
        ("cholesterol", "1.9", "0 mg"), ("cholesterol", "3", "less than 5 mg"),
        ("cholesterol", "5", "less than 5 mg"), ("cholesterol", "13", "15 mg"),
        ("sodium", "4.9", "0 mg"), ("sodium", "138", "140 mg"), ("sodium", "140", "140 mg"),
        ("sodium", "145", "150 mg"),
        ("fibre", "0.4", "0 g"), ("carbohydrate", "0.7", "less than 1 g"), ("sugars", "1.5", "2 g"),
        ("protein", "0.5", "less than 1 g"),
    ],
)  # fmt: skip
def test_amounts_are_printed_as_the_law_says(nutrient: str, amount: str, text: str) -> None:
    assert reads(us_amount(nutrient, Decimal(amount)).text, text)


@pytest.mark.source("us-21-cfr-101-9", "(c)(1) to (c)(7): each threshold and each exact half")
@pytest.mark.parametrize(
    ("nutrient", "amount", "text"),
    [
        ("calories", "0", "0"), ("calories", "4.999", "0"), ("calories", "5", "5"),
        ("calories", "7.4", "5"), ("calories", "7.5", "10"), ("calories", "42.5", "45"),
        ("calories", "47.5", "50"), ("calories", "50.01", "50"), ("calories", "54.99", "50"),
        ("calories", "65", "70"), ("calories", "244.9", "240"), ("calories", "245", "250"),
        ("fat", "0.499", "0 g"), ("fat", "0.5", "0.5 g"), ("fat", "0.74", "0.5 g"),
        ("fat", "1.25", "1.5 g"), ("fat", "4.74", "4.5 g"), ("fat", "4.75", "5 g"),
        ("fat", "5", "5 g"), ("fat", "5.49", "5 g"), ("fat", "5.5", "6 g"),
        ("saturated", "0.5", "0.5 g"), ("saturated", "2.25", "2.5 g"), ("trans", "0.49", "0 g"),
        ("trans", "0.5", "0.5 g"), ("trans", "0.75", "1 g"),
        ("cholesterol", "1.99", "0 mg"), ("cholesterol", "2", "less than 5 mg"),
        ("cholesterol", "5.01", "5 mg"), ("cholesterol", "7.49", "5 mg"),
        ("cholesterol", "7.5", "10 mg"), ("cholesterol", "12.5", "15 mg"),
        ("sodium", "5", "5 mg"), ("sodium", "7.5", "10 mg"), ("sodium", "137.4", "135 mg"),
        ("sodium", "137.5", "140 mg"), ("sodium", "140.01", "140 mg"),
        ("sodium", "144.99", "140 mg"), ("sodium", "155", "160 mg"),
        ("carbohydrate", "0.49", "0 g"), ("carbohydrate", "0.5", "less than 1 g"),
        ("carbohydrate", "0.999", "less than 1 g"), ("carbohydrate", "1", "1 g"),
        ("carbohydrate", "1.49", "1 g"), ("carbohydrate", "31.5", "32 g"),
        ("fibre", "2.5", "3 g"), ("sugars", "0.5", "less than 1 g"),
        ("added-sugars", "24.5", "25 g"), ("protein", "0.49", "0 g"), ("protein", "6.5", "7 g"),
    ],
)  # fmt: skip
def test_an_exact_half_goes_up_and_a_threshold_lies_on_the_side_of_the_rule(
    nutrient: str, amount: str, text: str
) -> None:
    assert reads(us_amount(nutrient, Decimal(amount)).text, text)


@pytest.mark.source("us-fda-label-questions", "quantitative amounts of vitamins and minerals")
@pytest.mark.parametrize(
    ("nutrient", "amount", "text"),
    [
        ("vitamin-d", "0.04", "0 mcg"), ("vitamin-d", "0.05", "0.1 mcg"),
        ("iron", "0.64", "0.6 mg"), ("iron", "0.65", "0.7 mg"), ("calcium", "4.9", "0 mg"),
        ("calcium", "5", "10 mg"), ("calcium", "264", "260 mg"), ("potassium", "235", "240 mg"),
    ],
)  # fmt: skip
def test_minerals_are_printed_to_the_tenth_or_the_ten_by_their_daily_value(
    nutrient: str, amount: str, text: str
) -> None:
    assert reads(us_amount(nutrient, Decimal(amount)).text, text)


@pytest.mark.source("us-21-cfr-101-9", "(c)(9), (d)(7)(ii): R06")
@pytest.mark.parametrize(
    ("nutrient", "amount", "printed"),
    [("fat", "12", "15"), ("sodium", "230", "10"), ("added-sugars", "25", "50")],
)
def test_percentages_are_whole(nutrient: str, amount: str, printed: str) -> None:
    assert agrees(us_daily_value_pct(nutrient, Decimal(amount)), printed)


@pytest.mark.source("us-21-cfr-101-9", "(c)(8)(iii): R48")
@pytest.mark.parametrize(
    ("percent", "printed"), [("9.9", "10"), ("12.5", "15"), ("52", "50"), ("55", "60")]
)
def test_minerals_go_in_steps(percent: str, printed: str) -> None:
    amount = Decimal(percent) / 100 * 1300
    assert agrees(us_daily_value_pct("calcium", amount), printed)


@pytest.mark.parametrize("nutrient", us_nutrients())
@given(tenths=st.integers(0, 20_000))
def test_rounding_moves_an_amount_by_half_a_step_at_most(nutrient: str, tenths: int) -> None:
    amount = Decimal(tenths) / 10
    found = us_amount(nutrient, amount)
    if found.value is None:
        assert found.text.startswith("less than")
    else:
        assert abs(found.value - float(amount)) <= 5


@pytest.mark.source("us-21-cfr-101-9", "(c)(8)(iii): each threshold and each exact half")
@pytest.mark.parametrize(
    ("percent", "printed"),
    [
        ("0.99", "0"), ("1", "2"), ("2.99", "2"), ("3", "4"), ("9", "10"), ("10", "10"),
        ("10.01", "10"), ("12.49", "10"), ("47.5", "50"), ("50", "50"), ("50.01", "50"),
        ("54.99", "50"), ("65", "70"),
    ],
)  # fmt: skip
def test_a_share_of_a_mineral_is_finer_where_it_is_small(percent: str, printed: str) -> None:
    amount = Decimal(percent) / 100 * 18
    assert agrees(us_daily_value_pct("iron", amount), printed)


@given(small=st.integers(0, 3000), more=st.integers(0, 3000))
def test_more_is_never_printed_as_less(small: int, more: int) -> None:
    low, high = (us_amount("sodium", Decimal(n) / 10).value for n in (small, small + more))
    assert (low or 0) <= (high or 0)


def test_units_are_those_of_the_panel() -> None:
    assert [panel_unit(n) for n in ("calories", "fat", "sodium", "vitamin-d")] == [
        "kcal", "g", "mg", "ug"]  # fmt: skip
    assert us_amount("vitamin-d", Decimal("2.04")).text == "2 mcg"


def test_what_the_panel_does_not_have_is_refused() -> None:
    with pytest.raises(NotFoundError, match="calories"):
        us_amount("caffeine", Decimal(1))
    with pytest.raises(OutOfRangeError, match="no daily value"):
        us_daily_value_pct("trans", Decimal(1))
    for wrong in ("-1", "NaN", "Infinity"):
        with pytest.raises(OutOfRangeError):
            us_amount("fat", Decimal(wrong))
