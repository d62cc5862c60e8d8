"""No surface prints the claim unless every paper is good: tried over all subsets of them."""

import io
import re
from collections.abc import Callable, Mapping
from datetime import date
from itertools import product
from pathlib import Path

import pytest
from pypdf import PdfReader

from krume.store import place_all
from krume.usecases import (
    Asked,
    GlutenWish,
    LabelWish,
    gluten_of,
    gluten_page_bytes,
    torte_shown,
)
from krume.usecases.book.book import demo_files
from krume.usecases.label.before_sale import before_sale
from krume.usecases.label.label import label_result, labelled
from krume.usecases.label.paper import drawn_labels
from krume.usecases.sold.gluten_words import gluten_of_all
from tests.usecases.conftest import Made

CLAIM = re.compile(r"gluten[\s-]*free|free (?:from|of) gluten|suitable for coeliacs", re.IGNORECASE)
NEEDED = ("L-001", "L-005", "L-007", "L-009")
ROOM = "room"
DAY = date(2027, 6, 10)
"""What the claim on T3 stands on: four lots and the room."""

Row = list[str]
Spoil = Callable[[Row], list[Row]]
_EVIDENCE, _TEXT, _RESULT, _FROM, _TO = 2, 3, 4, 5, 6


def with_cell(number: int, cell: str) -> Spoil:
    """The row with one cell changed."""
    return lambda row: [[*row[:number], cell, *row[number + 1 :]]]


def with_paper(kind: str, text: str, result: str, last: str) -> Spoil:
    """The row, and another paper of the same bag beside it."""
    return lambda row: [row, [*row[:_EVIDENCE], kind, text, result, "2027-01-01", last, "invented"]]


WAYS: Mapping[str, Spoil] = {
    "removed": lambda _: [],
    "expired": with_cell(_TO, "2027-06-09"),
    "doubted": with_paper("doubt", "stood open", "", ""),
    "contradicted": with_paper("may contain", "wheat", "", ""),
    "over the limit": with_paper("lab test", "", "21", "2027-02-01"),
    "not in force": with_cell(_FROM, "2027-06-11"),
    "only words": with_cell(_EVIDENCE, "words on the bag"),
    "not detected": with_cell(_RESULT, "n. d."),
    "no last day": with_cell(_TO, ""),
    "wheat in its words": with_cell(_TEXT, "may contain wheat"),
}
SUBSETS = [
    frozenset(name for name, is_lost in zip((*NEEDED, ROOM), lost, strict=True) if is_lost)
    for lost in product((False, True), repeat=len(NEEDED) + 1)
]


def book_with(lost: frozenset[str], way: str, folder: Path) -> Asked:
    """A demo book in which these papers are spoilt in one way."""
    files = demo_files()
    head, *rows = (line.split(",") for line in files["lots.csv"].decode().splitlines())
    kept = [each for row in rows for each in (WAYS[way](row) if row[0] in lost else [row])]
    files["lots.csv"] = "\n".join(",".join(row) for row in [head, *kept]).encode()
    said = "no" if ROOM in lost else "yes"
    files["cleaning.csv"] = f"date,cleaned\n2027-06-10,{said}\n".encode()
    place_all(folder, files)
    return Asked(book=folder)


def surfaces(asked: Asked, market: str) -> dict[str, str]:
    """Everything that a person or a machine can read about T3 and its gluten."""
    made = labelled("T3", LabelWish(market=market), asked)
    found = gluten_of("T3", GlutenWish(market=market), asked).result
    return {
        "label": repr(label_result(made)),
        "before a sale": "\n".join(before_sale(each) for each in made.labels),
        "gluten": repr(found),
        "gluten page": gluten_page_bytes(found, asked, ending="html").decode(),
        "bench cards": repr(gluten_of_all("T3", asked)),
    }


def printed(asked: Asked) -> dict[str, str]:
    """What goes to paper and to the screen: the label in every format, the torte's own page."""
    wish = LabelWish(market="eu", made=DAY, with_panel=False, maker="Oda Renn, Tidewick-on-Orl")
    drawn = drawn_labels(labelled("T3", wish, asked), wish, asked)
    texts = {name: _text(name, data) for name, (_, data) in drawn.files.items()}
    return {**texts, "torte page": repr(torte_shown("tortes/T3.txt", asked).result.said)}


def _text(name: str, data: bytes) -> str:
    """Words of a file; those of a PDF as a reader takes them out."""
    if not name.endswith(".pdf"):
        return data.decode()
    return "".join(page.extract_text() for page in PdfReader(io.BytesIO(data)).pages)


@pytest.mark.parametrize("market", ["eu", "us"])
def test_with_every_paper_good_the_claim_is_made(market: str, tmp_path: Path) -> None:
    asked = book_with(frozenset(), "removed", tmp_path)
    said = surfaces(asked, market)
    claims = {name for name, text in said.items() if CLAIM.search(text)}
    assert claims == {"label", "before a sale", "gluten", "gluten page"}


def test_with_every_paper_good_the_label_carries_the_claim_in_every_format(tmp_path: Path) -> None:
    texts = printed(book_with(frozenset(), "removed", tmp_path))
    files = {name for name, text in texts.items() if CLAIM.search(text)}
    assert files == {f"t3-label.{end}" for end in ("pdf", "html", "txt", "json")}


@pytest.mark.parametrize(("number", "lost"), [(n, lost) for n, lost in enumerate(SUBSETS) if lost])
def test_with_any_of_them_spoilt_the_claim_stands_nowhere(
    number: int, lost: frozenset[str], tmp_path: Path
) -> None:
    way, market = list(WAYS)[number % len(WAYS)], ("eu", "us")[number % 2]
    asked = book_with(lost, way, tmp_path)
    for name, text in surfaces(asked, market).items():
        assert not CLAIM.search(text), (name, sorted(lost), way)
    gate = gluten_of("T3", GlutenWish(market=market), asked).result
    assert not gate.claim_allowed
    assert gate.sentence is None
    assert len(gate.missing) >= len(lost)


@pytest.mark.parametrize("way", WAYS)
def test_each_way_to_spoil_one_paper_closes_what_is_printed_too(way: str, tmp_path: Path) -> None:
    asked = book_with(frozenset({"L-009"}), way, tmp_path)
    for name, text in {**surfaces(asked, "eu"), **printed(asked)}.items():
        assert not CLAIM.search(text), (name, way)
    missing = gluten_of("T3", GlutenWish(), asked).result.missing
    assert missing == (("ground walnuts",) if way == "removed" else ("L-009",))


def test_the_sheets_of_a_held_order_hold_no_claim(sheets_101: Made) -> None:
    files = [file for file in sheets_101.answer.result.files if file.format in ("html", "json")]
    assert len(files) > 10
    for file in files:
        assert not CLAIM.search(Path(file.path).read_text(encoding="utf-8")), file.path
