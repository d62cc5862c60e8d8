"""Planes forbid nothing that is as near as the best, and the bound is below every blend."""

import numpy as np
import pytest

from krume.design import BlendTask
from krume.design.blending.grid import grid_of
from krume.design.blending.planes import Planes
from krume.design.blending.relaxing import relaxed
from krume.design.blending.sums import Box, LeastSums
from krume.design.blending.tightness import tight_planes
from tests.design.blending.every_blend import holds, plain_best, splits
from tests.design.blending.random_tasks import small_task

COVERS = ("tightness",)


@pytest.mark.parametrize("is_hard", [False, True])
@pytest.mark.parametrize("seed", range(40))
def test_no_blend_within_the_limits_lies_beyond_a_plane_of_its_own_distance(
    seed: int,
    is_hard: bool,
) -> None:
    task = small_task(seed)
    grid = grid_of(task)
    found = relaxed(grid, grid.low, grid.high)
    plain = plain_best(task)
    if found is None or plain is None:
        assert plain is None
        return
    planes = Planes(grid, found, Box(grid.low, grid.high), is_hard=is_hard)
    assert planes.bound <= plain.distance + 1e-9
    assert len(planes.stands) == len(planes.weights) == len(planes.units)
    for steps in list(splits(grid.count, grid.steps))[::7]:
        x = np.array(steps)
        masses_g = [0.0] * grid.count
        for here, at in enumerate(grid.order):
            masses_g[at] = x[here] * task.step_g
        if holds(task, tuple(masses_g)):
            assert np.all(planes.weights @ x <= planes.most(grid.squared(x)))


def test_a_tight_limit_leaves_little_room_in_a_plane_of_its_own() -> None:
    # Cheap flours cannot make the target; at the most price there is almost no room.
    task = BlendTask(
        names=("dear", "fair", "cheap"),
        composition=((12.0,), (6.0,), (0.0,)),
        properties=("protein",),
        target=(6.0,),
        total_g=60.0,
        price_per_kg=(10.0, 4.5, 1.0),
        most_price_per_kg=4.5,
    )
    grid = grid_of(task)
    found = relaxed(grid, grid.low, grid.high)
    assert found is not None
    box = Box(grid.low, grid.high)
    (tight,) = tight_planes(grid, found.x @ grid.pull, box)
    mixes, stands = tight
    least = LeastSums(grid, mixes @ grid.makes.T, box).of_all()
    assert stands[0] - least[0] == pytest.approx(0.0, abs=1e-9)


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
