"""The bench of a book: its database, or what an export wrote of it beside plain texts."""

import contextlib
import sqlite3
from collections.abc import Hashable, Iterator
from functools import lru_cache
from pathlib import Path

from krume.store.bench_tables import KEPT_TABLES, add_bench_rows
from krume.store.book import Book, database_of
from krume.store.cells import own_table
from krume.store.database import reading, refused
from krume.store.files import is_file, read_bytes
from krume.store.migrations import MIGRATIONS
from krume.store.reads import mark_of_file


@contextlib.contextmanager
def looking_at_bench(book: Book, *kinds: tuple[str, ...]) -> Iterator[sqlite3.Connection | None]:
    """One moment of what the bench kept, of which `kinds` are read; None where it kept nothing.

    Beside plain texts that is read from the tables of an export, and nothing is ever added.
    """
    database = database_of(book)
    if database is not None:
        with reading(database, *kinds) as found:
            yield found
        return
    paths = tuple(book.path / place for place in KEPT_TABLES)
    marks = tuple(mark_of_file(path) for path in paths if is_file(path))
    if not marks:
        yield None
        return
    with contextlib.closing(_empty()) as found:
        found.deserialize(_loaded(book.path, marks))
        yield found


def _empty() -> sqlite3.Connection:
    connection = sqlite3.connect(":memory:", isolation_level=None)
    connection.row_factory = sqlite3.Row
    return connection


@lru_cache(maxsize=2)
def _loaded(folder: Path, _: tuple[Hashable, ...]) -> bytes:
    """The tables of an export as a database, for as long as the files stay as they are."""
    with refused(folder / "bench"), contextlib.closing(_empty()) as connection:
        for step in MIGRATIONS:
            for statement in step.statements:
                connection.execute(statement)
        for place in KEPT_TABLES:
            if is_file(folder / place):
                add_bench_rows(connection, place, own_table(read_bytes(folder / place), place))
        return connection.serialize()
