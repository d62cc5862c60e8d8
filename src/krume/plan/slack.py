"""How much later each job may start before a promise is broken, the order of the work kept."""

from collections.abc import Iterator, Mapping
from itertools import pairwise

from krume.plan.project import Project


def slack(project: Project, starts: Mapping[str, int]) -> dict[str, int]:
    """Minutes each job may slip, with what follows it moved along and what is done left as it is.

    s_i <= min over arcs (s_j - least - d_i), and over most gaps (s_before + d_before + most)

    Parameters
    ----------
    project : jobs with their ties, hours and limits
    starts : start of each job, a plan that holds [min]

    Returns
    -------
    slack of each job [min]

    Valid for
    ---------
    The order in which the limits are used stays; places of the fridge are taken as free.

    Source
    ------
    `mathematics`, longest paths in a network of time lags (algebra)
    """
    latest = {name: _own_latest(project, name) for name in starts}
    arcs = [*_ties(project, starts), *_turns(project, starts)]
    changed = True
    while changed:
        changed = False
        for before, after, lag in arcs:
            if latest[after] - lag < latest[before]:
                latest[before] = latest[after] - lag
                changed = True
    return {name: max(0, latest[name] - start) for name, start in starts.items()}


def _own_latest(project: Project, name: str) -> int:
    job = project.job(name)
    end = project.horizon if job.deadline is None else min(job.deadline, project.horizon)
    return end - job.minutes


def _ties(project: Project, starts: Mapping[str, int]) -> Iterator[tuple[str, str, int]]:
    """Arcs (a, b, lag): start of b at least lag after start of a; most gaps run backwards."""
    for gap in project.gaps:
        if gap.before in starts and gap.after in starts:
            minutes = project.job(gap.before).minutes
            yield gap.before, gap.after, minutes + gap.least
            if gap.most is not None:
                yield gap.after, gap.before, -minutes - gap.most


def _turns(project: Project, starts: Mapping[str, int]) -> Iterator[tuple[str, str, int]]:
    """Each job of a limit of one before the next of it."""
    for limit, capacity in project.limits:
        if capacity != 1:
            continue
        order = sorted(
            (starts[job.name], job.name) for job, _ in project.taking(limit) if job.name in starts
        )
        for (_, first), (_, then) in pairwise(order):
            yield first, then, project.job(first).minutes
