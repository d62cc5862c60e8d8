"""What was made of which lots, as it was written down: nothing is overwritten, nothing is lost.

A batch is one bowl of a formula with the lots that went in; a cake names the batches it was built
of. A wrong record is corrected by a new one that names the old; both stay.
"""

import json
import sqlite3
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from krume.base import ConflictError, NotFoundError
from krume.store.bench_files import looking_at_bench
from krume.store.book import Book
from krume.store.database import writing
from krume.store.edits import editable
from krume.store.moment import moment

BATCH_SIGN, CAKE_SIGN = "B", "L"
"""What a code begins with; the letter L is what EU law puts before the lot of a food."""


@dataclass(frozen=True, slots=True)
class KeptLot:
    """A line of a batch with the lot that went in; an empty lot is not known.

    `goods` is the pantry's key of the ingredient, empty where it has none; `supplier` is whom the
    lot came from, as it was known when this was written.
    """

    ingredient: str
    goods: str
    lot: str
    supplier: str = ""


@dataclass(frozen=True, slots=True)
class KeptBatch:
    """One bowl of a formula. `chain` is the key of its first record; `replaces` that of the last.

    `trial` is the key of the bake it was written down as, or empty.
    """

    key: str
    formula: str
    title: str
    made_on: str
    lots: tuple[KeptLot, ...]
    trial: str = ""
    state: str = "made"
    reason: str = ""
    replaces: str | None = None
    chain: str = ""
    code: str = ""
    at: str = ""


@dataclass(frozen=True, slots=True)
class KeptPart:
    """A formula in a cake, and the chain of the batch it came from; empty is not known."""

    formula: str
    batch: str


@dataclass(frozen=True, slots=True)
class KeptCake:
    """Cakes of one kind made together, `pieces` of them under one lot code.

    `order_name` and `customer` are empty where no order asked for it, `handed_on` where the day is
    not known; `order_revision` is the version of the order's text that was read.
    """

    key: str
    what: str
    title: str
    pieces: int
    made_on: str
    parts: tuple[KeptPart, ...]
    order_name: str = ""
    order_revision: int = 0
    customer: str = ""
    handed_on: str = ""
    state: str = "made"
    reason: str = ""
    replaces: str | None = None
    chain: str = ""
    code: str = ""
    at: str = ""


_BATCH = (
    "key", "chain", "code", "formula", "title", "made_on", "trial", "state", "replaces", "reason",
    "at",
)  # fmt: skip
_CAKE = (
    "key", "chain", "code", "what", "title", "pieces", "order_name", "order_revision", "customer",
    "made_on", "handed_on", "state", "replaces", "reason", "at",
)  # fmt: skip
_ALL, _NOW = "", "_now"
"""Every record, or only those that no later one corrected."""


def keep_made(
    book: Book, batches: Iterable[KeptBatch], cakes: Iterable[KeptCake] = ()
) -> tuple[tuple[KeptBatch, ...], tuple[KeptCake, ...]]:
    """Write down batches and cakes, all or none; what was sent before by its key is kept once.

    Codes are given here. Raises ConflictError where a record was corrected meanwhile.
    """
    with writing(editable(book)) as found:
        kept = tuple(_keep_batch(found, batch) for batch in batches)
        return kept, tuple(_keep_cake(found, cake) for cake in cakes)


def batches_now(
    book: Book, *, formula: str = "", chains: Iterable[str] | None = None, most: int = 200
) -> tuple[KeptBatch, ...]:
    """Batches as they stand now, the newest first: of a formula, of these chains, or all."""
    wanted = None if chains is None else sorted(set(chains))
    with looking_at_bench(book) as found:
        if found is None or wanted == []:
            return ()
        if wanted is not None:
            return _batches(found, _NOW, f"chain IN ({_marks(wanted)})", wanted)
        return _batches(found, _NOW, "? IN ('', formula)", [formula], most)


def batches_called(book: Book, code: str) -> tuple[KeptBatch, ...]:
    """Batches that a code means, as they stand now; an old code is the new one's too."""
    with looking_at_bench(book) as found:
        return () if found is None else _batches(found, _NOW, "code = ?", [code])


def batch_of_trial(book: Book, trial: str) -> KeptBatch | None:
    """The batch a bake was written down as, as it stands now."""
    with looking_at_bench(book) as found:
        if found is None:
            return None
        rows = _batches(found, _NOW, "trial = ?", [trial], 1)
    return rows[0] if rows else None


def batch_history(book: Book, chain: str) -> tuple[KeptBatch, ...]:
    """Every record of a batch, the newest first."""
    with looking_at_bench(book) as found:
        return () if found is None else _batches(found, _ALL, "chain = ?", [chain])


def cakes_now(book: Book, *, most: int = 50) -> tuple[KeptCake, ...]:
    """Cakes as they stand now, the newest first."""
    with looking_at_bench(book) as found:
        return () if found is None else _cakes(found, _NOW, "1", [], most)


def cakes_called(book: Book, code: str) -> tuple[KeptCake, ...]:
    """Cakes that a lot code means, as they stand now."""
    with looking_at_bench(book) as found:
        return () if found is None else _cakes(found, _NOW, "code = ?", [code])


def cakes_of_order(book: Book, name: str) -> tuple[KeptCake, ...]:
    """Cakes made for an order, as they stand now, in the order they were written down."""
    with looking_at_bench(book) as found:
        if found is None or not name:
            return ()
        return _cakes(found, _NOW, "order_name = ?", [name])[::-1]


def cakes_of_kind(book: Book, what: str) -> tuple[KeptCake, ...]:
    """Cakes of one kind made for no order, the newest first."""
    with looking_at_bench(book) as found:
        if found is None:
            return ()
        return _cakes(found, _NOW, "what = ? AND order_name = ''", [what])


def reached_by_batch(book: Book, chain: str) -> tuple[KeptCake, ...]:
    """Cakes that a batch went into, as they stand now."""
    with looking_at_bench(book) as found:
        if found is None:
            return ()
        where = "state = 'made' AND key IN (SELECT cake FROM cake_batch WHERE batch = ?)"
        return _cakes(found, _NOW, where, [chain])


def cake_history(book: Book, chain: str) -> tuple[KeptCake, ...]:
    """Every record of a cake, the newest first."""
    with looking_at_bench(book) as found:
        return () if found is None else _cakes(found, _ALL, "chain = ?", [chain])


def _keep_batch(connection: sqlite3.Connection, batch: KeptBatch) -> KeptBatch:
    there = _batches(connection, _ALL, "key = ?", [batch.key])
    if there:
        return there[0]
    chain, code = _continued(connection, "batch", batch.replaces) or (
        batch.key,
        _next_code(connection, "batch", BATCH_SIGN, batch.made_on),
    )
    kept = replace(batch, chain=chain, code=code, at=moment())
    _insert(connection, "batch", _BATCH, kept)
    connection.executemany(
        "INSERT INTO batch_lot (batch, position, ingredient, goods, lot, supplier) "
        "VALUES (?, ?, ?, ?, ?, ?)",
        [
            (kept.key, at, each.ingredient, each.goods, each.lot, each.supplier)
            for at, each in enumerate(kept.lots)
        ],
    )
    return kept


def _keep_cake(connection: sqlite3.Connection, cake: KeptCake) -> KeptCake:
    there = _cakes(connection, _ALL, "key = ?", [cake.key])
    if there:
        return there[0]
    chain, code = _continued(connection, "cake", cake.replaces) or (
        cake.key,
        _next_code(connection, "cake", CAKE_SIGN, cake.made_on),
    )
    kept = replace(cake, chain=chain, code=code, at=moment())
    _insert(connection, "cake", _CAKE, kept)
    connection.executemany(
        "INSERT INTO cake_batch (cake, position, formula, batch) VALUES (?, ?, ?, ?)",
        [(kept.key, at, each.formula, each.batch) for at, each in enumerate(kept.parts)],
    )
    return kept


def _insert(
    connection: sqlite3.Connection, table: str, names: Sequence[str], kept: KeptBatch | KeptCake
) -> None:
    values = [getattr(kept, name) for name in names]
    into = f"INSERT INTO {table} ({', '.join(names)}) VALUES ({_marks(values)})"  # noqa: S608
    connection.execute(into, values)


def _continued(
    connection: sqlite3.Connection, table: str, replaced: str | None
) -> tuple[str, str] | None:
    """Chain and code of the record that is corrected; None for a first record."""
    if replaced is None:
        return None
    asked = f"SELECT chain, code FROM {table} WHERE key = ?"  # noqa: S608
    row = connection.execute(asked, (replaced,)).fetchone()
    if row is None:
        raise NotFoundError("The book has no such record to correct.", where=replaced, got=replaced)
    newer = f"SELECT 1 FROM {table} WHERE replaces = ?"  # noqa: S608
    if connection.execute(newer, (replaced,)).fetchone() is not None:
        message = "This record was corrected since you opened it. Nothing was written; look again."
        raise ConflictError(message, where=row["code"])
    return row["chain"], row["code"]


def _next_code(connection: sqlite3.Connection, table: str, sign: str, day: str) -> str:
    """The sign, the day in six digits, a running number of that day: L270612-1."""
    start = f"{sign}{day[2:4]}{day[5:7]}{day[8:10]}-"
    asked = f"SELECT DISTINCT code FROM {table} WHERE code >= ? AND code < ?"  # noqa: S608
    rows = connection.execute(asked, (start, f"{start}:"))
    numbers = [int(end) for (code,) in rows if (end := code[len(start) :]).isdecimal()]
    return f"{start}{max(numbers, default=0) + 1}"


def _marks(values: Iterable[object]) -> str:
    return ", ".join("?" for _ in values)


def _batches(
    connection: sqlite3.Connection, which: str, where: str, values: list[str], most: int = -1
) -> tuple[KeptBatch, ...]:
    # Tables and conditions are this module's own words; what was typed is bound.
    asked = f"SELECT * FROM batch{which} WHERE {where} ORDER BY made_on DESC, id DESC LIMIT ?"  # noqa: S608
    rows = connection.execute(asked, (*values, most)).fetchall()
    lots: dict[str, list[KeptLot]] = {}
    asked = (
        "SELECT * FROM batch_lot WHERE batch IN (SELECT value FROM json_each(?)) "
        "ORDER BY batch, position"
    )
    for row in connection.execute(asked, (json.dumps([row["key"] for row in rows]),)):
        one = KeptLot(row["ingredient"], row["goods"], row["lot"], row["supplier"])
        lots.setdefault(row["batch"], []).append(one)
    return tuple(
        KeptBatch(**{name: row[name] for name in _BATCH}, lots=tuple(lots.get(row["key"], ())))
        for row in rows
    )


def _cakes(
    connection: sqlite3.Connection, which: str, where: str, values: list[str], most: int = -1
) -> tuple[KeptCake, ...]:
    # Tables and conditions are this module's own words; what was typed is bound.
    asked = f"SELECT * FROM cake{which} WHERE {where} ORDER BY made_on DESC, id DESC LIMIT ?"  # noqa: S608
    return with_parts(connection, connection.execute(asked, (*values, most)).fetchall())


def with_parts(connection: sqlite3.Connection, rows: Sequence[sqlite3.Row]) -> tuple[KeptCake, ...]:
    """Rows of cakes with what each was built of."""
    parts: dict[str, list[KeptPart]] = {}
    asked = (
        "SELECT * FROM cake_batch WHERE cake IN (SELECT value FROM json_each(?)) "
        "ORDER BY cake, position"
    )
    for row in connection.execute(asked, (json.dumps([row["key"] for row in rows]),)):
        parts.setdefault(row["cake"], []).append(KeptPart(row["formula"], row["batch"]))
    return tuple(replace(bare_cake(row), parts=tuple(parts.get(row["key"], ()))) for row in rows)


def bare_cake(row: sqlite3.Row) -> KeptCake:
    """A cake without what it was built of."""
    return KeptCake(**{name: row[name] for name in _CAKE}, parts=())
