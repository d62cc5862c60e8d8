"""The book: texts and tables found by name, in a database or as a folder of plain files."""

import hashlib
import os
import shutil
import stat
import tempfile
from collections.abc import Callable, Hashable, Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from krume.base import StoreError
from krume.store.bench_tables import KEPT_TABLES
from krume.store.by_mark import by_mark
from krume.store.cells import own_table
from krume.store.contents import Loaded, add_all, as_kept, bytes_at, is_sheet, places
from krume.store.database import DATABASE, looked, note_kinds, reading, writing
from krume.store.files import is_file, is_folder, place_all, read_bytes, refusals
from krume.store.marks import TITLES, WHOLE, of_folder, of_sheet, of_text
from krume.store.migrations import make, migrate
from krume.store.texts import bodies, first_line, text_places, titles

FOLDERS: dict[str, str] = {
    "formulas": "formula",
    "tortes": "torte",
    "orders": "order",
    "classes": "class",
}
"""The folders of a book, and the word for one text of each."""

MARK = "studio.toml"
"""The file that makes a folder a book."""


_FOLDER_MODE = 0o777


@dataclass(frozen=True, slots=True)
class Book:
    """Where a book is; the folder need not exist yet."""

    path: Path


@dataclass(frozen=True, slots=True)
class BookText:
    """One text of a book: its kind, the name it goes by, the name on its first line.

    `path` is where it stands, or would stand, as a file of the book's folder.
    """

    kind: str
    name: str
    title: str
    path: Path


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
    """Whether there is a book yet: its database, its settings, or at least its formulas."""
    is_plain = is_file(book.path / MARK) or is_folder(book.path / "formulas")
    return is_plain or database_of(book) is not None


def database_of(book: Book) -> Path | None:
    """Database of a book; None where it is a folder of plain texts, or not there yet."""
    path = book.path / DATABASE
    try:
        found = path.stat()
    except (OSError, ValueError):
        return None
    if not stat.S_ISREG(found.st_mode):
        return None
    with refusals(path, doing="read"):
        _brought_up(path, found.st_ino)
    return path


@lru_cache(maxsize=64)
def _brought_up(path: Path, _: int) -> None:
    """A database is brought to the present form when it is first met; a newer one is refused."""
    migrate(path)


def book_bytes(book: Book, place: str) -> bytes | None:
    """A text or a table of a book by its place, formulas/F1.txt; None where there is none."""
    database = database_of(book)
    if database is not None:
        with reading(database, _kind_of(place)) as connection:
            return bytes_at(connection, place)
    path = book.path / place
    if not is_file(path):
        return None
    data = read_bytes(path)
    return own_table(data, place) if place.endswith(".csv") else data


def _kind_of(place: str) -> tuple[str, ...]:
    """What is read where a place is; tables of the bench are of no one thing."""
    if place in KEPT_TABLES:
        return WHOLE
    return of_sheet(place) if is_sheet(place) else of_text(place)


def folder_bytes(book: Book, folder: str) -> dict[str, bytes]:
    """Every text of one folder of a book, by the name it goes by."""
    database = database_of(book)
    if database is None:
        return {path.stem: read_bytes(path) for path in _texts_in(book.path / folder)}
    with reading(database, of_folder(folder)) as connection:
        held = bodies(connection, folder)
    found = ((_text(book, place, ""), data) for place, data in held.items())
    return {text.name: data for text, data in found if text is not None}


def book_places(book: Book) -> tuple[str, ...]:
    """Places of everything a book holds, hidden files left out."""
    database = database_of(book)
    if database is not None:
        with reading(database) as connection:
            return places(connection)
    if not is_folder(book.path):
        return ()
    with refusals(book.path, doing="read"):
        found = [p.relative_to(book.path) for p in book.path.rglob("*") if is_file(p)]
    return tuple(sorted(p.as_posix() for p in found if not _is_hidden(p)))


def places_in(book: Book, folder: str) -> tuple[str, ...]:
    """Places of the texts in one folder of a book."""
    database = database_of(book)
    if database is None:
        return tuple(place for place in book_places(book) if place.startswith(f"{folder}/"))
    with reading(database, of_folder(folder)) as connection:
        return text_places(connection, folder)


def _is_hidden(path: Path) -> bool:
    return any(part.startswith(".") for part in path.parts)


def place_in(book: Book, path: Path) -> str | None:
    """Place in the book that a path means; None for a path outside of it."""
    try:
        inside, whole = book.path.expanduser().resolve(), path.expanduser().resolve()
    except (OSError, ValueError, RuntimeError):
        return None
    return whole.relative_to(inside).as_posix() if whole.is_relative_to(inside) else None


def bytes_of_path(book: Book, path: Path) -> bytes | None:
    """Bytes of a file, or of the text of the book that a path means; None where neither is."""
    if is_file(path):
        return read_bytes(path)
    place = place_in(book, path)
    return None if place is None else book_bytes(book, place)


def stamp_of(book: Book) -> tuple[Hashable, ...] | None:
    """What changes with every commit to a book's database; None for plain files.

    Two looks with the same stamp see the same book, so that what was read may be kept in mind.
    """
    database = database_of(book)
    if database is None:
        return None
    with looked(database) as look:
        note_kinds(look, (WHOLE,))
        return look.stamp


def list_texts(book: Book) -> tuple[BookText, ...]:
    """Every text of a book, by kind and name."""
    return _listed(book).texts


@dataclass(frozen=True, slots=True)
class _Listed:
    """The texts of a book, and each by its place, its name and its title."""

    texts: tuple[BookText, ...]
    by_place: dict[str, BookText]
    by_name: dict[str, tuple[BookText, ...]]
    by_title: dict[str, tuple[BookText, ...]]


def _listed(book: Book) -> _Listed:
    database = database_of(book)
    if database is not None:
        return by_mark(database, TITLES, "list", lambda found: _in_order(book, titles(found)))
    return _in_order(book, tuple((p, _first_line(book.path / p)) for p in _plain_texts(book)))


def _in_order(book: Book, held: Iterable[tuple[str, str]]) -> _Listed:
    found = {place: _text(book, place, title) for place, title in held}
    order = list(FOLDERS.values())
    by_place = {place: text for place, text in found.items() if text is not None}
    texts = tuple(sorted(by_place.values(), key=lambda text: (order.index(text.kind), text.name)))
    by_name = _grouped(texts, lambda text: text.name)
    return _Listed(texts, by_place, by_name, _grouped(texts, lambda text: _said(text.title)))


def _grouped(
    texts: Iterable[BookText], word: Callable[[BookText], str]
) -> dict[str, tuple[BookText, ...]]:
    found: dict[str, list[BookText]] = {}
    for text in texts:
        found.setdefault(word(text).casefold(), []).append(text)
    return {name: tuple(same) for name, same in found.items()}


def _said(name: str) -> str:
    return " ".join(name.split())


def _plain_texts(book: Book) -> list[str]:
    return [f"{folder}/{p.name}" for folder in FOLDERS for p in _texts_in(book.path / folder)]


@lru_cache(maxsize=8192)
def _text(book: Book, place: str, title: str) -> BookText | None:
    folder, _, file = place.partition("/")
    name, dot, end = file.rpartition(".")
    if folder not in FOLDERS or "/" in file or dot + end != ".txt" or not name:
        return None
    return BookText(FOLDERS[folder], name, title, book.path / place)


def _texts_in(folder: Path) -> list[Path]:
    if not is_folder(folder):
        return []
    with refusals(folder, doing="read"):
        paths = sorted(folder.iterdir())
    return [p for p in paths if p.suffix == ".txt" and not p.name.startswith(".") and is_file(p)]


def list_tables(book: Book) -> tuple[str, ...]:
    """Places of the tables of a book: lots.csv, prices.csv and others."""
    return tuple(place for place in book_places(book) if is_sheet(place))


def _first_line(path: Path) -> str:
    return first_line(read_bytes(path))


def find_texts(book: Book, name: str) -> tuple[BookText, ...]:
    """Texts that go by a name: the file's name first, else the name on the first line."""
    wanted, listed = _said(name).casefold(), _listed(book)
    return listed.by_name.get(wanted) or listed.by_title.get(wanted, ())


def text_at_place(book: Book, place: str) -> BookText | None:
    """The text that stands at a place, formulas/F1.txt; None where there is none."""
    return _listed(book).by_place.get(place)


def count_texts(book: Book) -> dict[str, int]:
    """How many texts of each folder a book holds."""
    texts = list_texts(book)
    return {folder: sum(t.kind == kind for t in texts) for folder, kind in FOLDERS.items()}


def add_texts(book: Book, files: Mapping[str, bytes], *, is_newer: bool = False) -> Loaded:
    """Add files to a book, all or none; one that is there and differs is kept, unless `is_newer`.

    A book that is not there yet is made, as a database; a folder of plain texts stays one.
    """
    _refuse_foreign(book)
    database = database_of(book)
    if database is not None:
        with writing(database) as connection:
            return add_all(connection, files, is_newer=is_newer)
    return _add_plain(book, files, is_newer=is_newer) if is_book(book) else _make(book, files)


def _make(book: Book, files: Mapping[str, bytes]) -> Loaded:
    """A new book appears whole, with everything in it."""
    with refusals(book.path):
        book.path.parent.mkdir(parents=True, exist_ok=True)
        stage = Path(tempfile.mkdtemp(prefix=".krume-", dir=book.path.parent))
        try:
            make(stage / DATABASE)
            with writing(stage / DATABASE) as connection:
                loaded = add_all(connection, files)
            if book.path.exists():
                os.link(stage / DATABASE, book.path / DATABASE)
            else:
                stage.chmod(_FOLDER_MODE & ~_umask())
                stage.rename(book.path)
        finally:
            shutil.rmtree(stage, ignore_errors=True)
    return loaded


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask


def _add_plain(book: Book, files: Mapping[str, bytes], *, is_newer: bool) -> Loaded:
    there = {place: book_bytes(book, place) for place in files}
    added = tuple(place for place in files if there[place] is None)
    same = tuple(place for place, data in files.items() if there[place] == data)
    others = tuple(place for place in files if place not in added and place not in same)
    wanted = (*added, *others) if is_newer else added
    if wanted:
        place_all(book.path, {place: files[place] for place in wanted})
    return Loaded(added, same, () if is_newer else others, others if is_newer else ())


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
    """SHA-256 over the places and bytes of all a book holds; an export of it has the same."""
    total = hashlib.sha256()
    for place in book_places(book):
        data = as_kept(place, book_bytes(book, place) or b"")
        total.update(f"{place}\0{len(data)}\0".encode())
        total.update(data)
    return total.hexdigest()
