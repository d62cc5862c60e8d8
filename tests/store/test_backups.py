"""Copies of a book: consistent while it is in use, checked, and put back whole."""

from pathlib import Path

import pytest

from krume.base import NotFoundError, StoreError
from krume.store.backups import copy_to, faults_of, free_name, last_backup, put_back, sha256_of
from krume.store.database import reading, writing
from krume.store.texts import save_text, text_at
from tests.store.database_of import empty

PLACE = "formulas/F1.txt"


def _with_text(path: Path) -> None:
    with writing(path) as book:
        save_text(book, PLACE, b"One\n", seen=None)


def test_a_backup_holds_what_was_kept_and_is_put_back(tmp_path: Path) -> None:
    path = empty(tmp_path)
    _with_text(path)
    copy = copy_to(path, free_name(path.parent, "by-hand"))
    with writing(path) as book:
        save_text(book, PLACE, b"Two\n", seen=1)
    put_back(copy, path)
    with reading(path) as book:
        kept = text_at(book, PLACE)
        assert kept is not None
        assert kept.body == b"One\n"
    aside = path.parent / "backups" / "replaced.sqlite3"
    with reading(aside) as book:
        kept = text_at(book, PLACE)
        assert kept is not None
        assert kept.body == b"Two\n"


def test_a_backup_never_takes_the_place_of_another(tmp_path: Path) -> None:
    path = empty(tmp_path)
    first = copy_to(path, free_name(path.parent, "by-hand"))
    second = copy_to(path, free_name(path.parent, "by-hand"))
    assert first != second
    with pytest.raises(StoreError):
        copy_to(path, first)
    assert last_backup(path.parent) in (first, second)
    assert len(sha256_of(first)) == 64


def test_a_damaged_backup_is_not_put_back(tmp_path: Path) -> None:
    path = empty(tmp_path)
    _with_text(path)
    copy = copy_to(path, free_name(path.parent, "by-hand"))
    data = bytearray(copy.read_bytes())
    data[4096:8192] = b"\x55" * 4096
    copy.write_bytes(data)
    with pytest.raises(StoreError, match="damaged itself"):
        put_back(copy, path)
    with pytest.raises(NotFoundError):
        put_back(tmp_path / "none.sqlite3", path)
    assert faults_of(path) == ()


def test_a_history_that_was_tampered_with_is_a_fault(tmp_path: Path) -> None:
    path = empty(tmp_path)
    _with_text(path)
    with writing(path) as book:
        book.execute("UPDATE text SET body = x'00'")
    assert faults_of(path) == (f"{PLACE}: its history has a gap",)
