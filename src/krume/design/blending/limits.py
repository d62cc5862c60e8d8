"""Each limit of a task by itself, and whether a blend keeps it: the solver's own witness."""

from collections.abc import Iterator, Sequence
from math import inf

from krume.design.blending.task import BlendTask, ClashingLimit

# How far a sum of floats may be past a limit that is written in decimals, relative to the limit.
SLACK = 1e-9
PER_CENT, PER_100_G, PER_KG = "%", "g per 100 g", "per kg"


def limits_of(task: BlendTask) -> tuple[ClashingLimit, ...]:
    """Every limit that a task states, in a fixed order; `loosened` is still open."""
    return tuple(_shares(task)) + tuple(_properties(task)) + tuple(_others(task))


def broken_limits(
    task: BlendTask, masses_g: Sequence[float], *, slack: float = SLACK
) -> tuple[ClashingLimit, ...]:
    """The limits that a blend does not keep."""
    limits = limits_of(task)
    return tuple(each for each in limits if not keeps(task, each, masses_g, slack=slack))


def keeps(
    task: BlendTask, limit: ClashingLimit, masses_g: Sequence[float], *, slack: float = SLACK
) -> bool:
    """Whether a blend keeps a limit, its end included."""
    low, high = ends(limit)
    value = value_of(task, limit, masses_g)
    room = slack * max(1.0, abs(limit.value))
    return low - room <= value <= high + room


def ends(limit: ClashingLimit) -> tuple[float, float]:
    """The least and the most that a limit allows."""
    low = -inf if limit.side == "high" else limit.value
    high = inf if limit.side == "low" else limit.value
    return low, high


def value_of(task: BlendTask, limit: ClashingLimit, masses_g: Sequence[float]) -> float:
    """What a blend has of that which a limit is on, in the limit's unit."""
    total_g = sum(masses_g)
    used_g = [mass for mass in masses_g if mass > 0]
    place = limit.place or 0
    if limit.kind == "share":
        return 100 * sum(masses_g[at] for at in task.limits[place].members) / total_g
    if limit.kind == "property":
        return _mean(task.property_limits[place].composition, masses_g)
    if limit.kind == "price":
        return _mean(task.price_per_kg or (), masses_g)
    if limit.kind == "stock":
        return masses_g[place]
    if limit.kind == "parts":
        return float(len(used_g))
    return total_g if limit.kind == "total" else min(used_g)


def _mean(values: Sequence[float], masses_g: Sequence[float]) -> float:
    parts = zip(values, masses_g, strict=True)
    return sum(value * mass for value, mass in parts) / sum(masses_g)


def _shares(task: BlendTask) -> Iterator[ClashingLimit]:
    for place, limit in enumerate(task.limits):
        if limit.low_pct is not None:
            yield ClashingLimit("share", limit.name, "low", limit.low_pct, PER_CENT, None, place)
        if limit.high_pct is not None:
            yield ClashingLimit("share", limit.name, "high", limit.high_pct, PER_CENT, None, place)


def _properties(task: BlendTask) -> Iterator[ClashingLimit]:
    for place, limit in enumerate(task.property_limits):
        if limit.low is not None:
            yield ClashingLimit("property", limit.name, "low", limit.low, PER_100_G, None, place)
        if limit.high is not None:
            yield ClashingLimit("property", limit.name, "high", limit.high, PER_100_G, None, place)


def _others(task: BlendTask) -> Iterator[ClashingLimit]:
    for place, (name, most_g) in enumerate(zip(task.names, task.most_g or (), strict=False)):
        if most_g is not None:
            yield ClashingLimit("stock", name, "high", most_g, "g", None, place)
    if task.price_per_kg is not None and task.most_price_per_kg is not None:
        yield ClashingLimit("price", "price", "high", task.most_price_per_kg, PER_KG, None)
    if task.most_parts is not None:
        yield ClashingLimit("parts", "flours used", "high", task.most_parts, "flours", None)
    if task.least_part_g > 0:
        yield ClashingLimit("least-part", "least part", "low", task.least_part_g, "g", None)
    yield ClashingLimit("total", "total", "exact", task.total_g, "g", None)


def weights_of(task: BlendTask, limit: ClashingLimit) -> tuple[float, ...]:
    """What a gram of each flour adds to a limit on the mean of the blend, in the limit's unit."""
    place = limit.place or 0
    if limit.kind == "share":
        members = task.limits[place].members
        return tuple(100.0 if at in members else 0.0 for at in range(len(task.names)))
    if limit.kind == "property":
        return task.property_limits[place].composition
    return task.price_per_kg or ()
