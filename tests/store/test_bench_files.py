"""What an export wrote of the bench is read beside plain texts as it is read in the book."""

from dataclasses import replace
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
    book_at,
    book_bytes,
    book_places,
    clocks_of,
    end_weighing,
    keep_trial,
    place_all,
    running_clocks,
    say_steps,
    start_clock,
    steps_of,
    steps_of_each,
    stop_clock,
    trial_at,
    trial_of_weighing,
    trials_of,
    weighing_at,
    words_of_trials,
)

_STEPS = (
    KeptStep("s1", "in", 1, 8, 40.0, 40.0, 40.0, said='{"take": "flour"}', at="2027-06-10T08:00"),
    KeptStep("s2", "got", 2, 9, 20.0, 26.0, 26.0, at="2027-06-10T08:01"),
    KeptStep("s3", "undo", of="s2", at="2027-06-10T08:02"),
)


@pytest.fixture
def kept(tmp_path: Path) -> Book:
    """A book whose bench kept a weighing, a clock of it and two trials."""
    book = book_at(tmp_path / "book")
    add_texts(book, {"formulas/F1.txt": b"F1\n"})
    begin_weighing(book, KeptWeighing("w", "formulas/F1.txt", 1, "2027-06-10T08:00", 1.0, "open"))
    say_steps(book, "w", lambda _: _STEPS)
    start_clock(book, "c1", kind="oven", weighing="w", at="2027-06-10T08:30")
    stop_clock(book, "c1", at="2027-06-10T09:05")
    start_clock(book, "c2", kind="foam", weighing="w", at="2027-06-10T08:10")
    trial = KeptTrial(
        "t1", "formulas/F1.txt", "w", 0.48, 95.0, None, 49.5, 35.0, None, "good", "note",
        "2027-06-10",
    )  # fmt: skip
    keep_trial(book, trial, seen=None)
    other = replace(trial, key="t2", place="formulas/F2.txt", weighing=None, word="sunk", sg=None)
    keep_trial(book, other, seen=None)
    end_weighing(book, "w", state="done")
    return book


@pytest.fixture
def plain(kept: Book, tmp_path: Path) -> Book:
    """The same book as it is written out."""
    files = {place: book_bytes(kept, place) or b"" for place in book_places(kept)}
    place_all(tmp_path / "plain", files)
    return book_at(tmp_path / "plain")


def test_beside_plain_texts_the_bench_says_the_same(kept: Book, plain: Book) -> None:
    for book in (kept, plain):
        assert [trial.key for trial in trials_of(book)] == ["t2", "t1"]
    assert trials_of(plain) == trials_of(kept)
    assert trials_of(plain, place="formulas/F1.txt") == (trial_at(kept, "t1"),)
    assert words_of_trials(plain) == words_of_trials(kept)
    assert trial_of_weighing(plain, "w") == trial_of_weighing(kept, "w")
    assert weighing_at(plain, "w") == weighing_at(kept, "w")
    assert steps_of(plain, "w") == steps_of(kept, "w")
    assert steps_of_each(plain, ("w",)) == {"w": steps_of(kept, "w")}
    assert clocks_of(plain, "w") == clocks_of(kept, "w")


def test_nothing_goes_on_beside_plain_texts_and_nothing_is_added(plain: Book) -> None:
    assert running_clocks(plain, "foam") == ()
    with pytest.raises(StoreError, match="no database yet"):
        begin_weighing(plain, KeptWeighing("x", "formulas/F1.txt", 1, "2027", 1.0, "open"))


def test_a_table_that_is_written_anew_is_read_anew_and_none_is_no_bench(plain: Book) -> None:
    assert len(trials_of(plain)) == 2
    path = plain.path / "bench" / "trials.csv"
    lines = path.read_text(encoding="utf-8").splitlines(keepends=True)
    path.write_text("".join(lines[:2]), encoding="utf-8")
    assert [trial.key for trial in trials_of(plain)] == ["t1"]
    for each in path.parent.iterdir():
        each.unlink()
    assert trials_of(plain) == ()


def test_a_word_where_a_number_belongs_is_named(plain: Book) -> None:
    path = plain.path / "bench" / "trials.csv"
    path.write_bytes(path.read_bytes().replace(b"0.48", b"half"))
    with pytest.raises(StoreError, match="word where a number belongs"):
        trials_of(plain)


def test_a_row_without_its_key_is_refused(plain: Book) -> None:
    path = plain.path / "bench" / "trials.csv"
    path.write_bytes(path.read_bytes().replace(b"t2,", b","))
    with pytest.raises(StoreError, match="bench"):
        trials_of(plain)
