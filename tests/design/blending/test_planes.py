"""Planes forbid nothing that is as near as the best, and the bound is below every blend."""

import numpy as np
import pytest

from krume.design.blending.grid import grid_of
from krume.design.blending.planes import Planes
from krume.design.blending.relaxing import relaxed
from krume.design.blending.sums import Box
from tests.design.blending.every_blend import holds, plain_best, splits
from tests.design.blending.random_tasks import small_task


@pytest.mark.parametrize("seed", range(40))
def test_no_blend_within_the_limits_lies_beyond_a_plane_of_its_own_distance(seed: int) -> None:
    task = small_task(seed)
    grid = grid_of(task)
    found = relaxed(grid, grid.low, grid.high)
    plain = plain_best(task)
    if found is None or plain is None:
        assert plain is None
        return
    planes = Planes(grid, found, Box(grid.low, grid.high))
    assert planes.bound <= plain.distance + 1e-9
    assert len(planes.stands) == len(planes.weights) == len(planes.units)
    for steps in list(splits(grid.count, grid.steps))[::7]:
        x = np.array(steps)
        masses_g = [0.0] * grid.count
        for here, at in enumerate(grid.order):
            masses_g[at] = x[here] * task.step_g
        if holds(task, tuple(masses_g)):
            assert np.all(planes.weights @ x <= planes.most(grid.squared(x)))


def test_a_target_out_of_reach_has_a_bound_that_is_almost_the_distance() -> None:
    task = small_task(0)
    grid = grid_of(task)
    far = grid_of(type(task)(task.names, task.composition, task.properties,
        tuple(want + 100.0 for want in task.target), task.total_g, task.step_g))  # fmt: skip
    found = relaxed(far, far.low, far.high)
    assert found is not None
    bound = Planes(far, found, Box(far.low, far.high)).bound
    nearest = min(far.squared(np.array(x)) for x in splits(grid.count, grid.steps)) ** 0.5
    assert nearest * 0.999 <= bound <= nearest + 1e-9
