"""A task in whole steps of the scale: flours in the order of their names, limits as rows."""

from dataclasses import dataclass
from functools import cached_property
from math import ceil, floor

import numpy as np
from numpy.typing import NDArray

from krume.design.blending.task import BlendTask

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]

# How far a sum of floats may be past a limit that is written in decimals.
SLACK = 1e-9


@dataclass(frozen=True, slots=True)
class Row:
    """What the flours' steps, each times its weight, may add up to."""

    weights: Floats
    low: float
    high: float


@dataclass(frozen=True)
class Grid:
    """The same task without words: got = x @ pull, and x @ row between low and high.

    `order` is the place in the task of each flour here. A flour is unused or has `least` steps.
    """

    order: tuple[int, ...]
    pull: Floats
    target: Floats
    steps: int
    low: Ints
    high: Ints
    least: int
    most_parts: int
    rows: tuple[Row, ...]

    @cached_property
    def count(self) -> int:
        """How many flours there are."""
        return len(self.order)

    def squared(self, x: Ints) -> float:
        """Squared distance of a blend from the target."""
        return float(np.sum((x @ self.pull - self.target) ** 2))


def grid_of(task: BlendTask) -> Grid:
    """A task on its grid; what can be said of one flour alone becomes its own two ends."""
    steps = round(task.total_g / task.step_g)
    names = task.names
    order = tuple(sorted(range(len(names)), key=lambda at: (names[at], at)))
    place = {at: here for here, at in enumerate(order)}
    least = max(ceil(task.least_part_g / task.step_g - SLACK), 1)
    low, high = _ends(task, steps)
    rows = []
    for limit in task.limits:
        here = [place[at] for at in limit.members]
        if len(here) > 1:
            weights = np.zeros(len(order))
            weights[here] = 1.0
            rows.append(Row(weights, *share_steps(limit.low_pct, limit.high_pct, steps)))
    rows.extend(_weighed(task, order, steps))
    composition = np.array(task.composition, dtype=float).reshape(len(names), -1)
    return Grid(
        order=order,
        pull=composition[list(order)] / steps,
        target=np.array(task.target, dtype=float),
        steps=steps,
        low=low[list(order)],
        high=high[list(order)],
        least=least,
        most_parts=len(names) if task.most_parts is None else task.most_parts,
        rows=tuple(rows),
    )


def share_steps(low_pct: float | None, high_pct: float | None, steps: int) -> tuple[int, int]:
    """The whole steps that lie within a share."""
    low = 0 if low_pct is None else ceil(low_pct * steps / 100 - SLACK)
    high = steps if high_pct is None else floor(high_pct * steps / 100 + SLACK)
    return low, high


def _ends(task: BlendTask, steps: int) -> tuple[Ints, Ints]:
    low = np.zeros(len(task.names), dtype=np.int64)
    high = np.full(len(task.names), steps, dtype=np.int64)
    for at, most_g in enumerate(task.most_g or ()):
        if most_g is not None:
            high[at] = min(high[at], floor(most_g / task.step_g + SLACK))
    for limit in task.limits:
        if len(limit.members) == 1:
            least, most = share_steps(limit.low_pct, limit.high_pct, steps)
            (at,) = limit.members
            low[at], high[at] = max(low[at], least), min(high[at], most)
    return low, high


def _weighed(task: BlendTask, order: tuple[int, ...], steps: int) -> list[Row]:
    rows = []
    for limit in task.property_limits:
        values = np.array(limit.composition, dtype=float)[list(order)]
        low = -np.inf if limit.low is None else limit.low
        high = np.inf if limit.high is None else limit.high
        rows.append(Row(values / steps, low - SLACK, high + SLACK))
    if task.price_per_kg is not None and task.most_price_per_kg is not None:
        values = np.array(task.price_per_kg, dtype=float)[list(order)]
        rows.append(Row(values / steps, -np.inf, task.most_price_per_kg + SLACK))
    return rows
