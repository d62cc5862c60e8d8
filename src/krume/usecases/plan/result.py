"""The answer of `plan`: tasks, loads, what is tightest, ways out, what to buy."""

from dataclasses import dataclass
from datetime import datetime

from krume.plan import EggsToBuy, ShoppingRow, Spare


@dataclass(frozen=True, slots=True)
class PlanTask:
    """One piece of work. `who` is None where it runs by itself.

    `slack_min` is how much later it may start before a promise is broken; `cannot_move` says that
    a clock ties it to its neighbour.
    """

    name: str
    start: datetime
    end: datetime
    who: str | None
    uses: tuple[str, ...]
    step: str
    of: str
    order: str | None
    load: int | None
    cannot_move: bool
    slack_min: int
    status: str


@dataclass(frozen=True, slots=True)
class PlanLoad:
    """One load of the oven, with the first check and the latest out."""

    number: int
    of: str
    count: int
    start: datetime
    first_check: datetime
    out: datetime
    latest_out: datetime
    oven_free: datetime
    cycle_min: int
    load_min: int
    bake_min: int
    recover_min: int
    foam_waits_min: int | None


@dataclass(frozen=True, slots=True)
class PlanTightest:
    """Where the plan is tightest: a limit and a task, in words too."""

    limit: str
    busy_pct: float
    task: str
    start: datetime
    slack_min: int
    foam_waits_min: int | None
    text: str


@dataclass(frozen=True, slots=True)
class PlanWayOut:
    """One way out of a clash; `planned` says that a whole plan was made with it."""

    kind: str
    text: str
    planned: bool
    last_out: datetime | None
    count: int | None


@dataclass(frozen=True, slots=True)
class PlanOrder:
    """An order of the plan: when it must stand ready, and what it is."""

    name: str
    title: str
    ready: datetime
    what: str


@dataclass(frozen=True, slots=True)
class PlanFridge:
    """Places of the fridge: what the plan takes at most, and what there are; None is not known."""

    takes: float
    places: float | None


@dataclass(frozen=True, slots=True)
class PlanResult:
    """A plan for one or more orders.

    `assumes` is None, or what the tasks rest on that is not so: then they are no plan yet, and
    `ways_out` says what would make them one. `slack_min` is the smallest slack of all work.
    """

    orders: tuple[PlanOrder, ...]
    tasks: tuple[PlanTask, ...]
    loads: tuple[PlanLoad, ...]
    first_start: datetime | None
    last_out: datetime | None
    proven: bool
    rule: str | None
    assumes: str | None
    tightest: PlanTightest | None
    slack_min: int | None
    fridge: PlanFridge | None
    fits: str | None
    ways_out: tuple[PlanWayOut, ...]
    shopping: tuple[ShoppingRow, ...]
    eggs: tuple[EggsToBuy, ...]
    spare_eggs: tuple[Spare, ...]
    made_at: datetime
    ics: str | None


def nothing_planned(made_at: datetime) -> PlanResult:
    """The answer before anything could be planned."""
    return PlanResult(
        (), (), (), None, None, proven=False, rule=None, assumes=None, tightest=None,
        slack_min=None, fridge=None, fits=None, ways_out=(), shopping=(), eggs=(), spare_eggs=(),
        made_at=made_at, ics=None,
    )  # fmt: skip
