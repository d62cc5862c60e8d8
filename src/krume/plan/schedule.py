"""The general scheduler: tasks with durations, demands on limits, and an order; shortest in all."""

from collections.abc import Sequence
from dataclasses import dataclass

from krume.base import Clash, Infeasible, InputError
from krume.plan.checking import faults
from krume.plan.project import Gap, Job, Placed, Project
from krume.plan.serial import serial
from krume.plan.solving import Aim, place


@dataclass(frozen=True, slots=True)
class Schedule:
    """Start of each task and the end of the last one, in the unit of the durations.

    `bound` is what no schedule can beat; it is the makespan itself where that is proven.
    """

    start: tuple[int, ...]
    makespan: int
    proven: bool
    bound: int


def solve(
    durations: Sequence[int],
    demands: Sequence[Sequence[int]],
    capacities: Sequence[int],
    precedence: Sequence[tuple[int, int]],
    time_limit_s: float = 10,
) -> Schedule | Infeasible:
    """Shortest schedule of tasks under limits and an order.

    min max(s_i + d_i), s_j >= s_i + d_i for (i, j), sum of demands of running tasks <= capacity

    Parameters
    ----------
    durations : whole number of time units of each task [1]
    demands : of each task, how much of each limit it takes while it lasts [1]
    capacities : of each limit, how much there is at any time [1]
    precedence : pairs (before, after) of indexes of tasks
    time_limit_s : longest search; after it the best schedule found so far is given [s]

    Returns
    -------
    the schedule, checked again by separate code; Infeasible where no schedule exists

    Raises
    ------
    InputError : lists of unlike length, a number that is not whole or below zero, no such task

    Valid for
    ---------
    Tasks that are not interrupted and limits that renew themselves. Up to some hundred tasks.

    Source
    ------
    `psplib`, the resource-constrained project scheduling problem

    Examples
    --------
    >>> solve([3, 2, 2], [[1], [1], [0]], [1], [(0, 2)]).makespan
    5
    """
    project = _project(durations, demands, capacities, precedence)
    clash = _clash(project)
    if clash is not None:
        return Infeasible((clash,))
    first = serial(project)
    aim = Aim(early=(tuple(job.name for job in project.jobs),))
    found = place(project, aim, time_limit_s=time_limit_s, hint=first)
    placed = found or Placed(first, proven=False, bound=_longest_path(project))
    return _checked(project, placed)


def _checked(project: Project, placed: Placed) -> Schedule:
    wrong = faults(project, placed.starts)
    if wrong:
        raise InputError(f"The schedule found does not hold: {wrong[0]}. Start again.")
    ends = [placed.starts[job.name] + job.minutes for job in project.jobs]
    return Schedule(
        start=tuple(placed.starts[job.name] for job in project.jobs),
        makespan=max(ends, default=0),
        proven=placed.proven,
        bound=placed.bound,
    )


def _project(
    durations: Sequence[int],
    demands: Sequence[Sequence[int]],
    capacities: Sequence[int],
    precedence: Sequence[tuple[int, int]],
) -> Project:
    if len(demands) != len(durations):
        raise _refused("demands", f"{len(demands)} lists", f"{len(durations)}, one for each task")
    limits = tuple(
        (f"limit {k}", _whole(capacity, "capacities")) for k, capacity in enumerate(capacities)
    )
    jobs = tuple(
        Job(str(i), _whole(minutes, "durations"), _uses(demands[i], limits))
        for i, minutes in enumerate(durations)
    )
    gaps = tuple(_gap(pair, len(jobs)) for pair in precedence)
    return Project(jobs, limits, gaps, horizon=sum(job.minutes for job in jobs))


def _uses(row: Sequence[int], limits: tuple[tuple[str, int], ...]) -> tuple[tuple[str, int], ...]:
    if len(row) != len(limits):
        raise _refused("demands", f"{len(row)} numbers", f"{len(limits)}, one for each limit")
    named = zip(limits, row, strict=True)
    return tuple((name, _whole(amount, "demands")) for (name, _), amount in named if amount)


def _gap(pair: tuple[int, int], count: int) -> Gap:
    before, after = pair
    for index in (before, after):
        if not 0 <= index < count:
            raise _refused("precedence", str(index), f"indexes from 0 to {count - 1}")
    return Gap(str(before), str(after))


def _whole(value: float, name: str) -> int:
    if value != value or value < 0 or value != int(value):
        raise _refused(name, str(value), "whole numbers of 0 or more")
    return int(value)


def _refused(field: str, got: str, want: str) -> InputError:
    return InputError(f"{field} holds {got}; want {want}.", field=field, got=got, want=want)


def _clash(project: Project) -> Clash | None:
    """What alone makes a schedule impossible: a demand above its limit, or a circle."""
    for job in project.jobs:
        for limit, amount in job.uses:
            if amount > project.capacity(limit):
                has = str(project.capacity(limit))
                return Clash(limit, f"task {job.name}", str(amount), has)
    circle = _in_a_circle(project)
    if circle:
        return Clash("order", "each task after the ones before it", "no circle", ", ".join(circle))
    return None


def _in_a_circle(project: Project) -> tuple[str, ...]:
    """Tasks that wait for one another."""
    left = {job.name for job in project.jobs}
    while True:
        waiting = {gap.after for gap in project.gaps if gap.before in left}
        free = left - waiting
        if not free:
            return tuple(sorted(left, key=int))
        left -= free
        if not left:
            return ()


def _longest_path(project: Project) -> int:
    """Length of the longest chain of tasks: no schedule is shorter."""
    ends: dict[str, int] = {}
    minutes = {job.name: job.minutes for job in project.jobs}
    changed = True
    while changed:
        changed = False
        for name, own in minutes.items():
            before = [ends.get(gap.before, 0) for gap in project.gaps if gap.after == name]
            end = own + max(before, default=0)
            changed = changed or ends.get(name) != end
            ends[name] = end
    return max(ends.values(), default=0)
