"""A bench card as PDF, beside a plain page by the same typesetter."""

import sys
import tempfile
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from benchmarks.measure import Row, call_s, memory_mb, programs_s
from benchmarks.texts import demo_formulas

if TYPE_CHECKING:
    from krume.publish import BenchCard

PLAIN = '#set page("a5")\nA plain page: one line of text, and the number #sys.inputs.number.\n'
ONE_CARD = "from benchmarks.paper import card_pdf_s; card_pdf_s(times=1)"
ONE_PAGE = "from benchmarks.paper import plain_page_s; plain_page_s(times=1)"


def rows() -> list[Row]:
    """The card of one formula: warm, and the memory of a process that makes one."""
    pdf_s, html_s, plain_s = card_pdf_s(times=20), card_html_s(times=20), plain_page_s(times=20)
    own_s, peer_s = programs_s(
        (sys.executable, "-c", ONE_CARD), (sys.executable, "-c", ONE_PAGE), times=3
    )
    page = "one plain typst page"
    return [
        Row("bench card, PDF, warm", pdf_s * 1e3, plain_s * 1e3, "ms", page),
        Row("bench card, HTML, warm", html_s * 1e3, plain_s * 1e3, "ms", page),
        Row("bench card, PDF, from cold", own_s, peer_s, "s", page),
        Row("bench card, PDF, memory", memory_mb(ONE_CARD), memory_mb(ONE_PAGE), "MB", page, 2.0),
    ]


def demo_card() -> "BenchCard":
    """The card of a demo formula."""
    from krume.design import read, weigh_out
    from krume.publish import Imprint, bench_card

    formula = read(demo_formulas()[1]).value
    imprint = Imprint(date="2027-06-10", program="0", data="0")
    return bench_card(formula, weigh_out(formula, scale_g=1.0), imprint)


def card_pdf_s(*, times: int) -> float:
    """Median time of a card as PDF, each under another name, so that no page is kept."""
    from krume.publish import card_pdf

    card = demo_card()
    return call_s(lambda number: card_pdf(replace(card, name=f"Card {number}")), times=times)


def card_html_s(*, times: int) -> float:
    """Median time of a card as a page, each under another name."""
    from krume.publish import card_html

    card = demo_card()
    return call_s(lambda number: card_html(replace(card, name=f"Card {number}")), times=times)


def plain_page_s(*, times: int) -> float:
    """Median time of one plain page by the typesetter alone, each with another number."""
    from typst import Compiler

    with tempfile.TemporaryDirectory() as folder:
        page = Path(folder) / "plain.typ"
        page.write_text(PLAIN, encoding="utf-8")
        compiler = Compiler(root=folder, ignore_system_fonts=True)

        def one(number: int) -> object:
            inputs = {"number": str(number)}
            return compiler.compile(input=str(page), format="pdf", sys_inputs=inputs)

        return call_s(one, times=times)
