"""A bake's state starts at the batter's own temperature with nothing lost."""

import numpy as np

from krume.bake import Cells, nominal, wall
from krume.bake.footing import footprint_of
from krume.bake.setting_up import prepare, start
from tests.bake.cases import BUTTER18


def test_a_bake_starts_even_dry_of_no_water_and_unset() -> None:
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
    state = start(setup)
    assert (state.temp == 294.15).all() and (state.growth == 1).all()
    assert state.lost[0] == 0 and not np.isfinite(state.done).any()
    assert abs(setup.own.cell_mass.sum() - 0.64) < 1e-12
