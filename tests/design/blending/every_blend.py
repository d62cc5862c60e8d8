"""Every blend of a small task, one after the other: the plain way to the nearest one."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import sqrt

from krume.design import BlendLimit, BlendTask

ROUNDING = 1e-9


@dataclass(frozen=True, slots=True)
class Plain:
    """What the plain way finds."""

    masses_g: tuple[float, ...]
    distance: float
    used: frozenset[int]


def splits(count: int, steps: int) -> Iterator[tuple[int, ...]]:
    """Every way to share some steps among some flours."""
    if count == 1:
        yield (steps,)
        return
    for first in range(steps + 1):
        yield from ((first, *rest) for rest in splits(count - 1, steps - first))


def mean(values: tuple[float, ...], masses_g: tuple[float, ...]) -> float:
    """Mean of a property over a blend."""
    total = sum(v * m for v, m in zip(values, masses_g, strict=True))
    return total / sum(masses_g)


def holds(task: BlendTask, masses_g: tuple[float, ...]) -> bool:
    """Whether a blend keeps every limit, written again without the program's own code."""
    used = [mass for mass in masses_g if mass > 0]
    if task.most_parts is not None and len(used) > task.most_parts:
        return False
    if min(used) < task.least_part_g - ROUNDING:
        return False
    for mass, most in zip(masses_g, task.most_g or [None] * len(masses_g), strict=True):
        if most is not None and mass > most + ROUNDING:
            return False
    price = mean(task.price_per_kg, masses_g) if task.price_per_kg else 0.0
    if not within(price, None, task.most_price_per_kg):
        return False
    shares = all(holds_share(limit, masses_g) for limit in task.limits)
    return shares and all(
        within(mean(held.composition, masses_g), held.low, held.high)
        for held in task.property_limits
    )


def holds_share(limit: BlendLimit, masses_g: tuple[float, ...]) -> bool:
    """Whether a blend keeps a limit on a share."""
    share_pct = 100 * sum(masses_g[at] for at in limit.members) / sum(masses_g)
    return within(share_pct, limit.low_pct, limit.high_pct)


def within(value: float, low: float | None, high: float | None) -> bool:
    """Whether a value lies between two ends, where there are any."""
    above = low is None or value >= low - ROUNDING
    return above and (high is None or value <= high + ROUNDING)


def plain_best(task: BlendTask, told: tuple[frozenset[int], ...] = ()) -> Plain | None:
    """The nearest of all blends; of two as near, fewer flours, then more of the earlier name."""
    order = sorted(range(len(task.names)), key=lambda at: task.names[at])
    best: tuple[float, int, tuple[float, ...]] | None = None
    for steps in splits(len(task.names), round(task.total_g / task.step_g)):
        masses_g = tuple(each * task.step_g for each in steps)
        used = frozenset(at for at, mass in enumerate(masses_g) if mass)
        if used in told or not holds(task, masses_g):
            continue
        squared = sum(
            (mean(tuple(row[at] for row in task.composition), masses_g) - want) ** 2
            for at, want in enumerate(task.target)
        )
        entry = (round(squared, 10), len(used), tuple(-masses_g[at] for at in order))
        if best is None or entry < best:
            best, found = entry, Plain(masses_g, sqrt(squared), used)
    return None if best is None else found
