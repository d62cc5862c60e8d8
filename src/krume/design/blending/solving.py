"""The nearest blend by tangent cuts: correct, and the slow way."""

from math import sqrt

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp

from krume.base import Infeasible
from krume.design.blending.clashing import clashing_limits, told
from krume.design.blending.grid import Grid, grid_of
from krume.design.blending.task import BlendFit, BlendTask

GAP = 1e-6


def solve_blend(task: BlendTask, *, time_limit_s: float = 3.0) -> BlendFit | Infeasible:
    """The blend of whole steps nearest to the target within every limit."""
    grid = grid_of(task)
    found = _nearest(grid)
    if found is None:
        return Infeasible(tuple(map(told, clashing_limits(task))))
    return _fit(task, grid, *found)


def next_blends(task: BlendTask, best: BlendFit, count: int) -> tuple[BlendFit, ...]:
    """The next nearest blends, each of other flours than the ones before it."""
    grid = grid_of(task)
    told, known = [], [best]
    while len(told) < count:
        used = [tuple(fit.masses_g[at] > 0 for at in grid.order) for fit in known]
        found = _nearest(grid, used)
        if found is None:
            break
        told.append(_fit(task, grid, *found))
        known.append(told[-1])
    return tuple(told)


def _fit(task: BlendTask, grid: Grid, x: np.ndarray, bound: float, nodes: int) -> BlendFit:
    masses = [0.0] * grid.count
    for here, at in enumerate(grid.order):
        masses[at] = float(x[here] * task.step_g)
    got = tuple(
        sum(m * row[at] for m, row in zip(masses, task.composition, strict=True)) / task.total_g
        for at in range(len(task.target))
    )
    squared = grid.squared(x)
    proven = squared - bound <= GAP
    return BlendFit(tuple(masses), got, sqrt(squared), proven, sqrt(max(bound, 0.0)), nodes)


def _nearest(
    grid: Grid, told: list[tuple[bool, ...]] | None = None
) -> tuple[np.ndarray, float, int] | None:
    n, k = grid.count, len(grid.target)
    ones = np.eye(n)
    # columns: steps, used or not, squared miss of each property
    blank = np.zeros((n, k))
    rows = [
        LinearConstraint(np.r_[np.ones(n), np.zeros(n + k)], grid.steps, grid.steps),
        LinearConstraint(np.c_[ones, -np.diag(grid.high), blank], -np.inf, 0),
        LinearConstraint(np.c_[ones, -grid.least * ones, blank], 0, np.inf),
        LinearConstraint(np.r_[np.zeros(n), np.ones(n), np.zeros(k)], 0, grid.most_parts),
    ]
    rows += [LinearConstraint(np.r_[r.weights, np.zeros(n + k)], r.low, r.high) for r in grid.rows]
    for used in told or []:
        weights = np.where(used, -1.0, 1.0)
        row = np.r_[np.zeros(n), weights, np.zeros(k)]
        rows.append(LinearConstraint(row, 1 - sum(used), np.inf))
    integrality = np.r_[np.ones(2 * n), np.zeros(k)]
    bounds = Bounds(
        np.r_[grid.low, np.zeros(n + k)], np.r_[grid.high, np.ones(n), np.full(k, np.inf)]
    )
    cost = np.r_[np.zeros(2 * n), np.ones(k)]
    best, best_x, rounds = np.inf, None, 0
    while True:
        rounds += 1
        found = milp(cost, constraints=rows, integrality=integrality, bounds=bounds)
        if found.x is None:
            return None
        x = np.rint(found.x[:n]).astype(np.int64)
        if grid.squared(x) < best:
            best, best_x = grid.squared(x), x
        if best - found.fun <= GAP:
            return best_x, found.fun, rounds
        miss = x @ grid.pull - grid.target
        for at in range(k):
            # t >= 2 y (p.x - goal) - y^2
            row = np.r_[2 * miss[at] * grid.pull[:, at], np.zeros(n), -np.eye(k)[at]]
            rows.append(
                LinearConstraint(row, -np.inf, miss[at] ** 2 + 2 * miss[at] * grid.target[at])
            )
