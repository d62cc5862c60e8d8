"""The blend card of a blend that was just chosen: the same card as of any formula's blend."""

from dataclasses import replace
from pathlib import Path

from krume.publish import blend_leaf
from krume.store import book_at, place_all, studio_of
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.kind import made_of
from krume.usecases.asking.slug import slug
from krume.usecases.blend.result import BlendFile
from krume.usecases.sheets.blend_card import blends_of
from krume.usecases.sheets.imprint import imprint_of
from krume.usecases.sheets.order_files import leaf_files
from krume.usecases.sheets.result import Files

_TYPED = "-"
_PAPER = "a5"


def write_blend_card(
    text: str, asked: Asked, out: Path, *, is_of_book: bool
) -> tuple[BlendFile, ...]:
    """Write the card of the blend in a text, as PDF, HTML and JSON, all of them or none."""
    typed = replace(asked, answers=(), typed=text.encode("utf-8"))
    made = made_of(_TYPED, typed)
    imprint = imprint_of(studio_of(book_at(asked.book)), asked, is_of_book=is_of_book)
    found = blends_of(made, _TYPED, typed, imprint.market)
    files: Files = {}
    for of, blend in found.blends.items():
        leaf = blend_leaf(blend, imprint, None)
        files |= leaf_files(leaf, f"{slug(of)}-blend-card", ("blend-card", of), _PAPER)
    place_all(out, {name: data for name, (_, data) in files.items()})
    folder = out.resolve()
    return tuple(
        BlendFile("blend-card", name.rpartition(".")[2], str(folder / name)) for name in files
    )
