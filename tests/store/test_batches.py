"""What was made of which lots stays as it was written down; a correction is a new record."""

from dataclasses import replace
from pathlib import Path

import pytest

from krume.base import ConflictError, NotFoundError, StoreError
from krume.store import (
    Book,
    KeptBatch,
    KeptCake,
    KeptLot,
    KeptPart,
    add_texts,
    batch_history,
    batch_of_trial,
    batches_called,
    batches_now,
    book_bytes,
    book_places,
    cake_history,
    cakes_called,
    cakes_now,
    cakes_of_kind,
    cakes_of_order,
    digest,
    faults,
    keep_made,
)

DAY = "2027-06-11"
LOTS = (KeptLot("rice flour", "rice-flour", "L-001", "=Mill"), KeptLot("egg", "egg", ""))
BATCH = KeptBatch("b1", "F1", "Sponge", DAY, LOTS, trial="t1")
CAKE = KeptCake(
    "c1", "T1", "Torte", 2, DAY, (KeptPart("F1", "b1"), KeptPart("C1", "")), "101", 3, "M. Tarrow"
)


def _book(folder: Path) -> Book:
    book = Book(folder)
    add_texts(book, {"formulas/F1.txt": b"Sponge\n"})
    return book


def test_a_batch_and_a_cake_get_their_codes_and_are_found(tmp_path: Path) -> None:
    book = _book(tmp_path / "a")
    (batch,), (cake,) = keep_made(book, [BATCH], [CAKE])
    assert (batch.code, batch.chain, cake.code, cake.chain) == (
        "B270611-1",
        "b1",
        "L270611-1",
        "c1",
    )
    assert batch.lots == LOTS
    assert cakes_called(book, "l270611-1") == (cake,) == cakes_of_order(book, "101")
    assert batches_called(book, "B270611-1") == (batch,) == batches_now(book, formula="F1")
    assert batch_of_trial(book, "t1") == batch
    assert batch_of_trial(book, "t2") is None
    assert cakes_of_kind(book, "T1") == ()


def test_sent_twice_is_kept_once(tmp_path: Path) -> None:
    book = _book(tmp_path / "a")
    first = keep_made(book, [BATCH], [CAKE])
    assert keep_made(book, [BATCH], [CAKE]) == first
    assert len(cakes_now(book)) == 1


def test_numbers_of_a_day_run_on_past_nine_and_begin_anew_the_next_day(tmp_path: Path) -> None:
    book = _book(tmp_path / "a")
    cakes = [replace(CAKE, key=f"c{n}") for n in range(11)]
    _, kept = keep_made(book, [], cakes)
    assert [each.code for each in kept] == [f"L270611-{n}" for n in range(1, 12)]
    _, (other,) = keep_made(book, [], [replace(CAKE, key="d", made_on="2027-06-12")])
    assert other.code == "L270612-1"


def test_a_correction_keeps_the_code_and_the_old_record(tmp_path: Path) -> None:
    book = _book(tmp_path / "a")
    keep_made(book, [BATCH], [CAKE])
    lots = (replace(LOTS[0], lot="L-019"), LOTS[1])
    new = replace(BATCH, key="b2", lots=lots, replaces="b1", reason="the other bag")
    (kept,), _ = keep_made(book, [new])
    assert (kept.code, kept.chain) == ("B270611-1", "b1")
    assert batches_called(book, kept.code) == (kept,)
    assert [each.key for each in batch_history(book, "b1")] == ["b2", "b1"]
    _, (cake,) = keep_made(book, [], [replace(CAKE, key="c2", replaces="c1", state="void")])
    assert cake.code == "L270611-1"
    assert [each.state for each in cake_history(book, "c1")] == ["void", "made"]


def test_two_corrections_of_one_record_are_a_conflict_and_nothing_is_lost(tmp_path: Path) -> None:
    book = _book(tmp_path / "a")
    keep_made(book, [BATCH])
    keep_made(book, [replace(BATCH, key="b2", replaces="b1")])
    with pytest.raises(ConflictError, match="corrected since"):
        keep_made(
            book, [replace(BATCH, key="b9", formula="F2"), replace(BATCH, key="b3", replaces="b1")]
        )
    assert [each.key for each in batches_now(book)] == ["b2"]
    with pytest.raises(NotFoundError):
        keep_made(book, [replace(BATCH, key="b3", replaces="b7")])


def test_a_book_comes_out_and_in_again_equal_with_its_history(tmp_path: Path) -> None:
    book, other = _book(tmp_path / "a"), Book(tmp_path / "b")
    keep_made(book, [BATCH], [CAKE])
    keep_made(book, [replace(BATCH, key="b2", replaces="b1", reason="=cmd()")])
    files = {place: book_bytes(book, place) or b"" for place in book_places(book)}
    assert {place for place in files if place.startswith("trace/")} == {
        "trace/batches.csv", "trace/batch_lots.csv", "trace/cakes.csv", "trace/cake_batches.csv",
    }  # fmt: skip
    add_texts(other, files)
    assert digest(other) == digest(book)
    assert batch_history(other, "b1") == batch_history(book, "b1")
    assert cakes_now(other) == cakes_now(book)
    assert set(add_texts(other, files).same) == set(files)
    assert faults(other) == ()


def test_a_folder_of_plain_texts_keeps_no_record(tmp_path: Path) -> None:
    (tmp_path / "formulas").mkdir()
    with pytest.raises(StoreError, match="no database"):
        keep_made(Book(tmp_path), [BATCH])
    assert batches_now(Book(tmp_path)) == ()
