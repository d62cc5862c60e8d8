"""What goes in: reading a baker's text, the formula, its balance, which weighing order."""

from krume.design.balance import Balance, PerEgg, balance, batter_lines
from krume.design.bands import Band, Family, band, bands, families, family
from krume.design.bowls import BOWLS
from krume.design.findings import Finding
from krume.design.formula import BakedLine, Formula, Line, OvenLine, TextLine, Use
from krume.design.ratios import Value
from krume.design.reader import apply_answers, decode_text, read, read_oven
from krume.design.scaling import part_named, scaled
from krume.design.weighing import Row, Weighing, weigh_out

__all__ = [
    "BOWLS",
    "BakedLine",
    "Balance",
    "Band",
    "Family",
    "Finding",
    "Formula",
    "Line",
    "OvenLine",
    "PerEgg",
    "Row",
    "TextLine",
    "Use",
    "Value",
    "Weighing",
    "apply_answers",
    "balance",
    "band",
    "bands",
    "batter_lines",
    "decode_text",
    "families",
    "family",
    "part_named",
    "read",
    "read_oven",
    "scaled",
    "weigh_out",
]
