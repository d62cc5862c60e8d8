"""Tables of the batter: pores, growth, setting."""

import numpy as np

from krume.bake import Oven, nominal
from krume.bake.material import AXIS_K, interpolated, material_of, nearest
from krume.properties import vapour_pressure_pa
from tests.bake.cases import batter


def test_a_foam_alone_starts_at_its_own_volume_and_only_grows_with_warmth() -> None:
    hazel = batter("hazel", 540)
    table = material_of(hazel, 101325.0, nominal(hazel, Oven(170))).growth
    start, hot = nearest(np.array([294.15, 372.0]))
    assert abs(table[start] - 1) < 1e-3
    assert (np.diff(table[start:hot]) > 0).all()


def test_sugar_delays_the_setting_of_starch_and_egg() -> None:
    plain, sweet = batter("hazel", 540, sugar=0.10), batter("hazel", 540, sugar=0.30)
    rates = [material_of(b, 101325.0, nominal(b, Oven(170))) for b in (plain, sweet)]
    at = nearest(np.array([350.0]))[0]
    assert rates[0].starch_rate[at] > rates[1].starch_rate[at]
    assert rates[0].egg_rate[at] > rates[1].egg_rate[at]


def test_without_egg_nothing_waits_for_egg() -> None:
    bare = batter("hazel", 540, egg=False)
    assert (material_of(bare, 101325.0, nominal(bare, Oven(170))).egg_rate == 50).all()


def test_saturation_between_table_entries_is_the_formula() -> None:
    pressure, slope = interpolated(np.array([350.013]))
    assert abs(pressure[0] / vapour_pressure_pa(350.013 - 273.15) - 1) < 1e-6
    assert slope[0] > 0


def test_the_table_is_looked_up_at_its_nearest_entry() -> None:
    found = nearest(np.array([AXIS_K[100] + 0.01, 0.0, 9999.0]))
    assert found.tolist() == [100, 0, len(AXIS_K) - 1]
