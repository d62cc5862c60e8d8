"""What was made of a part of a book is made anew where that part changed, and only there."""

import sqlite3
from pathlib import Path

from krume.store import add_texts, book_at, keep_text
from krume.store.by_mark import by_mark
from krume.store.database import DATABASE
from krume.store.marks import of_text
from krume.store.reads import noting
from krume.store.texts import text_at


def test_it_is_made_once_for_each_mark_and_noted_each_time(tmp_path: Path) -> None:
    book, made = book_at(tmp_path / "book"), []
    add_texts(book, {"formulas/F1.txt": b"F1\n", "formulas/F2.txt": b"F2\n"})

    def make(connection: sqlite3.Connection) -> bytes:
        found = text_at(connection, "formulas/F1.txt")
        made.append(found)
        return b"" if found is None else found.body

    def asked() -> bytes:
        return by_mark(book.path / DATABASE, of_text("formulas/F1.txt"), "body", make)

    assert [asked(), asked()] == [b"F1\n", b"F1\n"]
    keep_text(book, "formulas/F2.txt", b"F2\n\n", seen=1)
    assert asked() == b"F1\n"
    assert len(made) == 1
    keep_text(book, "formulas/F1.txt", b"F3\n", seen=1)
    with noting() as reads:
        assert [asked(), asked()] == [b"F3\n", b"F3\n"]
    assert len(made) == 2
    assert [key[-2:] for key in reads] == [("text", "formulas/F1.txt")]
