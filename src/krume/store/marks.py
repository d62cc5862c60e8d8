"""Marks of what a book's database holds: each changes with every edit of the thing it is of."""

import sqlite3
from collections.abc import Callable, Hashable
from hashlib import blake2b

WHOLE = ("whole",)
"""Everything: it changes with every commit."""

TITLES = ("titles",)
"""Places of all texts with their first lines."""

SHEETS = ("sheets",)
"""Places of all tables."""

TRIALS = ("trials",)
"""What was written down at the bench as trials."""

CLOCKS = ("clocks",)
"""The clocks of the bench."""


def of_text(place: str) -> tuple[str, ...]:
    """One text."""
    return ("text", place)


def of_folder(folder: str) -> tuple[str, ...]:
    """Every text of a folder."""
    return ("folder", folder)


def of_sheet(place: str) -> tuple[str, ...]:
    """One table."""
    return ("sheet", place)


Stamp = tuple[Hashable, ...]
"""What changes with every commit of a database."""


class Marks:
    """Marks of a database at one stamp; each is worked out when it is first asked for."""

    def __init__(self, stamp: Stamp) -> None:
        self._known: dict[tuple[str, ...], Hashable] = {WHOLE: stamp}

    def of(self, connection: sqlite3.Connection, kind: tuple[str, ...]) -> Hashable:
        """Mark of one thing, by a connection that sees the database at this stamp."""
        if kind not in self._known:
            self._known[kind] = _ASKED[kind[0]](connection, *kind[1:])
        return self._known[kind]


def _text(connection: sqlite3.Connection, place: str) -> Hashable:
    """The version with its moment: a book that was put back counts its versions anew."""
    found = connection.execute(
        "SELECT revision, changed_at FROM text WHERE place = ? AND NOT is_deleted", (place,)
    ).fetchone()
    return None if found is None else tuple(found)


def _titles(connection: sqlite3.Connection) -> Hashable:
    return _digest(
        connection.execute("SELECT place, title FROM text WHERE NOT is_deleted ORDER BY place")
    )


def _folder(connection: sqlite3.Connection, folder: str) -> Hashable:
    return _digest(
        connection.execute(
            "SELECT place, revision, changed_at FROM text "
            "WHERE NOT is_deleted AND place >= ? AND place < ? ORDER BY place",
            (f"{folder}/", f"{folder}0"),
        )
    )


def _sheet(connection: sqlite3.Connection, place: str) -> Hashable:
    """Rows that were taken out count as well: no two states of a table have the same mark."""
    found = connection.execute(
        "SELECT sheet.head, count(row.id), total(row.revision), max(row.changed_at) FROM sheet "
        "LEFT JOIN sheet_row AS row ON row.sheet_id = sheet.id WHERE sheet.place = ? "
        "GROUP BY sheet.id",
        (place,),
    ).fetchone()
    return None if found is None else tuple(found)


def _sheets(connection: sqlite3.Connection) -> Hashable:
    return _digest(connection.execute("SELECT place FROM sheet ORDER BY place"))


def _trials(connection: sqlite3.Connection) -> Hashable:
    found = connection.execute("SELECT count(*), total(revision), max(changed_at) FROM trial")
    return tuple(found.fetchone())


def _clocks(connection: sqlite3.Connection) -> Hashable:
    return _digest(
        connection.execute("SELECT client_id, started_at, stopped_at FROM clock ORDER BY id")
    )


_ASKED: dict[str, Callable[..., Hashable]] = {
    "text": _text,
    "titles": _titles,
    "folder": _folder,
    "sheet": _sheet,
    "sheets": _sheets,
    "trials": _trials,
    "clocks": _clocks,
}


def _digest(rows: sqlite3.Cursor) -> Hashable:
    """One mark of many rows; a length stands before each cell, so that no two lists are alike."""
    total = blake2b(digest_size=16)
    for row in rows:
        cells = [str(cell) for cell in row]
        total.update("".join(f"{len(cell)}:{cell}" for cell in cells).encode())
    return total.digest()
