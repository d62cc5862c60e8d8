"""What goes in: reading a baker's text, the formula, its balance, which weighing order."""

from krume.design.bands import Band, Family, band, bands, families, family
from krume.design.bowls import BOWLS
from krume.design.formula import BakedLine, Formula, Line, OvenLine, TextLine, Use
from krume.design.weighing import Row, Weighing, weigh_out

__all__ = [
    "BOWLS",
    "BakedLine",
    "Band",
    "Family",
    "Formula",
    "Line",
    "OvenLine",
    "Row",
    "TextLine",
    "Use",
    "Weighing",
    "band",
    "bands",
    "families",
    "family",
    "weigh_out",
]
