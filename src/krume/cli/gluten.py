"""`krume gluten`: can somebody with coeliac disease eat it, and what says so."""

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import click

from krume.cli.folders import Folder
from krume.cli.options import Day, common, file_argument
from krume.cli.page import Page
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import GlutenLot, GlutenPiece, GlutenResult


@click.command("gluten")
@file_argument
@click.option(
    "--market",
    type=click.Choice(["us", "eu", "uk", "ca", "au-nz"]),
    help="By whose rule [default: the book's market, else eu].",
)
@click.option(
    "--made",
    metavar="DATE",
    type=Day(),
    help="Day of making: papers and room are judged on it too.",
)
@click.option(
    "--out",
    metavar="DIR",
    type=Folder(),
    help="Folder for the gluten page as PDF and HTML, for the person who asks.",
)
@click.option(
    "--paper",
    type=click.Choice(["a4", "a5", "letter"]),
    default="a4",
    show_default=True,
    help="Its paper.",
)
@common
def command(
    asked: Asked, file: str, market: str | None, made: date | None, out: Path | None, paper: str
) -> int:
    """Can somebody with coeliac disease eat it: a true answer, lot by lot.

    FILE is a formula, a torte or an order: a text, a name of your book (T1), or - for standard
    input. Each lot says what its papers prove and what not; the sum over them is a warning for
    the kitchen, never a claim. Lots, the cleaning record and the list of the room come from the
    book (lots.csv, cleaning.csv, room.csv). Local law decides.
    """
    from krume.usecases import GlutenWish, gluten_of

    wish = GlutenWish(market=market, made=made)
    if out is None:
        return tell("gluten", gluten_of(file, wish, asked), _show)
    from krume.usecases import gluten_sheets

    return tell("gluten", gluten_sheets(file, wish, asked, out=out, paper=paper), _show)


def _show(page: Page, found: "GlutenResult") -> None:
    page.title(f"{found.name}, on {found.on}, by {found.rule}" if found.name else "Nothing asked")
    page.line()
    page.line(found.aloud)
    page.head("What this does not prove")
    for said in found.not_proven:
        page.line(said, indent=2)
    page.head("What a label may say")
    page.line(found.printed, indent=2)
    if found.opens:
        page.head("What is missing, and what opens it")
        for said in found.opens_in_short:
            page.line(said, indent=2)
    for piece in found.pieces:
        _show_piece(page, piece, len(found.pieces))
    if found.proofs:
        page.head("What such papers prove")
    for said in found.proofs:
        page.line(said, indent=2)
    if found.room:
        page.head("The room")
        page.rows([(r.name, "open" if r.is_open else "shut", r.text) for r in found.room], indent=2)
    page.line()
    for said in (*found.notes, *found.cautions):
        page.line(said)
    if found.files:
        page.line()
        for file in found.files:
            page.whole(file.path)


def _show_piece(page: Page, piece: "GlutenPiece", count: int) -> None:
    page.head("Lots" if count == 1 else f"Lots of {piece.title}")
    for lot in (*piece.lots, *piece.finished):
        _show_lot(page, lot)
    if piece.needs_none:
        page.line(f"No record is needed of: {', '.join(piece.needs_none)}.", indent=2)
    page.line(piece.warning, indent=2)


def _show_lot(page: Page, lot: "GlutenLot") -> None:
    page.line(f"{lot.lot or 'no lot'}, {lot.ingredient}: {lot.word}", indent=2)
    for paper in lot.papers:
        page.line(paper.words, indent=4)
    if not lot.papers:
        page.line(lot.text, indent=4)
