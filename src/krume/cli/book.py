"""`krume book`: where your texts live, and the care of them."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from krume.cli.options import common
from krume.cli.page import Page
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import BookResult

_PATH = click.Path(path_type=Path)


@click.group("book")
def command() -> None:
    """Where your texts live, and the care of them.

    A book is a folder with a database in it: formulas, tortes, orders, classes, tables of lots
    and prices, and settings, every version kept. `krume book export` writes all of it as plain
    texts and tables, `krume book import` takes such texts in. A folder of plain texts can be
    named as a book too, and is read as it stands.
    """


@command.command("init")
@common
def init(asked: Asked) -> int:
    """Make an empty book; a book that is there stays as it is."""
    from krume.usecases import init_book

    return tell("book", init_book(asked), _show)


@command.command("demo")
@common
def demo(asked: Asked) -> int:
    """Load the demo studio: invented, balanced on paper, not baked."""
    from krume.usecases import load_demo

    return tell("book", load_demo(asked), _show)


@command.command("backup")
@click.option("--out", metavar="FILE", type=_PATH, help="A file that is not there yet.")
@common
def backup(asked: Asked, out: Path | None) -> int:
    """Copy the book while it may be in use; without --out among its own backups."""
    from krume.usecases import back_up_book

    return tell("book", back_up_book(asked, out=out), _show)


@command.command("restore")
@click.argument("file", metavar="[FILE]", type=_PATH, required=False)
@common
def restore(asked: Asked, file: Path | None) -> int:
    """Put a backup back, the last one without FILE; what it replaces is kept beside."""
    from krume.usecases import restore_book

    return tell("book", restore_book(asked, copy=file), _show)


@command.command("verify")
@common
def verify(asked: Asked) -> int:
    """Check the book: its database, its histories, every text."""
    from krume.usecases import verify_book

    return tell("book", verify_book(asked), _show)


@command.command("export")
@click.argument("folder", metavar="FOLDER", type=_PATH)
@common
def export(asked: Asked, folder: Path) -> int:
    """Write everything as plain texts and tables into a new FOLDER."""
    from krume.usecases import export_book

    return tell("book", export_book(asked, folder), _show)


@command.command("import")
@click.argument("source", metavar="FILE", type=_PATH)
@click.option(
    "--replace",
    "is_newer",
    is_flag=True,
    help="Take texts that differ from the book's; the old versions stay in the history.",
)
@common
def import_(asked: Asked, source: Path, *, is_newer: bool) -> int:
    """Take in one text or table, or a folder of them.

    FILE goes by its own name, without its ending: mine.txt becomes the formula, torte or order
    called mine.
    """
    from krume.usecases import import_book

    return tell("book", import_book(asked, source, is_newer=is_newer), _show)


def _show(page: Page, book: "BookResult") -> None:
    page.title("The book")
    page.rows([(str(count), name) for name, count in book.counts.items()], right=(0,), indent=2)
    done = _done(book)
    if done:
        page.line(done)
    page.line("sha256")
    page.whole(book.sha256, indent=2)
    if book.file is not None:
        page.whole(book.file)
    page.whole(book.path)


def _done(book: "BookResult") -> str:
    said = {
        "Taken in": book.added,
        "Replaced": book.replaced,
        "There already": book.same,
        "Yours, kept as they are": book.kept,
    }
    return " ".join(f"{words}: {len(places)}." for words, places in said.items() if places)
