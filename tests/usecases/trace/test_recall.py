"""Where a lot went: nothing surely in it is missed, nothing that may hold it is left out."""

import csv
import io
from dataclasses import replace
from datetime import date
from itertools import count

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
    book_at,
    keep_made,
    keep_text,
    kept_text,
    put_table,
)
from krume.usecases import Asked, QuestionError
from krume.usecases.book.rows import table_now
from krume.usecases.trace.bags import BagsSaid
from krume.usecases.trace.find import Meant, meant_by
from krume.usecases.trace.recall import recall_of
from krume.usecases.trace.record import correct_cake, making_of, write_making
from krume.usecases.trace.result import TraceCake, TraceRecall

NUTS = "ground hazelnuts"


def _recall(mark: str, asked: Asked, ingredient: str = "") -> TraceRecall:
    return recall_of(meant_by(mark, ingredient, asked), ingredient, asked)


def _codes(cakes: tuple[TraceCake, ...]) -> list[str | None]:
    return [cake.code for cake in cakes]


def _lots(asked: Asked, mark: str, **cells: str) -> None:
    """The table of lots with more said of one lot."""
    table = table_now("lots.csv", asked)
    head = (*table.head, *(name for name in cells if name not in table.head))
    rows = [{**row.cells, **(cells if row.get("lot") == mark else {})} for row in table.rows]
    out = io.StringIO()
    lines = csv.DictWriter(out, head, restval="", lineterminator="\n")
    lines.writeheader()
    lines.writerows(rows)
    put_table(book_at(asked.book), "lots.csv", out.getvalue().encode(), seen=table.seen)


def test_a_cake_with_the_lot_is_sure_with_its_person_and_day(own: Asked) -> None:
    write_making(making_of("101", own), own)
    recall = _recall("L-008", own)
    (cake,) = recall.surely
    assert (cake.customer, cake.order, cake.handed_on) == ("M. Tarrow", "101", "2027-06-12")
    assert cake.why == ("L-008, ground hazelnuts, in F1, B270610-1 of 2027-06-10",)
    assert recall.not_ruled_out == ()
    assert recall.verdict == "L-008 is in 1 making."


def test_an_order_to_come_is_told_and_one_that_is_over_is_not_ruled_out(own: Asked) -> None:
    (coming,) = _recall("L-008", own).to_come
    assert (coming.code, coming.order, coming.what) == (None, "101", "T1")
    over = replace(own, on=date(2027, 6, 12))
    (open_one,) = _recall("L-008", over).not_ruled_out
    assert (open_one.code, open_one.order) == (None, "101")
    assert open_one.why == ("what went in is not written down",)


def test_a_lot_that_is_not_known_leaves_it_open_for_kin_too(own: Asked) -> None:
    said = {"F1": BagsSaid(lots={"eggs": ("E-1",)})}
    write_making(making_of("101", own, said=said), own)
    assert _codes(_recall("E-1", own).surely) == ["L270610-1"]
    other = _recall("E-2", own, "eggs")
    assert _codes(other.not_ruled_out) == ["L270610-1"]
    assert all("egg yolks" in x or "pasteurised egg white" in x for x in other.not_ruled_out[0].why)


def test_another_bag_that_was_named_rules_the_lot_out(own: Asked) -> None:
    said = {"F1": BagsSaid(lots={NUTS: ("L-019",)})}
    write_making(making_of("101", own, said=said), own)
    recall = _recall("L-008", own)
    assert (recall.surely, recall.not_ruled_out, recall.to_come) == ((), (), ())
    assert recall.verdict.startswith("No cake that is written down holds L-008")


def test_a_part_whose_batch_is_not_known_is_not_ruled_out(own: Asked) -> None:
    write_making(making_of("101", own, said={"F1": BagsSaid(is_unknown=True)}), own)
    (cake,) = _recall("L-008", own).not_ruled_out
    assert cake.why == ("which batch of F1 went in is not known",)
    assert _recall("L-012", own).not_ruled_out == ()


def test_a_cake_that_was_taken_back_is_not_called(own: Asked) -> None:
    (cake,) = write_making(making_of("101", own), own)
    correct_cake(cake.code, own, seen=cake.key, parts={}, reason="never made", is_void=True)
    recall = _recall("L-008", own)
    assert (recall.surely, recall.not_ruled_out) == ((), ())
    assert [batch.code for batch in recall.batches] == ["B270610-1"]


def test_a_batch_that_took_another_as_its_lot_passes_the_lot_on(own: Asked) -> None:
    book = book_at(own.book)
    mix = KeptBatch("m", "F3", "Mix", "2027-06-01", (KeptLot("millet flour", "", "L-004"),))
    keep_made(book, [mix])
    sponge = KeptBatch("s", "F5", "Sponge", "2027-06-02", (KeptLot("dry mix", "", "B270601-1"),))
    cake = KeptCake("c", "F5", "Sponge", 1, "2027-06-02", (KeptPart("F5", "s"),))
    keep_made(book, [sponge], [cake])
    assert _codes(_recall("L-004", own).surely) == ["L270602-1"]


def test_days_of_a_lot_rule_out_what_was_made_before_it_came_and_are_counted(own: Asked) -> None:
    write_making(making_of("101", own, said={"F1": BagsSaid(lots={NUTS: ()})}), own)
    assert _codes(_recall("L-008", own).not_ruled_out) == ["L270610-1"]
    _lots(own, "L-008", came="2027-06-11", supplier="Mill at Orl")
    recall = _recall("L-008", own)
    assert (recall.not_ruled_out, recall.ruled_out_by_days) == ((), 1)
    assert (recall.supplier, recall.came) == ("Mill at Orl", "2027-06-11")


def test_an_order_that_was_changed_after_it_was_written_down_is_looked_at_again(own: Asked) -> None:
    write_making(making_of("101", own), own)
    kept = kept_text(book_at(own.book), "orders/101.txt")
    assert kept is not None
    keep_text(book_at(own.book), "orders/101.txt", kept.body + b"2 F4\n", seen=1)
    assert [(cake.what, cake.pieces) for cake in _recall("L-009", own).to_come if
            cake.order == "101"] == [("F4", 2)]  # fmt: skip


def test_a_thing_that_cannot_be_read_is_not_ruled_out(own: Asked) -> None:
    text = b"Order\nCustomer: A. Nowak\nPhone: +49 1\nDate: 2027-06-01\n\n1 Lost torte\n"
    keep_text(book_at(own.book), "orders/90.txt", text, seen=None)
    (cake,) = _recall("L-008", own).not_ruled_out
    assert (cake.what, cake.customer, cake.telephone) == ("Lost torte", "A. Nowak", "+49 1")


@pytest.mark.parametrize("text", [b"Bare\n", b"Odd\n\n30 g the nice nuts\n"])
def test_a_thing_whose_lines_say_nothing_is_not_ruled_out(own: Asked, text: bytes) -> None:
    book = book_at(own.book)
    keep_text(book, "formulas/BARE.txt", text, seen=None)
    keep_text(book, "orders/91.txt", b"Order\nDate: 2027-06-01\n\n1 BARE\n", seen=None)
    assert [cake.what for cake in _recall("L-008", own).not_ruled_out] == ["BARE"]


def test_one_mark_on_two_goods_is_asked(own: Asked) -> None:
    _lots(own, "L-009", lot="L-008")
    with pytest.raises(QuestionError) as caught:
        _recall("L-008", own)
    assert [o.line for o in caught.value.problem.options] == [NUTS, "ground walnuts"]
    write_making(making_of("101", own, said={"F1": BagsSaid(lots={NUTS: ("L-008",)})}), own)
    assert _codes(_recall("L-008", own, "hazelnuts").surely) == ["L270610-1"]
    assert _recall("L-008", own, "ground walnuts").surely == ()


def test_those_handed_over_last_are_called_first(own: Asked) -> None:
    book = book_at(own.book)
    keep_made(book, [KeptBatch("b", "F1", "", "2027-05-01", (KeptLot(NUTS, "hazelnuts", "L-8"),))])
    cakes = [
        KeptCake(f"c{n}", "F1", "", 1, "2027-05-01", (KeptPart("F1", "b"),), handed_on=day)
        for n, day in enumerate(("2027-05-03", "", "2027-05-09", "2027-05-05"))
    ]
    keep_made(book, [], cakes)
    found = _recall("L-8", own).surely
    assert [c.handed_on for c in found] == ["2027-05-09", "2027-05-05", "2027-05-03", None]


RUNS = count()
LINE = st.sampled_from(["L-8", "L-9", ""])
HISTORY = st.lists(st.tuples(LINE, LINE, st.booleans()), min_size=6, max_size=14)


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Asked:
    """One book for many histories."""
    path = tmp_path_factory.mktemp("recall") / "book"
    add_texts(Book(path), {"orders/none.txt": b"Order\nDate: 2027-01-01\n"})
    return Asked(book=path, on=date(2027, 1, 1))


@settings(max_examples=8, deadline=None)
@given(HISTORY)
def test_sure_and_open_are_what_a_reading_of_all_records_says(
    shared: Asked, history: list[tuple[str, str, bool]]
) -> None:
    """Each cake of two batches, the second perhaps not known; held against plain reading."""
    run = next(RUNS)
    sure, open_ones, batches, cakes = set(), set(), [], []
    for number, (first, second, has_second) in enumerate(history):
        key = f"{run}-{number}"
        for at, lot in enumerate((first, second)):
            line = KeptLot(f"paste {run}", "", lot and f"{lot}-{run}")
            batches.append(KeptBatch(f"{key}-{at}", "F1", "", "2026-12-01", (line,)))
        parts = (KeptPart("F1", f"{key}-0"), KeptPart("F1", f"{key}-1" if has_second else ""))
        cakes.append(KeptCake(key, "F1", "", 1, "2026-12-01", parts))
        lots = {first, second} if has_second else {first, ""}
        if "L-8" in lots:
            sure.add(key)
        elif "" in lots:
            open_ones.add(key)
    kept = keep_made(book_at(shared.book), batches, cakes)[1]
    names = {cake.code: cake.key for cake in kept}
    recall = recall_of(Meant("lot", f"L-8-{run}"), f"paste {run}", shared)
    assert {names[c.code] for c in recall.surely if c.code} == sure
    assert {names[c.code] for c in recall.not_ruled_out if c.code in names} == open_ones
