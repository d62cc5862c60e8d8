"""Which limits on a blend cannot hold together, and how far one alone would have to give way."""

from dataclasses import replace
from math import ceil, floor

import numpy as np

from krume.base import Clash, as_text
from krume.design.blending.feasible import MEANS, Pull, blend_within, most_steps
from krume.design.blending.limits import keeps, limits_of, value_of, weights_of
from krume.design.blending.task import BlendTask, ClashingLimit

Limits = tuple[ClashingLimit, ...]


def clashing_limits(task: BlendTask) -> Limits:
    """The smallest set of limits that cannot hold together; empty where a blend exists.

    Each of them tells the least that it alone would have to give way, or that it alone cannot.
    """
    limits = limits_of(task)
    if blend_within(task, limits) is not None:
        return ()
    return tuple(
        replace(limit, loosened=_loosened(task, limit, limits)) for limit in _smallest(task, limits)
    )


def _smallest(task: BlendTask, limits: Limits) -> Limits:
    """The smallest clash: one of each set that any blend was seen to break."""
    seen_broken: list[frozenset[int]] = []
    while True:
        trial = _hitting(seen_broken)
        masses_g = blend_within(task, [limits[at] for at in trial])
        if masses_g is None:
            return tuple(limits[at] for at in trial)
        seen_broken.append(_broken_at_best(task, limits, trial, masses_g))


def _broken_at_best(
    task: BlendTask, limits: Limits, kept: tuple[int, ...], masses_g: tuple[float, ...]
) -> frozenset[int]:
    """What is broken when no further limit can be kept beside those that are."""
    good = {*kept, *_kept(task, limits, masses_g)}
    for at in range(len(limits)):
        if at not in good:
            found = blend_within(task, [limits[other] for other in sorted({*good, at})])
            if found is not None:
                good |= _kept(task, limits, found)
    return frozenset(range(len(limits))) - good


def _kept(task: BlendTask, limits: Limits, masses_g: tuple[float, ...]) -> set[int]:
    return {at for at, limit in enumerate(limits) if keeps(task, limit, masses_g)}


def _hitting(sets: list[frozenset[int]]) -> tuple[int, ...]:
    """The fewest numbers of which each set has one."""
    size = 0
    while (found := _hit(sets, frozenset(), size)) is None:
        size += 1
    return tuple(sorted(found))


def _hit(sets: list[frozenset[int]], chosen: frozenset[int], more: int) -> frozenset[int] | None:
    missed = next((each for each in sets if not each & chosen), None)
    if missed is None:
        return chosen
    if more == 0:
        return None
    tries = (_hit(sets, chosen | {at}, more - 1) for at in sorted(missed))
    return next((found for found in tries if found is not None), None)


def _loosened(task: BlendTask, limit: ClashingLimit, limits: Limits) -> float | None:
    """The nearest value of a limit with which a blend exists, all other limits kept."""
    others = tuple(other for other in limits if other != limit)
    if limit.kind == "least-part":
        return _smaller_part(task, limit, others)
    if limit.kind == "total":
        return _other_total(task, others)
    masses_g = blend_within(task, others, pull=_towards(task, limit))
    return None if masses_g is None else value_of(task, limit, masses_g)


def _towards(task: BlendTask, limit: ClashingLimit) -> Pull:
    """The pull that breaks a limit the least."""
    steps = np.zeros(len(task.names))
    if limit.kind == "parts":
        return Pull(steps, parts=1.0)
    if limit.kind in MEANS:
        steps = np.array(weights_of(task, limit), dtype=float)
    elif limit.place is not None:
        steps[limit.place] = 1.0
    return Pull(-steps if limit.side == "low" else steps)


def _smaller_part(task: BlendTask, limit: ClashingLimit, others: Limits) -> float | None:
    """The largest least part with which a blend exists: what holds for one holds for less."""
    low, high = 0, ceil(limit.value / task.step_g)
    while high - low > 1:
        middle = (low + high) // 2
        smaller = replace(limit, value=middle * task.step_g)
        if blend_within(task, (*others, smaller)) is None:
            high = middle
        else:
            low = middle
    return low * task.step_g if low else None


def _other_total(task: BlendTask, others: Limits) -> float | None:
    """The nearest total with which a blend exists; the smaller of two that are as near."""
    steps, ones = task.total_g / task.step_g, np.ones(len(task.names))
    below = blend_within(task, others, pull=Pull(-ones), total_steps=(1, floor(steps)))
    above = blend_within(task, others, pull=Pull(ones), total_steps=(ceil(steps), most_steps(task)))
    totals_g = [sum(masses_g) for masses_g in (below, above) if masses_g is not None]
    return min(totals_g, key=lambda total_g: abs(total_g - task.total_g), default=None)


def told(limit: ClashingLimit) -> Clash:
    """A clashing limit as the base's own value: what the limit is, needs and has."""
    has = f"{as_text(limit.value)} {limit.unit}"
    says = {"low": "at least ", "high": "at most ", "exact": ""}[limit.side]
    alone = f"{as_text(limit.loosened, 2)} {limit.unit}" if limit.loosened is not None else ""
    return Clash(limit.name, says + has, alone or "more than this limit to give way", has)
