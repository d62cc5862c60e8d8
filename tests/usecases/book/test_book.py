"""Making a book and loading the demo studio: nothing of the person's is lost."""

import sqlite3
from pathlib import Path

import pytest

from krume.base import StoreError
from krume.store import Book, add_texts, book_bytes, database
from krume.store.database import connect
from krume.usecases import Asked, init_book, load_demo
from krume.usecases.book.book import demo_files


def listing(folder: Path) -> dict[str, bytes]:
    return {
        p.relative_to(folder).as_posix(): p.read_bytes() for p in folder.rglob("*") if p.is_file()
    }


def test_the_demo_has_its_thirteen_formulas_four_tortes_and_two_orders() -> None:
    names = set(demo_files())
    formulas = [*(f"F{n}" for n in range(1, 8)), *(f"C{n}" for n in range(1, 6)), "S1"]
    assert {f"formulas/{n}.txt" for n in formulas} <= names
    assert {f"tortes/{n}.txt" for n in ("T1", "T2", "T3", "TART")} <= names
    assert {"orders/101.txt", "orders/102.txt", "classes/CLASS7.txt", "studio.toml"} <= names


def test_loading_makes_the_book_and_counts_what_is_in_it(tmp_path: Path) -> None:
    path = tmp_path / "new" / "book"
    result = load_demo(Asked(book=path)).result
    assert result.path == str(path)
    assert [p.name for p in path.iterdir()] == ["book.sqlite3"]
    assert [p.name for p in path.parent.iterdir()] == ["book"]
    counts = result.counts
    assert (counts["formulas"], counts["tortes"], counts["orders"]) == (13, 4, 2)
    assert counts["lots"] == 18
    assert len(result.sha256) == 64
    assert set(result.added) == set(demo_files())


def test_loading_twice_is_the_same_as_once(tmp_path: Path) -> None:
    first = load_demo(Asked(book=tmp_path)).result
    second = load_demo(Asked(book=tmp_path)).result
    assert second.sha256 == first.sha256
    assert second.added == second.kept == ()
    assert set(second.same) == set(demo_files())


def test_an_edited_text_is_kept_and_named(tmp_path: Path) -> None:
    book = Book(tmp_path / "book")
    add_texts(book, {"formulas/F1.txt": b"Mine\n"})
    answer = load_demo(Asked(book=book.path))
    assert answer.exit_code == 0
    assert answer.result.kept == ("formulas/F1.txt",)
    assert "formulas/F2.txt" in answer.result.added
    assert [n.where for n in answer.notices] == ["formulas/F1.txt"]
    assert book_bytes(book, "formulas/F1.txt") == b"Mine\n"


def test_a_folder_of_other_things_is_refused_and_untouched(tmp_path: Path) -> None:
    (tmp_path / "photo.jpg").write_bytes(b"x")
    for usecase in (load_demo, init_book):
        with pytest.raises(StoreError):
            usecase(Asked(book=tmp_path))
    assert listing(tmp_path) == {"photo.jpg": b"x"}


def test_a_full_disk_leaves_no_half_book(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def small(path: Path, *, is_new: bool = False) -> sqlite3.Connection:
        connection = connect(path, is_new=is_new)
        connection.execute("PRAGMA max_page_count = 20")
        return connection

    monkeypatch.setattr(database, "connect", small)
    with pytest.raises(StoreError, match="Make room on the disk"):
        load_demo(Asked(book=tmp_path / "book"))
    assert list(tmp_path.iterdir()) == []


def test_an_empty_book_has_settings_that_say_nothing_yet(tmp_path: Path) -> None:
    result = init_book(Asked(book=tmp_path / "book")).result
    assert result.counts == {"formulas": 0, "tortes": 0, "orders": 0, "classes": 0}
    assert result.added == ("studio.toml",)


def test_making_a_book_over_the_demo_changes_nothing(tmp_path: Path) -> None:
    before = load_demo(Asked(book=tmp_path)).result.sha256
    result = init_book(Asked(book=tmp_path)).result
    assert result.sha256 == before
    assert result.kept == ("studio.toml",)
