"""What a scheduler is given: jobs, limits, gaps, places held, hours closed; whole minutes."""

from collections.abc import Iterator
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Job:
    """One piece of work; `uses` names how much of which limit it takes while it lasts.

    `release` is the earliest start, `deadline` the latest end; None is no such limit. Of the jobs
    that share an `either` exactly one is done.
    """

    name: str
    minutes: int
    uses: tuple[tuple[str, int], ...] = ()
    release: int = 0
    deadline: int | None = None
    either: str = ""

    def amount(self, limit: str) -> int:
        """How much of a limit the job takes."""
        return sum(amount for name, amount in self.uses if name == limit)


@dataclass(frozen=True, slots=True)
class Gap:
    """From the end of one job to the start of another: at least, and at most where it is said."""

    before: str
    after: str
    least: int = 0
    most: int | None = None


@dataclass(frozen=True, slots=True)
class Hold:
    """A place held from the start of one job (or its end) to the end of another."""

    limit: str
    amount: int
    begins: str
    ends: str
    from_end: bool = False


@dataclass(frozen=True, slots=True)
class Closed:
    """A time at which so much of a limit cannot be had: night, or what stands there already."""

    limit: str
    start: int
    end: int
    amount: int


@dataclass(frozen=True, slots=True)
class Project:
    """Jobs with everything that limits them; every start lies between 0 and `horizon`."""

    jobs: tuple[Job, ...]
    limits: tuple[tuple[str, int], ...] = ()
    gaps: tuple[Gap, ...] = ()
    holds: tuple[Hold, ...] = ()
    closed: tuple[Closed, ...] = ()
    horizon: int = 0

    def capacity(self, limit: str) -> int:
        """Capacity of a limit; one that is not named has none to give."""
        return dict(self.limits).get(limit, 0)

    def job(self, name: str) -> Job:
        """Job of a name."""
        return next(job for job in self.jobs if job.name == name)

    def taking(self, limit: str) -> Iterator[tuple[Job, int]]:
        """Jobs that take some of a limit, with how much."""
        for job in self.jobs:
            if amount := job.amount(limit):
                yield job, amount


@dataclass(frozen=True, slots=True)
class Placed:
    """When each job starts, by name; a job left out of a choice has none."""

    starts: dict[str, int]
    proven: bool
    bound: int
