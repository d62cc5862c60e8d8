"""Weighings at the bench: every step is kept once by its sender's own id, and none is lost."""

import json
import sqlite3
from collections.abc import Callable
from dataclasses import dataclass

from krume.base import NotFoundError
from krume.store.bench_files import looking_at_bench
from krume.store.book import Book
from krume.store.database import writing
from krume.store.edits import editable, looking
from krume.store.moment import moment


@dataclass(frozen=True, slots=True)
class KeptWeighing:
    """One weighing: of which version of which text, since when, and whether it still goes on."""

    key: str
    place: str
    place_revision: int
    started_at: str
    scale_step_g: float
    state: str


@dataclass(frozen=True, slots=True)
class KeptStep:
    """One step of a weighing as it was said; `of` is the step it takes back or answers.

    `got_g` is what of the row is in the bowl after it, None where nobody weighed it; `said` is
    the rest of what was said, as JSON.
    """

    client_id: str
    kind: str
    position: int | None = None
    line: int | None = None
    planned_g: float | None = None
    display_g: float | None = None
    got_g: float | None = None
    said: str = ""
    of: str = ""
    is_undone: bool = False
    at: str = ""


_WEIGHING = "key, place, place_revision, started_at, scale_step_g, state"
_STEP = (
    "client_id, kind, position, line, planned_g, display_g, got_g, said, of, is_undone, at"
)  # fmt: skip


def open_weighing(book: Book, place: str) -> KeptWeighing | None:
    """The weighing of a text that still goes on; None where there is none."""
    with looking(book) as found:
        return None if found is None else _open(found, place)


def weighing_at(book: Book, key: str) -> KeptWeighing | None:
    """A weighing by its key."""
    with looking_at_bench(book) as found:
        return None if found is None else _at(found, key)


def steps_of(book: Book, key: str) -> tuple[KeptStep, ...]:
    """All steps of a weighing, in the order they came in."""
    with looking_at_bench(book) as found:
        return () if found is None else _steps(found, key)


def last_said(book: Book, kind: str) -> KeptStep | None:
    """The last step of a kind in the whole book."""
    with looking(book) as found:
        if found is None:
            return None
        row = found.execute(
            f"SELECT {_STEP} FROM weighing_step WHERE kind = ? AND NOT is_undone "  # noqa: S608
            "ORDER BY id DESC LIMIT 1",
            (kind,),
        ).fetchone()
        return None if row is None else _step(row)


def begin_weighing(book: Book, weighing: KeptWeighing) -> KeptWeighing:
    """Begin a weighing; where one of the same text still goes on, that one is meant."""
    with writing(editable(book)) as found:
        there = _at(found, weighing.key) or _open(found, weighing.place)
        if there is not None:
            return there
        found.execute(
            f"INSERT INTO weighing ({_WEIGHING}) VALUES (?, ?, ?, ?, ?, 'open')",  # noqa: S608
            (weighing.key, weighing.place, weighing.place_revision, weighing.started_at,
             weighing.scale_step_g),
        )  # fmt: skip
    return weighing


def say_steps(
    book: Book, key: str, make: Callable[[tuple[KeptStep, ...]], tuple[KeptStep, ...]]
) -> tuple[KeptStep, ...]:
    """Keep the steps made of those that are there; one that came in before is kept once.

    All in one transaction: what another device said meanwhile is seen by `make`. Returns all
    steps of the weighing.
    """
    with writing(editable(book)) as found:
        number = _id(found, key)
        for step in make(_steps(found, key)):
            _keep(found, number, step)
        return _steps(found, key)


def end_weighing(book: Book, key: str, *, state: str) -> None:
    """Say that a weighing is done, or set aside; its steps stay."""
    with writing(editable(book)) as found:
        found.execute("UPDATE weighing SET state = ? WHERE id = ?", (state, _id(found, key)))


def _keep(connection: sqlite3.Connection, number: int, step: KeptStep) -> None:
    done = connection.execute(
        "INSERT INTO weighing_step (weighing_id, client_id, kind, position, line, planned_g, "
        "display_g, got_g, said, of, at) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) "
        "ON CONFLICT (client_id) DO NOTHING",
        (number, step.client_id, step.kind, step.position, step.line, step.planned_g,
         step.display_g, step.got_g, step.said, step.of, step.at or moment()),
    )  # fmt: skip
    if done.rowcount and step.kind == "undo":
        connection.execute(
            "UPDATE weighing_step SET is_undone = 1 WHERE weighing_id = ? AND client_id = ?",
            (number, step.of),
        )


def _open(connection: sqlite3.Connection, place: str) -> KeptWeighing | None:
    row = connection.execute(
        f"SELECT {_WEIGHING} FROM weighing WHERE place = ? AND state = 'open'",  # noqa: S608
        (place,),
    ).fetchone()
    return None if row is None else KeptWeighing(**dict(row))


def _at(connection: sqlite3.Connection, key: str) -> KeptWeighing | None:
    row = connection.execute(
        f"SELECT {_WEIGHING} FROM weighing WHERE key = ?",  # noqa: S608
        (key,),
    ).fetchone()
    return None if row is None else KeptWeighing(**dict(row))


def _id(connection: sqlite3.Connection, key: str) -> int:
    row = connection.execute("SELECT id FROM weighing WHERE key = ?", (key,)).fetchone()
    if row is None:
        raise NotFoundError("The book has no such weighing.", where=key, got=key)
    return int(row["id"])


def _steps(connection: sqlite3.Connection, key: str) -> tuple[KeptStep, ...]:
    rows = connection.execute(
        f"SELECT {_STEP} FROM weighing_step WHERE weighing_id = "  # noqa: S608
        "(SELECT id FROM weighing WHERE key = ?) ORDER BY id",
        (key,),
    )
    return tuple(_step(row) for row in rows)


def _step(row: sqlite3.Row) -> KeptStep:
    return KeptStep(**{**dict(row), "is_undone": bool(row["is_undone"])})


def steps_of_each(book: Book, keys: tuple[str, ...]) -> dict[str, tuple[KeptStep, ...]]:
    """The steps of several weighings with one question, by the weighing's key."""
    with looking_at_bench(book) as found:
        if found is None or not keys:
            return {}
        query = (
            "SELECT weighing.key AS weighing, weighing_step.* FROM weighing_step "
            "JOIN weighing ON weighing.id = weighing_step.weighing_id "
            "WHERE weighing.key IN (SELECT value FROM json_each(?)) ORDER BY weighing_step.id"
        )
        rows = found.execute(query, (json.dumps(keys),)).fetchall()
    each: dict[str, list[KeptStep]] = {}
    for row in rows:
        values = {name: row[name] for name in _STEP.split(", ")}
        step = KeptStep(**{**values, "is_undone": bool(values["is_undone"])})
        each.setdefault(row["weighing"], []).append(step)
    return {key: tuple(steps) for key, steps in each.items()}
