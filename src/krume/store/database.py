"""The database of a book: one file, one writer, whole transactions, nothing newer than us."""

import contextlib
import sqlite3
from collections.abc import Iterator
from pathlib import Path

from krume.base import StoreError

DATABASE = "book.sqlite3"
"""The database's file in a book's folder."""

_WAIT_S = 5.0
_WAYS_OUT = {
    "SQLITE_FULL": "Make room on the disk and try again.",
    "SQLITE_BUSY": "Another krume is writing in this book. Try again in a moment.",
    "SQLITE_LOCKED": "Another krume is writing in this book. Try again in a moment.",
    "SQLITE_READONLY": "The book may not be written to. Choose a folder you may write to.",
    "SQLITE_CANTOPEN": "The book's folder cannot be opened. Check that you may write to it.",
    "SQLITE_IOERR": "The disk refused. Check it, and that there is room.",
    "SQLITE_PERM": "The book may not be opened by this user.",
    "SQLITE_CORRUPT": "It is damaged. `krume book restore` puts the last backup back.",
    "SQLITE_NOTADB": "It is no book. `krume book restore` puts the last backup back.",
}


def connect(path: Path, *, is_new: bool = False) -> sqlite3.Connection:
    """Connection to a book's database; made only where `is_new` says so.

    Transactions are explicit, foreign keys hold, and a commit is on the disk when it returns.
    """
    mode = "rwc" if is_new else "rw"
    connection = sqlite3.connect(
        f"{path.absolute().as_uri()}?mode={mode}", uri=True, timeout=_WAIT_S, isolation_level=None
    )
    connection.row_factory = sqlite3.Row
    connection.execute("PRAGMA foreign_keys = ON")
    connection.execute("PRAGMA synchronous = FULL")
    connection.execute("PRAGMA trusted_schema = OFF")
    return connection


@contextlib.contextmanager
def reading(path: Path) -> Iterator[sqlite3.Connection]:
    """A connection that sees one moment of the book from its first question to its last."""
    with refused(path), contextlib.closing(connect(path)) as connection:
        connection.execute("BEGIN")
        yield connection


@contextlib.contextmanager
def writing(path: Path) -> Iterator[sqlite3.Connection]:
    """The one writer: everything done within is kept, or nothing of it."""
    with refused(path), contextlib.closing(connect(path)) as connection:
        connection.execute("BEGIN IMMEDIATE")
        try:
            yield connection
        except BaseException:
            connection.rollback()
            raise
        connection.commit()


@contextlib.contextmanager
def refused(path: Path) -> Iterator[None]:
    """Turn what the database refuses into one sentence; nothing was lost."""
    try:
        yield
    except sqlite3.Error as error:
        raise StoreError(
            f"{path} could not be used ({_reason(error)}). {_way_out(error)} What was kept before "
            "is unchanged.",
            where=str(path),
            got=_reason(error),
        ) from error


def _name(error: sqlite3.Error) -> str:
    """Primary name of a code: SQLITE_IOERR of SQLITE_IOERR_WRITE."""
    name = getattr(error, "sqlite_errorname", "") or ""
    return "_".join(name.split("_")[:2])


def _reason(error: sqlite3.Error) -> str:
    return _name(error).removeprefix("SQLITE_").casefold() or "no answer"


def _way_out(error: sqlite3.Error) -> str:
    return _WAYS_OUT.get(_name(error), "Check it with `krume book verify`.")
