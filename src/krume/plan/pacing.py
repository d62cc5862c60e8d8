"""How long a chain of tasks takes, from three guesses for each."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from krume.base import OutOfRangeError


@dataclass(frozen=True, slots=True)
class ThreePoint:
    """Three guesses of one task's time."""

    optimistic_min: float
    likely_min: float
    pessimistic_min: float


@dataclass(frozen=True, slots=True)
class Pace:
    """Mean and spread of the whole chain."""

    mean_min: float
    sd_min: float


def pace(tasks: Sequence[ThreePoint]) -> Pace:
    """Mean and standard deviation of a chain of tasks, one after the other.

    mean = sum (a + 4 m + b) / 6 · sd = sqrt(sum ((b - a) / 6)2)

    Parameters
    ----------
    tasks : optimistic a, likely m and pessimistic b of each [min]

    Returns
    -------
    mean and standard deviation [min]

    Raises
    ------
    OutOfRangeError : no task, or guesses that are negative or out of order

    Valid for
    ---------
    Tasks that do not depend on each other; the sum is taken as normal only by assumption.

    Source
    ------
    `malcolm-1959`

    Examples
    --------
    >>> pace([ThreePoint(8.0, 10.0, 18.0), ThreePoint(4.0, 5.0, 9.0)]).mean_min
    16.5
    """
    if not tasks:
        raise OutOfRangeError(
            "No task was given. Type optimistic,likely,pessimistic for each, separated by ';'.",
            field="tasks", got="nothing", want="8,10,18;4,5,9",
        )  # fmt: skip
    for task in tasks:
        _check(task)
    mean = math.fsum((t.optimistic_min + 4 * t.likely_min + t.pessimistic_min) / 6 for t in tasks)
    spread = math.fsum(((t.pessimistic_min - t.optimistic_min) / 6) ** 2 for t in tasks)
    return Pace(mean, math.sqrt(spread))


def _check(task: ThreePoint) -> None:
    ordered = (task.optimistic_min, task.likely_min, task.pessimistic_min)
    if not 0 <= ordered[0] <= ordered[1] <= ordered[2] < math.inf:
        shown = ",".join(f"{value:g}" for value in ordered)
        raise OutOfRangeError(
            f"{shown}: the guesses go from optimistic over likely to pessimistic, 0 or more.",
            field="tasks", got=shown, want="optimistic,likely,pessimistic",
        )  # fmt: skip
