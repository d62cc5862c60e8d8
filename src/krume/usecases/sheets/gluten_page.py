"""The gluten page on paper: the verdict and what it does not prove first, then every lot."""

from dataclasses import replace
from pathlib import Path

from krume.publish import (
    Fact,
    Imprint,
    Leaf,
    LeafPart,
    LeafTable,
    leaf_html,
    leaf_pdf,
    missing_leaf_signs,
)
from krume.store import book_at, place_all, studio_of
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.slug import slug
from krume.usecases.label.gluten import GlutenWish, gluten_of
from krume.usecases.label.gluten_result import GlutenLot, GlutenPiece, GlutenResult
from krume.usecases.label.result import LabelFile
from krume.usecases.sheets.imprint import imprint_of

_VERDICTS = {"contains": "no", "no": "no", "not yet": "not yet", "yes": "yes"}


def gluten_sheets(
    name: str, wish: GlutenWish, asked: Asked, *, out: Path, paper: str = "a4"
) -> Answer[GlutenResult]:
    """Write the gluten page as PDF and HTML, whatever its verdict; nothing while it is asked."""
    answer = gluten_of(name, wish, asked)
    if answer.problems or not answer.result.pieces:
        return answer
    studio = studio_of(book_at(asked.book))
    imprint = imprint_of(studio, asked, is_of_book=True)
    leaf = gluten_leaf(answer.result, replace(imprint, market=answer.result.market))
    stem = f"{slug(name)}-gluten-page"
    files = {f"{stem}.pdf": leaf_pdf(leaf, paper), f"{stem}.html": leaf_html(leaf).encode()}
    place_all(out, files)
    folder = out.resolve()
    written = tuple(
        LabelFile("gluten-page", each.rpartition(".")[2], answer.result.name, str(folder / each))
        for each in files
    )
    notices = (*answer.notices, *missing_leaf_signs(leaf))
    return replace(answer, result=replace(answer.result, files=written), notices=notices)


def gluten_page_bytes(found: GlutenResult, asked: Asked, *, ending: str = "pdf") -> bytes:
    """The gluten page of an answer as PDF or as a page, kept nowhere."""
    studio = studio_of(book_at(asked.book))
    imprint = replace(imprint_of(studio, asked, is_of_book=True), market=found.market)
    leaf = gluten_leaf(found, imprint)
    return leaf_pdf(leaf, "a4") if ending == "pdf" else leaf_html(leaf).encode()


def gluten_leaf(found: GlutenResult, imprint: Imprint) -> Leaf:
    """The page as a leaf; it is for the person who asks."""
    return Leaf(
        kind="gluten page",
        name=found.name or "Gluten page",
        facts=(
            Fact("to eat with coeliac disease", _VERDICTS[found.verdict]),
            Fact("judged for", found.on),
            Fact("the rule asks for", found.limit),
        ),
        parts=(
            LeafPart("To read aloud", (found.aloud,), boxed=True),
            LeafPart("What this does not prove", found.not_proven, boxed=True),
            LeafPart("What a label may say", (found.printed,)),
            *(
                (LeafPart("What is missing, and what opens it", found.opens_in_short),)
                if found.opens
                else ()
            ),
            *(part for piece in found.pieces for part in _piece_parts(piece, len(found.pieces))),
            *_said("What such papers prove", found.proofs),
            *_room_part(found),
            *_said("How to read it", found.notes),
        ),
        cautions=found.cautions,
        hold=None,
        imprint=imprint,
    )


def _said(heading: str, lines: tuple[str, ...]) -> tuple[LeafPart, ...]:
    return (LeafPart(heading, lines),) if lines else ()


def _piece_parts(piece: GlutenPiece, count: int) -> tuple[LeafPart, ...]:
    of = "" if count == 1 else f" of {piece.title}"
    lots = tuple(row for lot in (*piece.lots, *piece.finished) for row in _rows(lot))
    table = LeafTable(("lot", "goods", "how it stands", "its paper"), lots, wide=1, loose=3)
    none = ", ".join(piece.needs_none)
    said = (f"No record is needed of: {none}.",) if none else ()
    return (
        LeafPart(f"Lots{of}", said, table if lots else None),
        LeafPart(f"The sum over the papers{of}", (piece.warning,)),
    )


def _rows(lot: GlutenLot) -> list[tuple[str, ...]]:
    """One row for each paper; the lot and its goods stand on the first of them."""
    mark = lot.lot or "no lot"
    if not lot.papers:
        return [(mark, lot.ingredient, lot.word, lot.text)]
    rows: list[tuple[str, ...]] = []
    for number, paper in enumerate(lot.papers):
        first = (mark, lot.ingredient) if number == 0 else ("", "")
        word = lot.word if len(lot.papers) == 1 else paper.word
        rows.append((*first, word, paper.words))
    return rows


def _room_part(found: GlutenResult) -> tuple[LeafPart, ...]:
    """The list of the room, where it is begun."""
    lines = tuple(
        f"{each.name}: {'open' if each.is_open else 'shut'}, {each.text}" for each in found.room
    )
    return _said("The room", lines)
