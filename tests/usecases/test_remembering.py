"""Answers are kept in mind until a text or a table changes."""

from pathlib import Path

from krume.store import add_texts, book_at, book_bytes, keep_text
from krume.usecases import Asked
from krume.usecases.remembering import Remembered, day_key


def test_an_answer_is_made_once_and_again_after_an_edit(tmp_path: Path) -> None:
    book = book_at(tmp_path / "book")
    add_texts(book, {"formulas/F1.txt": b"F1\n"})
    made: list[int] = []

    def make() -> int:
        made.append(len(book_bytes(book, "formulas/F1.txt") or b""))
        return len(made)

    kept: Remembered[int] = Remembered(2)
    assert kept.get(book, "a") is None
    assert [kept.of(book, "a", make), kept.of(book, "a", make)] == [1, 1]
    keep_text(book, "formulas/F1.txt", b"F2\n", seen=1)
    assert kept.of(book, "a", make) == 2


def test_only_so_many_are_kept_and_the_oldest_goes(tmp_path: Path) -> None:
    book = book_at(tmp_path / "book")
    add_texts(book, {"formulas/F1.txt": b"F1\n"})
    kept: Remembered[str] = Remembered(2)
    for key in ("a", "b", "a", "c"):
        kept.of(book, key, lambda key=key: key)  # type: ignore[misc]
    assert [kept.get(book, key) for key in ("a", "b", "c")] == ["a", None, "c"]


def test_what_changed_while_it_was_made_is_not_kept(tmp_path: Path) -> None:
    book = book_at(tmp_path / "book")
    add_texts(book, {"formulas/F1.txt": b"F1\n"})

    def make() -> str:
        book_bytes(book, "formulas/F1.txt")
        keep_text(book, "formulas/F1.txt", b"F2\n", seen=1)
        return "of the old text"

    kept: Remembered[str] = Remembered(2)
    assert kept.of(book, "a", make) == "of the old text"
    assert kept.get(book, "a") is None


def test_of_plain_files_nothing_is_kept(tmp_path: Path) -> None:
    (tmp_path / "formulas").mkdir()
    book = book_at(tmp_path)
    kept: Remembered[str] = Remembered(2)
    assert kept.of(book, "a", lambda: "made") == "made"
    assert kept.get(book, "a") is None


def test_another_day_or_another_answer_is_another_key(tmp_path: Path) -> None:
    book = book_at(tmp_path)
    plain = day_key(book, Asked(), "101")
    assert day_key(book, Asked(answers=("line 1=x",)), "101") != plain
    assert day_key(book, Asked(), "102") != plain
