"""What the pages of tracing show: what is still to be written down comes first."""

from dataclasses import replace
from datetime import date

import pytest

from krume.base import NotFoundError
from krume.store import KeptTrial, book_at, keep_trial
from krume.usecases import Asked, TraceWish, trace_of
from krume.usecases.trace.bags import BagsSaid
from krume.usecases.trace.page import batch_now, cake_now, trace_home, trial_bags
from krume.usecases.trace.record import correct_batch, write_trial_batch

WRITE = TraceWish(is_kept=True)


def test_orders_that_are_over_wait_until_they_are_written_down(own: Asked) -> None:
    assert trace_home(own).to_write == ()
    later = replace(own, on=date(2027, 6, 12))
    assert [row.name for row in trace_home(later).to_write] == ["101", "102"]
    trace_of("101", WRITE, later)
    home = trace_home(later)
    assert [row.name for row in home.to_write] == ["102"]
    assert [cake.code for cake in home.cakes] == ["L270612-1"]
    assert "L-008" in home.marks


def test_no_book_and_plain_texts_can_write_nothing(bare: Asked, demo: Asked) -> None:
    assert (trace_home(bare).has_book, trace_home(bare).can_write) == (False, False)
    assert (trace_home(demo).has_book, trace_home(demo).can_write) == (True, False)


def test_a_batch_is_shown_as_it_was_written_even_if_the_formula_changed(own: Asked) -> None:
    trace_of("101", WRITE, own)
    now = batch_now("b270610-1", own)
    assert (now.code, now.bags.formula, now.state) == ("B270610-1", "F1", "made")
    assert {x.ingredient: x.taken for x in now.bags.lines}["ground hazelnuts"] == ("L-008",)
    told = batch_now("B270610-1", own, BagsSaid(lots={"eggs": ("E-1",)}))
    correct_batch("B270610-1", told.bags, own, seen=now.seen, reason="")
    assert {x.ingredient: x.taken for x in batch_now("B270610-1", own).bags.lines}["eggs"] == (
        "E-1",
    )


def test_a_cake_may_be_built_of_batches_no_younger_than_it(own: Asked) -> None:
    trace_of("101", TraceWish(is_kept=True, made_on=date(2027, 6, 9)), own)
    trace_of("T1", WRITE, own)
    now = cake_now("L270609-1", own)
    assert now.parts[0] == ("F1", "B270609-1", ("B270609-1",))
    assert cake_now("L270610-1", own).parts[0][2] == ("B270610-1", "B270609-1")


def test_codes_that_are_none_are_not_found(own: Asked) -> None:
    with pytest.raises(NotFoundError, match="B1-1"):
        batch_now("B1-1", own)
    with pytest.raises(NotFoundError, match="L1-1"):
        cake_now("L1-1", own)


def test_a_bake_shows_its_bags_and_then_what_was_written(own: Asked) -> None:
    trial = KeptTrial("t1", "formulas/F1.txt", None, None, None, None, None, None, None, "", "",
                      "2027-06-09")  # fmt: skip
    keep_trial(book_at(own.book), trial, seen=None)
    bags, code = trial_bags("t1", own)
    assert (bags.made_on, code) == (date(2027, 6, 9), "")
    write_trial_batch("t1", trial_bags("t1", own, BagsSaid(lots={"eggs": ("E-1",)}))[0], own)
    bags, code = trial_bags("t1", own)
    assert code == "B270609-1"
    assert {x.ingredient: x.taken for x in bags.lines}["eggs"] == ("E-1",)
