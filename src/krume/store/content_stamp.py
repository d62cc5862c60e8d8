"""A stamp of a book's texts and tables alone: weighings, clocks and trials do not move it."""

import sqlite3
from collections.abc import Hashable

from krume.store.book import Book, database_of
from krume.store.by_mark import by_mark
from krume.store.marks import WHOLE

_WHAT_IS_KEPT = (
    "SELECT count(*), total(revision), max(changed_at) FROM text",
    "SELECT count(*), total(revision), max(changed_at) FROM sheet_row",
    "SELECT count(*), total(length(head)) FROM sheet",
)


def content_stamp_of(book: Book) -> tuple[Hashable, ...] | None:
    """What changes with every edit of a text or a table; None for plain files.

    Versions only grow, so that two looks with the same stamp see the same texts and tables.
    """
    database = database_of(book)
    if database is None:
        return None
    return by_mark(database, WHOLE, "counts", _counts)


def _counts(connection: sqlite3.Connection) -> tuple[Hashable, ...]:
    return tuple(n for each in _WHAT_IS_KEPT for n in connection.execute(each).fetchone())
