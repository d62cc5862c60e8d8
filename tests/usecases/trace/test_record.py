"""Writing down what went into the cakes of an order, and putting a wrong record right."""

from datetime import date
from pathlib import Path

import pytest

from krume.base import ConflictError, InputError, NotFoundError, StoreError
from krume.store import (
    KeptTrial,
    batch_history,
    book_at,
    cake_history,
    keep_text,
    keep_trial,
    kept_text,
)
from krume.usecases import Asked
from krume.usecases.trace.bags import BagsSaid
from krume.usecases.trace.record import (
    bags_of_trial,
    correct_batch,
    correct_cake,
    earlier_batches,
    last_code,
    making_of,
    write_making,
    write_trial_batch,
)

DAY = date(2027, 6, 10)


def test_an_order_is_written_down_with_a_batch_for_each_formula(own: Asked) -> None:
    (cake,) = write_making(making_of("101", own), own)
    assert (cake.code, cake.what, cake.pieces, cake.customer) == ("L270610-1", "T1", 1, "M. Tarrow")
    assert (cake.order_name, cake.order_revision, cake.handed_on) == ("101", 1, "2027-06-12")
    assert [part.formula for part in cake.parts] == ["F1", "C1", "C5", "S1"]
    assert [batch.code for batch in earlier_batches("F1", own)] == ["B270610-1"]
    again = making_of("101", own)
    assert again.things == ()
    assert again.done == (cake,)


def test_a_class_is_written_down_as_its_pieces(own: Asked) -> None:
    (cake,) = write_making(making_of("CLASS7", own), own)
    assert (cake.order_name, cake.what) == ("CLASS7", "F3")
    assert cake.pieces > 1


def test_the_same_torte_may_be_made_again_but_is_not_by_sending_it_twice(own: Asked) -> None:
    making = making_of("T1", own)
    before = last_code(making, own)
    first = write_making(making, own, before=before)
    assert write_making(making, own, before=before) == first
    second = write_making(making_of("T1", own), own)
    assert [cake.code for cake in (*first, *second)] == ["L270610-1", "L270610-2"]


def test_two_things_of_an_order_share_the_batch_of_what_both_take(own: Asked) -> None:
    cakes = {cake.what: cake for cake in write_making(making_of("102", own), own)}
    syrup = {p.batch for c in cakes.values() for p in c.parts if p.formula == "S1"}
    assert set(cakes) == {"T2", "T3", "TART"}
    assert cakes["T2"].pieces == 2
    assert len(syrup) == 1


def test_an_earlier_batch_is_used_again_and_not_known_stays_not_known(own: Asked) -> None:
    write_making(making_of("T1", own), own)
    said = {"F1": BagsSaid(batch="b270610-1"), "C1": BagsSaid(is_unknown=True)}
    (cake,) = write_making(making_of("101", own, said=said), own)
    parts = {part.formula: part.batch for part in cake.parts}
    assert parts["F1"] == earlier_batches("F1", own)[0].chain
    assert parts["C1"] == ""
    assert len(earlier_batches("F1", own)) == 1


@pytest.mark.parametrize(
    ("made_on", "said", "error", "words"),
    [
        (date(2027, 6, 11), {}, InputError, "still to come"),
        (DAY, {"F1": BagsSaid(made_on=date(2027, 6, 11))}, InputError, "F1 cannot be of"),
        (DAY, {"F1": BagsSaid(batch="B1-1")}, NotFoundError, "No batch is called B1-1"),
    ],
)
def test_what_cannot_be_is_refused_and_nothing_is_written(
    own: Asked, made_on: date, said: dict[str, BagsSaid], error: type[Exception], words: str
) -> None:
    with pytest.raises(error, match=words):
        write_making(making_of("101", own, made_on=made_on, said=said), own)
    assert earlier_batches("C1", own) == ()


def test_a_batch_of_another_formula_is_refused(own: Asked) -> None:
    write_making(making_of("T1", own), own)
    said = {"C1": BagsSaid(batch="B270610-1")}
    with pytest.raises(InputError, match="a batch of F1, not of C1"):
        write_making(making_of("101", own, said=said), own)


def test_a_thing_added_to_an_order_later_is_still_to_be_written(own: Asked) -> None:
    write_making(making_of("101", own), own)
    book = book_at(own.book)
    kept = kept_text(book, "orders/101.txt")
    assert kept is not None
    keep_text(book, "orders/101.txt", kept.body + b"1 TART\n", seen=1)
    assert [sold.name for sold in making_of("101", own).things] == ["TART"]


def test_a_batch_is_put_right_by_a_new_record_and_the_old_one_stays(own: Asked) -> None:
    write_making(making_of("101", own), own)
    book, was = book_at(own.book), earlier_batches("F1", own)[0]
    bags = making_of("T1", own, said={"F1": BagsSaid(lots={"eggs": ("E-1",)})}).bags[0]
    kept = correct_batch(was.code, bags, own, seen=was.key, reason="  the \n box ")
    assert (kept.code, kept.reason) == (was.code, "the box")
    assert {x.lot for x in kept.lots if x.ingredient == "eggs"} == {"E-1"}
    assert batch_history(book, was.chain) == (kept, was)
    with pytest.raises(ConflictError, match="corrected since"):
        correct_batch(was.code, bags, own, seen=was.key, reason="again")
    assert correct_batch(was.code, bags, own, seen=kept.key, reason="same") == kept


def test_a_cake_is_put_right_or_taken_back(own: Asked) -> None:
    (cake,) = write_making(making_of("101", own), own)
    parts = {"F1": "?", "C1": earlier_batches("C1", own)[0].code}
    kept = correct_cake(cake.code, own, seen=cake.key, parts=parts, reason="")
    assert {p.formula: bool(p.batch) for p in kept.parts}["F1"] is False
    assert correct_cake(cake.code, own, seen=kept.key, parts=parts, reason="") == kept
    void = correct_cake(cake.code, own, seen=kept.key, parts={}, reason="", is_void=True)
    assert [each.state for each in cake_history(book_at(own.book), cake.chain)] == [
        "void", "made", "made",
    ]  # fmt: skip
    assert void.code == cake.code
    assert making_of("101", own).things != ()
    with pytest.raises(ConflictError):
        correct_cake(cake.code, own, seen=cake.key, parts={}, reason="")


def test_a_bake_from_the_bench_has_its_bags_and_a_second_time_puts_them_right(own: Asked) -> None:
    book = book_at(own.book)
    keep_trial(book, KeptTrial("t1", "formulas/F1.txt", None, None, None, None, None, None, None,
                               "", "", "2027-06-09"), seen=None)  # fmt: skip
    bags = bags_of_trial("t1", own)
    first = write_trial_batch("t1", bags, own)
    assert (first.code, first.trial) == ("B270609-1", "t1")
    assert write_trial_batch("t1", bags, own) == first
    told = bags_of_trial("t1", own, BagsSaid(lots={"eggs": ("E-2",)}))
    second = write_trial_batch("t1", told, own)
    assert (second.code, second.replaces) == (first.code, first.key)
    with pytest.raises(NotFoundError, match="no such trial"):
        bags_of_trial("t9", own)


def test_a_folder_of_plain_texts_keeps_none(demo: Asked, book: Path) -> None:
    with pytest.raises(StoreError, match="no database"):
        write_making(making_of("101", demo), demo)
    assert not (book / "trace").exists()


def test_a_batch_is_not_put_right_to_a_bag_of_something_else_but_taken_back(own: Asked) -> None:
    write_making(making_of("101", own), own)
    batch = earlier_batches("F1", own)[0]
    lots = {"ground hazelnuts": ("L-004",)}
    bags = making_of("T1", own, said={"F1": BagsSaid(lots=lots)}).bags[0]
    with pytest.raises(InputError, match="L-004 is millet flour"):
        correct_batch(batch.code, bags, own, seen=batch.key, reason="")
    gone = correct_batch(batch.code, bags, own, seen=batch.key, reason="", is_void=True)
    assert gone.state == "void"
