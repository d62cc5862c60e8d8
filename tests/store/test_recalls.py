"""Where a lot went is told of what was written down, and what was not is never left out."""

from dataclasses import replace
from itertools import count
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from krume.store import (
    Book,
    KeptBatch,
    KeptCake,
    KeptLot,
    KeptPart,
    add_texts,
    keep_made,
    keep_text,
    not_known_lines,
    not_ruled_out,
    order_versions,
    reached_by_lot,
    recorded_orders,
    without_batch,
)

DAY = "2027-06-11"
NUTS, EGGS = ("hazelnuts", "hazelnut"), ("egg", "egg")


def _batch(key: str, nuts: str, eggs: str = "") -> KeptBatch:
    return KeptBatch(key, "F1", "Sponge", DAY, (KeptLot(*NUTS, nuts), KeptLot(*EGGS, eggs)))


def _cake(key: str, *batches: str) -> KeptCake:
    parts = tuple(KeptPart("F1", each) for each in batches)
    return KeptCake(key, "T1", "Torte", 1, DAY, parts, order_name=f"order {key}", order_revision=2)


def _book(folder: Path) -> Book:
    book = Book(folder)
    add_texts(book, {"orders/7.txt": b"Order 7\n"})
    return book


def test_a_lot_reaches_the_cakes_of_its_batches_and_batches_in_no_cake(tmp_path: Path) -> None:
    book = _book(tmp_path / "a")
    keep_made(book, [_batch("b1", "L-8"), _batch("b2", "L-8"), _batch("b3", "L-9")],
              [_cake("c1", "b1"), _cake("c2", "b1", "b3"), _cake("c3", "b3")])  # fmt: skip
    found = reached_by_lot(book, "l-8")
    assert sorted(("" if x.cake is None else x.cake.key, x.batch_chain) for x in found) == [
        ("", "b2"), ("c1", "b1"), ("c2", "b1"),
    ]  # fmt: skip
    assert reached_by_lot(book, "") == ()


def test_a_line_without_a_lot_is_not_ruled_out_for_its_own_ingredient(tmp_path: Path) -> None:
    book = _book(tmp_path / "a")
    keep_made(book, [_batch("b1", ""), _batch("b2", "L-9", "E-1")], [_cake("c1", "b1", "b2")])
    assert set(not_known_lines(book)) == {NUTS, EGGS}
    assert [x.batch_chain for x in not_ruled_out(book, [NUTS])] == ["b1"]
    assert not_ruled_out(book, []) == ()


def test_a_part_without_a_batch_or_with_a_void_one_is_told(tmp_path: Path) -> None:
    book = _book(tmp_path / "a")
    keep_made(book, [_batch("b1", "L-8")], [_cake("c1", ""), _cake("c2", "b1")])
    assert [x.cake.key for x in without_batch(book) if x.cake] == ["c1"]
    keep_made(book, [replace(_batch("b2", "L-8"), replaces="b1", state="void")])
    assert sorted(x.cake.key for x in without_batch(book) if x.cake) == ["c1", "c2"]
    assert reached_by_lot(book, "L-8") == ()


def test_orders_are_told_with_the_version_that_was_read(tmp_path: Path) -> None:
    book = _book(tmp_path / "a")
    keep_text(book, "orders/7.txt", b"Order 7\nNote: more\n", seen=1)
    keep_made(book, [], [_cake("c1", "")])
    assert order_versions(book) == {"7": 2}
    assert recorded_orders(book) == {"order c1": 2}


LOT = st.sampled_from(["", "L-8", "L-9"])
HISTORY = st.lists(st.tuples(st.integers(0, 2), LOT, st.booleans()), max_size=6)
RUNS = count()


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Book:
    """One book for many histories, each under names of its own."""
    return _book(tmp_path_factory.mktemp("recalls") / "a")


@settings(max_examples=60, deadline=None)
@given(HISTORY)
def test_only_the_last_record_of_a_batch_counts(
    shared: Book, history: list[tuple[int, str, bool]]
) -> None:
    """Held against a plain dictionary of what was said last."""
    run = next(RUNS)
    now: dict[int, KeptBatch] = {}
    records = []
    for number, (which, lot, is_void) in enumerate(history):
        lots = (KeptLot(f"nuts {run}", "", lot and f"{lot} of {run}"),)
        batch = KeptBatch(f"{run}-{number}", "F1", "", DAY, lots)
        before = now.get(which)
        replaces = None if before is None else before.key
        now[which] = replace(batch, replaces=replaces, state="void" if is_void else "made")
        records.append(now[which])
    keep_made(shared, records)
    held = [each.lots[0].lot for each in now.values() if each.state == "made"]
    for lot in ("L-8", "L-9"):
        name = f"{lot} of {run}"
        assert len(reached_by_lot(shared, name)) == held.count(name)
    assert len(not_ruled_out(shared, [(f"nuts {run}", "")])) == held.count("")
