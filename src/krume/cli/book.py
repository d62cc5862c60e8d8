"""`krume book`: the folder your texts live in."""

import click

from krume.cli.options import common
from krume.cli.page import Page
from krume.cli.tell import tell
from krume.usecases import Asked, BookResult


@click.group("book")
def command() -> None:
    """The folder your texts live in.

    A book is a folder of plain texts: formulas/, tortes/, orders/, classes/, tables of lots and
    prices, and studio.toml. The file's name without .txt is the name a text goes by.
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


def _show(page: Page, book: BookResult) -> None:
    page.title("The book")
    page.rows([(str(count), name) for name, count in book.counts.items()], right=(0,), indent=2)
    page.line(_done(book))
    page.line("sha256")
    page.whole(book.sha256, indent=2)
    page.whole(book.path)


def _done(book: BookResult) -> str:
    said = f"Written: {len(book.added)}. There already: {len(book.same)}."
    return f"{said} Yours, kept as they are: {len(book.kept)}." if book.kept else said
