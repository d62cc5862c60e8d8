"""A database with nothing in it."""

from pathlib import Path

from krume.store.database import DATABASE
from krume.store.migrations import make


def empty(folder: Path) -> Path:
    """Path of a new book's database."""
    path = folder / "book" / DATABASE
    make(path)
    return path
