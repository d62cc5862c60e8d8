"""Care of a book: copies of its database, the last one, putting one back, and what is wrong."""

from pathlib import Path

from krume.store.backups import copy_to, faults_of, free_name, last_backup, put_back
from krume.store.book import Book, book_bytes, book_places, database_of
from krume.store.database import DATABASE
from krume.store.edits import editable


def back_up(book: Book, out: Path | None = None) -> Path:
    """Copy a book's database among its backups, or to a file that is not there yet."""
    database = editable(book, so="it has no backups: copy the folder itself")
    return copy_to(database, out or free_name(book.path, "by-hand"))


def restore(book: Book, copy: Path) -> None:
    """Put a copy in the place of a book's database; what was there is set aside."""
    put_back(copy, book.path / DATABASE)


def latest_backup(book: Book) -> Path | None:
    """The backup of a book that was made last; None where there is none."""
    return last_backup(book.path)


def faults(book: Book) -> tuple[str, ...]:
    """What is wrong with a book; of a folder of plain texts, each has to be readable."""
    database = database_of(book)
    if database is not None:
        return faults_of(database)
    for place in book_places(book):
        book_bytes(book, place)
    return ()
