"""Trials keep every version, and an edit names the one it saw."""

from dataclasses import replace
from pathlib import Path

import pytest

from krume.base import ConflictError, NotFoundError
from krume.store.book import Book
from krume.store.trials import KeptTrial, keep_trial, trial_at, trial_of_weighing, trials_of
from krume.store.weighings import KeptWeighing, begin_weighing
from tests.store.database_of import empty

TRIAL = KeptTrial(
    "t", "formulas/F2.txt", "a", 0.48, 95.0, 50.0, 44.0, 35.0, 462.0, "springy", "", "2027-06-10"
)


@pytest.fixture
def book(tmp_path: Path) -> Book:
    """A book with one weighing in it."""
    found = Book(empty(tmp_path).parent)
    begin_weighing(found, KeptWeighing("a", "formulas/F2.txt", 1, "2027-06-10", 0.1, "open"))
    return found


def test_a_trial_is_kept_once_and_found_by_key_weighing_and_text(book: Book) -> None:
    kept = keep_trial(book, TRIAL, seen=None)
    assert keep_trial(book, TRIAL, seen=None) == kept
    assert trial_at(book, "t") == kept
    assert trial_of_weighing(book, "a") == kept
    assert trials_of(book) == trials_of(book, place="formulas/F2.txt") == (kept,)
    assert trials_of(book, place="formulas/F1.txt") == ()


def test_an_edit_of_a_version_that_is_not_the_last_is_refused(book: Book) -> None:
    keep_trial(book, TRIAL, seen=None)
    second = keep_trial(book, replace(TRIAL, core_c=94.0), seen=1)
    assert (second.revision, second.core_c) == (2, 94.0)
    with pytest.raises(ConflictError):
        keep_trial(book, replace(TRIAL, core_c=93.0), seen=1)
    with pytest.raises(NotFoundError):
        keep_trial(book, replace(TRIAL, key="x", weighing=None), seen=1)
    assert trial_at(book, "t") == second


def test_what_was_not_measured_stays_unknown(book: Book) -> None:
    kept = keep_trial(book, replace(TRIAL, sg=None, minutes=None, weighing=None), seen=None)
    found = trial_at(book, kept.key)
    assert found is not None
    assert (found.sg, found.minutes, found.weighing) == (None, None, None)


def test_where_there_is_no_book_there_are_no_trials(tmp_path: Path) -> None:
    none = Book(tmp_path / "none")
    assert trials_of(none) == ()
    assert trial_at(none, "t") is None
    assert trial_of_weighing(none, "a") is None
