"""The bench card as PDF: tagged, embedded fonts, the same bytes for the same card."""

import json
from datetime import UTC, date, datetime
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING

from krume.base import InputError
from krume.publish.card import BenchCard
from krume.publish.glyphs import GLYPHS, svg
from krume.publish.sheet import printed

if TYPE_CHECKING:
    from typst import Compiler

PAPERS = {"a5": "a5", "a4": "a4", "letter": "us-letter"}
FONTS = ("Atkinson Hyperlegible Next", "DejaVu Sans")


def card_pdf(card: BenchCard, paper: str = "a5") -> bytes:
    """A bench card as PDF/UA-1 on `a5`, `a4` or `letter`; too long a batch is a second card."""
    if paper not in PAPERS:
        message = f"'{paper}' is no paper for a bench card. Type a5, a4 or letter."
        raise InputError(message, field="paper", got=paper, want="a5, a4 or letter")
    data = {**printed(card), "paper": PAPERS[paper], "look": _look()}
    made = _compiler().compile(
        input=_packed("templates", "bench_card.typ"),
        format="pdf",
        sys_inputs={"card": json.dumps(data, ensure_ascii=False)},
        pdf_standards=["ua-1"],
        timestamp=_seconds(card.imprint.date),
    )
    if not isinstance(made, bytes):
        raise InputError("the card came out as more than one file. Start again.", got=card.name)
    return made


def _look() -> dict[str, object]:
    return {"fonts": list(FONTS), "glyphs": {name: svg(name) for name in GLYPHS}}


def _seconds(day: str) -> int:
    try:
        parsed = date.fromisoformat(day)
    except ValueError:
        message = f"'{day}' is no date. Type year-month-day, for example 2027-06-10."
        raise InputError(message, field="date", got=day, want="year-month-day") from None
    return int(datetime(parsed.year, parsed.month, parsed.day, tzinfo=UTC).timestamp())


def _packed(*below: str) -> str:
    return str(files("krume.publish").joinpath(*below))


@cache
def _compiler() -> "Compiler":
    """One compiler for the process: fonts are read once, and no font of the machine is used."""
    from typst import Compiler

    return Compiler(root=_packed(), font_paths=[_packed("fonts")], ignore_system_fonts=True)
