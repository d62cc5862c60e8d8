"""Edits of a book: each names the version it saw, and every version stays."""

import contextlib
import hashlib
import sqlite3
from collections.abc import Iterator, Sequence
from pathlib import Path

from krume.base import ConflictError, StoreError
from krume.store.book import Book, database_of
from krume.store.contents import add_all, as_kept, bytes_at
from krume.store.database import reading, writing
from krume.store.marks import of_sheet, of_text
from krume.store.sheets import KeptRow, add_row, add_sheet, delete_row, head_of, rows_of, save_row
from krume.store.texts import KeptText, delete_text, save_text, text_at, versions


def kept_text(book: Book, place: str) -> KeptText | None:
    """A text of a book with its version; None where there is none."""
    with looking(book, of_text(place)) as found:
        return None if found is None else text_at(found, place)


def kept_versions(book: Book, place: str) -> tuple[KeptText, ...]:
    """All versions of a text, the newest first; a folder of plain texts has none."""
    with looking(book) as found:
        return () if found is None else versions(found, place)


def keep_text(book: Book, place: str, body: bytes, *, seen: int | None) -> KeptText:
    """Keep a new version; raises ConflictError where another was kept since `seen`."""
    with writing(editable(book)) as found:
        return save_text(found, place, body, seen=seen)


def drop_text(book: Book, place: str, *, seen: int) -> KeptText:
    """Take a text out of the book; its versions stay."""
    with writing(editable(book)) as found:
        return delete_text(found, place, seen=seen)


def kept_rows(book: Book, place: str) -> tuple[tuple[str, ...], tuple[KeptRow, ...]]:
    """Head and rows of a table with their versions; both empty where there is none."""
    with looking(book, of_sheet(place)) as found:
        if found is None:
            return (), ()
        return head_of(found, place) or (), rows_of(found, place)


def keep_row(
    book: Book,
    place: str,
    cells: Sequence[str],
    *,
    key: int | None,
    seen: int = 0,
    head: Sequence[str] = (),
) -> KeptRow:
    """Keep a row, a new one where `key` is None; the table is made with `head` where it is new."""
    with writing(editable(book)) as found:
        if key is not None:
            return save_row(found, key, cells, seen=seen)
        if head:
            add_sheet(found, place, head)
        return add_row(found, place, cells)


def drop_row(book: Book, key: int, *, seen: int) -> None:
    """Take a row out of its table; its versions stay."""
    with writing(editable(book)) as found:
        delete_row(found, key, seen=seen)


def put_table(book: Book, place: str, data: bytes, *, seen: str) -> None:
    """Keep a whole table, `seen` is the SHA-256 of the one it is to stand for; all or nothing.

    The rows it replaces stay in the history. The same table sent again changes nothing.
    """
    with writing(editable(book)) as found:
        there = bytes_at(found, place) or b""
        if there == as_kept(place, data):
            return
        if hashlib.sha256(there).hexdigest() != seen:
            message = "The table changed since you looked. Nothing was overwritten; look again."
            raise ConflictError(message, where=place)
        add_all(found, {place: data}, is_newer=True)


@contextlib.contextmanager
def looking(book: Book, *kinds: tuple[str, ...]) -> Iterator[sqlite3.Connection | None]:
    """One moment of a book's database, of which `kinds` are read; None where it has none."""
    database = database_of(book)
    if database is None:
        yield None
        return
    with reading(database, *kinds) as found:
        yield found


def editable(book: Book, *, so: str = "nothing can be edited in it") -> Path:
    """Database of a book that is to be edited; a folder of plain texts is refused."""
    database = database_of(book)
    if database is None:
        raise StoreError(
            f"{book.path} has no database yet, so {so}. `krume book init` makes an empty book; "
            "`krume book import` takes a folder of plain texts into one.",
            where=str(book.path),
            got="no database",
            want="a book with a database",
        )
    return database
