"""The price list of a book, and one that lies beside a person's own text."""

from pathlib import Path

from krume.store.book import Book, book_bytes
from krume.store.files import is_file, read_bytes

PRICES = "prices.csv"


def prices_of(book: Book, beside: Path | None = None) -> bytes | None:
    """Bytes of the book's price list, else of one beside a text; None where there is neither."""
    data = book_bytes(book, PRICES)
    if data is not None or beside is None:
        return data
    path = beside.parent / PRICES
    return read_bytes(path) if is_file(path) else None
