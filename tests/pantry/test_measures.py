"""One cup, spoon, pinch or piece: published portions, ranges of the trade, density, or nothing."""

import pytest

from krume.base import UNITS
from krume.evidence import load
from krume.pantry import density_g_ml, ingredient, ingredients, measure
from krume.pantry.measures import (
    LIKE_COLUMNS,
    MEASURE_COLUMNS,
    PORTION_COLUMNS,
    SPREAD_COLUMNS,
    Measure,
)
from tests.agreement import agrees


def known(key: str, unit: str) -> Measure:
    found = measure(key, unit)
    assert found is not None
    return found


@pytest.mark.source("usda-sr28", "WEIGHT")
@pytest.mark.parametrize(
    ("key", "unit", "printed"),
    [
        ("sugar-granulated", "cup", "200"),
        ("sugar-granulated", "tsp", "4.2"),
        ("honey", "cup", "339"),
        ("honey", "tbsp", "21"),
        ("milk-whole", "cup", "244"),
        ("cream-heavy-whipping", "cup", "238"),
        ("cocoa-natural", "tbsp", "5.4"),
        ("starch-corn", "cup", "128"),
        ("salt", "tsp", "6.0"),
        ("baking-soda", "tsp", "4.6"),
        ("lemon-peel", "tbsp", "6.0"),
        ("lemon-juice", "each", "48"),
        ("orange-juice", "each", "86"),
        ("yeast-active-dry", "packet", "7.2"),
        ("butter-unsalted", "cup", "227"),
        ("vanilla-extract", "tsp", "4.2"),
        ("sugar-powdered", "cup", "120"),
        ("sugar-brown", "cup", "220"),
    ],
)
def test_a_published_portion_is_the_best_value(key: str, unit: str, printed: str) -> None:
    found = known(key, unit)
    assert agrees(found.mass_g.best, printed)
    assert (found.status, found.source) == ("published", "usda-sr28")


def test_a_cup_of_rice_flour_is_a_range_beside_the_figure_of_the_table() -> None:
    found = known("flour-rice-white", "cup")
    assert (found.mass_g.low, found.mass_g.best, found.mass_g.high) == (125, 140, 160)
    assert found.status == "common practice"
    assert "158 g" in found.note


@pytest.mark.parametrize(
    ("key", "low", "high"),
    [
        ("milk-whole", 1.02, 1.04),
        ("water-tap", 0.99, 1.01),
        ("oil-sunflower-linoleic", 0.90, 0.94),
        ("orange-juice", 1.03, 1.06),
        ("cream-heavy-whipping", 0.98, 1.02),
        ("honey", 1.40, 1.45),
        ("syrup-agave", 1.35, 1.42),
        ("rum-80-proof", 0.92, 0.96),
        ("yogurt-greek-plain-whole", 1.0, 1.1),
    ],
)
def test_densities_are_those_of_the_liquid(key: str, low: float, high: float) -> None:
    density = density_g_ml(key)
    assert density is not None
    assert low <= density.best <= high


@pytest.mark.parametrize("key", ["milk-whole", "water-tap", "oil-olive", "honey"])
def test_a_litre_weighs_a_thousand_times_a_millilitre(key: str) -> None:
    assert known(key, "l").mass_g.best == pytest.approx(1000 * known(key, "ml").mass_g.best)


def test_a_pinch_of_xanthan_is_what_the_trade_says() -> None:
    pinch = known("xanthan-gum", "pinch")
    assert (pinch.mass_g.low, pinch.mass_g.high) == (0.2, 0.4)


def test_a_pinch_of_salt_is_about_a_third_of_a_gram() -> None:
    assert known("salt", "pinch").mass_g.best == 0.3


def test_a_stick_of_butter_is_a_quarter_of_a_pound_for_every_butter() -> None:
    for key in ("butter-82-ciqual", "butter-unsalted", "butter-salted", "butter-cultured-jp"):
        assert known(key, "stick").mass_g.best == 113.4


def test_a_square_of_chocolate_is_an_ounce() -> None:
    assert known("chocolate-unsweetened", "square").mass_g.best == pytest.approx(28.35)


@pytest.mark.parametrize(
    ("key", "grams"),
    [
        ("sugar-vanilla-ciqual", 8),
        ("baking-powder-phosphate", 15),
        ("baking-soda", 5),
    ],
)
def test_a_german_packet_holds_what_the_trade_fills(key: str, grams: float) -> None:
    assert known(key, "packet").mass_g.best == grams


@pytest.mark.parametrize(
    ("key", "unit"),
    [
        ("hydroxypropyl-methylcellulose", "cup"),
        ("flour-rice-white", "stick"),
        ("egg-whole-fresh", "each"),
        ("salt", "sheet"),
        ("sugar-granulated", "g"),
        ("sugar-granulated", "smidgen"),
    ],
)
def test_what_nothing_says_the_weight_of_is_none(key: str, unit: str) -> None:
    assert measure(key, unit) is None


def test_every_interval_holds_its_best_value_and_is_above_nothing() -> None:
    for item in ingredients():
        for unit in UNITS:
            found = measure(item.key, unit)
            if found is not None:
                mass = found.mass_g
                assert 0 < mass.low <= mass.best <= mass.high, (item.key, unit)


def test_spoons_and_cups_of_one_good_agree_on_its_density_within_their_spread() -> None:
    odd = {"cheese-parmesan-grated", "chocolate-white", "lemon-peel"}
    for item in ingredients():
        cup, spoon = measure(item.key, "cup"), measure(item.key, "tbsp")
        if cup is None or spoon is None or item.key in odd:
            continue
        assert spoon.mass_g.low * 16 <= cup.mass_g.high * 1.15, item.key
        assert spoon.mass_g.high * 16 >= cup.mass_g.low * 0.85, item.key


def test_a_twin_is_measured_like_the_good_it_is() -> None:
    portions = load("portions.csv", PORTION_COLUMNS, ("key", "amount", "unit_text"))
    own = {row.text("key") for row in portions}
    for row in load("measure_like.csv", LIKE_COLUMNS):
        assert ingredient(row.text("key")).role == ingredient(row.text("like")).role
        assert row.text("key") != row.text("like")
        if row.text("key") not in own:
            assert known(row.text("key"), "ml").mass_g == known(row.text("like"), "ml").mass_g


def test_every_row_of_measures_and_portions_belongs_to_an_ingredient() -> None:
    for row in load("measures.csv", MEASURE_COLUMNS, ("key", "unit")):
        assert ingredient(row.text("key")), row.number
    for row in load("portions.csv", PORTION_COLUMNS, ("key", "amount", "unit_text")):
        assert ingredient(row.text("key")), row.number
        assert row.number_of("grams") > 0


def test_every_role_has_a_spread() -> None:
    roles = {row.text("role") for row in load("measure_spread.csv", SPREAD_COLUMNS, ("role",))}
    assert {item.role for item in ingredients()} <= roles


def test_most_of_what_is_measured_by_the_cup_has_a_density() -> None:
    silent = [
        item.key
        for item in ingredients()
        if item.is_flour and item.source and measure(item.key, "cup") is None
    ]
    assert len(silent) <= 4


def test_several_units_are_several_times_one() -> None:
    assert known("sugar-granulated", "cup").times(1.5).best == pytest.approx(300)
