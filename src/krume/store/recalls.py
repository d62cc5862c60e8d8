"""Where a lot went: cakes that surely hold it, and cakes where nothing rules it out."""

import json
import sqlite3
from collections.abc import Iterable
from dataclasses import dataclass

from krume.store.batches import KeptCake, bare_cake
from krume.store.bench_files import looking_at_bench
from krume.store.book import Book, database_of, places_in


@dataclass(frozen=True, slots=True)
class Reached:
    """A line of a batch, and the cake the batch went into; `cake` is None where it is in none.

    The cake is told without its parts.

    `batch_code` is empty where the cake's record does not say which batch it was: then only
    `formula` is known.
    """

    cake: KeptCake | None
    formula: str
    batch_code: str
    batch_chain: str
    made_on: str
    ingredient: str
    goods: str
    lot: str
    supplier: str


_LINES = """
SELECT batch.code, batch.chain, batch.formula, batch.made_on,
  line.ingredient, line.goods, line.lot, line.supplier, cake.key AS cake_key
FROM batch_lot AS line
JOIN batch_now AS batch ON batch.key = line.batch AND batch.state = 'made'
LEFT JOIN cake_batch AS part ON part.batch = batch.chain
LEFT JOIN cake_now AS cake ON cake.key = part.cake AND cake.state = 'made'
"""
_BY_LOT = f"{_LINES}WHERE line.lot = ?"
_OF_LOTS = "WHERE line.lot IN (SELECT value FROM json_each(?))"
_BY_LOTS = _LINES + _OF_LOTS
_OF_THESE = """
  AND (line.ingredient, line.goods) IN
  (SELECT json_extract(value, '$[0]'), json_extract(value, '$[1]') FROM json_each(?))
"""
_NOT_KNOWN = _BY_LOT + _OF_THESE
_PROMISES = ("orders", "classes")
_VERSIONS = """
SELECT place, revision FROM text WHERE NOT is_deleted
  AND (place >= 'orders/' AND place < 'orders0' OR place >= 'classes/' AND place < 'classes0')
"""
_NO_BATCH = """
SELECT part.formula, part.cake AS cake_key FROM cake_batch AS part
JOIN cake_now AS cake ON cake.key = part.cake AND cake.state = 'made'
WHERE NOT EXISTS (
  SELECT 1 FROM batch_now AS batch WHERE batch.chain = part.batch AND batch.state = 'made'
)
"""


def reached_by_lot(book: Book, lot: str) -> tuple[Reached, ...]:
    """Lines that say this lot went in, with the cakes, the newest first."""
    with looking_at_bench(book) as found:
        if found is None or not lot:
            return ()
        return _reached(found, found.execute(_BY_LOT, (lot,)))


def lot_written(book: Book, lot: str) -> tuple[str, str] | None:
    """A lot as some record has it, with what it is of there; None where none has it."""
    with looking_at_bench(book) as found:
        if found is None or not lot:
            return None
        row = found.execute(
            "SELECT line.lot, line.ingredient FROM batch_lot AS line "
            "JOIN batch_now AS batch ON batch.key = line.batch WHERE line.lot = ? LIMIT 1",
            (lot,),
        ).fetchone()
        return None if row is None else (row["lot"], row["ingredient"])


def reached_by_lots(book: Book, lots: Iterable[str]) -> tuple[Reached, ...]:
    """The same of several lots, with one question."""
    wanted = sorted({lot for lot in lots if lot})
    with looking_at_bench(book) as found:
        if found is None or not wanted:
            return ()
        return _reached(found, found.execute(_BY_LOTS, (json.dumps(wanted),)))


def not_known_lines(book: Book) -> tuple[tuple[str, str], ...]:
    """Ingredients, with their pantry keys, whose lot some batch does not say."""
    with looking_at_bench(book) as found:
        if found is None:
            return ()
        rows = found.execute(
            "SELECT DISTINCT line.ingredient, line.goods FROM batch_lot AS line "
            "JOIN batch_now AS batch ON batch.key = line.batch WHERE line.lot = ''"
        )
        return tuple((row["ingredient"], row["goods"]) for row in rows)


def not_ruled_out(book: Book, ingredients: Iterable[tuple[str, str]]) -> tuple[Reached, ...]:
    """Lines of these ingredients whose lot is not known, with the cakes, the newest first."""
    pairs = json.dumps([list(pair) for pair in ingredients])
    with looking_at_bench(book) as found:
        if found is None:
            return ()
        return _reached(found, found.execute(_NOT_KNOWN, ("", pairs)))


def without_batch(book: Book) -> tuple[Reached, ...]:
    """Cakes whose record does not say which batch a part of them came from."""
    with looking_at_bench(book) as found:
        if found is None:
            return ()
        rows = found.execute(_NO_BATCH).fetchall()
        cakes = _cakes(found, {row["cake_key"] for row in rows})
        return tuple(
            Reached(cakes[row["cake_key"]], row["formula"], "", "", "", "", "", "", "")
            for row in rows
        )


def recorded_orders(book: Book) -> dict[str, int]:
    """Orders that something was written down for, with the version of the text it was read of."""
    with looking_at_bench(book) as found:
        if found is None:
            return {}
        rows = found.execute(
            "SELECT order_name, max(order_revision) AS revision FROM cake_now "
            "WHERE order_name <> '' AND state = 'made' GROUP BY order_name"
        )
        return {row["order_name"]: row["revision"] for row in rows}


def order_versions(book: Book) -> dict[str, int]:
    """Orders and classes of the book by name, with the version of their text.

    Plain texts keep no versions: theirs is 0, which no record has.
    """
    if database_of(book) is None:
        held = {place: 0 for folder in _PROMISES for place in places_in(book, folder)}
    else:
        with looking_at_bench(book) as found:
            rows = found.execute(_VERSIONS).fetchall() if found is not None else []
        held = {row["place"]: row["revision"] for row in rows}
    return {
        place.rpartition("/")[2].removesuffix(".txt"): version for place, version in held.items()
    }


def _reached(connection: sqlite3.Connection, found: sqlite3.Cursor) -> tuple[Reached, ...]:
    rows = found.fetchall()
    cakes = _cakes(connection, {row["cake_key"] for row in rows if row["cake_key"] is not None})
    reached = [
        Reached(
            cakes.get(row["cake_key"] or ""), row["formula"], row["code"], row["chain"],
            row["made_on"], row["ingredient"], row["goods"], row["lot"], row["supplier"],
        )
        for row in rows
    ]  # fmt: skip
    return tuple(sorted(reached, key=lambda each: each.made_on, reverse=True))


def _cakes(connection: sqlite3.Connection, keys: set[str]) -> dict[str, KeptCake]:
    rows = connection.execute(
        "SELECT * FROM cake WHERE key IN (SELECT value FROM json_each(?))",
        (json.dumps(sorted(keys)),),
    ).fetchall()
    return {row["key"]: bare_cake(row) for row in rows}
