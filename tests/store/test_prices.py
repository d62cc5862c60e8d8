"""The price list of a book goes before one beside a text."""

from pathlib import Path

from krume.store import Book, prices_of


def test_the_books_list_goes_before_the_one_beside_a_text(tmp_path: Path) -> None:
    book, text = Book(tmp_path / "book"), tmp_path / "text.txt"
    assert prices_of(book, text) is None
    (tmp_path / "prices.csv").write_bytes(b"beside")
    assert prices_of(book, text) == b"beside"
    assert prices_of(book) is None
    book.path.mkdir()
    (book.path / "prices.csv").write_bytes(b"in the book")
    assert prices_of(book, text) == b"in the book"
