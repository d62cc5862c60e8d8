"""A plan: tried on the usual days, then from the early morning, then on any day that may be."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime

from krume.base import KrumeError
from krume.plan.checking import faults
from krume.plan.days import DAY_MIN, Days, first_day
from krume.plan.draft import FRIDGE, HANDS, MIXER, OVEN, Draft
from krume.plan.project import Project
from krume.plan.shaping import shaped
from krume.plan.solving import Aim, place
from krume.plan.tortes import draft_of
from krume.plan.work import Kitchen, PlannedFormula, Promise


@dataclass(frozen=True, slots=True)
class Task:
    """One piece of work with its times on the local clock.

    `slack_min` is how much later it may start before anything promised is late, with what follows
    it moved along. `cannot_move` says that a clock ties it to its neighbour.
    """

    name: str
    start: datetime
    end: datetime
    by_hand: bool
    uses: tuple[str, ...]
    step: str
    of: str
    order: str
    load: int
    cannot_move: bool
    slack_min: int
    status: str


@dataclass(frozen=True, slots=True)
class Load:
    """One load of the oven: when it goes in, when to look, when it is out at the latest.

    `cycle_min` is from its loading until the oven has its heat back; `foam_waits_min` is how long
    its batter waits.
    """

    number: int
    of: str
    count: int
    start: datetime
    out: datetime
    free: datetime
    first_check: datetime
    latest_out: datetime
    cycle_min: int
    foam_waits_min: int | None


@dataclass(frozen=True, slots=True)
class Timetable:
    """A plan that holds: its tasks in order of time, its loads, and how sure it is.

    `proven` says that no plan on these days has shorter days. `rule` says which days and hours were
    taken. `places` is the most of the fridge that is taken at once.
    """

    tasks: tuple[Task, ...]
    loads: tuple[Load, ...]
    last_out: datetime | None
    proven: bool
    rule: str
    places: float
    days: Days
    ready: tuple[tuple[str, datetime], ...]


@dataclass(frozen=True, slots=True)
class Attempt:
    """One way to lay the days, and whether the search could place everything."""

    draft: Draft
    project: Project
    rule: str


class PlanError(KrumeError):
    """A plan that the second look found at fault: a fault of the program."""

    code = "plan"


def attempts(
    promises: tuple[Promise, ...],
    formulas: dict[str, PlannedFormula],
    kitchen: Kitchen,
    now: datetime,
) -> Iterable[Attempt]:
    """The ways to lay the days, the usual one first."""
    first = first_day(promises, now)
    start = datetime(first.year, first.month, first.day)  # noqa: DTZ001
    minute = max(0, round((now.replace(tzinfo=None) - start).total_seconds() / 60))
    last = max(promise.ready for promise in promises)
    rules = (
        ("usual days, from the usual hour", kitchen.begins_min, False),
        ("usual days, from the earliest hour", kitchen.opens_min, False),
        ("any day that keeping allows", kitchen.opens_min, True),
    )
    for rule, begins, is_wide in rules:
        days = Days(first, minute, kitchen, begins, is_wide)
        draft = draft_of(promises, formulas, kitchen, days)
        horizon = (days.minute(last) // DAY_MIN + 1) * DAY_MIN
        yield Attempt(draft, draft.project(horizon), rule)


def timetable(
    promises: tuple[Promise, ...],
    formulas: dict[str, PlannedFormula],
    kitchen: Kitchen,
    now: datetime,
    *,
    time_limit_s: float = 10.0,
) -> Timetable | None:
    """A plan for several orders; None where the search finds none."""
    for attempt in attempts(promises, formulas, kitchen, now):
        placed = place(attempt.project, attempt.draft.aim(), time_limit_s=time_limit_s)
        if placed is not None:
            late = _of_steps(attempt.draft, "box")
            hugging = _of_steps(attempt.draft, "prepare", "foam")
            starts = shaped(attempt.project, placed.starts, late=late, hugging=hugging)
            wrong = faults(attempt.project, starts)
            if wrong:
                raise PlanError(f"The plan found does not hold: {wrong[0]}.", got=wrong[0])
            return _timetable(attempt, starts, promises, proven=placed.proven)
    return None


def can_be_planned(
    promises: tuple[Promise, ...],
    formulas: dict[str, PlannedFormula],
    kitchen: Kitchen,
    now: datetime,
    *,
    time_limit_s: float = 5.0,
) -> bool:
    """Whether any plan holds, however long its days: quicker than the best one."""
    tries = attempts(promises, formulas, kitchen, now)
    return any(place(one.project, Aim(), time_limit_s=time_limit_s) is not None for one in tries)


def _of_steps(draft: Draft, *steps: str) -> tuple[str, ...]:
    return tuple(name for name, mark in draft.marks.items() if mark.step in steps)


def _timetable(
    attempt: Attempt, starts: Mapping[str, int], promises: tuple[Promise, ...], *, proven: bool
) -> Timetable:
    from krume.plan.slack import slack

    draft, project = attempt.draft, attempt.project
    room = slack(project, starts)
    tasks = tuple(
        _task(draft, name, starts[name], project.job(name).minutes, room[name])
        for name in sorted(starts, key=lambda name: (starts[name], name))
        if draft.marks[name].is_shown
    )
    loads = _loads(draft, project, starts)
    return Timetable(
        tasks=tasks,
        loads=loads,
        last_out=max((load.out for load in loads), default=None),
        proven=proven,
        rule=attempt.rule,
        places=most_places(project, starts),
        days=draft.days,
        ready=tuple((promise.order, promise.ready) for promise in promises),
    )


def _task(draft: Draft, name: str, start: int, minutes: int, slack_min: int) -> Task:
    mark = draft.marks[name]
    job = next(job for job in draft.jobs if job.name == name)
    uses = [limit for limit, _ in job.uses if limit != HANDS]
    if mark.step == "chill" or (mark.step == "build" and FRIDGE in uses):
        uses.append(FRIDGE)
    return Task(
        name=mark.words,
        start=draft.days.moment(start),
        end=draft.days.moment(start + minutes),
        by_hand=any(limit == HANDS for limit, _ in job.uses),
        uses=tuple(use for use in uses if use in (OVEN, MIXER, FRIDGE)),
        step=mark.step,
        of=mark.of,
        order=mark.order,
        load=mark.load,
        cannot_move=mark.cannot_move,
        slack_min=slack_min,
        status=mark.status,
    )


def _loads(draft: Draft, project: Project, starts: Mapping[str, int]) -> tuple[Load, ...]:
    found = []
    for name, mark in draft.marks.items():
        if mark.step != "load":
            continue
        stem = name.rpartition(": ")[0]
        baked = f"{stem}: bake"
        start, bake = starts[name], project.job(baked)
        out = starts[baked] + bake.minutes
        free = out + draft.kitchen.recover_min
        ends = draft.marks[baked]
        found.append(
            Load(
                mark.load, mark.of, mark.count, draft.days.moment(start), draft.days.moment(out),
                draft.days.moment(free),
                draft.days.moment(starts[baked] + ends.first_check_min),
                draft.days.moment(starts[baked] + ends.latest_out_min),
                free - start, _waits(draft, project, starts, name),
            )
        )  # fmt: skip
    return tuple(sorted(found, key=lambda load: (load.start, load.of)))


def _waits(draft: Draft, project: Project, starts: Mapping[str, int], load: str) -> int | None:
    """How long the foam of a load has stood when the load goes in."""
    for gap in project.gaps:
        if gap.after == load and draft.marks[gap.before].step == "foam":
            return starts[load] - starts[gap.before] - project.job(gap.before).minutes
    return None


def most_places(project: Project, starts: Mapping[str, int]) -> float:
    """Most places of the fridge taken at once."""
    from krume.plan.draft import HALVES

    ends = {job.name: job.minutes for job in project.jobs}
    spans = [
        (starts[hold.begins] + ends[hold.begins], starts[hold.ends] + ends[hold.ends], hold.amount)
        for hold in project.holds
        if hold.limit == FRIDGE
    ]
    return max(
        (
            sum(amount for start, end, amount in spans if start <= minute < end) / HALVES
            for minute, _, _ in spans
        ),
        default=0.0,
    )
