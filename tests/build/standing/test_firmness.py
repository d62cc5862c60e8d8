"""`krume.build.standing.firmness`: ranges that grow with the gelatine, and none for the unknown."""

import math

import pytest

from krume.build.standing.figures import value
from krume.build.standing.firmness import firmness
from tests.agreement import agrees


@pytest.mark.source("bonavia-2025", "abstract")
def test_the_power_of_gelatine_is_that_of_the_printed_ends() -> None:
    power = math.log(277 / 4.34) / math.log(20 / 2)
    assert agrees(power, f"{value('gel-power')}")


def test_twice_the_gelatine_is_three_and_a_half_times_as_firm() -> None:
    one, two = (firmness("set-cream", gelatine_g_kg=g) for g in (5.0, 10.0))
    assert one is not None and two is not None
    assert two.cold_low_pa / one.cold_low_pa == pytest.approx(2**1.8, rel=1e-12)
    assert two.warm_high_pa / one.warm_high_pa == pytest.approx(2**1.8, rel=1e-12)


@pytest.mark.parametrize("family", ["set-cream", "jelly", "fruit-mousse", "custard-lightened"])
def test_a_cream_of_unknown_gelatine_is_not_known(family: str) -> None:
    assert firmness(family) is None


def test_a_cream_without_gelatine_is_whipped_cream_and_a_jelly_without_is_nothing() -> None:
    whipped = firmness("set-cream", gelatine_g_kg=0.0)
    assert whipped is not None and whipped.key == "whipped"
    assert firmness("jelly", gelatine_g_kg=0.0) is None


@pytest.mark.parametrize("family", [None, "separated", "syrup", "no such family"])
def test_what_is_no_cream_is_not_known(family: str | None) -> None:
    assert firmness(family, gelatine_g_kg=9.0) is None


def test_every_range_runs_upwards_and_is_softer_in_the_warm() -> None:
    names = ("set-cream", "fruit-mousse", "custard", "custard-lightened", "custard-buttercream",
             "cooked-white-buttercream", "ganache", "jelly")  # fmt: skip
    for found in (firmness(name, gelatine_g_kg=9.0) for name in names):
        assert found is not None
        assert 0 < found.cold_low_pa < found.cold_high_pa
        assert 0 < found.warm_low_pa < found.warm_high_pa
        assert found.warm_low_pa < found.cold_low_pa
        assert found.warm_high_pa < found.cold_high_pa
