"""`krume sheet`: bench cards as PDF, HTML and JSON."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from krume.cli.options import common, file_argument
from krume.cli.page import Page
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import SheetResult

_MARKS = {True: "checked", False: "DIFFERS", None: "not yet"}


@click.command("sheet")
@file_argument
@click.option(
    "--out",
    metavar="DIR",
    type=click.Path(path_type=Path),
    required=True,
    help="Folder for the files; made when it is not there. Other files in it stay.",
)
@click.option(
    "--paper",
    type=click.Choice(["a5", "a4", "letter"]),
    default="a5",
    show_default=True,
    help="Paper of the PDF.",
)
@common
def command(asked: Asked, file: str, out: Path, paper: str) -> int:
    """Bench cards as PDF, HTML and JSON.

    FILE is an order, a torte or a formula: a text, a name of your book (101, T1, F1), or - for
    standard input. All files are written, or none: none while a question is open.
    """
    from krume.usecases import make_sheets

    return tell("sheet", make_sheets(file, asked, out=out, paper=paper), _show)


def _show(page: Page, sheets: "SheetResult") -> None:
    if not sheets.files:
        page.line("Nothing was written.")
        return
    for line in sheets.summary:
        page.line(line)
    for hold in sheets.held:
        page.line(f"HELD: {hold.text} {hold.opens}", style="bold")
    page.line()
    for check in sheets.checks:
        page.line(f"{_MARKS[check.passed]}: {check.text}")
    page.line()
    for file in sheets.files:
        page.whole(file.path)
