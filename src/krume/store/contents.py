"""What a book's database holds, as the plain texts and tables it goes out and comes in as."""

import sqlite3
from collections.abc import Mapping
from dataclasses import dataclass

from krume.store.bench_tables import KEPT_TABLES, add_bench_rows, bench_bytes, bench_places
from krume.store.sheets import (
    add_row,
    add_sheet,
    as_csv,
    from_csv,
    head_of,
    replace_rows,
    rows_of,
    sheet_places,
)
from krume.store.texts import save_text, text_at, titles


@dataclass(frozen=True, slots=True)
class Loaded:
    """What became of the files that were to be added to a book."""

    added: tuple[str, ...]
    same: tuple[str, ...]
    kept: tuple[str, ...]
    replaced: tuple[str, ...] = ()


def is_sheet(place: str) -> bool:
    """Whether a file of a book is a table: a .csv beside the folders."""
    return place.endswith(".csv") and "/" not in place


def places(connection: sqlite3.Connection) -> tuple[str, ...]:
    """Every text and table of the book, by name."""
    texts = (place for place, _ in titles(connection))
    return tuple(sorted((*texts, *sheet_places(connection), *bench_places(connection))))


def bytes_at(connection: sqlite3.Connection, place: str) -> bytes | None:
    """A text as it was typed, or a table as text; None where there is neither."""
    if place in KEPT_TABLES:
        return bench_bytes(connection, place)
    if not is_sheet(place):
        kept = text_at(connection, place)
        return None if kept is None else kept.body
    head = head_of(connection, place)
    if head is None:
        return None
    return as_csv(head, [row.cells for row in rows_of(connection, place)])


def add_all(
    connection: sqlite3.Connection, files: Mapping[str, bytes], *, is_newer: bool = False
) -> Loaded:
    """Take files in; one that is there and differs is kept as it is, unless `is_newer`.

    What is replaced stays in the history. Rows of the bench are never replaced: those that
    are missing are added.
    """
    done: dict[str, list[str]] = {"added": [], "same": [], "kept": [], "replaced": []}
    for place, data in sorted(files.items(), key=_in_turn):
        there = bytes_at(connection, place)
        if there is None:
            _add(connection, place, data)
            done["added"].append(place)
        elif there == as_kept(place, data):
            done["same"].append(place)
        elif place in KEPT_TABLES:
            done["added" if add_bench_rows(connection, place, data) else "same"].append(place)
        elif is_newer:
            _replace(connection, place, data)
            done["replaced"].append(place)
        else:
            done["kept"].append(place)
    return Loaded(**{name: tuple(found) for name, found in done.items()})


def _in_turn(file: tuple[str, bytes]) -> int:
    """Weighings come in before the steps and trials that are of them."""
    order = list(KEPT_TABLES)
    return order.index(file[0]) + 1 if file[0] in KEPT_TABLES else 0


def _replace(connection: sqlite3.Connection, place: str, data: bytes) -> None:
    if not is_sheet(place):
        kept = text_at(connection, place)
        save_text(connection, place, data, seen=None if kept is None else kept.revision)
        return
    head, rows = from_csv(data, place)
    replace_rows(connection, place, _wide(head, rows), rows)


def _add(connection: sqlite3.Connection, place: str, data: bytes) -> None:
    if place in KEPT_TABLES:
        add_bench_rows(connection, place, data)
        return
    if not is_sheet(place):
        save_text(connection, place, data, seen=None)
        return
    head, rows = from_csv(data, place)
    add_sheet(connection, place, _wide(head, rows))
    for cells in rows:
        add_row(connection, place, cells)


def as_kept(place: str, data: bytes) -> bytes:
    """Data as it would come out again."""
    if not is_sheet(place) and place not in KEPT_TABLES:
        return data
    head, rows = from_csv(data, place)
    return as_csv(_wide(head, rows), rows)


def _wide(head: tuple[str, ...], rows: tuple[tuple[str, ...], ...]) -> tuple[str, ...]:
    """The head with a name for every cell: a row longer than it loses nothing."""
    longest = max((len(cells) for cells in rows), default=0)
    return (*head, *(f"more_{n}" for n in range(1, longest - len(head) + 1)))
