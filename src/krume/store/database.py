"""The database of a book: one file, one writer, whole transactions, nothing newer than us."""

import contextlib
import sqlite3
from collections.abc import Hashable, Iterable, Iterator
from contextvars import ContextVar
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from krume.base import StoreError
from krume.store.marks import WHOLE, Marks, Stamp
from krume.store.reads import is_noting, mark_of_file, note

DATABASE = "book.sqlite3"
"""The database's file in a book's folder."""

_WAIT_S = 5.0
_COUNTED = 2**31
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


@dataclass(frozen=True, slots=True)
class Look:
    """A connection that sees one moment of a book, and the stamp of that moment."""

    path: Path
    connection: sqlite3.Connection
    stamp: Stamp

    def mark(self, kind: tuple[str, ...]) -> Hashable:
        """Mark of a thing at this moment."""
        return _marks(self.path, self.stamp).of(self.connection, kind)


_held: ContextVar[dict[Path, Look] | None] = ContextVar("held", default=None)


@contextlib.contextmanager
def one_look() -> Iterator[None]:
    """Whatever is read within is of one moment of its book, by one connection."""
    if _held.get() is not None:
        yield
        return
    looks: dict[Path, Look] = {}
    token = _held.set(looks)
    try:
        yield
    finally:
        _held.reset(token)
        for look in looks.values():
            look.connection.close()


@contextlib.contextmanager
def reading(path: Path, *kinds: tuple[str, ...]) -> Iterator[sqlite3.Connection]:
    """A connection that sees one moment of the book from its first question to its last.

    `kinds` are what is asked for; where none is named, it is noted that all of the book was read.
    """
    with looked(path) as look:
        note_kinds(look, kinds or (WHOLE,))
        yield look.connection


def note_kinds(look: Look, kinds: Iterable[tuple[str, ...]]) -> None:
    """Note what is read of a book, for whoever wants to know."""
    if is_noting():
        for kind in kinds:
            note(("book", str(look.path), *kind), look.mark(kind))


@lru_cache(maxsize=8)
def _marks(_: Path, stamp: Stamp) -> Marks:
    return Marks(stamp)


@contextlib.contextmanager
def looked(path: Path) -> Iterator[Look]:
    """The look that is held, else one for as long as it is needed; nothing is noted of it."""
    held = _held.get()
    with refused(path):
        if held is not None:
            if path not in held:
                held[path] = _open(path)
            yield held[path]
            return
        look = _open(path)
        with contextlib.closing(look.connection):
            yield look


def _open(path: Path) -> Look:
    """A new look; a file that is put in the place of the book meanwhile is looked at anew.

    Every commit counts itself in the database, so that the count read with the data stamps it.
    """
    log = path.with_name(f"{path.name}-wal")
    while True:
        files = (mark_of_file(path), mark_of_file(log))
        connection = connect(path)
        try:
            connection.execute("BEGIN")
            count = connection.execute("PRAGMA user_version").fetchone()[0]
        except BaseException:
            connection.close()
            raise
        if mark_of_file(path) == files[0]:
            return Look(path, connection, (*files, count))
        connection.close()


@contextlib.contextmanager
def writing(path: Path) -> Iterator[sqlite3.Connection]:
    """The one writer: everything done within is kept, or nothing of it."""
    _let_go(path)
    with refused(path), contextlib.closing(connect(path)) as connection:
        connection.execute("BEGIN IMMEDIATE")
        try:
            yield connection
        except BaseException:
            connection.rollback()
            raise
        _count(connection)
        connection.commit()
    _let_go(path)


def _count(connection: sqlite3.Connection) -> None:
    """One commit more, in the book's own head."""
    count = connection.execute("PRAGMA user_version").fetchone()[0]
    connection.execute(f"PRAGMA user_version = {(count + 1) % _COUNTED}")


def _let_go(path: Path) -> None:
    """A look from before an edit would not see it."""
    look = (_held.get() or {}).pop(path, None)
    if look is not None:
        look.connection.close()


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
