"""Whether the program and its book are there, for a machine to read."""

from dataclasses import dataclass

from krume import __version__
from krume.evidence import data_version
from krume.store import book_at, count_texts, is_book
from krume.usecases.asking.answer import Asked


@dataclass(frozen=True, slots=True)
class Health:
    """The program's version and its data's, whether there is a book, and what it holds."""

    krume: str
    data: str
    book: bool
    counts: dict[str, int]


def health_of(asked: Asked) -> Health:
    """How the program and the book of a request are."""
    book = book_at(asked.book)
    is_there = is_book(book)
    return Health(__version__, data_version(), is_there, count_texts(book) if is_there else {})
