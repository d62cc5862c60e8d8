"""A stamp that only texts and tables move."""

from pathlib import Path

from krume.store import (
    KeptWeighing,
    add_texts,
    begin_weighing,
    book_at,
    content_stamp_of,
    drop_text,
    keep_row,
    keep_text,
    stamp_of,
)


def test_an_edit_of_a_text_or_a_table_moves_it_and_a_weighing_does_not(tmp_path: Path) -> None:
    book = book_at(tmp_path / "book")
    add_texts(book, {"formulas/F1.txt": b"F1\n", "lots.csv": b"lot\nL-1\n"})
    seen = [content_stamp_of(book)]
    keep_text(book, "formulas/F1.txt", b"F1\n\n1 g salt\n", seen=1)
    seen.append(content_stamp_of(book))
    keep_row(book, "lots.csv", ("L-2",), key=None)
    seen.append(content_stamp_of(book))
    drop_text(book, "formulas/F1.txt", seen=2)
    seen.append(content_stamp_of(book))
    assert len(set(seen)) == 4
    before = stamp_of(book)
    begin_weighing(book, KeptWeighing("k", "formulas/F1.txt", 1, "2027-06-10", 1.0, "open"))
    assert stamp_of(book) != before
    assert content_stamp_of(book) == seen[-1]


def test_plain_files_have_none(tmp_path: Path) -> None:
    (tmp_path / "formulas").mkdir()
    assert content_stamp_of(book_at(tmp_path)) is None
