"""Films, tin walls and the top's balance of heat and vapour."""

import numpy as np
import pytest

from krume.bake.material import front_tables
from krume.bake.surfaces import STEFAN_BOLTZMANN, Skin, TopStep, outside, top_step, wall_step

ONE = np.ones((1, 1))
TABLES = front_tables(101325.0, 0.95)
BOILING_K = 374.2


def test_a_surface_at_the_airs_temperature_radiates_with_its_cube() -> None:
    found = outside(5.5 * ONE, STEFAN_BOLTZMANN * ONE, 400 * ONE, 400 * ONE)
    assert found[0, 0] == pytest.approx(5.5 + 4 * STEFAN_BOLTZMANN * 400.0**3, rel=1e-12)


def test_a_wall_in_balance_passes_no_heat() -> None:
    step = wall_step(300 * ONE, inward=50 * ONE, outward=9 * ONE, pull=2700 * ONE, store=40 * ONE)
    assert (step.source - step.diagonal * 300)[0, 0] == pytest.approx(0.0, abs=1e-9)
    assert step.next_temp(300 * ONE)[0, 0] == pytest.approx(300.0)


def test_a_wall_keeps_what_does_not_go_on() -> None:
    step = wall_step(
        300 * ONE, inward=50 * ONE, outward=9 * ONE, pull=9 * 440 * ONE, store=40 * ONE
    )
    moved = step.next_temp(305 * ONE)
    to_cell = step.source - step.diagonal * 305
    assert to_cell[0, 0] == pytest.approx(50 * (moved[0, 0] - 305), rel=1e-12)
    kept = 40 * (moved - 300)
    assert (9 * (440 - moved) - kept)[0, 0] == pytest.approx(to_cell[0, 0], rel=1e-12)


def _top(
    cell_k: float, *, crust_m: float = 0.0, air_k: float = 438.15, oven_pa: float = 4000.0,
    guess_k: float | None = None,
) -> TopStep:  # fmt: skip
    held = -np.log1p(-oven_pa / 101325.0) * ONE
    guess = cell_k if guess_k is None else guess_k
    skin = Skin(
        200 * ONE, cell_k * ONE, guess * ONE, crust_m * 12 * ONE, (150 + crust_m / 1e-6) * ONE
    )
    return top_step(18 * ONE, air_k * ONE, skin, TABLES, held, BOILING_K)


def _balanced(cell_k: float, *, crust_m: float = 0.0) -> TopStep:
    top = _top(cell_k, crust_m=crust_m)
    for _ in range(6):
        top = _top(cell_k, crust_m=crust_m, guess_k=float(top.front[0, 0]))
    return top


def test_the_front_never_passes_the_boiling_point() -> None:
    top = _top(374.0, crust_m=0.02, air_k=573.15)
    assert top.front[0, 0] <= BOILING_K < top.outer[0, 0]


def test_a_cold_top_in_moist_air_loses_no_water() -> None:
    assert _top(295.0, air_k=300.0, oven_pa=50000.0).flux[0, 0] == 0.0


def test_a_thicker_crust_lets_less_water_through() -> None:
    assert _top(360.0, crust_m=0.004).flux[0, 0] < _top(360.0).flux[0, 0]


def test_the_balance_closes_from_a_guess_a_degree_off() -> None:
    exact = _balanced(350.0)
    for off in (-1.0, 1.0):
        near = _top(350.0, guess_k=float(exact.front[0, 0]) + off)
        assert near.front[0, 0] == pytest.approx(exact.front[0, 0], abs=0.02)
        assert near.flux[0, 0] == pytest.approx(exact.flux[0, 0], rel=2e-3)


@pytest.mark.parametrize("crust_m", [0.0, 0.003])
def test_heat_from_the_air_goes_into_vapour_and_cake(crust_m: float) -> None:
    top = _balanced(350.0, crust_m=crust_m)
    through = 18 / (1 + 18 * crust_m * 12)
    brought = through * (438.15 - top.front[0, 0])
    latent = 2.501e6 - 2370.0 * (top.front[0, 0] - 273.15)
    into_cake = top.source[0, 0] - top.diagonal[0, 0] * 350.0
    assert brought == pytest.approx(latent * top.flux[0, 0] + into_cake, rel=1e-3)
