"""A small label, and one with a panel, for the tests of labels."""

from dataclasses import replace

from krume.publish import Imprint, LabelSheet, PanelLine

MADE = Imprint(date="2027-06-10", program="0.1", data="abc", notes=("balanced, not baked",))


def label(**more: str) -> LabelSheet:
    """A small label."""
    given = {
        "name": "Cake", "market": "eu", "ingredients": "EGG, sugar", "durability": "Keep cold.",
        "panel_basis": "", "maker": "Made by A", "net": "",
    } | more  # fmt: skip
    return LabelSheet(sentences=("May contain: nuts",), panel=(), imprint=MADE, **given)


def with_panel() -> LabelSheet:
    """A label with two rows of a panel."""
    rows = (
        PanelLine("Fat", "10 g", "13 %"),
        PanelLine("Saturated fat", "2 g", "10 %", is_inside=True),
    )
    return replace(label(), panel=rows, panel_basis="per 100 g")
