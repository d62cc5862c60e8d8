"""A placed plan drawn together: work early where it may be, and just in time where that is better.

The order of the work stays; only idle time goes. Each move is looked at by the plain checker.
"""

from collections.abc import Mapping

from krume.plan.checking import occupied
from krume.plan.project import Project


def shaped(
    project: Project,
    starts: Mapping[str, int],
    *,
    late: tuple[str, ...] = (),
    hugging: tuple[str, ...] = (),
) -> dict[str, int]:
    """Starts with the same order: early, but for what is late, and what hugs its follower."""
    moved = dict(starts)
    for name in sorted(late, key=lambda n: (-moved[n], n)):
        moved[name] = _last(project, moved, name)
    drawn = [name for name in moved if name not in late and name not in hugging]
    before: dict[str, int] = {}
    while before != moved:
        before = dict(moved)
        for name in sorted(drawn, key=lambda n: (before[n], n)):
            moved[name] = _first(project, moved, name)
    for name in sorted(hugging, key=lambda n: (-moved[n], n)):
        moved[name] = _last(project, moved, name)
    return moved


def _bounds(project: Project, starts: Mapping[str, int], name: str) -> tuple[int, int]:
    """Earliest and latest start that the ties and the job's own hours leave."""
    job = project.job(name)
    end = project.horizon if job.deadline is None else min(job.deadline, project.horizon)
    low, high = job.release, end - job.minutes
    for gap in project.gaps:
        if gap.after == name and gap.before in starts:
            ended = starts[gap.before] + project.job(gap.before).minutes
            low = max(low, ended + gap.least)
            high = high if gap.most is None else min(high, ended + gap.most)
        if gap.before == name and gap.after in starts:
            begins = starts[gap.after] - job.minutes
            high = min(high, begins - gap.least)
            low = low if gap.most is None else max(low, begins - gap.most)
    return low, high


def _first(project: Project, starts: Mapping[str, int], name: str) -> int:
    low, _ = _bounds(project, starts, name)
    now = starts[name]
    others = {other: at for other, at in starts.items() if other != name}
    stops = {end for _, end, _ in _around(project, others, name)}
    for at in sorted({low, *(end for end in stops if low < end < now)}):
        if at < now and _fits(project, starts, name, at):
            return at
    return now


def _last(project: Project, starts: Mapping[str, int], name: str) -> int:
    _, high = _bounds(project, starts, name)
    now, minutes = starts[name], project.job(name).minutes
    others = {other: at for other, at in starts.items() if other != name}
    begins = {start - minutes for start, _, _ in _around(project, others, name)}
    for at in sorted({high, *(one for one in begins if now < one < high)}, reverse=True):
        if at > now and _fits(project, starts, name, at):
            return at
    return now


def _around(project: Project, others: Mapping[str, int], name: str) -> list[tuple[int, int, int]]:
    """What else takes the limits that a job takes."""
    found: list[tuple[int, int, int]] = []
    for limit in _limits(project, name):
        found.extend(occupied(limit, project, others))
    return found


def _limits(project: Project, name: str) -> tuple[str, ...]:
    own = [limit for limit, _ in project.job(name).uses]
    held = [hold.limit for hold in project.holds if name in (hold.begins, hold.ends)]
    return tuple(dict.fromkeys((*own, *held)))


def _fits(project: Project, starts: Mapping[str, int], name: str, at: int) -> bool:
    moved = {**starts, name: at}
    return all(
        _within(limit, project.capacity(limit), project, moved) for limit in _limits(project, name)
    )


def _within(limit: str, capacity: int, project: Project, starts: Mapping[str, int]) -> bool:
    parts = occupied(limit, project, starts)
    return all(
        sum(amount for start, end, amount in parts if start <= minute < end) <= capacity
        for minute in {start for start, _, _ in parts}
    )
