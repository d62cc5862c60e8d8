"""What cooling hands out, and how draws become intervals."""

import math
from dataclasses import dataclass

import numpy as np

from krume.bake.cooling.body import Course
from krume.bake.grid import Array
from krume.base import Interval, Notice
from krume.properties import constant

_POINTS = 80


@dataclass(frozen=True, slots=True)
class CoolingCurve:
    """Warmest place over time: likeliest, and the tenth and ninetieth of the draws [degC]."""

    time_min: tuple[float, ...]
    warmest_c: tuple[float, ...]
    low_c: tuple[float, ...]
    high_c: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Cooling:
    """Minutes after the oven's door, each an interval (tenth, middle, ninetieth of the draws).

    None is not asked of this way, or never in this room: `notices` say which. `rolled_min` is the
    minute at which the roll of this answer is rolled; until then the sheet lies flat. `start_c`
    is the mean of the cake at the door; `water_g` leaves until the end of the curve.
    """

    way: str
    room_c: float
    turned_min: float | None
    start_c: float
    height_cm: float
    split_min: Interval | None
    fill_min: Interval | None
    wrap_min: Interval | None
    roll_from_min: Interval | None
    roll_until_min: Interval | None
    rolled_min: float | None
    water_g: Interval
    curve: CoolingCurve
    draws: int
    notices: tuple[Notice, ...]

    @property
    def roll_window_min(self) -> tuple[int, int] | None:
        """Whole minutes in which most sheets may be rolled; None where they leave no minute."""
        if self.roll_from_min is None or self.roll_until_min is None:
            return None
        first, last = math.ceil(self.roll_from_min.best), math.floor(self.roll_until_min.low)
        return (first, last) if first < last else None


def minutes_until(
    course: Course, goal_c: float, factor: Array, *, which: str = "hottest_k"
) -> Interval | None:
    """Minutes until a goal is reached, as an interval; None where more than a tenth never is."""
    seconds = course.reached_s(goal_c + constant("celsius-zero"), which) * factor
    low, best, high = _quantiles(seconds[1:] / 60)
    if not math.isfinite(high):
        return None
    return Interval(math.floor(low), best, math.ceil(high))


def _quantiles(values: Array) -> tuple[float, float, float]:
    """Tenth, middle, ninetieth; an infinite draw counts as later than all others."""
    ordered = np.sort(values)
    places = (round(share * (len(ordered) - 1)) for share in (0.1, 0.5, 0.9))
    low, best, high = (float(ordered[place]) for place in places)
    return low, best, high


def water_left(course: Course, per_kg_g: float) -> Interval:
    """Water that left until the end, for the whole cake [g]."""
    low, best, high = _quantiles(course.water_kg[-1, 1:] * per_kg_g)
    return Interval(low, best, high)


def curve_of(course: Course) -> CoolingCurve:
    """The warmest place over time with the spread of the draws, thinned for a picture."""
    celsius = course.hottest_k - constant("celsius-zero")
    some = np.unique(np.linspace(0, len(course.time_s) - 1, _POINTS).round().astype(int))
    low, high = np.quantile(celsius[some, 1:], (0.1, 0.9), axis=1)
    return CoolingCurve(
        tuple(float(each) / 60 for each in course.time_s[some]),
        tuple(float(each) for each in celsius[some, 0]),
        tuple(float(each) for each in low),
        tuple(float(each) for each in high),
    )


def joined(first: Course, second: Course, at_s: float) -> Course:
    """One course after another that took its place at a moment."""
    kept = first.time_s < at_s
    water = at_moment(first, "water_kg", at_s)

    def both(name: str, offset: Array | float = 0.0) -> Array:
        before, after = getattr(first, name)[kept], getattr(second, name) + offset
        return np.concatenate([before, after])

    return Course(
        both("time_s", at_s), both("hottest_k"), both("mean_k"), both("coldest_k"),
        both("water_kg", water), both("lost_j"), both("given_j"),
    )  # fmt: skip


def at_moment(course: Course, which: str, at_s: float) -> Array:
    """A course's figure of every draw at a moment, straight between the steps."""
    values: Array = getattr(course, which)
    after = int(np.clip(np.searchsorted(course.time_s, at_s), 1, len(course.time_s) - 1))
    low, high = course.time_s[after - 1], course.time_s[after]
    part = min(max((at_s - low) / (high - low), 0.0), 1.0)
    found: Array = values[after - 1] + part * (values[after] - values[after - 1])
    return found
