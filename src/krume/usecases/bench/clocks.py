"""Clocks at the bench: the foam from the last whisk stroke, the oven from its door."""

from dataclasses import dataclass
from datetime import datetime

from krume.base import InputError
from krume.design import family
from krume.store import (
    KeptClock,
    book_at,
    clocks_of,
    open_weighing,
    running_clocks,
    start_clock,
    stop_clocks,
    studio_of,
)
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.clock import moment
from krume.usecases.bench.bench import begin_at_bench, bench_of, check_id, weighing_of
from krume.usecases.bench.result import Bench
from krume.usecases.oven.at_bench import Awaited, awaited_at_bench, time_at_bench

KINDS = ("foam", "batter", "oven")
REASONS = ("It comes out in time", "Another oven is free", "The oven is empty, the clock ran on")
"""Why a foam is begun although an oven is marked occupied; one touch each."""


@dataclass(frozen=True, slots=True)
class BenchClock:
    """One clock: `minutes` so far, or until it was stopped."""

    kind: str
    started_at: str
    stopped_at: str | None
    minutes: float
    reason: str
    weighing: str | None
    client_id: str = ""


@dataclass(frozen=True, slots=True)
class BenchClocks:
    """The clocks of a weighing, their limits, and what occupies the oven.

    `whites_min` and `batter_min` are the family's own, None where it has none. `busy` is an oven
    clock that runs, of this weighing or of another; `awaited` is when its load is looked at.
    """

    bench: Bench
    clocks: tuple[BenchClock, ...]
    busy: BenchClock | None
    whites_min: float | None
    batter_min: float | None
    core_low_c: float | None
    core_high_c: float | None
    cooling: str
    now_utc: str
    awaited: Awaited | None = None
    units: str = "c"

    def running(self, kind: str) -> BenchClock | None:
        """The clock of a kind that runs for this weighing."""
        found = (c for c in reversed(self.clocks) if c.kind == kind and c.stopped_at is None)
        return next(found, None)

    def last(self, kind: str) -> BenchClock | None:
        """The last clock of a kind, running or stopped."""
        return next((c for c in reversed(self.clocks) if c.kind == kind), None)


def clocks_at_bench(name: str, asked: Asked, *, key: str = "") -> BenchClocks:
    """The clocks of the weighing that goes on, or of the one with a key."""
    return clocks_beside(weighing_of(key, asked) if key else bench_of(name, asked), asked)


def clocks_beside(bench: Bench, asked: Asked) -> BenchClocks:
    """The clocks of a weighing that is known already."""
    book, at = book_at(asked.book), moment()
    clocks = tuple(_clock(c, at) for c in clocks_of(book, bench.key)) if bench.key else ()
    busy = running_clocks(book, "oven")
    known = bench.plan.formula.family
    rules = None if known is None else family(known)
    return BenchClocks(
        bench=bench,
        clocks=clocks,
        busy=_clock(busy[0], at) if busy else None,
        whites_min=None if rules is None else rules.whites_min,
        batter_min=None if rules is None else rules.batter_min,
        core_low_c=None if rules is None else rules.core_low_c,
        core_high_c=None if rules is None else rules.core_high_c,
        cooling="" if rules is None else rules.cooling,
        now_utc=at,
        awaited=awaited_at_bench(bench.plan.name, _in_oven(clocks), asked),
        units=studio_of(book).units or "c",
    )


def _in_oven(clocks: tuple[BenchClock, ...]) -> str:
    """The clock of the load that is in, else nothing."""
    ovens = (c for c in reversed(clocks) if c.kind == "oven" and c.stopped_at is None)
    return next((clock.client_id for clock in ovens), "")


def start_at_bench(
    name: str, key: str, asked: Asked, *, kind: str, client_id: str, reason: str = "", at: str = ""
) -> None:
    """Start a clock, now or at a moment before; a foam beside an occupied oven needs a reason.

    The oven's clock stops the foam's and the batter's: they are in the oven now.
    """
    if kind not in KINDS:
        raise InputError("There is no such clock.", field="kind", got=kind, want=", ".join(KINDS))
    book = book_at(asked.book)
    began = begin_at_bench(name, key, asked)
    if kind != "oven" and running_clocks(book, "oven") and not reason.strip():
        raise InputError(
            "The oven is occupied. Say why the foam may begin all the same.",
            field="reason",
            want=", ".join(REASONS),
        )
    if kind == "oven":
        for other in ("foam", "batter"):
            stop_clocks(book, kind=other, weighing=began, at=at)
    start_clock(
        book, check_id(client_id), kind=kind, weighing=began, reason=reason.strip(), at=at
    )  # fmt: skip
    if kind == "oven":
        time_at_bench(client_id, asked)


def stop_at_bench(name: str, asked: Asked, *, kind: str, at: str = "") -> None:
    """Stop a clock of the weighing that goes on; one that stands already is left."""
    kept = open_weighing(book_at(asked.book), f"formulas/{bench_of(name, asked).plan.name}.txt")
    if kept is not None:
        stop_clocks(book_at(asked.book), kind=kind, weighing=kept.key, at=at)


def _clock(kept: KeptClock, at: str) -> BenchClock:
    return BenchClock(
        kept.kind,
        kept.started_at,
        kept.stopped_at,
        minutes_between(kept.started_at, kept.stopped_at or at),
        kept.reason,
        kept.weighing,
        kept.client_id,
    )


def minutes_between(start: str, end: str) -> float:
    """Minutes from one moment to another, never below 0.

    >>> minutes_between("2027-06-10T06:00:00+00:00", "2027-06-10T06:04:30+00:00")
    4.5
    """
    passed = datetime.fromisoformat(end) - datetime.fromisoformat(start)
    return max(0.0, passed.total_seconds() / 60)
