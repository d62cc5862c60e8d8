"""The nearest blend of twelve flours, beside two other ways on the same tasks."""

import sys
from dataclasses import dataclass
from itertools import count
from math import ceil
from statistics import median
from time import process_time

from benchmarks.measure import Row
from krume.design import BlendFit, BlendTask, solve_blend

TASKS = 40
CUT_TASKS = 12
FLOURS = (12,)
GAP = 1e-6
CUT_LIMIT_S = 20.0


@dataclass(frozen=True, slots=True)
class Taken:
    """Processor time of both on one task, and what came of it."""

    own_s: float
    peer_s: float
    is_proven: bool
    is_as_near: bool


def rows() -> list[Row]:
    """Median and longest of many tasks that have an answer."""
    taken = measured(TASKS)
    own, peer = [each.own_s for each in taken], [each.peer_s for each in taken]
    told = f"{len(taken)} blends of 12 flours"
    unproven = sum(not each.is_proven for each in taken)
    return [
        Row(f"{told}, median", median(own) * 1e3, median(peer) * 1e3, "ms", "SCIP, gap 1e-6", 3.0),
        Row("their longest", max(own) * 1e3, max(peer) * 1e3, "ms", "SCIP, gap 1e-6"),
        Row("all of them", sum(own), sum(peer), "s", "SCIP, gap 1e-6", 3.0),
        Row("not proven in 3 s", unproven, len(taken), "blends", "of all"),
        *cut_rows(),
    ]


def measured(how_many: int) -> list[Taken]:
    """The first tasks with an answer, each solved by both."""
    from tests.design.blending.random_tasks import studio_task
    from tests.design.blending.scip_peer import peer_solve

    solve_blend(studio_task(0, FLOURS))
    taken: list[Taken] = []
    for seed in count():
        task = studio_task(seed, FLOURS)
        start = process_time()
        found = solve_blend(task)
        own_s = process_time() - start
        if isinstance(found, BlendFit):
            peer = peer_solve(task, gap=GAP)
            is_as_near = found.distance**2 <= peer.squared + GAP
            taken.append(Taken(own_s, peer.time_s, found.proven, is_as_near))
        if len(taken) == how_many:
            break
    if not all(each.is_as_near for each in taken if each.is_proven):
        raise RuntimeError("a blend that was told to be proven is not the nearest")
    return taken


def cut_rows() -> list[Row]:
    """The same by tangent cuts on a linear integer solver, on fewer tasks: it takes long."""
    from tests.design.blending.random_tasks import studio_task

    own, cuts = [], []
    for seed in count():
        task = studio_task(seed, FLOURS)
        start = process_time()
        found = solve_blend(task)
        middle = process_time()
        if isinstance(found, BlendFit):
            cut_squared(task)
            own.append(middle - start)
            cuts.append(process_time() - middle)
        if len(own) == CUT_TASKS:
            break
    peer = "scipy milp, tangent cuts"
    return [
        Row(f"the first {CUT_TASKS}, median", median(own) * 1e3, median(cuts) * 1e3, "ms", peer)
    ]


def cut_squared(task: BlendTask) -> float:
    """Squared distance by tangent cuts: solve, cut where the answer lies, and again."""
    import numpy as np
    from scipy.optimize import Bounds, LinearConstraint, milp

    from krume.design.blending.grid import grid_of

    grid = grid_of(task)
    n, k = grid.count, grid.properties
    blank, eye, zeros = np.zeros((n, k)), np.eye(n), np.zeros(n + k)
    most = n if grid.most_parts is None else grid.most_parts
    held = [
        LinearConstraint(np.r_[np.ones(n), zeros], grid.steps, grid.steps),
        LinearConstraint(np.c_[eye, -np.diag(grid.high), blank], -np.inf, 0),
        LinearConstraint(np.c_[eye, -grid.least * eye, blank], 0, np.inf),
        LinearConstraint(np.r_[np.zeros(n), np.ones(n), np.zeros(k)], 0, most),
    ]
    for row, low, high in zip(grid.rows, grid.row_low, grid.row_high, strict=True):
        held.append(LinearConstraint(np.r_[row, zeros], low, high))
    bounds = Bounds(np.r_[grid.low, zeros], np.r_[grid.high, np.ones(n), np.full(k, np.inf)])
    integrality = np.r_[np.ones(2 * n), np.zeros(k)]
    cost = np.r_[np.zeros(2 * n), np.ones(k)]
    best, start = np.inf, process_time()
    while process_time() - start < CUT_LIMIT_S:
        found = milp(
            cost,
            constraints=held,
            integrality=integrality,
            bounds=bounds,
            options={"mip_rel_gap": 0.0, "time_limit": float(ceil(CUT_LIMIT_S))},
        )
        if found.x is None:
            break
        x = np.rint(found.x[:n]).astype(np.int64)
        best = min(best, grid.squared(x))
        if best - found.fun <= GAP:
            break
        for at, miss in enumerate(x @ grid.pull - grid.target):
            row = np.r_[2 * miss * grid.pull[:, at], np.zeros(n), -np.eye(k)[at]]
            end = miss**2 + 2 * miss * grid.target[at]
            held.append(LinearConstraint(row, -np.inf, end))
    return float(best)


if __name__ == "__main__":
    for each in measured(int(sys.argv[1])):
        print(f"{each.own_s * 1e3:8.0f} {each.peer_s * 1e3:8.0f} {each.is_proven}")
