"""Whether what an answer was read from is still as it was."""

from pathlib import Path

import pytest

from krume.store import add_texts, back_up, book_at, book_bytes, keep_text, restore, stamp_of
from krume.store import moment as clock
from krume.store.files import is_file, read_bytes
from krume.store.holding import reads_hold
from krume.store.reads import NEVER, note, noting


def test_a_text_holds_until_it_is_kept_anew(tmp_path: Path) -> None:
    book = book_at(tmp_path / "book")
    add_texts(book, {"formulas/F1.txt": b"F1\n", "formulas/F2.txt": b"F2\n"})
    with noting() as reads:
        book_bytes(book, "formulas/F1.txt")
    keep_text(book, "formulas/F2.txt", b"F2\n\n", seen=1)
    assert reads_hold(reads)
    keep_text(book, "formulas/F1.txt", b"F3\n", seen=1)
    assert not reads_hold(reads)


def test_a_book_that_was_put_back_and_edited_to_the_same_version_is_another(
    tmp_path: Path,
) -> None:
    book = book_at(tmp_path / "book")
    add_texts(book, {"formulas/F1.txt": b"F1\n"})
    copy = back_up(book)
    keep_text(book, "formulas/F1.txt", b"one way\n", seen=1)
    with noting() as reads:
        book_bytes(book, "formulas/F1.txt")
    restore(book, copy)
    assert not reads_hold(reads)
    keep_text(book, "formulas/F1.txt", b"another\n", seen=1)
    assert not reads_hold(reads)


def test_what_was_read_without_a_name_holds_until_anything_is_kept(tmp_path: Path) -> None:
    book = book_at(tmp_path / "book")
    add_texts(book, {"formulas/F1.txt": b"F1\n"})
    with noting() as reads:
        stamp_of(book)
    assert reads_hold(reads)
    keep_text(book, "formulas/F2.txt", b"F2\n", seen=None)
    assert not reads_hold(reads)


def test_a_book_that_is_gone_holds_nothing(tmp_path: Path) -> None:
    book = book_at(tmp_path / "book")
    add_texts(book, {"formulas/F1.txt": b"F1\n"})
    with noting() as reads:
        book_bytes(book, "formulas/F1.txt")
    for path in book.path.iterdir():
        path.unlink()
    assert not reads_hold(reads)


def test_a_file_holds_until_it_is_written_anew_and_one_that_was_not_there_until_it_is(
    tmp_path: Path,
) -> None:
    there, missing = tmp_path / "A.txt", tmp_path / "B.txt"
    there.write_bytes(b"one")
    with noting() as of_there:
        read_bytes(there)
    with noting() as of_missing:
        assert not is_file(missing)
    assert reads_hold(of_there)
    assert reads_hold(of_missing)
    there.write_bytes(b"three")
    missing.write_bytes(b"")
    assert not reads_hold(of_there)
    assert not reads_hold(of_missing)


def test_a_look_at_the_clock_holds_for_its_day_or_its_minute(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    now = clock.clock_now().replace(hour=10, minute=7)
    monkeypatch.setattr(clock, "clock_now", lambda: now)
    with noting() as day:
        clock.note_clock(clock.DAY)
    with noting() as minute:
        clock.note_clock(clock.MINUTE)
    assert reads_hold(day)
    assert reads_hold(minute)
    monkeypatch.setattr(clock, "clock_now", lambda: now.replace(minute=8))
    assert reads_hold(day)
    assert not reads_hold(minute)
    monkeypatch.setattr(clock, "clock_now", lambda: now.replace(year=now.year + 1))
    assert not reads_hold(day)


def test_what_is_never_the_same_never_holds() -> None:
    with noting() as reads:
        note(("moment",), NEVER)
    assert not reads_hold(reads)
