"""What the bench keeps goes out as tables and comes in again, nothing twice and nothing lost."""

from pathlib import Path

import pytest

from krume.base import StoreError
from krume.store import (
    Book,
    KeptStep,
    KeptTrial,
    KeptWeighing,
    add_texts,
    begin_weighing,
    book_bytes,
    book_places,
    digest,
    keep_trial,
    say_steps,
    start_clock,
    steps_of,
    trials_of,
    weighing_at,
)
from krume.store.bench_tables import BENCH_TABLES

PLACE = "formulas/F2.txt"


def _worked(folder: Path) -> Book:
    """A book with a weighing at the bench that ended as a trial."""
    book = Book(folder)
    add_texts(book, {PLACE: b"Sponge\n\n40 g rice\n"})
    begin_weighing(book, KeptWeighing("w1", PLACE, 1, "2027-06-10T08:00:00+00:00", 0.1, "open"))
    steps = (
        KeptStep("a", "in", 0, at="2027-06-10T08:00:00+00:00"),
        KeptStep("b", "got", 1, 0, 40.0, 46.0, 46.0, at="2027-06-10T08:00:09+00:00"),
    )
    say_steps(book, "w1", lambda _: steps)
    start_clock(book, "c1", kind="foam", weighing="w1", at="2027-06-10T08:09:00+00:00")
    trial = KeptTrial(
        "t1", PLACE, "w1", 0.48, 95.0, 49.0, 50.0, 36.0, None, "good", "one, two\n", "2027-06-10"
    )
    keep_trial(book, trial, seen=None)
    return book


def _out(book: Book) -> dict[str, bytes]:
    return {place: book_bytes(book, place) or b"" for place in book_places(book)}


def test_a_book_with_weighings_and_trials_comes_in_again_equal(tmp_path: Path) -> None:
    book, other = _worked(tmp_path / "a"), Book(tmp_path / "b")
    out = _out(book)
    assert set(BENCH_TABLES) <= set(out)
    add_texts(other, out)
    assert _out(other) == out
    assert digest(other) == digest(book)
    assert trials_of(other) == trials_of(book)
    assert steps_of(other, "w1") == steps_of(book, "w1")
    assert weighing_at(other, "w1") == weighing_at(book, "w1")


def test_coming_in_twice_adds_nothing_and_changes_nothing(tmp_path: Path) -> None:
    book = _worked(tmp_path / "a")
    out = _out(book)
    loaded = add_texts(book, out)
    assert set(loaded.same) == set(out)
    stale = {**out, "bench/trials.csv": out["bench/trials.csv"].replace(b"good", b"sunk")}
    assert add_texts(book, stale, is_newer=True).replaced == ()
    assert _out(book) == out


def test_a_second_open_weighing_of_a_text_is_set_aside(tmp_path: Path) -> None:
    book, other = _worked(tmp_path / "a"), Book(tmp_path / "b")
    add_texts(other, {PLACE: b"Sponge\n\n40 g rice\n"})
    begin_weighing(other, KeptWeighing("mine", PLACE, 1, "2027-06-10", 0.1, "open"))
    add_texts(other, {p: d for p, d in _out(book).items() if p in BENCH_TABLES})
    kept = {key: weighing_at(other, key) for key in ("mine", "w1")}
    assert {key: each.state for key, each in kept.items() if each} == {
        "mine": "open",
        "w1": "aside",
    }
    assert len(steps_of(other, "w1")) == 2


def test_a_word_where_a_number_belongs_takes_nothing_in(tmp_path: Path) -> None:
    book, other = _worked(tmp_path / "a"), Book(tmp_path / "b")
    out = _out(book)
    out["bench/trials.csv"] = out["bench/trials.csv"].replace(b"0.48", b"light")
    add_texts(other, {PLACE: out[PLACE]})
    with pytest.raises(StoreError, match="a number belongs"):
        add_texts(other, out)
    assert trials_of(other) == ()
    assert book_places(other) == (PLACE,)
