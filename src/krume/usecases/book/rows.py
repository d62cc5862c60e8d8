"""Rows of a book's tables as pages edit them: listed, saved by version, added, taken out."""

import csv
import io
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from hashlib import sha256
from itertools import zip_longest

from krume.base import ConflictError, InputError, NotFoundError
from krume.store import (
    Book,
    KeptRow,
    book_at,
    drop_row,
    keep_row,
    kept_rows,
    table_rows,
    table_text,
)
from krume.usecases.asking.answer import Asked

CELL_LIMIT = 2_000
"""Signs a cell may have; the words of a supplier's paper are a quarter of it."""


@dataclass(frozen=True, slots=True)
class RowNow:
    """One row as it is now: its words by column, the line it stands in, its version.

    `key` is None where the table is a plain file, which is edited where it lies.
    """

    key: int | None
    revision: int
    line: int
    cells: dict[str, str]

    def get(self, name: str) -> str:
        """The words of a column; nothing where the row has none."""
        return self.cells.get(name, "")


@dataclass(frozen=True, slots=True)
class TableNow:
    """A table as it is now; `seen` changes with every change of it."""

    place: str
    head: tuple[str, ...]
    rows: tuple[RowNow, ...]
    seen: str


class RowConflictError(ConflictError):
    """A row that was kept or taken out meanwhile; `now` is how it stands, None where it is gone."""

    def __init__(self, now: RowNow | None, place: str) -> None:
        """Say which, with both ways on."""
        gone = "It was taken out in the meantime. Keep yours as a new row, or leave it out."
        changed = "It changed since you opened it. Yours is kept here; look at both."
        super().__init__(gone if now is None else changed, where=place)
        self.now = now


def table_now(place: str, asked: Asked) -> TableNow:
    """A table of the book; without rows where there is none."""
    book = book_at(asked.book)
    text = table_text(book, place)
    lines, seen = lines_of(text), sha256(text.encode()).hexdigest()
    head, kept = kept_rows(book, place)
    if not head:
        return TableNow(place, *_plain(book, place, lines), seen)
    names = tuple(_name(each) for each in head)
    return TableNow(place, names, _numbered(kept, names, lines), seen)


def _numbered(
    kept: tuple[KeptRow, ...], head: tuple[str, ...], lines: tuple[int, ...]
) -> tuple[RowNow, ...]:
    """Rows with the lines they stand in; one without a word stands in none."""
    left = iter(lines)
    return tuple(
        _row(each, head, next(left, 0) if any(cell.strip() for cell in each.cells) else 0)
        for each in kept
    )


def _plain(
    book: Book, place: str, lines: tuple[int, ...]
) -> tuple[tuple[str, ...], tuple[RowNow, ...]]:
    """Head and rows of a plain file."""
    rows = [{_name(name): cell for name, cell in row.items()} for row in table_rows(book, place)]
    filled = [row for row in rows if any(row.values())]
    head = tuple(rows[0]) if rows else ()
    numbered = zip_longest(filled, lines[: len(filled)])
    return head, tuple(RowNow(None, 0, line or 0, row) for row, line in numbered)


def lines_of(text: str) -> tuple[int, ...]:
    r"""The line of the text in which each row ends; rows without a word are left out.

    >>> lines_of('lot,text\nL-1,"two\nlines"\n\nL-2,\n')
    (3, 5)
    """
    rows = csv.reader(io.StringIO(text.lstrip("\ufeff"), newline=None))
    found = [(rows.line_num, cells) for cells in rows]
    return tuple(line for line, cells in found[1:] if any(cell.strip() for cell in cells))


def _name(name: str) -> str:
    return name.strip().casefold()


def _row(kept: KeptRow, head: tuple[str, ...], line: int) -> RowNow:
    cells = {name: cell.strip() for name, cell in zip_longest(head, kept.cells, fillvalue="")}
    return RowNow(kept.key, kept.revision, line, cells)


def row_now(place: str, key: int, asked: Asked) -> RowNow:
    """One row by its key; raises NotFoundError where the table has none."""
    found = next((row for row in table_now(place, asked).rows if row.key == key), None)
    if found is None:
        message = f"{place} has no such row now. It may have been taken out."
        raise NotFoundError(message, where=place, got=str(key))
    return found


def save_row(
    place: str, key: int, cells: Mapping[str, str], asked: Asked, *, seen: int | None
) -> RowNow:
    """Keep new words in a row; columns that are not named stay. Sent twice it is kept once.

    Raises RowConflictError where another was kept since `seen`, with how the row stands now.
    """
    table = table_now(place, asked)
    row = next((each for each in table.rows if each.key == key), None)
    if row is None:
        raise RowConflictError(None, place)
    wanted = {**row.cells, **_clean(cells, table.head)}
    if wanted == row.cells:
        return row
    _refuse_empty(wanted)
    try:
        kept = keep_row(
            book_at(asked.book), place, [wanted.get(name, "") for name in table.head],
            key=key, seen=-1 if seen is None else seen,
        )  # fmt: skip
    except ConflictError as error:
        raise RowConflictError(_again(place, key, asked), place) from error
    return _row(kept, table.head, row.line)


def _again(place: str, key: int, asked: Asked) -> RowNow | None:
    return next((each for each in table_now(place, asked).rows if each.key == key), None)


def add_row(place: str, cells: Mapping[str, str], asked: Asked, *, head: Sequence[str]) -> RowNow:
    """Add a row; the same words sent twice are kept once. A table that is not there is made."""
    table = table_now(place, asked)
    names = (*table.head, *(name for name in head if name not in table.head))
    wanted = {**dict.fromkeys(names, ""), **_clean(cells, names)}
    _refuse_empty(wanted)
    same = next((row for row in table.rows if _filled(row.cells) == _filled(wanted)), None)
    if same is not None:
        return same
    kept = keep_row(
        book_at(asked.book), place, [wanted[name] for name in names], key=None, head=names
    )
    return _row(kept, names, len(table.rows) + 2)


def delete_row(place: str, key: int, asked: Asked, *, seen: int | None) -> None:
    """Take a row out; one that is gone already is gone. Its versions stay."""
    if _again(place, key, asked) is None:
        return
    try:
        drop_row(book_at(asked.book), key, seen=-1 if seen is None else seen)
    except ConflictError as error:
        raise RowConflictError(_again(place, key, asked), place) from error


def _refuse_empty(cells: Mapping[str, str]) -> None:
    if not any(cells.values()):
        message = "There is nothing in it. Type what it is, or take the row out."
        raise InputError(message, field=next(iter(cells), ""))


def _filled(cells: Mapping[str, str]) -> dict[str, str]:
    return {name: cell for name, cell in cells.items() if cell}


def _clean(cells: Mapping[str, str], head: Sequence[str]) -> dict[str, str]:
    """Words as one line each; only columns the table has."""
    clean = {name: " ".join(cell.split()) for name, cell in cells.items() if name in head}
    for name, cell in clean.items():
        if len(cell) > CELL_LIMIT:
            message = f"That is {len(cell)} signs; {CELL_LIMIT} are the most in one box."
            raise InputError(message, field=name, got=f"{len(cell)} signs")
    return clean
