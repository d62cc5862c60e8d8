"""Two-stage cooling of a cooked food, judged by its log; what is not shown does not pass."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from krume.keep.lethality import check_readings
from krume.properties import constants

Readings = list[tuple[float, float]]


@dataclass(frozen=True, slots=True)
class Cooling:
    """How long each stage took, and whether the log shows that both limits held.

    A time is None where the log does not show it. `reason` is empty when it passes; else
    `stage-1`, `total`, both joined by a comma, or `not-shown`.
    """

    stage_1_h: float | None
    total_h: float | None
    verdict: str
    reason: str


def cooling(
    times_h: Sequence[float], temps_c: Sequence[float], *, is_cooked: bool = True
) -> Cooling:
    """Time from 57 to 21 degC and from 57 to 5 degC by a log of readings.

    straight line between readings; the clock starts when the food passes 57 degC, or at the first
    reading of a food that no step cooks: then 5 degC within 4 h is the one stage

    Parameters
    ----------
    times_h : time of each reading, rising [h]
    temps_c : temperature of each reading at the warmest place [degC]
    is_cooked : whether it was cooked, or made of things at room temperature

    Returns
    -------
    both times [h], the verdict `pass` or `fail`, and the reason

    Raises
    ------
    InputError : the lists differ in length, or hold fewer than two readings
    OutOfRangeError : times do not rise, or a temperature is outside -50 to 250 degC

    Valid for
    ---------
    A gap between readings longer than the limit itself, a log of a cooked food
    that begins below 57 degC, or one that ends too soon: not shown, and that is no pass.

    Source
    ------
    `fda-food-code-2022`, 3-501.14(A) and (B)

    Examples
    --------
    >>> cooling([0.0, 1.0, 2.0, 4.0, 6.0], [57.0, 33.0, 20.0, 9.0, 4.0]).verdict
    'pass'
    """
    check_readings(times_h, temps_c)
    limit = constants("keeping.csv")
    readings = list(zip(times_h, temps_c, strict=True))
    if not is_cooked:
        took, state = _stage(
            readings, readings[0][0], limit["cooling-end"], limit["cooling-fresh-h"]
        )
        return Cooling(None, took, *_verdict("within", state))
    start = _start_h(readings, limit["cooling-start"])
    if start is None:
        return Cooling(None, None, "fail", "not-shown")
    stages = (
        _stage(readings, start, limit["cooling-middle"], limit["cooling-first-h"]),
        _stage(readings, start, limit["cooling-end"], limit["cooling-total-h"]),
    )
    return Cooling(stages[0][0], stages[1][0], *_verdict(stages[0][1], stages[1][1]))


def _verdict(stage_1: str, total: str) -> tuple[str, str]:
    over = [name for name, state in (("stage-1", stage_1), ("total", total)) if state == "over"]
    if over:
        return "fail", ",".join(over)
    if "not-shown" in (stage_1, total):
        return "fail", "not-shown"
    return "pass", ""


def _start_h(readings: Readings, start_c: float) -> float | None:
    """When the food last passed the starting temperature downwards; None if the log misses it."""
    warm = [i for i, (_, temp) in enumerate(readings) if temp >= start_c]
    if not warm:
        return None
    return _crossing_h(readings, warm[-1], start_c)


def _crossing_h(readings: Readings, last_above: int, level_c: float) -> float | None:
    """Time at which the straight line behind a reading comes down to a level."""
    time, temp = readings[last_above]
    if temp == level_c:
        return time
    if last_above + 1 == len(readings):
        return None
    later, below = readings[last_above + 1]
    return time + (temp - level_c) / (temp - below) * (later - time)


def _stage(
    readings: Readings, start_h: float, level_c: float, limit_h: float
) -> tuple[float | None, str]:
    """Time a stage took, and `within`, `over` or `not-shown`."""
    above = [i for i, (_, temp) in enumerate(readings) if temp > level_c]
    reached = _reached_h(readings, above, level_c)
    if reached is None:
        last = readings[-1][0] - start_h
        return None, "over" if last >= limit_h else "not-shown"
    took = reached - start_h
    seen_above = [time for time, temp in readings if temp > level_c]
    if seen_above and seen_above[-1] - start_h > limit_h:
        return took, "over"
    if _widest_gap_h(readings, start_h, reached) > limit_h:
        return took, "not-shown"
    return took, "within" if took <= limit_h + 1e-9 else "over"


def _reached_h(readings: Readings, above: list[int], level_c: float) -> float | None:
    """When the food came down to a level and stayed there; None when the log does not show it."""
    if not above:
        return readings[0][0]
    if above[-1] + 1 == len(readings):
        return None
    return _crossing_h(readings, above[-1], level_c)


def _widest_gap_h(readings: Readings, start_h: float, end_h: float) -> float:
    """Longest time without a reading between the start and the end of a stage."""
    times = [time for time, _ in readings]
    return max(
        (after - before for before, after in pairwise(times) if after > start_h and before < end_h),
        default=0.0,
    )
