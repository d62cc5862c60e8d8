"""Walls and the top: limits in which the answer is known."""

import numpy as np
import pytest

from krume.bake import wall
from krume.bake.surfaces import STEFAN_BOLTZMANN, Air, Skin, top_step, wall_step


def _air(temp_k: float = 438.15, vapour: float = 4000.0) -> Air:
    one = np.ones((1, 1))
    return Air(temp_k * one, one, 5.5 * one, vapour * one, 101325.0)


def test_a_surface_at_the_airs_temperature_radiates_with_its_cube() -> None:
    air = _air(400.0)
    found = float(air.coefficient(1.0, np.full((1, 1), 400.0))[0, 0])
    assert found == pytest.approx(5.5 + 4 * STEFAN_BOLTZMANN * 400.0**3, rel=1e-12)


def test_a_wall_in_balance_passes_no_heat() -> None:
    one = np.ones((1, 1))
    air = _air(300.0)
    step = wall_step(
        wall("aluminium"), air, 300 * one, 300 * one, area=one, inner=0.01 * one, step=10 * one
    )
    assert float((step.source - step.diagonal * 300)[0, 0]) == pytest.approx(0.0, abs=1e-9)
    assert float(step.next_temp(300 * one, 300 * one, 300 * one)[0, 0]) == pytest.approx(300.0)


def _skin(cell_k: float, crust: float = 0.0) -> Skin:
    one = np.ones((1, 1))
    return Skin(crust * one, 0.4 * one, 200 * one, cell_k * one, cell_k * one, cell_k * one)


def test_the_front_never_passes_the_boiling_point() -> None:
    one = np.ones((1, 1))
    top = top_step(_air(573.15), _skin(374.0, 0.02), 0.07 * one, 1e-6 * one, 0.95, 374.2)
    assert float(top.front[0, 0]) <= 374.2
    assert float(top.outer[0, 0]) > 374.2


def test_a_cold_top_in_moist_air_loses_no_water() -> None:
    one = np.ones((1, 1))
    top = top_step(_air(300.0, 50000.0), _skin(295.0), 0.07 * one, 1e-6 * one, 0.95, 374.2)
    assert float(top.flux[0, 0]) == 0.0


def test_a_thicker_crust_lets_less_water_through() -> None:
    one = np.ones((1, 1))
    thin, thick = (
        top_step(_air(), _skin(360.0, c), 0.07 * one, 1e-6 * one, 0.95, 374.2).flux[0, 0]
        for c in (0.0, 0.004)
    )
    assert thick < thin
