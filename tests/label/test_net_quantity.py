"""Declared quantities: tolerable errors, heights of figures, servings, small amounts, sulphites."""

from decimal import Decimal

import pytest

from krume.base import OutOfRangeError
from krume.label import (
    figure_height_mm,
    may_stand_behind_clause,
    servings_per_container,
    sulphites_are_declared,
    tolerable_error_g,
)
from tests.agreement import agrees, reads


@pytest.mark.source("eu-76-211", "annex I 2.4: R45")
@pytest.mark.parametrize(
    ("nominal", "printed"),
    [(35, "3.2"), (80, "4.5"), (150, "6.8"), (250, "9"), (450, "13.5"), (640, "15"),
     (1500, "22.5")],
)  # fmt: skip
def test_one_package_may_lie_below_by_the_tables_error(nominal: float, printed: str) -> None:
    assert agrees(tolerable_error_g(nominal), printed)


@pytest.mark.source("eu-76-211", "annex I 3.1: R46")
@pytest.mark.parametrize(("nominal", "printed"), [(50, "2"), (200, "3"), (1000, "4"), (1001, "6")])
def test_the_figures_are_as_high_as_the_table_says(nominal: float, printed: str) -> None:
    assert agrees(figure_height_mm(nominal), printed)


@pytest.mark.parametrize("nominal", [0.0, 5.0, 10_001.0, -1.0])
def test_a_quantity_outside_the_table_is_refused(nominal: float) -> None:
    with pytest.raises(OutOfRangeError):
        tolerable_error_g(nominal)


@pytest.mark.source("us-21-cfr-101-9", "(b)(8): R49")
@pytest.mark.parametrize(
    ("count", "printed"), [("2.2", "2"), ("2.25", "2.5"), ("5.4", "5"), ("5.5", "6")]
)
def test_servings_are_halves_up_to_5_and_whole_above(count: str, printed: str) -> None:
    assert agrees(servings_per_container(Decimal(count)), printed)


def test_no_servings_are_refused() -> None:
    with pytest.raises(OutOfRangeError):
        servings_per_container(Decimal(0))


@pytest.mark.source("us-21-cfr-101-4", "(a)(2): R14")
@pytest.mark.parametrize(("share", "printed"), [(2.00, "allowed"), (2.01, "rejected")])
def test_2_percent_may_stand_behind_the_clause_and_more_may_not(share: float, printed: str) -> None:
    assert reads("allowed" if may_stand_behind_clause(share) else "rejected", printed)


@pytest.mark.source("us-21-cfr-101-100", "(a)(4): R47")
@pytest.mark.parametrize(
    ("ppm", "us", "eu"), [("9.99", "no", "no"), ("10.0", "yes", "no"), ("10.01", "yes", "yes")]
)
def test_each_market_declares_sulphites_on_its_own_side_of_10(ppm: str, us: str, eu: str) -> None:
    for market, printed in (("us", us), ("eu", eu)):
        declared = sulphites_are_declared(Decimal(ppm), market=market)
        assert reads("yes" if declared else "no", printed)


@pytest.mark.parametrize(("market", "at_ten"), [("uk", False), ("ca", True), ("au-nz", True)])
def test_the_other_markets_have_their_side_of_10_too(market: str, at_ten: bool) -> None:
    assert sulphites_are_declared(Decimal(10), market=market) is at_ten
    assert sulphites_are_declared(Decimal("10.01"), market=market)
    assert not sulphites_are_declared(Decimal("9.99"), market=market)
