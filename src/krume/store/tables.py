"""A book's tables as text and rows: plain UTF-8, or refused whole."""

import csv
import io
import sqlite3
from itertools import zip_longest
from pathlib import Path

from krume.base import StoreError
from krume.store.book import Book, book_bytes, database_of
from krume.store.by_mark import by_mark
from krume.store.marks import of_sheet
from krume.store.sheets import cells_of, head_of


def table_text(book: Book, place: str) -> str:
    """Text of a table or sheet of a book; empty where there is none.

    Bytes that are no text refuse the whole of it: half-read evidence is worse than none.
    """
    path = book.path / place
    try:
        text = (book_bytes(book, place) or b"").decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise _no_table(path, f"byte {error.start + 1}") from error
    if "\0" in text:
        raise _no_table(path, f"character {text.index(chr(0)) + 1}")
    return text


def table_rows(book: Book, place: str) -> list[dict[str, str]]:
    """Rows of a table by the names of its first line; none where there is no table."""
    database = database_of(book)
    if database is not None:
        kept = by_mark(database, of_sheet(place), "rows", lambda found: _kept_rows(found, place))
        return [dict(row) for row in kept]
    text = table_text(book, place)
    lines = csv.DictReader(io.StringIO(text, newline=None))
    try:
        return [
            {key: (cell or "").strip() for key, cell in row.items() if isinstance(key, str)}
            for row in lines
        ]
    except csv.Error as error:
        raise _no_table(book.path / place, f"line {lines.line_num}") from error


def _kept_rows(connection: sqlite3.Connection, place: str) -> tuple[dict[str, str], ...]:
    head, cells = head_of(connection, place) or (), cells_of(connection, place)
    if all(head) and all(len(row) == len(head) for row in cells):
        return tuple(dict(zip(head, map(str.strip, row), strict=True)) for row in cells)
    return tuple(_named(head, row) for row in cells)


def _named(head: tuple[str, ...], cells: list[str]) -> dict[str, str]:
    """Cells by the names above them; what is missing is empty, what has no name is left out."""
    pairs = zip_longest(head, cells, fillvalue="")
    return {name: cell.strip() for name, cell in pairs if name}


def _no_table(path: Path, place: str) -> StoreError:
    return StoreError(
        f"{path} is no plain text (see {place}). Save it in UTF-8, a table as CSV, or put a copy "
        "of it back. Nothing was changed.",
        field=path.name,
        where=str(path),
        got="no plain text",
        want="a table in UTF-8",
    )
