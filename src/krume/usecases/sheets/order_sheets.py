"""The sheets of an order as the app keeps them: made into the book's folder, listed, opened."""

from dataclasses import dataclass
from pathlib import Path
from urllib.parse import quote

from krume.base import NotFoundError
from krume.store import book_at, database_of, is_file, read_bytes
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.remembering import Remembered, day_key
from krume.usecases.sheets.manifest import MANIFEST, read_manifest, sha256
from krume.usecases.sheets.result import SheetResult
from krume.usecases.sheets.sheet import make_sheets
from krume.usecases.sheets.verify import verify_sheets

_MEDIA = {
    "pdf": "application/pdf",
    "html": "text/html; charset=utf-8",
    "json": "application/json",
}


@dataclass(frozen=True, slots=True)
class KeptSheet:
    """A sheet that lies in the book's folder; `why` says why it is not fresh, else nothing."""

    file: str
    kind: str
    of: str
    format: str
    is_fresh: bool
    why: str


@dataclass(frozen=True, slots=True)
class SheetBytes:
    """One sheet as it lies there; `is_as_written` where nobody changed it since."""

    data: bytes
    media: str
    is_as_written: bool


_VERIFIED: Remembered[tuple[KeptSheet, ...]] = Remembered(100)


def make_order_sheets(name: str, asked: Asked) -> Answer[SheetResult]:
    """Make an order's sheets into the book's folder; nothing while a question is open."""
    return make_sheets(_place(name), asked, out=_folder(name, asked))


def sheets_of_order(name: str, asked: Asked) -> tuple[KeptSheet, ...]:
    """Sheets of an order that were made, each with whether it still says what its texts say."""
    folder = _folder(name, asked)
    listed = folder / MANIFEST
    if not is_file(listed):
        return ()
    book = book_at(asked.book)
    held = tuple(
        sha256(read_bytes(path)) if is_file(path) else ""
        for path in (listed, *(folder / file for file in _names(folder)))
    )
    return _VERIFIED.of(book, day_key(book, asked, name, held), lambda: _verified(folder, asked))


def sheet_bytes(name: str, file: str, asked: Asked) -> SheetBytes:
    """One sheet by its name in the list; raises NotFoundError for any other."""
    folder = _folder(name, asked)
    wanted = {each.file: each.sha256 for run in read_manifest(folder) for each in run.files}
    end = file.rpartition(".")[2]
    if file not in wanted or end not in _MEDIA or not is_file(folder / file):
        message = f"Order {name} has no sheet called {file}. Make its sheets again."
        raise NotFoundError(message, where=name, got=file)
    data = read_bytes(folder / file)
    return SheetBytes(data, _MEDIA[end], sha256(data) == wanted[file])


def _names(folder: Path) -> tuple[str, ...]:
    return tuple(each.file for run in read_manifest(folder) for each in run.files)


def _verified(folder: Path, asked: Asked) -> tuple[KeptSheet, ...]:
    found = verify_sheets(folder, asked).result.verified
    return tuple(
        KeptSheet(
            each.file, each.kind, each.of, each.file.rpartition(".")[2], each.is_fresh,
            "" if each.is_fresh else each.text,
        )
        for each in found
    )  # fmt: skip


def _place(name: str) -> str:
    return f"orders/{name}.txt"


def _folder(name: str, asked: Asked) -> Path:
    """Where an order's sheets lie: a name is never a path, so that no sign of one is left in it.

    Beside plain texts the folder is hidden: sheets are no part of the book.
    """
    book = book_at(asked.book)
    top = ".sheets" if database_of(book) is None else "sheets"
    return book.path / top / quote(name, safe="").replace(".", "%2E")
