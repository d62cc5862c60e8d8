"""How a book's database came to its present form: named steps, each in one transaction."""

import contextlib
import sqlite3
from dataclasses import dataclass
from pathlib import Path

from krume.base import StoreError
from krume.store.backups import copy_to, free_name
from krume.store.database import connect, refused, writing
from krume.store.moment import moment

_MARK = 0x6B72756D
"""Application id of a book's database: the letters k r u m."""


@dataclass(frozen=True, slots=True)
class Migration:
    """One step, by the name it is recorded under; steps are added and never changed."""

    name: str
    statements: tuple[str, ...]


MIGRATIONS = (
    Migration(
        "0001-texts-and-tables",
        (
            """CREATE TABLE text (
                id INTEGER PRIMARY KEY,
                place TEXT NOT NULL UNIQUE CHECK (place <> ''),
                title TEXT NOT NULL,
                body BLOB NOT NULL,
                revision INTEGER NOT NULL CHECK (revision >= 1),
                is_deleted INTEGER NOT NULL DEFAULT 0 CHECK (is_deleted IN (0, 1)),
                changed_at TEXT NOT NULL
            ) STRICT""",
            """CREATE TABLE text_history (
                text_id INTEGER NOT NULL REFERENCES text (id),
                revision INTEGER NOT NULL CHECK (revision >= 1),
                title TEXT NOT NULL,
                body BLOB NOT NULL,
                is_deleted INTEGER NOT NULL CHECK (is_deleted IN (0, 1)),
                changed_at TEXT NOT NULL,
                PRIMARY KEY (text_id, revision)
            ) STRICT, WITHOUT ROWID""",
            """CREATE TABLE sheet (
                id INTEGER PRIMARY KEY,
                place TEXT NOT NULL UNIQUE CHECK (place <> ''),
                head TEXT NOT NULL
            ) STRICT""",
            """CREATE TABLE sheet_row (
                id INTEGER PRIMARY KEY,
                sheet_id INTEGER NOT NULL REFERENCES sheet (id),
                position INTEGER NOT NULL,
                cells TEXT NOT NULL,
                revision INTEGER NOT NULL CHECK (revision >= 1),
                is_deleted INTEGER NOT NULL DEFAULT 0 CHECK (is_deleted IN (0, 1)),
                changed_at TEXT NOT NULL
            ) STRICT""",
            "CREATE INDEX sheet_row_by_sheet ON sheet_row (sheet_id, position, id)",
            """CREATE TABLE sheet_row_history (
                row_id INTEGER NOT NULL REFERENCES sheet_row (id),
                revision INTEGER NOT NULL CHECK (revision >= 1),
                cells TEXT NOT NULL,
                is_deleted INTEGER NOT NULL CHECK (is_deleted IN (0, 1)),
                changed_at TEXT NOT NULL,
                PRIMARY KEY (row_id, revision)
            ) STRICT, WITHOUT ROWID""",
        ),
    ),
    Migration(
        "0002-weighings-and-trials",
        (
            """CREATE TABLE weighing (
                id INTEGER PRIMARY KEY,
                key TEXT NOT NULL UNIQUE CHECK (key <> ''),
                place TEXT NOT NULL CHECK (place <> ''),
                place_revision INTEGER NOT NULL CHECK (place_revision >= 1),
                started_at TEXT NOT NULL,
                scale_step_g REAL NOT NULL CHECK (scale_step_g > 0),
                state TEXT NOT NULL CHECK (state IN ('open', 'done', 'aside'))
            ) STRICT""",
            "CREATE UNIQUE INDEX weighing_open ON weighing (place) WHERE state = 'open'",
            """CREATE TABLE weighing_step (
                id INTEGER PRIMARY KEY,
                weighing_id INTEGER NOT NULL REFERENCES weighing (id),
                client_id TEXT NOT NULL UNIQUE CHECK (client_id <> ''),
                kind TEXT NOT NULL CHECK (kind <> ''),
                position INTEGER,
                line INTEGER,
                planned_g REAL,
                display_g REAL,
                got_g REAL,
                said TEXT NOT NULL,
                of TEXT NOT NULL,
                is_undone INTEGER NOT NULL DEFAULT 0 CHECK (is_undone IN (0, 1)),
                at TEXT NOT NULL
            ) STRICT""",
            "CREATE INDEX weighing_step_by_weighing ON weighing_step (weighing_id, id)",
            """CREATE TABLE clock (
                id INTEGER PRIMARY KEY,
                client_id TEXT NOT NULL UNIQUE CHECK (client_id <> ''),
                weighing_id INTEGER REFERENCES weighing (id),
                kind TEXT NOT NULL CHECK (kind IN ('foam', 'batter', 'oven')),
                reason TEXT NOT NULL,
                started_at TEXT NOT NULL,
                stopped_at TEXT
            ) STRICT""",
            "CREATE INDEX clock_running ON clock (kind) WHERE stopped_at IS NULL",
            """CREATE TABLE trial (
                id INTEGER PRIMARY KEY,
                key TEXT NOT NULL UNIQUE CHECK (key <> ''),
                place TEXT NOT NULL CHECK (place <> ''),
                weighing_id INTEGER UNIQUE REFERENCES weighing (id),
                sg REAL,
                core_c REAL,
                centre_mm REAL,
                edge_mm REAL,
                minutes REAL,
                baked_g REAL,
                word TEXT NOT NULL,
                note TEXT NOT NULL,
                at TEXT NOT NULL,
                revision INTEGER NOT NULL CHECK (revision >= 1),
                changed_at TEXT NOT NULL
            ) STRICT""",
            "CREATE INDEX trial_by_place ON trial (place, id)",
            """CREATE TABLE trial_history (
                trial_id INTEGER NOT NULL REFERENCES trial (id),
                revision INTEGER NOT NULL CHECK (revision >= 1),
                cells TEXT NOT NULL,
                changed_at TEXT NOT NULL,
                PRIMARY KEY (trial_id, revision)
            ) STRICT, WITHOUT ROWID""",
        ),
    ),
    Migration(
        "0003-lots-of-bakes",
        (
            """CREATE TABLE batch (
                id INTEGER PRIMARY KEY,
                key TEXT NOT NULL UNIQUE CHECK (key <> ''),
                chain TEXT NOT NULL CHECK (chain <> ''),
                code TEXT NOT NULL COLLATE NOCASE CHECK (code <> ''),
                formula TEXT NOT NULL CHECK (formula <> ''),
                title TEXT NOT NULL,
                made_on TEXT NOT NULL CHECK (made_on <> ''),
                trial TEXT NOT NULL,
                state TEXT NOT NULL CHECK (state IN ('made', 'void')),
                replaces TEXT REFERENCES batch (key),
                reason TEXT NOT NULL,
                at TEXT NOT NULL
            ) STRICT""",
            "CREATE INDEX batch_by_replaces ON batch (replaces)",
            "CREATE INDEX batch_by_chain ON batch (chain)",
            "CREATE INDEX batch_by_code ON batch (code)",
            "CREATE INDEX batch_by_formula ON batch (formula, made_on)",
            """CREATE TABLE batch_lot (
                id INTEGER PRIMARY KEY,
                batch TEXT NOT NULL REFERENCES batch (key),
                position INTEGER NOT NULL,
                ingredient TEXT NOT NULL CHECK (ingredient <> ''),
                goods TEXT NOT NULL,
                lot TEXT NOT NULL COLLATE NOCASE,
                supplier TEXT NOT NULL,
                UNIQUE (batch, position)
            ) STRICT""",
            "CREATE INDEX batch_lot_by_lot ON batch_lot (lot)",
            """CREATE TABLE cake (
                id INTEGER PRIMARY KEY,
                key TEXT NOT NULL UNIQUE CHECK (key <> ''),
                chain TEXT NOT NULL CHECK (chain <> ''),
                code TEXT NOT NULL COLLATE NOCASE CHECK (code <> ''),
                what TEXT NOT NULL CHECK (what <> ''),
                title TEXT NOT NULL,
                pieces INTEGER NOT NULL CHECK (pieces >= 1),
                order_name TEXT NOT NULL,
                order_revision INTEGER NOT NULL,
                customer TEXT NOT NULL,
                made_on TEXT NOT NULL CHECK (made_on <> ''),
                handed_on TEXT NOT NULL,
                state TEXT NOT NULL CHECK (state IN ('made', 'void')),
                replaces TEXT REFERENCES cake (key),
                reason TEXT NOT NULL,
                at TEXT NOT NULL
            ) STRICT""",
            "CREATE INDEX cake_by_replaces ON cake (replaces)",
            "CREATE INDEX cake_by_chain ON cake (chain)",
            "CREATE INDEX cake_by_code ON cake (code)",
            "CREATE INDEX cake_by_order ON cake (order_name)",
            """CREATE TABLE cake_batch (
                id INTEGER PRIMARY KEY,
                cake TEXT NOT NULL REFERENCES cake (key),
                position INTEGER NOT NULL,
                formula TEXT NOT NULL CHECK (formula <> ''),
                batch TEXT NOT NULL,
                UNIQUE (cake, position)
            ) STRICT""",
            "CREATE INDEX cake_batch_by_batch ON cake_batch (batch)",
            "CREATE VIEW batch_now AS SELECT * FROM batch "
            "WHERE NOT EXISTS (SELECT 1 FROM batch AS newer WHERE newer.replaces = batch.key)",
            "CREATE VIEW cake_now AS SELECT * FROM cake "
            "WHERE NOT EXISTS (SELECT 1 FROM cake AS newer WHERE newer.replaces = cake.key)",
        ),
    ),
)
"""All steps, oldest first."""


def make(path: Path) -> None:
    """Make a book's database where there is none, and bring it to the present form."""
    path.parent.mkdir(parents=True, exist_ok=True)
    with refused(path), contextlib.closing(connect(path, is_new=True)) as connection:
        if connection.execute("PRAGMA application_id").fetchone()[0] == 0:
            connection.execute(f"PRAGMA application_id = {_MARK}")
        connection.execute("PRAGMA journal_mode = WAL")
    migrate(path)


def migrate(path: Path) -> tuple[str, ...]:
    """Bring a database to the present form; the steps that were run.

    Before each step of a book that has something in it, a backup is made.
    """
    pending = _pending(path)
    is_new = MIGRATIONS[0] in pending
    for step in pending:
        if not is_new:
            copy_to(path, free_name(path.parent, f"before-{step.name}"))
        with writing(path) as connection:
            _run(connection, step)
    _log_apart(path)
    return tuple(step.name for step in pending)


def _log_apart(path: Path) -> None:
    """A copy that was put back writes its log apart again: whoever reads stops no writer.

    A book that may only be read stays as it is.
    """
    with (
        refused(path),
        contextlib.closing(connect(path)) as connection,
        contextlib.suppress(sqlite3.OperationalError),
    ):
        if connection.execute("PRAGMA journal_mode").fetchone()[0] != "wal":
            connection.execute("PRAGMA journal_mode = WAL")


def is_current(path: Path) -> bool:
    """Whether nothing is to be done; a database this program is too old for is refused."""
    return not _pending(path)


def _pending(path: Path) -> tuple[Migration, ...]:
    with refused(path), contextlib.closing(connect(path)) as connection:
        if connection.execute("PRAGMA application_id").fetchone()[0] != _MARK:
            raise StoreError(
                f"{path} is the database of another program. Name another folder with --book. "
                "Nothing was changed.",
                where=str(path),
                got="another program's database",
                want="a book",
            )
        done = _done(connection)
    known = [step.name for step in MIGRATIONS]
    newer = [name for name in done if name not in known]
    if newer:
        raise StoreError(
            f"{path} was written by a newer krume (it has {newer[0]}). Update krume, or name "
            "another book with --book. Nothing was changed.",
            where=str(path),
            got=newer[0],
            want=f"at most {known[-1]}",
        )
    return tuple(step for step in MIGRATIONS if step.name not in done)


def _done(connection: sqlite3.Connection) -> tuple[str, ...]:
    there = connection.execute(
        "SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = 'migration'"
    ).fetchone()
    if there is None:
        return ()
    rows = connection.execute("SELECT name FROM migration ORDER BY name")
    return tuple(row["name"] for row in rows)


def _run(connection: sqlite3.Connection, step: Migration) -> None:
    """One step and the row that records it; another program may have been quicker."""
    connection.execute(
        "CREATE TABLE IF NOT EXISTS migration "
        "(name TEXT PRIMARY KEY, applied_at TEXT NOT NULL) STRICT, WITHOUT ROWID"
    )
    if step.name in _done(connection):
        return
    for statement in step.statements:
        connection.execute(statement)
    connection.execute("INSERT INTO migration VALUES (?, ?)", (step.name, moment()))
