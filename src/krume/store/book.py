"""The book: a folder of plain texts and tables, found by name."""

import hashlib
import os
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from krume.base import StoreError
from krume.store.files import is_file, is_folder, place_all, read_bytes, refusals

FOLDERS: dict[str, str] = {
    "formulas": "formula",
    "tortes": "torte",
    "orders": "order",
    "classes": "class",
}
"""The folders of a book, and the word for one text of each."""

MARK = "studio.toml"
"""The file that makes a folder a book."""


@dataclass(frozen=True, slots=True)
class Book:
    """Where a book is; the folder need not exist yet."""

    path: Path


@dataclass(frozen=True, slots=True)
class BookText:
    """One text of a book: its kind, the name it goes by, the name on its first line."""

    kind: str
    name: str
    title: str
    path: Path


@dataclass(frozen=True, slots=True)
class Loaded:
    """What became of the files that were to be added to a book."""

    added: tuple[str, ...]
    same: tuple[str, ...]
    kept: tuple[str, ...]


def book_at(given: Path | None) -> Book:
    """Book a person means: the one named, else KRUME_BOOK, else the user's data folder."""
    if given is not None:
        return Book(given.expanduser())
    named = os.environ.get("KRUME_BOOK", "")
    if named.strip():
        return Book(Path(named).expanduser())
    from platformdirs import user_data_path

    return Book(user_data_path("krume", appauthor=False) / "book")


def is_book(book: Book) -> bool:
    """Whether there is a book yet: its settings, or at least its formulas."""
    return is_file(book.path / MARK) or is_folder(book.path / "formulas")


def list_texts(book: Book) -> tuple[BookText, ...]:
    """Every text of a book, by kind and name."""
    return tuple(
        BookText(kind, path.stem, _first_line(path), path)
        for folder, kind in FOLDERS.items()
        for path in _texts_in(book.path / folder)
    )


def _texts_in(folder: Path) -> list[Path]:
    if not is_folder(folder):
        return []
    with refusals(folder, doing="read"):
        paths = sorted(folder.iterdir())
    return [p for p in paths if p.suffix == ".txt" and not p.name.startswith(".") and is_file(p)]


def list_tables(book: Book) -> tuple[Path, ...]:
    """The tables of a book: lots, prices, tins, trials."""
    if not is_folder(book.path):
        return ()
    with refusals(book.path, doing="read"):
        return tuple(p for p in sorted(book.path.iterdir()) if p.suffix == ".csv" and is_file(p))


def make_folders(book: Book) -> None:
    """Make the folders a book's texts go into."""
    for folder in FOLDERS:
        with refusals(book.path / folder):
            (book.path / folder).mkdir(parents=True, exist_ok=True)


def _first_line(path: Path) -> str:
    text = read_bytes(path).decode("utf-8-sig", errors="replace")
    return next((line.strip() for line in text.splitlines() if line.strip()), "")


def find_texts(book: Book, name: str) -> tuple[BookText, ...]:
    """Texts that go by a name: the file's name first, else the name on the first line."""
    wanted = " ".join(name.split()).casefold()
    texts = list_texts(book)
    by_name = tuple(t for t in texts if t.name.casefold() == wanted)
    return by_name or tuple(t for t in texts if " ".join(t.title.split()).casefold() == wanted)


def count_texts(book: Book) -> dict[str, int]:
    """How many texts of each folder a book holds."""
    texts = list_texts(book)
    return {folder: sum(t.kind == kind for t in texts) for folder, kind in FOLDERS.items()}


def add_texts(book: Book, files: Mapping[str, bytes]) -> Loaded:
    """Add files to a book, all or none; a file that is there and differs is kept as it is."""
    _refuse_foreign(book)
    there = {name: _there(book.path / name) for name in files}
    added = {name: data for name, data in files.items() if there[name] is None}
    same = tuple(name for name, data in files.items() if there[name] == data)
    kept = tuple(name for name in files if name not in added and name not in same)
    if added:
        place_all(book.path, added)
    return Loaded(tuple(added), same, kept)


def _there(path: Path) -> bytes | None:
    return read_bytes(path) if is_file(path) else None


def _refuse_foreign(book: Book) -> None:
    if is_book(book) or not is_folder(book.path):
        return
    with refusals(book.path, doing="read"):
        others = sorted(p.name for p in book.path.iterdir())
    if others:
        raise StoreError(
            f"{book.path} is no book and is not empty (it holds {others[0]}). "
            "Name a folder of its own with --book. Nothing was written.",
            where=str(book.path),
            got=others[0],
            want="an empty folder, or a book",
        )


def digest(book: Book) -> str:
    """SHA-256 over the names and bytes of all files of a book, hidden ones left out."""
    total = hashlib.sha256()
    with refusals(book.path, doing="read"):
        paths = sorted(p for p in book.path.rglob("*") if is_file(p))
    for path in paths:
        inside = path.relative_to(book.path)
        if not any(part.startswith(".") for part in inside.parts):
            total.update(f"{inside.as_posix()}\0{len(data := read_bytes(path))}\0".encode())
            total.update(data)
    return total.hexdigest()
