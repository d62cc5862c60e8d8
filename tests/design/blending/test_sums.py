"""Least sums by dynamic programming are those of every blend."""

import numpy as np
import pytest

from krume.design.blending.grid import Grid, grid_of
from krume.design.blending.sums import Box, LeastSums
from tests.design.blending.every_blend import splits
from tests.design.blending.random_tasks import small_task


@pytest.mark.parametrize("seed", range(24))
def test_the_least_sum_is_that_of_some_blend_and_no_blend_has_less(seed: int) -> None:
    grid = grid_of(small_task(seed))
    weights = np.random.default_rng(seed).normal(size=(3, grid.count))
    least = LeastSums(grid, weights, Box(grid.low, grid.high)).of_all()
    blends = np.array([x for x in splits(grid.count, grid.steps) if _fits(grid, np.array(x))])
    if not len(blends):
        assert np.all(np.isinf(least))
        return
    assert least == pytest.approx((weights @ blends.T).min(axis=1), abs=1e-9)


@pytest.mark.parametrize("seed", range(12))
def test_the_tables_of_the_rest_complete_what_is_begun(seed: int) -> None:
    grid = grid_of(small_task(seed))
    weights = np.random.default_rng(seed).normal(size=(2, grid.count))
    sums = LeastSums(grid, weights, Box(grid.low, grid.high))
    flours = list(range(grid.count))
    rest = sums.of_rest(flours, grid.count)
    first = grid.choices(0, grid.low, grid.high)
    first = first[first <= grid.steps]
    left = 0 if grid.most_parts is None else grid.most_parts - (first > 0)
    whole = weights[:, [0]] * first + rest[1][:, left, grid.steps - first]
    expected = sums.of_all()
    found = whole.min(axis=1) if len(first) else np.full(2, np.inf)
    assert np.array_equal(np.isinf(found), np.isinf(expected))
    assert found[np.isfinite(found)] == pytest.approx(expected[np.isfinite(expected)], abs=1e-9)


def _fits(grid: Grid, x: np.ndarray) -> bool:
    used = x > 0
    few = grid.most_parts is None or used.sum() <= grid.most_parts
    inside = np.all((x >= grid.low) & (x <= grid.high))
    return bool(few and inside and np.all(~used | (x >= grid.least)))
