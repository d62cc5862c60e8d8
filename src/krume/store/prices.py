"""The price list of a book, and one that lies beside a person's own text."""

from pathlib import Path

from krume.store.book import Book
from krume.store.files import is_file, read_bytes

PRICES = "prices.csv"


def prices_of(book: Book, beside: Path | None = None) -> bytes | None:
    """Bytes of the book's price list, else of one beside a text; None where there is neither."""
    paths = [book.path / PRICES, *([] if beside is None else [beside.parent / PRICES])]
    path = next((path for path in paths if is_file(path)), None)
    return None if path is None else read_bytes(path)
