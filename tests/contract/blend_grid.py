"""Blends found the long way: every whole-step blend counted out, or a second solver asked."""

from collections.abc import Mapping, Sequence
from itertools import pairwise
from math import sqrt
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray


class Fence(NamedTuple):
    """The grams that some of the flours together must keep to."""

    label: str
    names: tuple[str, ...]
    low_g: float
    high_g: float


Composition = Mapping[str, Mapping[str, float]]
SLACK = 1e-9


def distance(
    parts: Mapping[str, float], composition: Composition, target: Mapping[str, float]
) -> float:
    """Root of the summed squares of got minus target, per 100 g."""
    total = sum(parts.values())
    got = {
        key: sum(grams * composition[name][key] for name, grams in parts.items()) / total
        for key in target
    }
    return sqrt(sum((got[key] - value) ** 2 for key, value in target.items()))


def fits(parts: Mapping[str, float], fences: Sequence[Fence]) -> bool:
    """Whether a blend keeps to every fence."""
    return all(
        fence.low_g - SLACK <= sum(parts[name] for name in fence.names) <= fence.high_g + SLACK
        for fence in fences
    )


def all_blends(count: int, total: int) -> NDArray[np.int16]:
    """Every way to share a total of steps among so many flours, one a row."""
    rows = np.zeros((1, 0), dtype=np.int16)
    used = np.zeros(1, dtype=np.int16)
    for _ in range(count - 1):
        left = total - used + 1
        rows = np.repeat(rows, left, axis=0)
        start = np.repeat(np.concatenate(([0], np.cumsum(left)[:-1])), left)
        taken = (np.arange(len(rows)) - start).astype(np.int16)
        used = np.repeat(used, left) + taken
        rows = np.column_stack((rows, taken))
    return np.column_stack((rows, total - used)).astype(np.int16)


def counted_out(
    names: Sequence[str],
    composition: Composition,
    target: Mapping[str, float],
    fences: Sequence[Fence],
    *,
    total_steps: int,
    step_g: float = 1.0,
) -> float | None:
    """The least distance of all whole-step blends within the fences; None where there is none."""
    rows = all_blends(len(names), total_steps)
    for fence in fences:
        columns = [names.index(name) for name in fence.names]
        grams = rows[:, columns].sum(axis=1) * step_g
        rows = rows[(grams >= fence.low_g - SLACK) & (grams <= fence.high_g + SLACK)]
    if not len(rows):
        return None
    table = np.array([[composition[name][key] for key in target] for name in names])
    apart = rows @ table / total_steps - np.array(list(target.values()))
    return float(np.sqrt((apart**2).sum(axis=1).min()))


def second_solver(
    names: Sequence[str],
    composition: Composition,
    target: Mapping[str, float],
    fences: Sequence[Fence],
    *,
    total_steps: int,
    step_g: float = 1.0,
) -> float | None:
    """As `counted_out`, by a solver the program does not use; for many flours."""
    from pyscipopt import Model, quicksum

    model = Model()
    model.hideOutput()
    model.setParam("limits/gap", 0.0)
    steps = {n: model.addVar(vtype="I", lb=0, ub=total_steps, name=str(n)) for n in names}
    model.addCons(quicksum(steps.values()) == total_steps)
    for fence in fences:
        grams = quicksum(steps[name] for name in fence.names) * step_g
        model.addCons(grams >= fence.low_g - SLACK)
        model.addCons(grams <= fence.high_g + SLACK)
    apart = []
    for key, value in target.items():
        gap = model.addVar(lb=None, name=key)
        got = quicksum(steps[n] * composition[n][key] for n in names) * (1 / total_steps)
        model.addCons(gap == got - value)
        apart.append(gap)
    square = model.addVar(lb=0, name="square")
    model.addCons(quicksum(gap * gap for gap in apart) <= square)
    model.setObjective(square)
    model.optimize()
    if model.getStatus() == "infeasible":
        return None
    parts = {n: round(model.getVal(steps[n])) * step_g for n in names}
    return distance(parts, composition, target)


def least_distance(*args: Any, **kwargs: Any) -> float | None:
    """The least distance, counted out for up to five flours and asked of a solver beyond."""
    few = len(args[0]) <= FEW and kwargs["total_steps"] <= FEW_STEPS
    return (counted_out if few else second_solver)(*args, **kwargs)


FEW, FEW_STEPS = 5, 120


def rises(values: Sequence[float], *, slack: float = 1e-9) -> bool:
    """Whether no value is less than the one before it."""
    return all(a <= b + slack for a, b in pairwise(values))
