"""Clocks at the bench: started once, stopped once, whichever device says so."""

import sqlite3
from dataclasses import dataclass

from krume.store.bench_files import looking_at_bench
from krume.store.book import Book
from krume.store.database import writing
from krume.store.edits import editable, looking
from krume.store.marks import CLOCKS
from krume.store.moment import moment


@dataclass(frozen=True, slots=True)
class KeptClock:
    """One clock, of a weighing or of the oven alone; times are UTC, None while it runs."""

    client_id: str
    weighing: str | None
    kind: str
    reason: str
    started_at: str
    stopped_at: str | None


_SELECT = (
    "SELECT clock.client_id, weighing.key AS weighing, clock.kind, clock.reason, "
    "clock.started_at, clock.stopped_at FROM clock "
    "LEFT JOIN weighing ON weighing.id = clock.weighing_id "
)


def clocks_of(book: Book, weighing: str) -> tuple[KeptClock, ...]:
    """All clocks of a weighing, in the order they were started."""
    with looking_at_bench(book, CLOCKS) as found:
        return _read(found, "WHERE weighing.key = ? ORDER BY clock.id", (weighing,))


def running_clocks(book: Book, kind: str) -> tuple[KeptClock, ...]:
    """Clocks of a kind that run now, whichever weighing they are of."""
    where = "WHERE clock.kind = ? AND clock.stopped_at IS NULL ORDER BY clock.id"
    with looking(book, CLOCKS) as found:
        return _read(found, where, (kind,))


def clocks_since(book: Book, kind: str, *, since: str) -> tuple[KeptClock, ...]:
    """Clocks of a kind that run, or were stopped since a moment; in the order of their start."""
    where = (
        "WHERE clock.kind = ? AND (clock.stopped_at IS NULL OR clock.stopped_at >= ?) "
        "ORDER BY clock.started_at, clock.id"
    )
    with looking(book, CLOCKS) as found:
        return _read(found, where, (kind, since))


def _read(
    found: sqlite3.Connection | None, where: str, values: tuple[str, ...]
) -> tuple[KeptClock, ...]:
    if found is None:
        return ()
    return tuple(_clock(row) for row in found.execute(_SELECT + where, values))


def start_clock(
    book: Book, client_id: str, *, kind: str, weighing: str, reason: str = "", at: str = ""
) -> None:
    """Start a clock; sent twice it is started once."""
    with writing(editable(book)) as found:
        found.execute(
            "INSERT INTO clock (client_id, weighing_id, kind, reason, started_at) "
            "VALUES (?, (SELECT id FROM weighing WHERE key = ?), ?, ?, ?) "
            "ON CONFLICT (client_id) DO NOTHING",
            (client_id, weighing, kind, reason, at or moment()),
        )


def stop_clocks(book: Book, *, kind: str, weighing: str, at: str = "") -> None:
    """Stop the clocks of a kind that run for a weighing, those started by the moment they stop."""
    stopped = at or moment()
    with writing(editable(book)) as found:
        found.execute(
            "UPDATE clock SET stopped_at = ? WHERE kind = ? AND stopped_at IS NULL "
            "AND started_at <= ? AND weighing_id = (SELECT id FROM weighing WHERE key = ?)",
            (stopped, kind, stopped, weighing),
        )


def stop_clock(book: Book, client_id: str, *, at: str = "") -> None:
    """Stop one clock; one that stands already is left as it is."""
    with writing(editable(book)) as found:
        found.execute(
            "UPDATE clock SET stopped_at = ? WHERE client_id = ? AND stopped_at IS NULL",
            (at or moment(), client_id),
        )


def resume_clock(book: Book, client_id: str) -> None:
    """Let a clock that was stopped by mistake run on from where it was started."""
    with writing(editable(book)) as found:
        found.execute("UPDATE clock SET stopped_at = NULL WHERE client_id = ?", (client_id,))


def _clock(row: sqlite3.Row) -> KeptClock:
    return KeptClock(**dict(row))
