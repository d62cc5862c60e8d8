"""One step: warmth only flows in, and the clamp turns what is too hot into steam."""

import numpy as np
import pytest

from krume.bake import Cells, nominal, wall
from krume.bake.engine import prepare, start
from krume.bake.prediction import footprint_of
from krume.bake.state import Setup, State
from krume.bake.stepping import advance
from tests.bake.cases import BUTTER18


def _begin() -> tuple[Setup, State]:
    draws = nominal(BUTTER18.batter, BUTTER18.oven)
    setup = prepare(
        BUTTER18.batter,
        footprint_of(BUTTER18.tin),
        wall("aluminium"),
        BUTTER18.oven,
        draws,
        pressure_pa=101325.0,
        core_k=np.full(1, 368.0),
        cells=Cells(),
    )
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
    for tin in (state.bottom, state.side, state.inner):
        tin[:] = 430.0
    advance(setup, state)
    assert state.temp.max() <= setup.material.boiling_k
    assert state.lost[0] > 0
