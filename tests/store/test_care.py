"""Care of a book: a copy of it, the last one, what is wrong."""

from pathlib import Path

import pytest

from krume.base import StoreError
from krume.store import (
    Book,
    add_texts,
    back_up,
    book_bytes,
    faults,
    latest_backup,
    place_all,
    restore,
)

FILES = {"formulas/F1.txt": b"Plain sponge\n", "lots.csv": b"lot,ingredient\nL-1,rice\n"}


def test_the_last_backup_is_put_back(tmp_path: Path) -> None:
    book = Book(tmp_path / "book")
    add_texts(book, FILES)
    assert latest_backup(book) is None
    copy = back_up(book)
    assert latest_backup(book) == copy
    add_texts(book, {"formulas/F1.txt": b"Other\n"}, is_newer=True)
    restore(book, copy)
    assert book_bytes(book, "formulas/F1.txt") == FILES["formulas/F1.txt"]
    assert faults(book) == ()


def test_a_folder_of_plain_texts_has_no_database_to_copy(tmp_path: Path) -> None:
    place_all(tmp_path / "plain", FILES)
    assert faults(Book(tmp_path / "plain")) == ()
    with pytest.raises(StoreError, match="copy the folder itself"):
        back_up(Book(tmp_path / "plain"))
