"""Panels: printed rows, servings by the reference amounts, and what keeps a row closed."""

import pytest

from krume.label import (
    eu_panel,
    nutrient_sums,
    panel_unknowns,
    servings_of,
    us_panel,
)
from krume.label import reference_amount
from tests.agreement import agrees
from tests.label.studio import of, product


def printed(name: str) -> dict[str, str | None]:
    """Rows of the EU panel by key."""
    sums = nutrient_sums(product(name), market="eu")
    assert sums is not None
    return {row.key: row.text for row in eu_panel(sums).rows}


def test_the_eu_panel_of_a_torte_whose_unknowns_move_no_digit_is_open() -> None:
    sums = nutrient_sums(product("T1"), market="eu")
    assert sums is not None
    panel = eu_panel(sums)
    assert panel.is_open
    assert any(row.open_goods for row in panel.rows)


def test_energy_is_computed_from_the_grams_in_each_unit() -> None:
    sums = nutrient_sums(product("C1"), market="eu")
    assert sums is not None
    grams = {key: sums[key].span.low for key in ("fat", "carbohydrate", "fibre", "protein")}
    kj = 37 * grams["fat"] + 17 * (grams["carbohydrate"] + grams["protein"])
    kj += 8 * grams["fibre"] + 13 * sums["organic-acids"].span.low
    row = next(row for row in eu_panel(sums).rows if row.key == "energy-kj")
    assert row.low == pytest.approx(kj, rel=1e-9)


def test_salt_is_all_sodium_times_2_5() -> None:
    sums = nutrient_sums(product("C1"), market="eu")
    assert sums is not None
    row = next(row for row in eu_panel(sums).rows if row.key == "salt")
    assert row.low == pytest.approx(sums["sodium"].span.low * 2.5 / 1000)


def test_a_portion_is_the_same_panel_on_another_mass() -> None:
    sums = nutrient_sums(product("T1"), market="eu")
    assert sums is not None
    whole, half = eu_panel(sums), eu_panel(sums, basis_g=50.0)
    for one, other in zip(whole.rows, half.rows, strict=True):
        assert other.high == pytest.approx(one.high / 2)


@pytest.mark.source("us-21-cfr-101-12", "(b) table 2: R11")
@pytest.mark.parametrize(
    ("name", "amount"), [("F1", "55"), ("F5", "55"), ("F6", "80"), ("T1", "80"), ("T2", "80")]
)
def test_a_cake_has_the_reference_amount_of_its_kind(name: str, amount: str) -> None:
    row = reference_amount(product(name))
    assert row is not None
    assert agrees(row.number_of("amount_g"), amount)


@pytest.mark.source("us-21-cfr-101-12", "(b) table 2: R11, heavy")
@pytest.mark.parametrize(("grams", "amount"), [("35", "125"), ("34", "80")])
def test_a_cake_is_heavy_from_35_percent_of_fruit_and_nuts(grams: str, amount: str) -> None:
    made = of(
        "Nut loaf\nFamily: butter\nTin: round 20 x 5 cm\nBaked: 10 mm high, 100 g\n\n"
        f"{grams} g ground walnuts\n70 g potato starch\n"
    )
    row = reference_amount(made)
    assert row is not None
    assert agrees(row.number_of("amount_g"), amount)


def test_a_cream_on_its_own_has_no_serving() -> None:
    assert servings_of(product("C1")) is None


def test_the_us_panel_is_per_serving() -> None:
    servings = servings_of(product("T1"))
    sums = nutrient_sums(product("T1"), market="us")
    assert servings is not None
    assert sums is not None
    assert servings.per_container == 15
    rows = {row.key: row for row in us_panel(sums, servings).rows}
    assert rows["sodium"].low == pytest.approx(sums["sodium"].span.low * servings.serving_g / 100)
    assert rows["trans"].text is None


def test_a_closed_panel_names_the_goods_and_what_opens_them() -> None:
    sums = nutrient_sums(product("T3"), market="eu")
    assert sums is not None
    unknown = {each.of: each for each in panel_unknowns(eu_panel(sums))}
    assert "blackcurrants" in unknown
    assert unknown["blackcurrants"].closes == "panel"
    assert "supplier's sheet" in unknown["blackcurrants"].opens


def test_a_row_that_need_not_stand_there_closes_nothing() -> None:
    made = of("Jelly\nFamily: jelly\n\n300 g whipping cream\n20 g sugar\n")
    sums = nutrient_sums(made, market="eu")
    assert sums is not None
    assert eu_panel(sums).is_open
    assert printed("C1")["fibre"] == "<0.5 g"
