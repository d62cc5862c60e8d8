"""How far a product may lie from the tables, goods apart from each other."""

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import DataError
from krume.label import Product, Used, eu_panel, nutrient_sums, servings_of, spread, us_panel
from krume.label.spread import goods_spread
from krume.pantry import ingredient
from tests.agreement import agrees
from tests.label.studio import of, product

CREAM = "Cream\nFamily: set-cream\n\n200 g whipping cream\n20 g sugar\n"


@pytest.mark.source("eu-tolerances-2012", "table 1: 20 percent to 40 g, 8 g above; from memory")
@pytest.mark.parametrize(
    ("nutrient", "amount", "printed"),
    [("carbohydrate", 10.0, "2"), ("carbohydrate", 40.0, "8"), ("carbohydrate", 60.0, "8"),
     ("saturated", 4.0, "0.8"), ("sodium", 500.0, "100"), ("calcium", 100.0, "45")],
)  # fmt: skip
def test_goods_lie_as_far_from_the_table_as_a_control_allows(
    nutrient: str, amount: float, printed: str
) -> None:
    assert agrees(goods_spread(nutrient, ingredient("flour-chickpea"), amount).high, printed)


def test_a_spread_never_passes_the_range_of_its_class() -> None:
    rice = ingredient("flour-rice-white")
    found = goods_spread("carbohydrate", rice, 80.0)
    assert found.high == pytest.approx(8.0)
    assert goods_spread("carbohydrate", rice, 88.0).high == pytest.approx(1.0)
    assert goods_spread("carbohydrate", ingredient("sugar-granulated"), 100.0).high == 0.0


def test_goods_of_different_lots_are_apart_from_each_other() -> None:
    made = of(CREAM)
    cream, sugar = ingredient("cream-heavy-whipping"), ingredient("sugar-granulated")
    found = spread(made, "carbohydrate", market="us")
    assert found is not None
    parts = [
        (200 / 220, goods_spread("carbohydrate", cream, cream.composition.carbohydrate_g or 0.0)),
        (20 / 220, goods_spread("carbohydrate", sugar, sugar.composition.carbohydrate_g or 0.0)),
    ]
    below = math.hypot(*(share * width.low for share, width in parts))
    assert found.best - found.low == pytest.approx(below)


@pytest.mark.parametrize("market", ["us", "eu"])
@pytest.mark.parametrize("name", ["T1", "T2", "T3", "F1"])
def test_the_spread_of_every_row_holds_the_row_itself(name: str, market: str) -> None:
    made = product(name)
    sums = nutrient_sums(made, market=market)
    assert sums is not None
    servings = servings_of(made)
    panel = eu_panel(sums) if market == "eu" or servings is None else us_panel(sums, servings)
    for row in panel.rows:
        found = spread(made, row.key, market=panel.market)
        assert found is not None
        scale = 100 / panel.basis_g
        assert found.low <= row.low * scale + 1e-6, row.key
        assert found.high >= row.high * scale - 1e-6, row.key
        assert found.best == pytest.approx((row.low + row.high) / 2 * scale), row.key


@given(st.floats(1.0, 400.0))
def test_more_water_changes_no_spread_of_the_whole(water_g: float) -> None:
    sugar = Used("sugar", "sugar-granulated", "sugar", "sugar", 60.0)
    water = Used("water", "water-tap", "water", "water", water_g)
    made = Product("syrup", "formula", (sugar, water), 60.0 + water_g, "measured", {})
    found = spread(made, "carbohydrate", market="eu")
    assert found is not None
    assert (found.best - found.low) * (60 + water_g) == pytest.approx(60 * 0.5, rel=1e-6)


def test_goods_without_a_row_are_open_from_nothing_to_all() -> None:
    found = spread(of(f"{CREAM}22 g zorb powder\n"), "carbohydrate", market="eu")
    assert found is not None
    assert found.high - found.low > 100 * 22 / 242


def test_without_masses_there_is_no_spread() -> None:
    made = replace(of(CREAM), finished_g=None)
    assert spread(made, "fat", market="eu") is None


def test_a_nutrient_without_a_row_is_a_fault_of_the_table() -> None:
    with pytest.raises(DataError, match="caffeine"):
        goods_spread("caffeine", ingredient("sugar-granulated"), 1.0)
