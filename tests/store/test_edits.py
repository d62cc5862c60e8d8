"""Edits through the door: the version seen, every version kept, nothing on plain files."""

from pathlib import Path

import pytest

from krume.base import ConflictError, StoreError
from krume.store import (
    Book,
    add_texts,
    drop_row,
    drop_text,
    keep_row,
    keep_text,
    kept_rows,
    kept_text,
    kept_versions,
    place_all,
)

FILES = {"formulas/F1.txt": b"Plain sponge\n", "lots.csv": b"lot,ingredient\nL-1,rice\n"}
PLACE = "formulas/F1.txt"


@pytest.fixture
def book(tmp_path: Path) -> Book:
    book = Book(tmp_path / "book")
    add_texts(book, FILES)
    return book


def test_two_editors_of_one_text_never_lose_an_edit(book: Book) -> None:
    first, second = kept_text(book, PLACE), kept_text(book, PLACE)
    assert first is not None
    assert second is not None
    keep_text(book, PLACE, b"First\n", seen=first.revision)
    with pytest.raises(ConflictError, match="look at both"):
        keep_text(book, PLACE, b"Second\n", seen=second.revision)
    assert [kept.body for kept in kept_versions(book, PLACE)] == [b"First\n", FILES[PLACE]]


def test_a_text_that_is_taken_out_keeps_its_versions(book: Book) -> None:
    drop_text(book, PLACE, seen=1)
    assert kept_text(book, PLACE) is None
    assert len(kept_versions(book, PLACE)) == 2


def test_rows_are_added_changed_and_taken_out(book: Book) -> None:
    head, (rice,) = kept_rows(book, "lots.csv")
    assert head == ("lot", "ingredient")
    teff = keep_row(book, "lots.csv", ("L-2", "teff"), key=None)
    keep_row(book, "lots.csv", ("L-1", "white rice flour"), key=rice.key, seen=rice.revision)
    drop_row(book, teff.key, seen=teff.revision)
    assert [row.cells for row in kept_rows(book, "lots.csv")[1]] == [("L-1", "white rice flour")]


def test_the_first_row_makes_its_table(book: Book) -> None:
    keep_row(book, "cleaning.csv", ("2027-06-10", "yes"), key=None, head=("date", "cleaned"))
    assert kept_rows(book, "cleaning.csv")[0] == ("date", "cleaned")


def test_plain_files_and_no_book_are_looked_at_and_never_edited(tmp_path: Path) -> None:
    place_all(tmp_path / "plain", FILES)
    for book in (Book(tmp_path / "plain"), Book(tmp_path / "none")):
        assert kept_text(book, PLACE) is None
        assert kept_versions(book, PLACE) == ()
        assert kept_rows(book, "lots.csv") == ((), ())
        with pytest.raises(StoreError, match="no database yet"):
            keep_text(book, PLACE, b"Mine\n", seen=None)
