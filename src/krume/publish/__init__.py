"""What goes on paper and out: bench cards as values, pages, PDF and JSON."""

from krume.publish.card import BenchCard, CardRow, Hold, Imprint, bench_card, missing_signs
from krume.publish.facts import Fact
from krume.publish.html import IndexPage, SheetFile, card_html, index_html, sheet_css
from krume.publish.pdf import PAPERS, card_pdf
from krume.publish.sheet import card_dict

__all__ = [
    "PAPERS",
    "BenchCard",
    "CardRow",
    "Fact",
    "Hold",
    "Imprint",
    "IndexPage",
    "SheetFile",
    "bench_card",
    "card_dict",
    "card_html",
    "card_pdf",
    "index_html",
    "missing_signs",
    "sheet_css",
]
