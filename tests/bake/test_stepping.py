"""One step: warmth flows in, nothing of it is lost, and what is too hot becomes steam."""

from dataclasses import replace

import numpy as np
import pytest

from krume.bake import Around, Cells, nominal
from krume.bake.grid import Array
from krume.bake.parameters import value
from krume.bake.prediction import case_of
from krume.bake.setting_up import start
from krume.bake.state import Setup, State
from krume.bake.stepping import (
    IMPLICIT,
    Change,
    Middle,
    Sides,
    advance,
    middle_of,
    settle,
    sides_of,
    solve,
    tin_heat_j,
)
from tests.bake.cases import BUTTER18, CASES, Case


def _begin(case: Case = BUTTER18, around: Around | None = None) -> tuple[Setup, State]:
    oven = replace(case.oven, around=around or Around())
    setup = case_of(case.batter, case.tin, oven, nominal(case.batter, oven), Cells())
    return setup, start(setup)


def test_a_step_says_its_largest_change_and_warms_the_outside_first() -> None:
    setup, state = _begin()
    before = state.temp.copy()
    most = advance(setup, state)
    changed = state.temp - before
    assert most[0] == pytest.approx(np.abs(changed).max(), rel=1e-9)
    assert most[0] > 0
    assert changed[0, 0, -1] > changed[0, 4, 0]


def test_no_cell_passes_the_boiling_point_and_the_excess_is_weighed_as_steam() -> None:
    setup, state = _begin()
    state.temp[:] = setup.material.boiling_k - 0.01
    state.step[:] = 60.0
    state.skin[:] = 430.0
    advance(setup, state)
    assert state.temp.max() <= setup.material.boiling_k
    assert state.lost[0] > 0


def _walls_j(sides: Sides, change: Change, tin: Array, step: float) -> float:
    """Heat from the tin into the cells over a step, by the tin's own temperatures."""
    return float((sides.walls.inward * (tin - change.beside)).sum()) * step


def _taken_j(middle: Middle, change: Change, step: float) -> float:
    return float((middle.store * change.whole).sum()) * step


def _top_j(setup: Setup, state: State, sides: Sides, change: Change, step: float) -> float:
    cell = state.temp[:, -1] + IMPLICIT * change.whole[:, -1]
    into = sides.top.source - sides.top.diagonal * cell
    return float((into * setup.grid.ring_area).sum()) * step


AROUNDS = {
    "bare": Around(), "wrapped": Around(jacket="wrapped"), "water": Around(jacket="water"),
    "stone": Around(under="stone"), "two trays": Around(under="insulated", jacket="wrapped"),
    "cold oven": Around(warming_from_c=20.0), "door": Around(door_min=(5.0,)),
}  # fmt: skip


@pytest.mark.parametrize("name", AROUNDS)
@pytest.mark.parametrize("case", [BUTTER18, CASES[7]], ids=lambda c: c.name)
def test_heat_and_water_close_in_every_step(case: Case, name: str) -> None:
    setup, state = _begin(case, AROUNDS[name])
    rings = setup.grid.ring_area.size
    for _ in range(40):
        step, water = float(state.step[0]), state.lost.copy()
        layer, wet = state.layer.copy(), state.layer_water.copy()
        dry = state.dry.copy()
        middle = middle_of(setup, state)
        sides = sides_of(setup, state, middle)
        change = solve(setup, state, middle, sides)
        before = state.temp.copy()
        top = _top_j(setup, state, sides, change, step)
        settle(setup, state, middle, sides, change)
        tin = state.skin[:, rings:]
        # Cells: what the walls and the top brought is what they took, steam included.
        taken = _taken_j(middle, change, step)
        walls = _walls_j(sides, change, tin, step)
        size = abs(walls) + abs(top) + abs(taken)
        assert abs(taken - walls - top) <= 1e-12 * size
        # Tin: what came from outside is kept or goes on into the cells.
        known = sides.walls.known - sides.walls.total * tin + sides.walls.inward * change.beside
        assert np.abs(known).max() <= 1e-12 * np.abs(sides.walls.known).max()
        # Water: what the top's vapour and the clamp's steam took is what was lost.
        steam = float((middle.store * (before + change.whole - state.temp)).sum()) * step
        steam_kg = steam / value("latent-heat")
        vapour = float((state.dry - dry)[:, :rings][0] @ setup.grid.ring_area)
        assert state.lost[0] - water[0] == pytest.approx(vapour + steam_kg, rel=1e-12, abs=1e-18)
        _layers_close(setup, sides, layer, wet, state, step)
        state.time, state.step = state.time + state.step, state.step * 1.06


def _layers_close(
    setup: Setup, sides: Sides, layer: Array, wet: Array, state: State, step: float
) -> None:
    """Layers: heat from the air is kept, goes on to the tin or takes water along."""
    found = sides.layers
    if found is None or setup.layers is None:
        return
    behind = state.skin[:, setup.grid.ring_area.size :][:, setup.layers.at]
    outside = found.total - found.store - found.contact - found.latent * found.slope
    moved = (found.known + found.contact * behind) / found.total
    from_air = outside * (sides.air_k - moved)
    kept = found.store * (state.layer - layer)
    along = found.latent * (wet - state.layer_water) / step
    on = found.contact * (moved - behind)
    size = np.abs(from_air) + np.abs(kept) + np.abs(along) + np.abs(on)
    assert (np.abs(from_air - kept - along - on) <= 1e-11 * size).all()
    hot = state.layer > setup.layers.boiling_k + 1e-9
    assert (state.layer_water[hot] < 1e-9).all()


def test_water_that_left_is_less_than_there_was() -> None:
    setup, state = _begin()
    for _ in range(80):
        advance(setup, state)
        state.time, state.step = state.time + state.step, np.minimum(state.step * 1.1, 60)
    assert 0 < state.lost[0] < BUTTER18.batter.mass_g / 1000 * BUTTER18.batter.water


def test_the_heat_of_a_tin_goes_with_its_temperature() -> None:
    setup, state = _begin()
    cold = float(tin_heat_j(setup, state)[0])
    state.skin *= 1.5
    assert tin_heat_j(setup, state)[0] == pytest.approx(1.5 * cold, rel=1e-12)
    area = np.pi * 0.09**2 + np.pi * 0.18 * 0.0296
    assert cold == pytest.approx(setup.wall_heat * area * 294.15, rel=0.001)
