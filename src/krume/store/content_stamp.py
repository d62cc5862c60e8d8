"""A stamp of a book's texts and tables alone: weighings, clocks and trials do not move it."""

from functools import lru_cache

from krume.store.book import Book, stamp_of
from krume.store.database import DATABASE, reading

_WHAT_IS_KEPT = (
    "SELECT count(*), total(revision) FROM text",
    "SELECT count(*), total(revision) FROM sheet_row",
    "SELECT count(*), total(length(head)) FROM sheet",
)


def content_stamp_of(book: Book) -> tuple[float, ...] | None:
    """What changes with every edit of a text or a table; None for plain files.

    Versions only grow, so that two looks with the same stamp see the same texts and tables.
    """
    stamp = stamp_of(book)
    return None if stamp is None else _content(book, stamp)


@lru_cache(maxsize=8)
def _content(book: Book, stamp: tuple[int, ...]) -> tuple[float, ...]:
    with reading(book.path / DATABASE) as connection:
        counts = [n for each in _WHAT_IS_KEPT for n in connection.execute(each).fetchone()]
    # The file itself stands first: a book that was put back is another one.
    return (float(stamp[0]), *(float(n) for n in counts))
