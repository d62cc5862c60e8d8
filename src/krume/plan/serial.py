"""A first schedule without search: each job as early as it fits, in the order of the chains."""

from krume.plan.project import Job, Project


def serial(project: Project) -> dict[str, int]:
    """Starts of jobs placed one after another; limits and least gaps hold.

    For projects without deadlines, most gaps, choices and closed hours: there it always succeeds.
    """
    starts: dict[str, int] = {}
    waiting = list(project.jobs)
    while waiting:
        job = next(job for job in waiting if _is_ready(job, project, starts))
        starts[job.name] = _earliest(job, project, starts)
        waiting.remove(job)
    return starts


def _is_ready(job: Job, project: Project, starts: dict[str, int]) -> bool:
    return all(gap.before in starts for gap in project.gaps if gap.after == job.name)


def _earliest(job: Job, project: Project, starts: dict[str, int]) -> int:
    minutes = {other.name: other.minutes for other in project.jobs}
    least = max(
        (
            starts[gap.before] + minutes[gap.before] + gap.least
            for gap in project.gaps
            if gap.after == job.name
        ),
        default=0,
    )
    ends = {starts[name] + minutes[name] for name in starts}
    tried = sorted({max(least, job.release), *(end for end in ends if end > least)})
    return next(start for start in tried if _fits(job, start, project, starts))


def _fits(job: Job, start: int, project: Project, starts: dict[str, int]) -> bool:
    return all(
        _peak(limit, start, start + job.minutes, project, starts) + amount
        <= project.capacity(limit)
        for limit, amount in job.uses
    )


def _peak(limit: str, start: int, end: int, project: Project, starts: dict[str, int]) -> int:
    """Most that is taken of a limit between two minutes by the jobs placed so far."""
    placed = [
        (starts[job.name], starts[job.name] + job.minutes, amount)
        for job, amount in project.taking(limit)
        if job.name in starts
    ]
    minutes = {start, *(begin for begin, _, _ in placed if start <= begin < end)}
    return max(
        sum(amount for begin, stop, amount in placed if begin <= minute < stop)
        for minute in minutes
    )
