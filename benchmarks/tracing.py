"""Where a lot went, over ten thousand cakes, beside the limit and beside one bare question."""

import sqlite3
import tempfile
import time
from contextlib import closing
from pathlib import Path

from benchmarks.measure import Row
from krume.store import (
    Book,
    KeptBatch,
    KeptCake,
    KeptLot,
    KeptPart,
    add_texts,
    database_of,
    keep_made,
    order_versions,
)
from krume.usecases import Asked, TraceWish, load_demo, trace_of
from krume.usecases.asking.remembering import forget_all

CAKES, LOTS, UNKNOWN, TIMES = 10_000, 400, 10, 5
WISH_S = 1.0
INGREDIENTS = (("ground hazelnuts", "hazelnuts"), ("eggs", "egg-whole-fresh"),
               ("caster sugar", "sugar-granulated"), ("butter", "butter-82-ciqual"))  # fmt: skip
BARE = """
SELECT cake.code FROM cake JOIN cake_batch ON cake_batch.cake = cake.key
JOIN batch ON batch.chain = cake_batch.batch JOIN batch_lot ON batch_lot.batch = batch.key
WHERE batch_lot.lot = ?
"""


def rows() -> list[Row]:
    """A lot that went into few cakes, and one that went into all of them."""
    with tempfile.TemporaryDirectory() as folder:
        book = full_book(Path(folder) / "book")
        bare_s = _bare_s(book, "N-7")
        few_s, all_s = recall_s(book, "N-7"), recall_s(book, "S-1")
    return [
        Row("recall of a lot in 25 cakes", few_s * 1e3, bare_s * 1e3, "ms", "one bare question"),
        Row(f"the same, over {CAKES} cakes", few_s, WISH_S, "s", "what is wished", 1.0),
        Row(f"recall of a lot in all {CAKES}", all_s, WISH_S, "s", "what is wished", 1.0),
    ]


def full_book(path: Path) -> Path:
    """Ten thousand cakes of as many batches for two thousand orders; each tenth lot not known."""
    load_demo(Asked(book=path))
    book = Book(path)
    orders = {
        f"orders/N{n}.txt": f"Order N{n}\nCustomer: Nr {n}\nPhone: 0{n}\nDate: 2027-0{1 + n % 5}-15"
        f"\n\n5 F1\n".encode()
        for n in range(CAKES // 5)
    }
    add_texts(book, orders)
    versions = order_versions(book)
    batches, cakes = [], []
    for n in range(CAKES):
        day = f"2027-0{1 + n % 5}-1{n % 5}"
        marks = (f"N-{n % LOTS}", f"E-{n % 97}", "S-1", f"B-{n % 31}")
        lots = tuple(
            KeptLot(*goods, mark if at != 0 or n % UNKNOWN else "")
            for at, (goods, mark) in enumerate(zip(INGREDIENTS, marks, strict=True))
        )
        batches.append(KeptBatch(f"b{n}", "F1", "Sponge", day, lots))
        order = f"N{n // 5}"
        parts = (KeptPart("F1", f"b{n}"),)
        cakes.append(
            KeptCake(
                f"c{n}",
                "F1",
                "Sponge",
                1,
                day,
                parts,
                order,
                versions[order],
                customer=f"Nr {n // 5}",
                handed_on=f"{day[:8]}15",
            )
        )
    keep_made(book, batches, cakes)
    return path


def recall_s(path: Path, mark: str) -> float:
    """Seconds of the whole answer, the best of some: nothing of it is kept in mind."""
    taken = []
    for _ in range(TIMES):
        forget_all()
        start = time.process_time()
        trace_of(mark, TraceWish(), Asked(book=path))
        taken.append(time.process_time() - start)
    return min(taken)


def _bare_s(path: Path, mark: str) -> float:
    """Seconds of the one question that only reads codes: no person, no doubt, no correction."""
    database = database_of(Book(path))
    if database is None:
        raise LookupError("the book has no database")
    with closing(sqlite3.connect(database)) as connection:
        start = time.process_time()
        for _ in range(TIMES):
            connection.execute(BARE, (mark,)).fetchall()
        return (time.process_time() - start) / TIMES
