"""Alcohol: how much at most, and where a food has to say so."""

import pytest

from krume.label import alcohol_of, statement
from tests.label.studio import of, product

SYRUP = "Rum syrup\nFamily: syrup\n\n60 g sugar\n{water} g water\n{rum} g dark rum, 40 %\n"
CREAM = "Rum cream\nFamily: set-cream\n\n{cream} g whipping cream\n{rum} g dark rum\n"


def test_a_cake_without_a_drink_has_nothing_to_say_of_alcohol() -> None:
    assert alcohol_of(product("T3"), "eu") is None
    assert alcohol_of(product("F1"), "au-nz") is None


def test_the_alcohol_of_a_cream_is_that_of_its_rum_by_volume() -> None:
    found = alcohol_of(of(CREAM.format(cream=180, rum=20)), "au-nz")
    assert found is not None
    # 33.4 g of alcohol in 100 g of rum, 0.789 g/ml: 20 g in 200 g are 4.2 ml in 100 g.
    assert found.most_ml_per_100g == pytest.approx(20 * 0.334 / 0.789 / 200 * 100, rel=0.01)
    assert found.line == "Alcohol: 4.2 ml per 100 g"


@pytest.mark.parametrize(("rum", "is_told"), [(3, False), (5, True), (20, True)])
def test_only_above_its_limit_a_food_carries_how_much(rum: int, is_told: bool) -> None:
    found = alcohol_of(of(CREAM.format(cream=180, rum=rum)), "au-nz")
    assert found is not None
    assert bool(found.line) is is_told


@pytest.mark.parametrize("market", ["eu", "uk", "us"])
def test_where_only_drinks_carry_a_strength_the_rule_is_told_and_nothing_printed(
    market: str,
) -> None:
    found = statement(of(CREAM.format(cream=180, rum=20)), (), market=market).alcohol
    assert found is not None
    assert found.line == ""
    assert "%" in found.rule


def test_an_alcohol_that_is_not_known_is_a_blank_and_never_none() -> None:
    made = of("Rum cake\nFamily: butter\nOven: 170 C\n\n100 g butter\n20 g dark rum\n")
    found = alcohol_of(made, "au-nz")
    assert found is not None
    assert found.most_ml_per_100g is None
    assert "____" in found.line


def test_a_market_without_a_rule_says_nothing_and_still_knows_how_much() -> None:
    found = alcohol_of(of(CREAM.format(cream=180, rum=20)), "ca")
    assert found is not None
    assert (found.line, found.rule) == ("", "")
    assert found.most_ml_per_100g is not None


def test_a_drink_without_a_row_brings_alcohol_that_is_not_known() -> None:
    made = of(CREAM.format(cream=180, rum=20).replace("dark rum", "alcoholic cider"))
    assert "alcoholic cider" in [used.name for used in made.used]
    found = alcohol_of(made, "au-nz")
    assert found is not None
    assert (found.most_ml_per_100g, "____" in found.line) == (None, True)
