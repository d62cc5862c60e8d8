"""The nearest blend of the flours at hand: exact, or with a bound on how near any could come."""

from math import sqrt

import numpy as np

from krume.base import Infeasible, InputError, KrumeError
from krume.design.blending.asked import checked
from krume.design.blending.best import Best, bits
from krume.design.blending.clashing import clashing_limits, told
from krume.design.blending.feasible import blend_within
from krume.design.blending.grid import Grid, Ints, grid_of
from krume.design.blending.limits import broken_limits, limits_of
from krume.design.blending.near import near, near_with_fewer
from krume.design.blending.planes import Planes
from krume.design.blending.relaxing import relaxed
from krume.design.blending.searching import GAP, Work, search
from krume.design.blending.sums import Box
from krume.design.blending.task import BlendFit, BlendTask

# Partial blends that are looked at in a second of the time limit.
_PACE_PER_S = 4e6
# A blend is looked at again by plain arithmetic before it is told; sums may differ by rounding.
_WITNESS = 1e-6
_WRONG = "The blend found breaks the limit on {}, so none is told. Please report this task."
# Seconds for all the blends beside the nearest together.
_BESIDE_S = 3.0
_HARD = "These limits leave so little room that no blend was found. Give one of them more room."


def solve_blend(task: BlendTask, *, time_limit_s: float = 3.0) -> BlendFit | Infeasible:
    """The blend of whole steps nearest to the target within every limit.

    `proven` means that no blend has a squared distance smaller by more than 1e-6 (g per 100 g)².
    The time limit is counted work at a steady pace, so that equal tasks have equal answers; where
    it runs out, `bound` is what is known. Limits that clash are named, the fewest there are.
    """
    checked(task)
    grid = grid_of(task)
    best = Best(grid)
    bound, nodes = _nearest(grid, best, Work(time_limit_s * _PACE_PER_S))
    if best.x is None:
        clashes = clashing_limits(task)
        if clashes:
            return Infeasible(tuple(map(told, clashes)))
        best.offer(_any(task, grid))
    if best.x is None:
        raise InputError(_HARD, field="limits")
    return _fit(task, grid, best.x, bound, nodes)


def next_blends(task: BlendTask, best: BlendFit, count: int) -> tuple[BlendFit, ...]:
    """The next nearest blends, each of other flours than the ones before it."""
    grid = grid_of(task)
    found: list[BlendFit] = []
    known = [_bits(grid, best)]
    left = _BESIDE_S * _PACE_PER_S
    while len(found) < count:
        other = Best(grid, known)
        work = Work(left / (count - len(found)))
        left -= work.left
        bound, nodes = _nearest(grid, other, work)
        left += max(work.left, 0.0)
        if other.x is None:
            break
        found.append(_fit(task, grid, other.x, bound, nodes))
        known.append(bits(other.x))
    return tuple(sorted(found, key=lambda fit: fit.distance))


def _any(task: BlendTask, grid: Grid) -> Ints:
    """Some blend within the limits, where the search ended before it met one."""
    masses_g = blend_within(task, limits_of(task)) or (0.0,) * grid.count
    return np.array([round(masses_g[at] / task.step_g) for at in grid.order], dtype=np.int64)


def _bits(grid: Grid, fit: BlendFit) -> int:
    return sum(1 << here for here, at in enumerate(grid.order) if fit.masses_g[at] > 0)


def _nearest(grid: Grid, best: Best, work: Work) -> tuple[float, int]:
    """Find the best blend; a squared bound on every blend, and how much was looked at."""
    if not grid.is_whole:
        return np.inf, 0
    found = relaxed(grid, grid.low, grid.high)
    if found is None:
        return np.inf, 0
    for x in _first(grid, best):
        best.offer(x)
    planes = Planes(grid, found, Box(grid.low, grid.high))
    whole = search(grid, planes, best, work)
    bound = planes.bound**2
    return (best.squared if whole else min(bound, best.squared)), work.nodes


def _first(grid: Grid, best: Best) -> list[Ints]:
    """Good blends to begin with; beside told ones, each with one flour more or less than they."""
    boxes = [(grid.low, grid.high)]
    for told_bits in best.told[-1:]:
        for at in range(grid.count):
            low, high = grid.low.copy(), grid.high.copy()
            if int(told_bits) >> at & 1:
                high[at] = 0
            else:
                low[at] = max(low[at], grid.least)
            boxes.append((low, high))
    found = []
    for low, high in boxes:
        fractions = relaxed(grid, low, high)
        if fractions is not None:
            found += [near(grid, fractions, low, high)]
            if grid.most_parts is not None:
                found.append(near_with_fewer(grid, fractions, low, high))
    return [x for x in found if x is not None]


def _fit(task: BlendTask, grid: Grid, x: Ints, bound: float, nodes: int) -> BlendFit:
    masses = [0.0] * grid.count
    for here, at in enumerate(grid.order):
        masses[at] = float(x[here] * task.step_g)
    broken = broken_limits(task, masses, slack=_WITNESS)
    if broken:
        raise KrumeError(_WRONG.format(broken[0].name), field=broken[0].name)
    got = tuple(
        sum(m * row[at] for m, row in zip(masses, task.composition, strict=True)) / task.total_g
        for at in range(len(task.target))
    )
    squared = sum((have - want) ** 2 for have, want in zip(got, task.target, strict=True))
    proven = squared - bound <= GAP
    return BlendFit(tuple(masses), got, sqrt(squared), proven, sqrt(min(bound, squared)), nodes)
