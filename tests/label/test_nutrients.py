"""Nutrients lie between what is known and what an unknown could add."""

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.label import NutrientSum, Product, eu_panel, nutrient_sums, panel_unknowns
from krume.pantry import read_supplier_sheet
from tests.label.studio import of, product

CREAM = "Cream\nFamily: set-cream\n\n200 g whipping cream\n20 g sugar\n"


def test_known_goods_give_their_own_sum() -> None:
    sums = nutrient_sums(of(CREAM), market="us")
    assert sums is not None
    fat = sums["fat"].span
    assert fat.is_known
    assert fat.low == pytest.approx(100 * (200 * 0.3608) / 220)


def test_water_that_leaves_the_oven_concentrates_every_nutrient() -> None:
    sums = nutrient_sums(product("F1"), market="us")
    assert sums is not None
    sodium_mg = (
        50 * 11 + 255 * 142 + 135 * 1 + 1 * 38758 + 4 * 1 + 3 * 9 + 34 * 3.75 + 8 * 2
    ) / 100
    assert sums["sodium"].span.low == pytest.approx(100 * sodium_mg / 482, rel=1e-6)


@pytest.mark.parametrize("market", ["us", "eu"])
def test_fibre_is_inside_the_us_carbohydrate_and_outside_that_of_the_eu(market: str) -> None:
    sums = nutrient_sums(product("F1"), market=market)
    other = nutrient_sums(product("F1"), market="eu")
    assert sums is not None
    assert other is not None
    extra = sums["carbohydrate"].span.low - other["carbohydrate"].span.low
    assert extra == pytest.approx(sums["fibre"].span.low if market == "us" else 0.0, abs=1e-9)


def test_eu_protein_is_nitrogen_times_6_25() -> None:
    rice = of("Rice\n\n100 g white rice flour\n")
    us, eu = (nutrient_sums(_finished(rice), market=m) for m in ("us", "eu"))
    assert us is not None
    assert eu is not None
    assert us["protein"].span.low == pytest.approx(5.95)
    assert eu["protein"].span.low == pytest.approx(5.95 * 6.25 / 5.95)


def _finished(made: Product) -> Product:
    return replace(made, finished_g=made.mixed_g, finished_status="measured")


def test_what_a_table_leaves_blank_reaches_as_far_as_its_own_mass() -> None:
    made = of(f"{CREAM}2 g xanthan gum\n")
    sums = nutrient_sums(made, market="eu")
    assert sums is not None
    fat = sums["fat"]
    assert fat.span.high - fat.span.low == pytest.approx(100 * 2 / 222)
    assert fat.open_goods == ("xanthan gum",)


def test_an_unknown_that_can_move_no_printed_digit_closes_no_row() -> None:
    rows = {row.key: row for row in eu_panel(_sums(of(f"{CREAM}0.05 g xanthan gum\n"))).rows}
    assert rows["fat"].open_goods == ("xanthan gum",)
    assert rows["fat"].text == "33 g"


def test_an_unknown_that_can_move_a_digit_closes_its_row_by_name() -> None:
    panel = eu_panel(_sums(of(f"{CREAM}5 g xanthan gum\n")))
    assert not panel.is_open
    assert {row.text for row in panel.rows if row.key == "fat"} == {None}
    assert "xanthan gum" in panel_unknowns(panel)[0].of


def _sums(made: Product) -> dict[str, NutrientSum]:
    found = nutrient_sums(made, market="eu")
    assert found is not None
    return found


@given(
    st.sampled_from(["xanthan gum", "psyllium husk powder", "marzipan", "zorb powder"]),
    st.floats(0.1, 50.0),
)
def test_adding_goods_of_unknown_composition_never_opens_a_row(words: str, grams: float) -> None:
    before = eu_panel(_sums(of(CREAM)))
    after = eu_panel(_sums(of(f"{CREAM}{grams:.2f} g {words}\n")))
    shut = {row.key for row in before.rows if row.text is None}
    assert shut <= {row.key for row in after.rows if row.text is None}
    assert all(row.high >= row.low for row in after.rows)


def test_a_suppliers_sheet_opens_what_the_tables_leave_blank() -> None:
    text = f"{CREAM}5 g xanthan gum\n"
    sheet = read_supplier_sheet(
        "Name: xanthan gum\nClass: gel\nCarbohydrate basis: by difference\nFat: 0 g\n"
        "Saturates: 0 g\nSugars: 0 g\nCarbohydrate: 85 g\nFibre: 80 g\nProtein: 3 g\n"
        "Salt: 0.5 g\nWater: 7 g\nAsh: 5 g\nAlcohol: 0 g\nTrans: 0 g\n"
    )
    assert sheet.problems == ()
    assert sheet.value is not None
    sums = nutrient_sums(of(text), market="eu", own={"xanthan-gum": sheet.value})
    assert sums is not None
    assert eu_panel(sums).is_open


@pytest.mark.parametrize(
    "text",
    [
        "Sponge\nTin: round 20 x 5 cm\nOven: 170 C\n\n100 g sugar\n",
        "Cream\n\n200 g whipping cream\nsugar to taste\n",
    ],
)
def test_without_a_mass_there_are_no_nutrients(text: str) -> None:
    assert nutrient_sums(of(text), market="eu") is None


def test_sugars_never_print_above_the_carbohydrate_they_are_in() -> None:
    sums = nutrient_sums(_finished(of("Milk\n\n100 g whole milk\n")), market="us")
    assert sums is not None
    assert sums["sugars"].span.high <= sums["carbohydrate"].span.high


@pytest.mark.parametrize("name", ["T1", "T2", "T3", "TART"])
def test_parts_of_a_torte_never_come_to_more_than_100_g(name: str) -> None:
    sums = nutrient_sums(product(name), market="us")
    assert sums is not None
    lows = (sums[key].span.low for key in ("protein", "fat", "carbohydrate"))
    assert math.fsum(lows) < 100
