"""What a baked crumb conducts and holds."""

import numpy as np

from krume.bake.cooling.body import AXIS_K
from krume.bake.cooling.crumb import crumb_activity, crumb_of, in_cloth
from tests.bake.cases import batter

HAZEL = batter("hazel", 540)


def _at(curve: np.ndarray, celsius: float) -> float:
    return float(np.interp(celsius + 273.15, AXIS_K, curve))


def test_a_hot_crumb_conducts_better_than_a_cold_one_by_the_vapour_in_it() -> None:
    crumb = crumb_of(HAZEL, np.array([300.0]), np.array([0.5]), pressure_pa=101325.0)
    assert _at(crumb.conduction[0], 90) > 2 * _at(crumb.conduction[0], 25)
    closed = crumb_of(HAZEL, np.array([300.0]), np.array([0.0]), pressure_pa=101325.0)
    assert _at(closed.conduction[0], 90) < 1.3 * _at(closed.conduction[0], 25)


def test_a_lighter_crumb_conducts_less_when_it_is_cold() -> None:
    both = crumb_of(HAZEL, np.array([250.0, 450.0]), np.array([0.5, 0.5]), pressure_pa=101325.0)
    assert _at(both.conduction[0], 25) < _at(both.conduction[1], 25)
    assert 0.05 < _at(both.conduction[0], 25) < 0.25


def test_the_crumbs_water_activity_falls_with_its_sugar() -> None:
    sweet = batter("hazel", 540, sugar=0.35)
    assert crumb_activity(sweet) < crumb_activity(HAZEL) < 1


def test_cloth_between_the_turns_holds_heat_back() -> None:
    crumb = crumb_of(HAZEL, np.array([360.0]), np.array([0.5]), pressure_pa=101325.0)
    wound = in_cloth(crumb, np.array([0.012]))
    assert (wound.conduction < crumb.conduction).all()
    assert _at(wound.conduction[0], 25) > 0.06
