"""From readings of a cooling cake: when its middle will be down to a temperature."""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from krume.base import InputError, Interval, OutOfRangeError


@dataclass(frozen=True, slots=True)
class CoolLeft:
    """When a goal is reached on the readings' own clock, and how long that is from the last one."""

    at_min: Interval
    left_min: Interval


def cool_left(
    times_min: Sequence[float], temps_c: Sequence[float], *, room_c: float, goal_c: float
) -> CoolLeft:
    r"""Minutes until a cooling middle is at a goal, by two or more readings of it.

    early: ln(T - room) is a straight line in time; late: (T - room)^(-1/4) is one, as still air
    has it whose film weakens with the fourth root of the difference

    Parameters
    ----------
    times_min : time of each reading, rising [min]
    temps_c : temperature of the middle at each [degC]
    room_c : air round the cake [degC]
    goal_c : temperature wanted [degC]

    Returns
    -------
    both ends and their mean; straight lines by least squares where there are more than two

    Raises
    ------
    InputError : fewer than two readings, or lists of different length
    OutOfRangeError : one is no number, times do not rise, a reading is not above the room, the
        readings do not fall, or the goal is not above the room

    Valid for
    ---------
    After the first 20 minutes or so, when the middle has begun to fall; one place, one room.

    Source
    ------
    calculus: Newton's law of cooling, and the same with a film that goes with the fourth root

    Examples
    --------
    >>> found = cool_left([20, 40], [70, 52], room_c=21, goal_c=30)
    >>> round(found.at_min.low, 1), round(found.at_min.high, 1)
    (94.0, 107.0)
    """
    _check(times_min, temps_c, room_c, goal_c)
    ends = sorted(
        _crossing(times_min, [way(temp - room_c) for temp in temps_c], way(goal_c - room_c))
        for way in (_newton, _still_air)
    )
    at = Interval(ends[0], sum(ends) / 2, ends[1])
    last = times_min[-1]
    return CoolLeft(at, Interval(*(max(0.0, end - last) for end in (at.low, at.best, at.high))))


def _newton(above_k: float) -> float:
    return math.log(above_k)


def _still_air(above_k: float) -> float:
    return -1 / math.sqrt(math.sqrt(above_k))


Way = Callable[[float], float]


def _crossing(times: Sequence[float], values: Sequence[float], goal: float) -> float:
    """Where the straight line of least squares through the values comes to the goal."""
    middle, mean = sum(times) / len(times), sum(values) / len(values)
    spread = sum((time - middle) ** 2 for time in times)
    slope = sum((t - middle) * (v - mean) for t, v in zip(times, values, strict=True)) / spread
    if slope >= 0:
        raise OutOfRangeError(
            "The readings do not fall: nothing cools. Probe the same place again later.",
            field="temps", got="not falling", want="falling",
        )  # fmt: skip
    return middle + (goal - mean) / slope


def _check(times: Sequence[float], temps: Sequence[float], room: float, goal: float) -> None:
    if len(times) != len(temps) or len(times) < 2:
        text = (
            f"{len(times)} times and {len(temps)} temperatures: type two or more of each, "
            "as many as the other."
        )
        raise InputError(
            text, field="times", got=f"{len(times)} and {len(temps)}", want="2 or more"
        )
    if not all(math.isfinite(each) for each in (*times, *temps, room, goal)):
        text = "Times, temperatures, room and goal are numbers. Type what clock and probe say."
        raise OutOfRangeError(text, field="times", got="no number", want="numbers")
    if any(later <= earlier for earlier, later in pairwise(times)):
        text = "The times do not rise; type them from the first reading to the last."
        raise OutOfRangeError(text, field="times", got=f"{times}", want="rising")
    if any(not room < temp <= 150 for temp in temps):
        text = f"Every reading must be above the room's {room:g} °C, and no more than 150 °C."
        raise OutOfRangeError(text, field="temps", got=f"{temps}", want=f"above {room:g} °C")
    if goal <= room:
        text = f"A room of {room:g} °C never brings it to {goal:g} °C. Let it stand colder."
        raise OutOfRangeError(text, field="goal", got=f"{goal:g}", want=f"above {room:g} °C")
