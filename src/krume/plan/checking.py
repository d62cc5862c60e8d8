"""A plain second look at a schedule: every limit counted again, minute by minute of change.

It shares no code with the solver: what it is given is checked as it stands.
"""

from collections.abc import Mapping

from krume.plan.project import Closed, Gap, Hold, Job, Project


def faults(project: Project, starts: Mapping[str, int]) -> tuple[str, ...]:
    """Everything that is wrong with a schedule, in words; nothing when it holds.

    >>> jobs = (Job("a", 3, (("oven", 1),)), Job("b", 2, (("oven", 1),)))
    >>> project = Project(jobs, (("oven", 1),))
    >>> faults(project, {"a": 0, "b": 3})
    ()
    >>> faults(project, {"a": 0, "b": 2})
    ('oven: 2 of 1 at minute 2',)
    """
    jobs = {job.name: job for job in project.jobs}
    found = [*_choices(project, starts)]
    for name, start in starts.items():
        if name not in jobs:
            found.append(f"{name} is no job of this project")
        else:
            found.extend(_alone(jobs[name], start, project.horizon))
    for gap in project.gaps:
        found.extend(_gap(gap, jobs, starts))
    for limit, capacity in project.limits:
        found.extend(_over(limit, capacity, project, starts))
    return tuple(found)


def _choices(project: Project, starts: Mapping[str, int]) -> list[str]:
    found = [
        f"{job.name} is not placed"
        for job in project.jobs
        if not job.either and job.name not in starts
    ]
    for either in dict.fromkeys(job.either for job in project.jobs if job.either):
        chosen = sum(job.either == either and job.name in starts for job in project.jobs)
        if chosen != 1:
            found.append(f"{chosen} of the jobs {either} are placed, not 1")
    return found


def _alone(job: Job, start: int, horizon: int) -> list[str]:
    found = []
    if start < job.release:
        found.append(f"{job.name} starts at {start}, before {job.release}")
    if job.deadline is not None and start + job.minutes > job.deadline:
        found.append(f"{job.name} ends at {start + job.minutes}, after {job.deadline}")
    if horizon and start + job.minutes > horizon:
        found.append(f"{job.name} ends at {start + job.minutes}, past the horizon {horizon}")
    return found


def _gap(gap: Gap, jobs: Mapping[str, Job], starts: Mapping[str, int]) -> list[str]:
    if gap.before not in starts or gap.after not in starts:
        return []
    waits = starts[gap.after] - starts[gap.before] - jobs[gap.before].minutes
    if waits < gap.least:
        return [f"{gap.after} starts {waits} after {gap.before}, at least {gap.least} is wanted"]
    if gap.most is not None and waits > gap.most:
        return [f"{gap.after} starts {waits} after {gap.before}, at most {gap.most} is allowed"]
    return []


def occupied(
    limit: str, project: Project, starts: Mapping[str, int]
) -> tuple[tuple[int, int, int], ...]:
    """Start, end and amount of all that takes a limit: jobs, places held, closed hours."""
    jobs = {job.name: job for job in project.jobs}
    taken = [_job(job, starts[job.name], limit) for job in project.jobs if job.name in starts]
    taken += [_held(hold, jobs, starts) for hold in project.holds if hold.limit == limit]
    taken += [_shut(one) for one in project.closed if one.limit == limit]
    return tuple(part for part in taken if part[1] > part[0] and part[2])


def _job(job: Job, start: int, limit: str) -> tuple[int, int, int]:
    return start, start + job.minutes, job.amount(limit)


def _held(hold: Hold, jobs: Mapping[str, Job], starts: Mapping[str, int]) -> tuple[int, int, int]:
    if hold.begins not in starts or hold.ends not in starts:
        return 0, 0, 0
    start = starts[hold.begins] + (jobs[hold.begins].minutes if hold.from_end else 0)
    return start, starts[hold.ends] + jobs[hold.ends].minutes, hold.amount


def _shut(one: Closed) -> tuple[int, int, int]:
    return one.start, one.end, one.amount


def _over(limit: str, capacity: int, project: Project, starts: Mapping[str, int]) -> list[str]:
    """The first minute at which more of a limit is taken than there is."""
    parts = occupied(limit, project, starts)
    for minute in sorted({start for start, _, _ in parts}):
        load = sum(amount for start, end, amount in parts if start <= minute < end)
        if load > capacity:
            return [f"{limit}: {load} of {capacity} at minute {minute}"]
    return []
