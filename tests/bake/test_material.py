"""Tables of the batter: pores, rise, setting, vapour at the front."""

import math

import numpy as np
import pytest

from krume.bake.material import (
    AXIS_K,
    COUNT,
    GAS_J_MOLK,
    STEP_K,
    WATER_KG_MOL,
    Material,
    boiling_k,
    front_tables,
    interpolated,
    latent_j_kg,
    material_of,
    nearest,
    pore_vapour_pa,
    solid_curves,
    vapour_path_w_mk,
)
from krume.bake.parameters import value
from krume.properties import boiling_point_c, food_properties, vapour_pressure_pa
from tests.bake.cases import batter

SEA_PA = 101325.0


def _row(material: Material, row: int) -> np.ndarray:
    found: np.ndarray = material.cell[row]
    return found


def test_the_gas_law_grows_with_warmth_and_faster_near_boiling() -> None:
    law = _row(material_of(batter("hazel", 540), SEA_PA), 7)
    cold, warm, hot = (law[nearest(np.array([k]))[0]] for k in (294.15, 334.15, 368.15))
    assert cold < warm < hot
    assert hot / warm > warm / cold
    dry = 334.15 / 294.15
    assert warm / cold > dry


def test_sugar_delays_the_setting_of_starch_and_egg() -> None:
    plain, sweet = batter("hazel", 540, sugar=0.10), batter("hazel", 540, sugar=0.30)
    at = nearest(np.array([350.0]))[0]
    for row in (5, 6):
        slow, fast = (_row(material_of(b, SEA_PA), row)[at] for b in (sweet, plain))
        assert slow < fast


def test_without_egg_nothing_waits_for_egg() -> None:
    assert (_row(material_of(batter("hazel", 540, egg=False), SEA_PA), 6) == 50).all()


def test_heat_capacity_is_the_tables_fifth_row() -> None:
    material = material_of(batter("hazel", 540), SEA_PA)
    assert (material.heat == _row(material, 4)).all()
    assert 2000 < material.heat[nearest(np.array([320.0]))[0]] < 4200


def test_the_boiling_point_is_that_of_its_syrup() -> None:
    hazel = batter("hazel", 540)
    known = boiling_point_c(SEA_PA, sugar_pct=100 * hazel.sugar_share) + 273.15
    assert boiling_k(hazel.sugar_share, SEA_PA) == material_of(hazel, SEA_PA).boiling_k == known


def test_saturation_between_table_entries_is_the_formula() -> None:
    pressure, slope = interpolated(np.array([350.013]))
    assert abs(pressure[0] / vapour_pressure_pa(350.013 - 273.15) - 1) < 1e-6
    assert slope[0] > 0


def test_vapour_at_a_front_is_the_stefan_flow() -> None:
    drive, drive_slope, share, share_slope, latent, node = front_tables(SEA_PA, 0.9)
    at = nearest(np.array([360.0]))[0]
    wet = 0.9 * vapour_pressure_pa(float(node[at]) - 273.15)
    exact = WATER_KG_MOL * SEA_PA / (GAS_J_MOLK * node[at]) * math.log(SEA_PA / (SEA_PA - wet))
    assert drive[at] == pytest.approx(exact, rel=1e-6)
    for row, slope in ((drive, drive_slope), (share, share_slope)):
        assert slope[at] == pytest.approx((row[at + 1] - row[at - 1]) / (2 * STEP_K), rel=1e-9)
    assert latent[at] == pytest.approx(2.501e6 - 2370 * (float(node[at]) - 273.15))


def test_the_table_is_looked_up_at_its_nearest_entry_and_never_outside() -> None:
    found = nearest(np.array([AXIS_K[100] + 0.01, AXIS_K[100] - 0.01, 0.0, 9999.0, np.nan]))
    assert found.tolist() == [100, 100, 0, COUNT - 1, 0]


def test_the_solid_is_that_of_the_component_tables() -> None:
    hazel = batter("hazel", 540)
    k, density, heat = solid_curves(hazel.parts, np.array([20.0]))
    names = ("water", "protein", "fat", "carbohydrate", "fibre", "ash")
    whole = food_properties(dict(zip(names, hazel.parts, strict=True)), temp_c=20.0)
    assert float(k[0]) == pytest.approx(whole.conductivity_w_mk, rel=1e-9)
    assert float(density[0]) == pytest.approx(whole.density_kg_m3, rel=1e-9)
    assert float(heat[0]) == pytest.approx(whole.heat_capacity_j_kgk, rel=1e-9)


def test_the_latent_heat_of_boiling_water_is_nearly_that_of_the_ledger() -> None:
    boiling = float(latent_j_kg(np.array([373.15]))[0])
    assert boiling == pytest.approx(value("latent-heat"), rel=0.005)
    assert float(latent_j_kg(np.array([293.15]))[0]) > boiling


def test_vapour_in_pores_carries_more_where_the_air_is_thin_and_none_without_water() -> None:
    warm, slope = np.array([350.0]), interpolated(np.array([350.0]))[1]

    def path(activity: float, pressure: float) -> float:
        held = pore_vapour_pa(interpolated(warm)[0], activity, pressure)
        found = vapour_path_w_mk(warm, held, slope, activity=activity, pressure_pa=pressure)
        return float(found[0])

    assert path(0.9, 80000.0) > path(0.9, SEA_PA) > path(0.5, SEA_PA) > path(0.0, SEA_PA) == 0
    assert pore_vapour_pa(np.array([2e5]), 1.0, SEA_PA)[0] == 0.9 * SEA_PA
