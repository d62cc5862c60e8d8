"""The same task as a mixed-integer quadratic program, for a solver that shares nothing with ours.

Objective: the squared distance. Its absolute gap is set, so `bound` is proven within that.
"""

from dataclasses import dataclass
from math import ceil, floor
from time import process_time
from typing import Any

from krume.design import BlendTask

ROUNDING = 1e-9


@dataclass(frozen=True, slots=True)
class Peer:
    """The peer's answer; without one `masses_g` is None."""

    masses_g: tuple[float, ...] | None
    squared: float
    bound: float
    time_s: float


def peer_solve(task: BlendTask, *, gap: float = 1e-6, time_limit_s: float = 30.0) -> Peer:
    """Solve a task by SCIP."""
    from pyscipopt import Model, quicksum

    model = Model()
    model.hideOutput()
    model.setParam("limits/absgap", gap)
    model.setParam("limits/time", time_limit_s)
    steps = round(task.total_g / task.step_g)
    stock = task.most_g or [None] * len(task.names)
    high = [
        steps if most is None else min(steps, floor(most / task.step_g + ROUNDING))
        for most in stock
    ]
    x = [model.addVar(vtype="I", lb=0, ub=most) for most in high]
    model.addCons(quicksum(x) == steps)
    _limit(model, task, x, steps)
    _limit_parts(model, task, x, high)
    squared = model.addVar(lb=0)
    missed = []
    for at, want in enumerate(task.target):
        miss = model.addVar(lb=None)
        made = quicksum(row[at] * amount for row, amount in zip(task.composition, x, strict=True))
        model.addCons(miss == made / steps - want)
        missed.append(miss)
    model.addCons(squared >= quicksum(miss * miss for miss in missed))
    model.setObjective(squared)
    start = process_time()
    model.optimize()
    time_s = process_time() - start
    if model.getNSols() == 0:
        return Peer(None, float("inf"), float("inf"), time_s)
    masses_g = tuple(round(model.getVal(amount)) * task.step_g for amount in x)
    return Peer(masses_g, squared_of(task, masses_g), float(model.getDualbound()), time_s)


def squared_of(task: BlendTask, masses_g: tuple[float, ...]) -> float:
    """Squared distance of a blend from the target."""
    return sum(
        (sum(r[at] * m for r, m in zip(task.composition, masses_g, strict=True)) / task.total_g - w)
        ** 2
        for at, w in enumerate(task.target)
    )


def _limit(model: Any, task: BlendTask, x: list[Any], steps: int) -> None:
    from pyscipopt import quicksum

    for limit in task.limits:
        share = quicksum(x[at] for at in limit.members)
        if limit.low_pct is not None:
            model.addCons(share >= ceil(limit.low_pct * steps / 100 - ROUNDING))
        if limit.high_pct is not None:
            model.addCons(share <= floor(limit.high_pct * steps / 100 + ROUNDING))
    held = [(limit.composition, limit.low, limit.high) for limit in task.property_limits]
    if task.price_per_kg is not None:
        held.append((task.price_per_kg, None, task.most_price_per_kg))
    for values, low, high in held:
        made = quicksum(value * amount for value, amount in zip(values, x, strict=True))
        if low is not None:
            model.addCons(made >= low * steps)
        if high is not None:
            model.addCons(made <= high * steps)


def _limit_parts(model: Any, task: BlendTask, x: list[Any], high: list[int]) -> None:
    from pyscipopt import quicksum

    least = max(1, ceil(task.least_part_g / task.step_g - ROUNDING))
    if least == 1 and task.most_parts is None:
        return
    used = [model.addVar(vtype="B") for _ in x]
    for amount, is_used, most in zip(x, used, high, strict=True):
        model.addCons(amount <= most * is_used)
        model.addCons(amount >= least * is_used)
    if task.most_parts is not None:
        model.addCons(quicksum(used) <= task.most_parts)
