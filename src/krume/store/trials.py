"""Trials: what came out of a bake, every version of it kept."""

import json
import sqlite3
from dataclasses import asdict, dataclass, replace

from krume.base import ConflictError, NotFoundError
from krume.store.bench_files import looking_at_bench
from krume.store.book import Book, database_of
from krume.store.by_mark import by_mark
from krume.store.database import writing
from krume.store.edits import editable
from krume.store.marks import TRIALS
from krume.store.moment import moment


@dataclass(frozen=True, slots=True)
class KeptTrial:
    """One bake with what was measured; None is not measured."""

    key: str
    place: str
    weighing: str | None
    sg: float | None
    core_c: float | None
    centre_mm: float | None
    edge_mm: float | None
    minutes: float | None
    baked_g: float | None
    word: str
    note: str
    at: str
    revision: int = 0


_FIELDS = ("sg", "core_c", "centre_mm", "edge_mm", "minutes", "baked_g", "word", "note", "at")
_SELECT = (
    "SELECT trial.key, trial.place, weighing.key AS weighing, trial.sg, trial.core_c, "
    "trial.centre_mm, trial.edge_mm, trial.minutes, trial.baked_g, trial.word, trial.note, "
    "trial.at, trial.revision "
    "FROM trial LEFT JOIN weighing ON weighing.id = trial.weighing_id "
)


def trials_of(book: Book, *, place: str = "", most: int = 200) -> tuple[KeptTrial, ...]:
    """Trials of a text, or of all, the newest first."""
    with looking_at_bench(book, TRIALS) as found:
        if found is None:
            return ()
        rows = found.execute(
            f"{_SELECT} WHERE ? IN ('', trial.place) ORDER BY trial.id DESC LIMIT ?", (place, most)
        )
        return tuple(_trial(row) for row in rows)


def words_of_trials(book: Book) -> tuple[tuple[str, str], ...]:
    """Place of the text and the one word of every trial, the oldest first."""
    database = database_of(book)
    if database is not None:
        return by_mark(database, TRIALS, "words", _words)
    with looking_at_bench(book) as found:
        return () if found is None else _words(found)


def _words(connection: sqlite3.Connection) -> tuple[tuple[str, str], ...]:
    rows = connection.execute("SELECT place, word FROM trial ORDER BY id")
    return tuple((row["place"], row["word"]) for row in rows)


def trial_at(book: Book, key: str) -> KeptTrial | None:
    """A trial by its key."""
    with looking_at_bench(book, TRIALS) as found:
        return None if found is None else _at(found, key)


def trial_of_weighing(book: Book, weighing: str) -> KeptTrial | None:
    """The trial a weighing ended as."""
    with looking_at_bench(book, TRIALS) as found:
        if found is None:
            return None
        row = found.execute(f"{_SELECT} WHERE weighing.key = ?", (weighing,)).fetchone()
        return None if row is None else _trial(row)


def keep_trial(book: Book, trial: KeptTrial, *, seen: int | None) -> KeptTrial:
    """Keep a trial, or a new version of it; the same one sent twice is kept once.

    Raises ConflictError where it changed since `seen`, NotFoundError where there is none.
    """
    with writing(editable(book)) as found:
        there = _at(found, trial.key)
        if there is not None and there == replace(trial, revision=there.revision):
            return there
        if there is None and seen is not None:
            raise NotFoundError("The book has no such trial.", where=trial.key, got=trial.key)
        if there is not None and there.revision != seen:
            raise _changed(there, seen)
        kept = replace(trial, revision=1 if there is None else there.revision + 1)
        _put(found, kept)
    return kept


def _put(connection: sqlite3.Connection, kept: KeptTrial) -> None:
    now = moment()
    values = [getattr(kept, name) for name in _FIELDS]
    connection.execute(
        "INSERT INTO trial (key, place, weighing_id, sg, core_c, centre_mm, edge_mm, minutes, "
        "baked_g, word, note, at, revision, changed_at) "
        "VALUES (?, ?, (SELECT id FROM weighing WHERE key = ?), ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) "
        "ON CONFLICT (key) DO UPDATE SET sg = excluded.sg, core_c = excluded.core_c, "
        "centre_mm = excluded.centre_mm, edge_mm = excluded.edge_mm, minutes = excluded.minutes, "
        "baked_g = excluded.baked_g, word = excluded.word, note = excluded.note, "
        "at = excluded.at, revision = excluded.revision, changed_at = excluded.changed_at",
        (kept.key, kept.place, kept.weighing, *values, kept.revision, now),
    )
    cells = json.dumps(asdict(kept), ensure_ascii=False)
    connection.execute(
        "INSERT INTO trial_history (trial_id, revision, cells, changed_at) "
        "SELECT id, ?, ?, ? FROM trial WHERE key = ?",
        (kept.revision, cells, now, kept.key),
    )


def _changed(there: KeptTrial, seen: int | None) -> ConflictError:
    return ConflictError(
        "This trial changed since you opened it. Nothing was overwritten; look at both.",
        where=there.key,
        got=f"version {there.revision}",
        want="no trial" if seen is None else f"version {seen}",
    )


def _at(connection: sqlite3.Connection, key: str) -> KeptTrial | None:
    row = connection.execute(f"{_SELECT} WHERE trial.key = ?", (key,)).fetchone()
    return None if row is None else _trial(row)


def _trial(row: sqlite3.Row) -> KeptTrial:
    return KeptTrial(**dict(row))
