"""A plan on its way to the solver: jobs with the words and marks that a timetable needs of them."""

from dataclasses import dataclass, field

from krume.plan.days import DAY_MIN, Days, Window
from krume.plan.project import Closed, Gap, Hold, Job, Project
from krume.plan.solving import Aim
from krume.plan.work import Kitchen, PlannedFormula

HANDS = "hands"
OVEN = "oven"
MIXER = "mixer"
FRIDGE = "fridge"
HALVES = 2
"""The fridge is counted in half places: two rolls share one."""


@dataclass(frozen=True, slots=True)
class Mark:
    """What a timetable says of a job.

    `step` is the kind of work; `cannot_move` says that a clock ties it to what is beside it;
    `is_shown` is false for what only keeps a tin or a place.
    """

    words: str
    step: str
    of: str
    day: int
    load: int = 0
    count: int = 1
    order: str = ""
    cannot_move: bool = False
    is_shown: bool = True
    status: str = "assumed"
    first_check_min: int = 0
    latest_out_min: int = 0


@dataclass(slots=True)
class Draft:
    """Jobs, gaps and places as they are gathered."""

    days: Days
    kitchen: Kitchen
    formulas: dict[str, PlannedFormula]
    jobs: list[Job] = field(default_factory=list)
    marks: dict[str, Mark] = field(default_factory=dict)
    gaps: list[Gap] = field(default_factory=list)
    holds: list[Hold] = field(default_factory=list)

    def add(
        self,
        name: str,
        minutes: int,
        uses: tuple[str, ...],
        window: Window,
        mark: Mark,
    ) -> str:
        """Add a job that takes one of each limit it uses; its name."""
        by_hand = HANDS in uses
        job = Job(
            name,
            minutes,
            tuple((limit, 1) for limit in uses),
            release=window.opens,
            deadline=window.closes if by_hand else None,
        )
        self.jobs.append(job)
        self.marks[name] = mark
        return name

    def minutes(self, name: str) -> int:
        """Minutes of a job."""
        return next(job.minutes for job in self.jobs if job.name == name)

    def after(self, before: str, after: str, least: int = 0, most: int | None = None) -> None:
        """Tie two jobs."""
        self.gaps.append(Gap(before, after, least, most))

    def project(self, horizon: int) -> Project:
        """All of it for the solver."""
        limits = [(HANDS, 1), (OVEN, 1), (MIXER, 1)]
        if self.kitchen.fridge_places is not None:
            limits.append((FRIDGE, round(self.kitchen.fridge_places * HALVES)))
        limits += [(f"tin {tin}", count) for tin, count in self.kitchen.tins]
        named = {limit for limit, _ in limits}
        return Project(
            tuple(self.jobs),
            tuple(limits),
            tuple(self.gaps),
            tuple(hold for hold in self.holds if hold.limit in named),
            self._nights(horizon),
            horizon,
        )

    def _nights(self, horizon: int) -> tuple[Closed, ...]:
        opens, closes = self.kitchen.opens_min, self.kitchen.closes_min
        first = (Closed(HANDS, 0, opens, 1),) if opens > 0 else ()
        later = (
            Closed(HANDS, day * DAY_MIN + closes, (day + 1) * DAY_MIN + opens, 1)
            for day in range(horizon // DAY_MIN + 1)
        )
        return (*first, *(one for one in later if one.end > one.start))

    def aim(self) -> Aim:
        """Each day's work done early in the day, and no foam that waits."""
        groups: dict[tuple[int, bool], list[str]] = {}
        for name, mark in self.marks.items():
            if mark.step not in ("box", "recover", "tin", "handed-over"):
                groups.setdefault((mark.day, mark.step in _BUILDING), []).append(name)
        close = tuple(
            (gap.before, gap.after)
            for gap in self.gaps
            if self.marks[gap.before].step == "foam" and gap.most is not None
        )
        early = tuple(tuple(names) for _, names in sorted(groups.items()))
        return Aim(early=early, close=close)


_BUILDING = ("cream", "build", "chill")
