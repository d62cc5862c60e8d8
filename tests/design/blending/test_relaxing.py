"""The nearest blend of fractions: nothing that a scale can show is nearer."""

from dataclasses import replace
from typing import Any

import numpy as np
import pytest
from scipy.optimize import Bounds, minimize

from krume.design import BlendLimit
from krume.design.blending.grid import Grid, grid_of
from krume.design.blending.relaxing import relaxed
from tests.design.blending.every_blend import plain_best
from tests.design.blending.random_tasks import small_task, studio_task


def squared(grid: Grid, x: np.ndarray) -> float:
    """Squared distance of a blend of fractions."""
    return float(np.sum((x @ grid.pull - grid.target) ** 2))


@pytest.mark.parametrize("seed", [1, 6, 8, 10, 13, 20, 27, 31])
def test_a_general_minimiser_finds_the_same_distance(seed: int) -> None:
    grid = grid_of(studio_task(seed, (6, 8, 12)))
    found = relaxed(grid, grid.low, grid.high)
    assert found is not None
    held: list[Any] = [{"type": "eq", "fun": lambda x: (x.sum() - grid.steps) / grid.steps}]
    for row, low, high in zip(grid.rows, grid.row_low, grid.row_high, strict=True):
        if np.isfinite(low):
            held.append({"type": "ineq", "fun": lambda x, r=row, e=low: r @ x - e})
        if np.isfinite(high):
            held.append({"type": "ineq", "fun": lambda x, r=row, e=high: e - r @ x})
    options: Any = {"ftol": 1e-14, "maxiter": 500}
    minimise: Any = minimize
    other = minimise(
        lambda x: squared(grid, x),
        np.full(grid.count, grid.steps / grid.count),
        jac=lambda x: np.asarray(2 * grid.pull @ (x @ grid.pull - grid.target)),
        bounds=Bounds(grid.low.astype(float), grid.high.astype(float)),
        constraints=held,
        method="SLSQP",
        options=options,
    )
    assert squared(grid, found.x) == pytest.approx(other.fun, abs=1e-5)


def test_it_keeps_every_limit_and_is_never_farther_than_whole_steps() -> None:
    seen = 0
    for seed in range(80):
        task = replace(small_task(seed), most_parts=None, least_part_g=0.0)
        grid, plain = grid_of(task), plain_best(task)
        found = relaxed(grid, grid.low, grid.high)
        if plain is None:
            continue
        seen += 1
        assert found is not None, seed
        assert found.x.sum() == pytest.approx(grid.steps, abs=1e-7)
        assert np.all((found.x >= grid.low - 1e-7) & (found.x <= grid.high + 1e-7)), seed
        sums = grid.rows @ found.x
        assert np.all((sums >= grid.row_low - 1e-6) & (sums <= grid.row_high + 1e-6)), seed
        assert squared(grid, found.x) <= plain.distance**2 + 1e-7, seed
    assert seen > 30


def test_limits_without_room_leave_nothing() -> None:
    task = replace(small_task(3), limits=(), property_limits=(), most_g=None, price_per_kg=None)
    both = tuple(range(len(task.names)))
    for limit in (BlendLimit("a", both, None, 50.0), BlendLimit("a", both[:1], 60.0, 40.0)):
        grid = grid_of(replace(task, limits=(limit,)))
        assert relaxed(grid, grid.low, grid.high) is None
