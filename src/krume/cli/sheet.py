"""`krume sheet`: the sheets of an order, a torte or a formula, and whether they are fresh."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from krume.cli.folders import Folder
from krume.cli.options import common
from krume.cli.page import Page
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import SheetResult

_MARKS = {True: "checked", False: "NOT MET", None: "not yet"}


@click.command("sheet")
@click.argument("file", metavar="[FILE]", default="")
@click.option(
    "--out",
    metavar="DIR",
    type=Folder(),
    help="Folder for the files; made when it is not there. Other files in it stay.",
)
@click.option(
    "--verify",
    metavar="DIR",
    type=Folder(),
    help="Check the sheets in a folder against their texts as they are today; takes no FILE.",
)
@click.option(
    "--paper",
    type=click.Choice(["a5", "a4", "letter"]),
    default="a5",
    show_default=True,
    help="Paper of the PDF.",
)
@common
def command(asked: Asked, file: str, out: Path | None, verify: Path | None, paper: str) -> int:
    """Bench cards, torte plans, order sheets and more, as PDF, HTML and JSON.

    FILE is an order, a torte or a formula: a text, a name of your book (101, T1, F1), or - for
    standard input. All files are written, or none: none while a question is open. Bench cards and
    blend cards for each formula, torte plans, and for an order its order sheet, cold log and
    labels; sheets.json lists them with what each was made of.

    --verify DIR says of each sheet whether its text, the program or the file itself changed since
    it was made, and the command that makes it again. Nothing is written.
    """
    if verify is not None:
        return _verify(asked, file, out, verify)
    if not file:
        message = "Name an order, a torte or a formula: krume sheet 101 --out DIR"
        raise click.UsageError(message)
    if out is None:
        message = "Name the folder for the files: --out DIR"
        raise click.UsageError(message)
    from krume.usecases import make_sheets

    return tell("sheet", make_sheets(file, asked, out=out, paper=paper), _show)


def _verify(asked: Asked, file: str, out: Path | None, folder: Path) -> int:
    if file or out is not None:
        message = "--verify checks a folder and takes neither FILE nor --out."
        raise click.UsageError(message)
    from krume.usecases import verify_sheets

    return tell("sheet", verify_sheets(folder, asked), _show_verified)


def _show_verified(page: Page, sheets: "SheetResult") -> None:
    for line in sheets.summary:
        page.line(line)
    page.line()
    for each in sheets.verified:
        page.line(f"{each.file}: {each.text}", style="" if each.is_fresh else "bold")


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
