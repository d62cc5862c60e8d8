"""What is kept as it happens, as tables that go out and come in: weighings, trials, lots of bakes.

A row is a fact with a key of its own: coming in, the ones that are there stay as they are and
the missing ones are added.
"""

import json
import sqlite3
from dataclasses import dataclass

from krume.base import StoreError
from krume.store.sheets import as_csv, from_csv


@dataclass(frozen=True, slots=True)
class BenchTable:
    """One such table: its columns, and which are numbers; `weighing` is that one's key."""

    table: str
    head: tuple[str, ...]
    numbers: frozenset[str]
    key: str = "key"


BENCH_TABLES = {
    "bench/weighings.csv": BenchTable(
        "weighing",
        ("key", "place", "place_revision", "started_at", "scale_step_g", "state"),
        frozenset(("place_revision", "scale_step_g")),
    ),
    "bench/steps.csv": BenchTable(
        "weighing_step",
        ("client_id", "weighing", "kind", "position", "line", "planned_g", "display_g", "got_g",
         "said", "of", "is_undone", "at"),
        frozenset(("position", "line", "planned_g", "display_g", "got_g", "is_undone")),
        "client_id",
    ),
    "bench/clocks.csv": BenchTable(
        "clock",
        ("client_id", "weighing", "kind", "reason", "started_at", "stopped_at"),
        frozenset(),
        "client_id",
    ),
    "bench/trials.csv": BenchTable(
        "trial",
        ("key", "place", "weighing", "sg", "core_c", "centre_mm", "edge_mm", "minutes", "baked_g",
         "word", "note", "at", "revision", "changed_at"),
        frozenset(("sg", "core_c", "centre_mm", "edge_mm", "minutes", "baked_g", "revision")),
    ),
}  # fmt: skip
"""The tables of the bench by their place in an export, in the order they come in."""

TRACE_TABLES = {
    "trace/batches.csv": BenchTable(
        "batch",
        ("key", "chain", "code", "formula", "title", "made_on", "trial", "state", "replaces",
         "reason", "at"),
        frozenset(),
    ),
    "trace/batch_lots.csv": BenchTable(
        "batch_lot",
        ("batch", "position", "ingredient", "goods", "lot", "supplier"),
        frozenset(("position",)),
        "batch, position",
    ),
    "trace/cakes.csv": BenchTable(
        "cake",
        ("key", "chain", "code", "what", "title", "pieces", "order_name", "order_revision",
         "customer", "made_on", "handed_on", "state", "replaces", "reason", "at"),
        frozenset(("pieces", "order_revision")),
    ),
    "trace/cake_batches.csv": BenchTable(
        "cake_batch",
        ("cake", "position", "formula", "batch"),
        frozenset(("position",)),
        "cake, position",
    ),
}  # fmt: skip
"""The tables of which lots went where; each row stays as it was written down."""

KEPT_TABLES = {**BENCH_TABLES, **TRACE_TABLES}

_MAY_BE_NOTHING = ("weighing", "stopped_at", "replaces")


def bench_places(connection: sqlite3.Connection) -> tuple[str, ...]:
    """Tables that hold something."""
    return tuple(place for place, kind in KEPT_TABLES.items() if _holds(connection, kind.table))


def _holds(connection: sqlite3.Connection, table: str) -> bool:
    found = connection.execute(f"SELECT EXISTS (SELECT 1 FROM {table})").fetchone()  # noqa: S608
    return bool(found[0])


def bench_bytes(connection: sqlite3.Connection, place: str) -> bytes | None:
    """A table as text; None where it is empty."""
    kind = KEPT_TABLES[place]
    columns = ", ".join(_column(kind, name) for name in kind.head)
    # Names of tables and columns are this module's own; nothing typed is in them.
    asked = f"SELECT {columns} FROM {kind.table}{_joined(kind)} ORDER BY {kind.table}.id"  # noqa: S608
    rows = connection.execute(asked).fetchall()
    cells = [tuple("" if v is None else str(v) for v in row) for row in rows]
    return as_csv(kind.head, cells) if cells else None


def add_bench_rows(connection: sqlite3.Connection, place: str, data: bytes) -> int:
    """Take rows in; how many were not there yet."""
    kind = KEPT_TABLES[place]
    head, rows = from_csv(data, place)
    found = [dict(zip(head, cells, strict=False)) for cells in rows]
    try:
        return sum(_add(connection, kind, row) for row in found)
    except ValueError as error:
        raise StoreError(
            f"{place} holds a word where a number belongs ({error}). Nothing was taken in.",
            where=place,
            got=str(error),
            want="the table as it was written out",
        ) from error


def _column(kind: BenchTable, name: str) -> str:
    return "weighing.key" if name == "weighing" else f"{kind.table}.{name}"


def _joined(kind: BenchTable) -> str:
    if "weighing" not in kind.head:
        return ""
    return f" LEFT JOIN weighing ON weighing.id = {kind.table}.weighing_id"


def _add(connection: sqlite3.Connection, kind: BenchTable, row: dict[str, str]) -> bool:
    """One row, unless its key is there; a second open weighing of a text is set aside."""
    names = [name for name in kind.head if name in row]
    values = [_value(kind, name, row[name]) for name in names]
    if kind.table == "weighing" and row.get("state") == "open" and _is_open(connection, row):
        values[names.index("state")] = "aside"
    columns = ", ".join("weighing_id" if name == "weighing" else name for name in names)
    marks = ", ".join(
        "(SELECT id FROM weighing WHERE key = ?)" if name == "weighing" else "?" for name in names
    )
    into = f"INSERT INTO {kind.table} ({columns}) VALUES ({marks})"  # noqa: S608
    done = connection.execute(f"{into} ON CONFLICT ({kind.key}) DO NOTHING", values).rowcount
    if done == 1 and kind.table == "trial":
        connection.execute(
            "INSERT INTO trial_history (trial_id, revision, cells, changed_at) "
            "SELECT id, revision, ?, changed_at FROM trial WHERE key = ?",
            (json.dumps(row, ensure_ascii=False), row["key"]),
        )
    return done == 1


def _is_open(connection: sqlite3.Connection, row: dict[str, str]) -> bool:
    found = connection.execute(
        "SELECT 1 FROM weighing WHERE place = ? AND state = 'open'", (row.get("place", ""),)
    ).fetchone()
    return found is not None


def _value(kind: BenchTable, name: str, cell: str) -> str | float | int | None:
    if cell == "" and (name in kind.numbers or name in _MAY_BE_NOTHING):
        return None
    if name not in kind.numbers:
        return cell
    number = float(cell)
    return int(number) if number.is_integer() else number
