"""A task in whole steps of the scale: flours in the order of their names, limits as rows."""

from dataclasses import dataclass
from functools import cached_property
from math import ceil, floor, inf

import numpy as np
from numpy.typing import NDArray

from krume.design.blending.limits import SLACK
from krume.design.blending.task import BlendTask

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]


@dataclass(frozen=True)
class Grid:
    """The same task in steps, without words.

    `makes` has a row per flour: what a step of it adds to each property, and then to each limit
    on a sum; the first `properties` columns are to come near `target`, the others to lie between
    `row_low` and `row_high`. A flour is unused or has `least` steps or more; `order` is the place
    in the task of each flour here. `is_whole` says whether the total is whole steps at all.
    """

    order: tuple[int, ...]
    makes: Floats
    target: Floats
    row_low: Floats
    row_high: Floats
    steps: int
    low: Ints
    high: Ints
    least: int
    most_parts: int | None
    is_whole: bool

    @cached_property
    def count(self) -> int:
        """How many flours there are."""
        return len(self.order)

    @cached_property
    def properties(self) -> int:
        """How many properties the target has."""
        return len(self.target)

    @cached_property
    def pull(self) -> Floats:
        """What a step of each flour adds to each property."""
        return self.makes[:, : self.properties]

    @cached_property
    def rows(self) -> Floats:
        """A limit on a sum a row: what a step of each flour adds to it."""
        return self.makes[:, self.properties :].T

    def squared(self, x: Ints) -> float:
        """Squared distance of a blend from the target."""
        return float(np.sum((x @ self.pull - self.target) ** 2))

    def choices(self, at: int, low: Ints, high: Ints) -> Ints:
        """The steps that a flour may have between two ends: none, or its least and more."""
        used = np.arange(max(low[at], self.least), high[at] + 1)
        return np.r_[0, used] if low[at] == 0 else used

    def sizes(self, low: Ints, high: Ints) -> Ints:
        """How many choices each flour has between two ends."""
        return np.asarray(np.maximum(high - np.maximum(low, self.least) + 1, 0) + (low == 0))


def grid_of(task: BlendTask) -> Grid:
    """A task on its grid; what can be said of one flour alone becomes its own two ends."""
    names = task.names
    order = tuple(sorted(range(len(names)), key=lambda at: (names[at], at)))
    steps = max(round(task.total_g / task.step_g), 1)
    low, high = _ends(task, steps)
    rows = _rows(task, steps)
    composition = np.array(task.composition, dtype=float).reshape(len(names), -1) / steps
    makes = np.column_stack([composition, *(weights for weights, _, _ in rows)])
    here = list(order)
    return Grid(
        order=order,
        makes=makes[here],
        target=np.array(task.target, dtype=float),
        row_low=np.array([low for _, low, _ in rows], dtype=float),
        row_high=np.array([high for _, _, high in rows], dtype=float),
        steps=steps,
        low=low[here],
        high=high[here],
        least=max(ceil(task.least_part_g / task.step_g - SLACK), 1),
        most_parts=_most_parts(task),
        is_whole=abs(task.total_g / task.step_g - steps) <= SLACK * steps,
    )


def _most_parts(task: BlendTask) -> int | None:
    if task.most_parts is None or task.most_parts >= len(task.names):
        return None
    return task.most_parts


def _share_steps(low_pct: float | None, high_pct: float | None, steps: int) -> tuple[int, int]:
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
            least, most = _share_steps(limit.low_pct, limit.high_pct, steps)
            at = limit.members[0]
            low[at], high[at] = max(low[at], least), min(high[at], most)
    return low, high


def _rows(task: BlendTask, steps: int) -> list[tuple[Floats, float, float]]:
    """Weights and two ends of each limit on several flours."""
    rows: list[tuple[Floats, float, float]] = []
    for limit in task.limits:
        if len(limit.members) != 1:
            weights = np.zeros(len(task.names))
            weights[list(limit.members)] = 1.0
            rows.append((weights, *_share_steps(limit.low_pct, limit.high_pct, steps)))
    for held in task.property_limits:
        low = -inf if held.low is None else held.low
        high = inf if held.high is None else held.high
        rows.append((np.array(held.composition, dtype=float) / steps, low, high))
    if task.price_per_kg is not None and task.most_price_per_kg is not None:
        prices = np.array(task.price_per_kg, dtype=float) / steps
        rows.append((prices, -inf, task.most_price_per_kg))
    return rows
