"""Tables of a book's database: rows of words under a head, each row with its own versions."""

import csv
import io
import json
import sqlite3
from collections.abc import Sequence
from dataclasses import dataclass

from krume.base import ConflictError, NotFoundError, StoreError
from krume.store.moment import moment


@dataclass(frozen=True, slots=True)
class KeptRow:
    """One row as it is now; `cells` are its words, in the order of the head."""

    key: int
    cells: tuple[str, ...]
    revision: int


def head_of(connection: sqlite3.Connection, place: str) -> tuple[str, ...] | None:
    """Names of a table's columns; None where there is no such table."""
    row = connection.execute("SELECT head FROM sheet WHERE place = ?", (place,)).fetchone()
    return None if row is None else tuple(json.loads(row["head"]))


def sheet_places(connection: sqlite3.Connection) -> tuple[str, ...]:
    """All tables, by their place in the book."""
    return tuple(
        row["place"] for row in connection.execute("SELECT place FROM sheet ORDER BY place")
    )


def rows_of(connection: sqlite3.Connection, place: str) -> tuple[KeptRow, ...]:
    """Rows of a table, in their order."""
    rows = connection.execute(
        "SELECT row.id, row.cells, row.revision FROM sheet_row AS row "
        "JOIN sheet ON sheet.id = row.sheet_id WHERE sheet.place = ? AND NOT row.is_deleted "
        "ORDER BY row.position, row.id",
        (place,),
    )
    return tuple(_kept(row) for row in rows)


def cells_of(connection: sqlite3.Connection, place: str) -> list[list[str]]:
    """Words of all rows of a table, in their order: read at once, since a table may be long."""
    rows = connection.execute(
        "SELECT row.cells FROM sheet_row AS row JOIN sheet ON sheet.id = row.sheet_id "
        "WHERE sheet.place = ? AND NOT row.is_deleted ORDER BY row.position, row.id",
        (place,),
    )
    cells: list[list[str]] = json.loads(f"[{','.join(row['cells'] for row in rows)}]")
    return cells


def add_sheet(connection: sqlite3.Connection, place: str, head: Sequence[str]) -> None:
    """Make a table with these columns; one that is there may only gain columns."""
    known = head_of(connection, place)
    names = (*(known or ()), *(name for name in head if name not in (known or ())))
    connection.execute(
        "INSERT INTO sheet (place, head) VALUES (?, ?) "
        "ON CONFLICT (place) DO UPDATE SET head = excluded.head",
        (place, json.dumps(names)),
    )


def add_row(connection: sqlite3.Connection, place: str, cells: Sequence[str]) -> KeptRow:
    """Add a row at the end of a table."""
    words, when = json.dumps(list(cells)), moment()
    found = connection.execute(
        "INSERT INTO sheet_row (sheet_id, position, cells, revision, changed_at) "
        "SELECT id, 1 + coalesce((SELECT max(position) FROM sheet_row WHERE sheet_id = sheet.id), "
        "0), ?, 1, ? FROM sheet WHERE place = ? RETURNING id",
        (words, when, place),
    ).fetchone()
    if found is None:
        raise NotFoundError(f"The book has no table {place}.", where=place, got=place)
    connection.execute(
        "INSERT INTO sheet_row_history VALUES (?, 1, ?, 0, ?)", (found["id"], words, when)
    )
    return KeptRow(found["id"], tuple(cells), 1)


def save_row(
    connection: sqlite3.Connection, key: int, cells: Sequence[str], *, seen: int
) -> KeptRow:
    """Keep a new version of a row; `seen` is the version that was edited."""
    return _save(connection, key, json.dumps(list(cells)), seen=seen, is_deleted=False)


def delete_row(connection: sqlite3.Connection, key: int, *, seen: int) -> None:
    """Take a row out of its table; its versions are kept."""
    row = connection.execute("SELECT cells FROM sheet_row WHERE id = ?", (key,)).fetchone()
    _save(connection, key, row["cells"] if row else "[]", seen=seen, is_deleted=True)


def replace_rows(
    connection: sqlite3.Connection, place: str, head: Sequence[str], rows: Sequence[Sequence[str]]
) -> None:
    """Make a table hold exactly these rows; a row that stays the same keeps its version."""
    connection.execute("UPDATE sheet SET head = ? WHERE place = ?", (json.dumps(list(head)), place))
    there = rows_of(connection, place)
    for kept, cells in zip(there, rows, strict=False):
        if kept.cells != tuple(cells):
            save_row(connection, kept.key, cells, seen=kept.revision)
    for kept in there[len(rows) :]:
        delete_row(connection, kept.key, seen=kept.revision)
    for cells in rows[len(there) :]:
        add_row(connection, place, cells)


def _save(
    connection: sqlite3.Connection, key: int, words: str, *, seen: int, is_deleted: bool
) -> KeptRow:
    when = moment()
    changed = connection.execute(
        "UPDATE sheet_row SET cells = ?, revision = revision + 1, is_deleted = ?, changed_at = ? "
        "WHERE id = ? AND revision = ? AND NOT is_deleted",
        (words, is_deleted, when, key, seen),
    ).rowcount
    if changed != 1:
        message = "This row changed since you opened it. Nothing was overwritten; look at both."
        raise ConflictError(message, where=f"row {key}", want=f"version {seen}")
    connection.execute(
        "INSERT INTO sheet_row_history VALUES (?, ?, ?, ?, ?)",
        (key, seen + 1, words, is_deleted, when),
    )
    return KeptRow(key, tuple(json.loads(words)), seen + 1)


def _kept(row: sqlite3.Row) -> KeptRow:
    return KeptRow(row["id"], tuple(json.loads(row["cells"])), row["revision"])


def as_csv(head: Sequence[str], rows: Sequence[Sequence[str]]) -> bytes:
    """A table as text: UTF-8, one row a line, quoted only where it must be."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(head)
    writer.writerows(tuple(cells) + ("",) * (len(head) - len(cells)) for cells in rows)
    return out.getvalue().encode()


def from_csv(data: bytes, place: str) -> tuple[tuple[str, ...], tuple[tuple[str, ...], ...]]:
    """Head and rows of a table's text; what is no table is refused whole."""
    try:
        text = data.decode("utf-8-sig")
        lines = [tuple(cells) for cells in csv.reader(io.StringIO(text, newline=None))]
    except (UnicodeDecodeError, csv.Error) as error:
        raise StoreError(
            f"{place} is no table of plain text. Save it as CSV in UTF-8. Nothing was taken in.",
            where=place,
            got="no plain text",
            want="a table in UTF-8",
        ) from error
    kept = [cells for cells in lines if any(cell.strip() for cell in cells)]
    return (kept[0], tuple(kept[1:])) if kept else ((), ())
