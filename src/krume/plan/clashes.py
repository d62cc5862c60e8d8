"""Why a plan cannot be made: the smallest set of limits that, lifted together, would let it be."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from itertools import combinations

from krume.base import Clash, Infeasible, as_text
from krume.plan.draft import FRIDGE, HALVES, HANDS, MIXER, OVEN
from krume.plan.project import Project
from krume.plan.solving import Aim, place
from krume.plan.timetable import Attempt, attempts, most_places
from krume.plan.work import Kitchen, PlannedFormula, Promise

_SEARCH_S = 5.0
_PLENTY = 1000
_EARLIER_DAYS = 7


@dataclass(frozen=True, slots=True)
class Asking:
    """What was asked to be planned."""

    promises: tuple[Promise, ...]
    formulas: dict[str, PlannedFormula]
    kitchen: Kitchen
    now: datetime


def why_not(asking: Asking) -> Infeasible:
    """The smallest set of limits that clash; limits are tried in a fixed order."""
    for size in range(1, len(_LIMITS) + 1):
        for lifted in combinations(_LIMITS, size):
            attempt = _lifted(asking, lifted)
            if attempt is not None and _can(attempt.project):
                return Infeasible(tuple(_CLASHES[name](asking) for name in lifted))
    return Infeasible(tuple(_CLASHES[name](asking) for name in _LIMITS))


def _can(project: Project) -> bool:
    return place(project, Aim(), time_limit_s=_SEARCH_S) is not None


def _widest(asking: Asking) -> Attempt:
    *_, last = attempts(asking.promises, asking.formulas, asking.kitchen, asking.now)
    return last


def _lifted(asking: Asking, lifted: tuple[str, ...]) -> Attempt | None:
    """The widest attempt without some limits; None where a limit was none."""
    if FRIDGE in lifted and asking.kitchen.fridge_places is None:
        return None
    if "start" in lifted:
        asking = replace(asking, now=asking.now - timedelta(days=_EARLIER_DAYS))
    attempt = _widest(asking)
    project = attempt.project
    if HANDS in lifted:
        jobs = tuple(
            replace(job, deadline=None) if attempt.draft.marks[job.name].step != "box" else job
            for job in project.jobs
        )
        project = replace(project, jobs=jobs, closed=())
    if "clocks" in lifted:
        loose = tuple(replace(gap, most=None) if gap.most else gap for gap in project.gaps)
        project = replace(project, gaps=loose)
    plenty = {name for name in lifted if name in (FRIDGE, OVEN, MIXER)}
    limits = tuple(
        (name, _PLENTY if name in plenty or ("tins" in lifted and name.startswith("tin ")) else n)
        for name, n in project.limits
    )
    return replace(attempt, project=replace(project, limits=limits))


def fridge_need(asking: Asking) -> float:
    """Fewest places of the fridge with which the plan can be made."""
    attempt = _lifted(asking, (FRIDGE,))
    if attempt is None:
        return 0.0
    found = place(attempt.project, Aim(), time_limit_s=_SEARCH_S)
    low = round((asking.kitchen.fridge_places or 0.0) * HALVES)
    high = _PLENTY if found is None else round(most_places(attempt.project, found.starts) * HALVES)
    while high - low > 1:
        middle = (low + high) // 2
        limits = tuple((n, middle if n == FRIDGE else c) for n, c in attempt.project.limits)
        if _can(replace(attempt.project, limits=limits)):
            high = middle
        else:
            low = middle
    return high / HALVES


def _fridge(asking: Asking) -> Clash:
    need, has = fridge_need(asking), asking.kitchen.fridge_places or 0.0
    return Clash("fridge", "places for cakes in the fridge", as_text(need, 1), as_text(has, 1))


def _hands(asking: Asking) -> Clash:
    kitchen = asking.kitchen
    attempt = _widest(asking)
    minutes = sum(job.minutes for job, _ in attempt.project.taking(HANDS))
    hours = f"{_clock(kitchen.opens_min)} to {_clock(kitchen.closes_min)}"
    needs = f"{as_text(minutes / 60, 1)} h of hands at the times the cakes need them"
    return Clash("working hours", "one pair of hands", needs, hours)


def _start(asking: Asking) -> Clash:
    attempt = _lifted(asking, ("start",))
    needs = "an earlier start"
    if attempt is not None:
        latest = _latest_start(attempt)
        if latest is not None:
            needs = f"a start by {latest:%A %Y-%m-%d %H:%M}"
    return Clash("start", "the time left", needs, f"{asking.now:%A %Y-%m-%d %H:%M}")


def _latest_start(attempt: Attempt) -> datetime | None:
    """The latest first minute from which everything can still be made; by halving."""
    days, project = attempt.draft.days, attempt.project
    low, high = 0, project.horizon
    if not _can(_from(project, low)):
        return None
    while high - low > 1:
        middle = (low + high) // 2
        if _can(_from(project, middle)):
            low = middle
        else:
            high = middle
    return days.moment(low)


def _from(project: Project, minute: int) -> Project:
    jobs = tuple(replace(job, release=max(job.release, minute)) for job in project.jobs)
    return replace(project, jobs=jobs)


def _clock(minute: int) -> str:
    return f"{minute // 60 % 24:02d}:{minute % 60:02d}"


def _named(name: str, limit: str, needs: str, has: str) -> Callable[[Asking], Clash]:
    return lambda _: Clash(name, limit, needs, has)


_CLASHES: dict[str, Callable[[Asking], Clash]] = {
    FRIDGE: _fridge,
    HANDS: _hands,
    "start": _start,
    OVEN: _named("oven", "one oven", "more than one load at a time", "one load at a time"),
    MIXER: _named("mixer", "one mixer", "more than one bowl at a time", "one bowl"),
    "tins": _named("tins", "tins at hand", "more tins of a kind", "those of the book"),
    "clocks": _named("clocks", "how long foams and creams wait", "longer waits", "their clocks"),
}
_LIMITS = tuple(_CLASHES)
