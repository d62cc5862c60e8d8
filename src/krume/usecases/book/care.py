"""Care of a book: backups, putting one back, checking, and its way out and in as plain texts."""

from dataclasses import replace
from pathlib import Path

from krume.base import NotFoundError, Notice, StoreError
from krume.design import decode_text
from krume.store import (
    FOLDERS,
    Book,
    Loaded,
    add_texts,
    back_up,
    book_at,
    book_bytes,
    book_places,
    faults,
    is_book,
    is_file,
    is_folder,
    latest_backup,
    own_table,
    place_all,
    read_bytes,
    restore,
    safe_table,
    sha256_of,
)
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.kind import kind_of
from krume.usecases.book.book import BookResult, book_result

_NOTHING = Loaded((), (), ())
_TABLES = ("lots", "prices", "cleaning", "tins", "packs", "cooling", "trials")


def back_up_book(asked: Asked, *, out: Path | None = None) -> Answer[BookResult]:
    """Copy the book's database, whole and checked, while it may be in use."""
    book = _there(asked)
    copy = back_up(book, out)
    result = book_result(book, _NOTHING)
    return Answer(replace(result, file=str(copy.resolve()), sha256=sha256_of(copy)))


def restore_book(asked: Asked, *, copy: Path | None = None) -> Answer[BookResult]:
    """Put a backup back, the last one where none is named; what it replaces is kept beside."""
    book = book_at(asked.book)
    wanted = copy or latest_backup(book)
    if wanted is None:
        raise NotFoundError(
            f"There is no backup in {book.path}. Name one: krume book restore FILE.",
            where=str(book.path),
            want="a backup",
        )
    restore(book, wanted)
    result = replace(book_result(book, _NOTHING), file=str(wanted.resolve()))
    text = "What was there before is kept among the backups, as replaced."
    return Answer(result, notices=(Notice("kept-beside", text),))


def verify_book(asked: Asked) -> Answer[BookResult]:
    """Check a book: every page of its database, every pointer, every history; each text reads."""
    book = _there(asked)
    found = faults(book)
    if found:
        raise StoreError(
            f"{book.path} is damaged: {found[0]}. `krume book restore` puts the last backup back; "
            "what is there now is kept beside it.",
            where=str(book.path),
            got=f"{len(found)} faults",
            want="a whole book",
        )
    return Answer(book_result(book, _NOTHING))


def export_book(asked: Asked, out: Path) -> Answer[BookResult]:
    """Write a book as plain texts and tables into a new or empty folder."""
    book = _there(asked)
    if is_file(out) or (is_folder(out) and any(out.iterdir())):
        raise StoreError(
            f"{out} is not empty. Name a new folder. Nothing was written.",
            where=str(out),
            want="a new or empty folder",
        )
    files = {place: _outward(place, book_bytes(book, place) or b"") for place in book_places(book)}
    place_all(out, files)
    result = replace(book_result(book, _NOTHING), file=str(out.resolve()))
    return Answer(result)


def _outward(place: str, data: bytes) -> bytes:
    """A table leaves so that no spreadsheet works out a name in it; texts leave as they are."""
    return safe_table(data, place) if place.endswith(".csv") else data


def import_book(asked: Asked, source: Path, *, is_newer: bool = False) -> Answer[BookResult]:
    """Take a folder of plain texts and tables into a book, or one text."""
    book = book_at(asked.book)
    files = _folder(source) if is_folder(source) else _one(source)
    loaded = add_texts(book, files, is_newer=is_newer)
    kept = tuple(
        Notice(
            "kept",
            f"{place} differs from the one in the book, which was kept. To take the new one, "
            "add --replace; the old version stays in the history.",
            place,
        )
        for place in loaded.kept
    )
    return Answer(book_result(book, loaded), notices=kept)


def _there(asked: Asked) -> Book:
    book = book_at(asked.book)
    if not is_book(book):
        raise NotFoundError(
            f"There is no book at {book.path}. `krume book init` makes an empty one.",
            where=str(book.path),
            want="a book",
        )
    return book


def _folder(folder: Path) -> dict[str, bytes]:
    """Texts and tables of a folder, by the places they have in a book."""
    book = Book(folder)
    found = {place: book_bytes(book, place) or b"" for place in book_places(book)}
    files = {place: data for place, data in found.items() if _belongs(place)}
    if not files:
        raise NotFoundError(
            f"{folder} holds no texts of a book: formulas/NAME.txt, tortes/NAME.txt, "
            "orders/NAME.txt, lots.csv and the like. Nothing was taken in.",
            where=str(folder),
            want="a folder of texts",
        )
    return files


def _belongs(place: str) -> bool:
    folder, _, file = place.rpartition("/")
    if folder in (*FOLDERS, "suppliers"):
        return file.endswith(".txt")
    if folder in ("bench", "trace"):
        return file.endswith(".csv")
    return not folder and (file.endswith(".csv") or file in ("studio.toml", "README.md"))


def _one(path: Path) -> dict[str, bytes]:
    """One text or table, at the place of its kind."""
    data = read_bytes(path)
    if path.suffix == ".csv" and path.stem in _TABLES:
        return {path.name: own_table(data, path.name)}
    kind = kind_of(decode_text(data).value)
    folder = next(folder for folder, word in FOLDERS.items() if word == kind)
    return {f"{folder}/{path.stem}.txt": data}
