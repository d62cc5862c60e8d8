"""Making a book, and loading the demo studio into it."""

from dataclasses import dataclass
from importlib.resources import files
from importlib.resources.abc import Traversable

from krume.base import Notice
from krume.store import (
    Book,
    Loaded,
    add_texts,
    book_at,
    count_texts,
    digest,
    list_tables,
    table_rows,
)
from krume.usecases.asking.answer import Answer, Asked


@dataclass(frozen=True, slots=True)
class BookResult:
    """A book as it now stands: where it is, what it holds, its digest, what was just done.

    `sha256` is that of all it holds, of a backup that of its file; `file` is the file or folder
    that was written or read beside the book.
    """

    path: str
    counts: dict[str, int]
    sha256: str
    added: tuple[str, ...]
    same: tuple[str, ...]
    kept: tuple[str, ...]
    replaced: tuple[str, ...] = ()
    file: str | None = None


def init_book(asked: Asked) -> Answer[BookResult]:
    """Make an empty book where there is none; one that is there stays as it is."""
    book = book_at(asked.book)
    template = files("krume").joinpath("data", "book", "studio.toml").read_bytes()
    loaded = add_texts(book, {"studio.toml": template})
    return Answer(book_result(book, loaded))


def load_demo(asked: Asked) -> Answer[BookResult]:
    """Add the demo studio's texts to a book; what a person has changed there is kept."""
    book = book_at(asked.book)
    loaded = add_texts(book, demo_files())
    notices = tuple(
        Notice(
            "kept",
            f"{name} differs from the demo's text and was kept. To get the demo's own text, "
            "move yours away and load again.",
            name,
        )
        for name in loaded.kept
    )
    return Answer(book_result(book, loaded), notices=notices)


def demo_files() -> dict[str, bytes]:
    """Texts and tables of the packed demo studio, by their place in a book."""
    return dict(_walk(files("krume").joinpath("data", "demo"), ""))


def _walk(folder: Traversable, prefix: str) -> list[tuple[str, bytes]]:
    found: list[tuple[str, bytes]] = []
    for item in sorted(folder.iterdir(), key=lambda entry: entry.name):
        if item.is_dir():
            found += _walk(item, f"{prefix}{item.name}/")
        elif not item.name.startswith("."):
            found.append((prefix + item.name, item.read_bytes()))
    return found


def book_result(book: Book, loaded: Loaded) -> BookResult:
    """A book as it now stands, after what was loaded."""
    rows = {
        place.removesuffix(".csv"): sum(any(r.values()) for r in table_rows(book, place))
        for place in list_tables(book)
    }
    return BookResult(
        path=str(book.path.resolve()),
        counts=count_texts(book) | rows,
        sha256=digest(book),
        added=loaded.added,
        same=loaded.same,
        kept=loaded.kept,
        replaced=loaded.replaced,
    )
