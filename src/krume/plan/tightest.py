"""Where a plan is tightest: the limit with the least rest, and the task with the least slack."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from krume.plan.draft import HANDS, MIXER, OVEN
from krume.plan.timetable import Task, Timetable

_LIMITS = (OVEN, HANDS, MIXER)


@dataclass(frozen=True, slots=True)
class Tightest:
    """The limit that rests least on the day of the loads, and the task that may slip least."""

    limit: str
    busy_pct: float
    task: str
    start: datetime
    slack_min: int
    foam_waits_min: int | None
    text: str


def tightest(plan: Timetable) -> Tightest | None:
    """Where a plan is tightest; None for a plan without work.

    Boxing is left out: it is planned to end as the order is due.
    """
    work = [task for task in plan.tasks if task.step not in ("box", "recover")]
    if not work:
        return None
    task = min(work, key=lambda task: (task.slack_min, task.start, task.name))
    limit, busy = _busiest(plan)
    waits = [load.foam_waits_min for load in plan.loads if load.foam_waits_min is not None]
    longest = max(waits, default=None)
    text = f"Tightest: {limit}, busy {busy:.0f} % of its time. "
    if longest is not None:
        text += f"A foam waits {longest} min at most. "
    text += f"“{task.name}” at {task.start:%H:%M} may slip {_spelled(task.slack_min)} and no more."
    return Tightest(limit, busy, task.name, task.start, task.slack_min, longest, text)


def _busiest(plan: Timetable) -> tuple[str, float]:
    """The limit with the largest share of its own span, on the day of the last load."""
    day = None if plan.last_out is None else plan.last_out.date()
    found = []
    for rank, limit in enumerate(_LIMITS):
        spans = list(_spans(plan.tasks, limit, day))
        if not spans:
            continue
        whole = (max(end for _, end in spans) - min(start for start, _ in spans)).total_seconds()
        busy = sum((end - start).total_seconds() for start, end in spans)
        found.append((busy / whole if whole else 1.0, -rank, limit))
    share, _, limit = max(found, default=(0.0, 0, HANDS))
    return limit, 100 * share


def _spans(tasks: Iterable[Task], limit: str, day: object) -> Iterable[tuple[datetime, datetime]]:
    for task in tasks:
        takes = task.by_hand if limit == HANDS else limit in task.uses
        if takes and day in (None, task.start.date()) and task.end > task.start:
            yield task.start, task.end


def _spelled(minutes: int) -> str:
    """Minutes as hours and minutes.

    >>> _spelled(45), _spelled(302)
    ('45 min', '5 h 2 min')
    """
    hours, rest = divmod(minutes, 60)
    return f"{rest} min" if not hours else f"{hours} h {rest} min" if rest else f"{hours} h"
