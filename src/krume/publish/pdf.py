"""Bench card and torte plan as PDF: tagged, embedded fonts, the same bytes for the same words."""

import json
from datetime import UTC, date, datetime
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING

from krume.base import InputError
from krume.publish.card import BenchCard
from krume.publish.glyphs import GLYPHS, svg
from krume.publish.sheet import printed
from krume.publish.torte_plan import TorteSheet
from krume.publish.torte_words import printed_plan

if TYPE_CHECKING:
    from typst import Compiler

PAPERS = {"a5": "a5", "a4": "a4", "letter": "us-letter"}
PLAN_PAPERS = ("a4", "letter")
FONTS = ("Atkinson Hyperlegible Next", "DejaVu Sans")


def card_pdf(card: BenchCard, paper: str = "a5") -> bytes:
    """A bench card as PDF/UA-1 on `a5`, `a4` or `letter`; too long a batch is a second card."""
    if paper not in PAPERS:
        message = f"'{paper}' is no paper for a bench card. Type a5, a4 or letter."
        raise InputError(message, field="paper", got=paper, want="a5, a4 or letter")
    data = {**printed(card), "paper": PAPERS[paper], "look": look()}
    return compiled("bench_card.typ", data, card.imprint.date)


def plan_pdf(sheet: TorteSheet, paper: str = "a4") -> bytes:
    """A torte plan as PDF/UA-1 on `a4` or `letter`, its section to the scale it states."""
    if paper not in PLAN_PAPERS:
        message = f"'{paper}' is no paper for a torte plan. Type a4 or letter."
        raise InputError(message, field="paper", got=paper, want="a4 or letter")
    data = {
        **printed_plan(sheet),
        "paper": PAPERS[paper],
        "look": look(),
    }
    return compiled("torte_plan.typ", data, sheet.imprint.date)


def compiled(template: str, data: dict[str, object], day: str) -> bytes:
    """The PDF of a template filled with data; a card of the same words is the same bytes."""
    made = _compiler().compile(
        input=_packed("templates", template),
        format="pdf",
        sys_inputs={"card": json.dumps(data, ensure_ascii=False)},
        pdf_standards=["ua-1"],
        timestamp=_seconds(day),
    )
    if not isinstance(made, bytes):
        raise InputError("the sheet came out as more than one file. Start again.", got=template)
    return made


def look() -> dict[str, object]:
    """Fonts and glyphs of every sheet on paper."""
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
