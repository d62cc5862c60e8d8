"""A bench card as PDF, beside a plain page by the same typesetter."""

import sys
import tempfile
from pathlib import Path
from typing import TYPE_CHECKING

from benchmarks.measure import Row, call_s, programs
from benchmarks.texts import demo_formulas

if TYPE_CHECKING:
    from krume.publish import BenchCard

PLAIN = '#set page("a5")\nA plain page: one line of text.\n'
OWN = (sys.executable, "-m", "benchmarks.paper", "card")
PEER = (sys.executable, "-m", "benchmarks.paper", "plain")


def rows() -> list[Row]:
    """The card of one formula: warm, and the memory of a process that makes one."""
    from krume.publish import card_html, card_pdf

    card = demo_card()
    pdf_s = call_s(lambda: card_pdf(card), times=20)
    html_s = call_s(lambda: card_html(card), times=20)
    plain_s = plain_page_s(times=20)
    own, peer = programs(OWN, PEER, times=3)
    page = "one plain typst page"
    return [
        Row("bench card, PDF, warm", pdf_s * 1e3, plain_s * 1e3, "ms", page, 10.0),
        Row("bench card, HTML, warm", html_s * 1e3, plain_s * 1e3, "ms", page),
        Row("bench card, PDF, from cold", own.time_s, peer.time_s, "s", page),
        Row("bench card, PDF, memory", own.memory_mb, peer.memory_mb, "MB", page, 2.0),
    ]


def demo_card() -> "BenchCard":
    """The card of a demo formula."""
    from krume.design import read, weigh_out
    from krume.publish import Imprint, bench_card

    formula = read(demo_formulas()[1]).value
    imprint = Imprint(date="2027-06-10", program="0", data="0")
    return bench_card(formula, weigh_out(formula, scale_g=1.0), imprint)


def plain_page_s(*, times: int) -> float:
    """Median time of one plain page by the typesetter alone."""
    from typst import Compiler

    with tempfile.TemporaryDirectory() as folder:
        page = Path(folder) / "plain.typ"
        page.write_text(PLAIN, encoding="utf-8")
        compiler = Compiler(root=folder, ignore_system_fonts=True)
        return call_s(lambda: compiler.compile(input=str(page), format="pdf"), times=times)


if __name__ == "__main__":
    if sys.argv[1:] == ["card"]:
        from krume.publish import card_pdf

        card_pdf(demo_card())
    else:
        plain_page_s(times=1)
