"""The label as values: first what the law puts first, and no sentence that may not stand."""

import math
from dataclasses import dataclass
from functools import cache

from krume.base import InputError, Notice
from krume.evidence import Row, column, load
from krume.properties import constants
from krume.publish.card import Imprint
from krume.publish.sheet import dated, is_unbaked, made_by
from krume.publish.signs import missing_notice, printable

LAYOUT_COLUMNS = (
    column("key", "key"),
    column("label"),
    *(
        column(name, "number")
        for name in (
            *("page_width_mm", "page_height_mm", "columns", "rows", "label_width_mm"),
            *("label_height_mm", "left_mm", "top_mm", "column_pitch_mm", "row_pitch_mm"),
        )
    ),
    column("status", "status"),
    column("source", "source"),
)
_PT_PER_MM = 72 / 25.4
_STEP_PT = 0.1


@dataclass(frozen=True, slots=True)
class PanelLine:
    """One line of the nutrition panel as printed; `is_inside` stands under the line above it."""

    label: str
    amount: str
    percent: str
    is_inside: bool = False


@dataclass(frozen=True, slots=True)
class LabelSheet:
    """All that stands on one label; `sentences` are those that may be said, none beside them."""

    name: str
    market: str
    ingredients: str
    sentences: tuple[str, ...]
    durability: str
    panel_basis: str
    panel: tuple[PanelLine, ...]
    maker: str
    net: str
    imprint: Imprint


@dataclass(frozen=True, slots=True)
class LabelLayout:
    """A sheet of labels, or one label, by a row of the packed table."""

    key: str
    label: str
    page_width_mm: float
    page_height_mm: float
    columns: int
    rows: int
    label_width_mm: float
    label_height_mm: float
    left_mm: float
    top_mm: float
    column_pitch_mm: float
    row_pitch_mm: float


@cache
def label_layouts() -> tuple[LabelLayout, ...]:
    """Sheets and sizes of labels, in the order of the table."""
    return tuple(_layout(row) for row in load("label_sheets.csv", LAYOUT_COLUMNS))


def _layout(row: Row) -> LabelLayout:
    lengths = (
        row.number_of(name)
        for name in (
            *("label_width_mm", "label_height_mm", "left_mm", "top_mm"),
            *("column_pitch_mm", "row_pitch_mm"),
        )
    )
    return LabelLayout(
        row.text("key"), row.text("label"), row.number_of("page_width_mm"),
        row.number_of("page_height_mm"), int(row.number_of("columns")),
        int(row.number_of("rows")), *lengths,
    )  # fmt: skip


def label_layout(key: str) -> LabelLayout:
    """Layout of a key, or one sentence that names those there are."""
    found = {layout.key: layout for layout in label_layouts()}
    if key not in found:
        message = f"'{key}' is no sheet of labels. There are: {', '.join(found)}."
        raise InputError(message, field="labels", got=key, want=", ".join(found))
    return found[key]


def least_type_pt(market: str) -> float:
    """Smallest type whose small letters are as high as the law wants, rounded up to 0.1 pt.

    >>> least_type_pt("eu"), least_type_pt("us")
    (6.9, 9.1)
    """
    limits = constants("label_print.csv")
    height_mm = limits["us-letter-mm" if market == "us" else "x-height-mm"]
    size = height_mm / limits["font-x-height"] * _PT_PER_MM
    return round(math.ceil(size / _STEP_PT - 1e-9) * _STEP_PT, 1)


def printed_label(sheet: LabelSheet, layout: LabelLayout) -> dict[str, object]:
    """Words of a label for paper, with the measures of its sheet."""
    return {
        "title": _clean(sheet.name),
        "keywords": ["label"],
        "market": sheet.market,
        "heading": "Ingredients:",
        "ingredients": _clean(sheet.ingredients),
        "sentences": [_clean(said) for said in sheet.sentences],
        "durability": _clean(sheet.durability),
        "basis": _clean(sheet.panel_basis),
        "panel": [
            {
                "label": line.label,
                "amount": line.amount,
                "percent": line.percent,
                "inside": line.is_inside,
            }
            for line in sheet.panel
        ],
        "maker": _clean(sheet.maker),
        "net": sheet.net,
        "notes": [_clean(note) for note in sheet.imprint.notes],
        "unbaked": is_unbaked(sheet.imprint),
        "made-by": f"{made_by(sheet.imprint)}, {dated(sheet.imprint)}",
        "size": least_type_pt(sheet.market),
        "layout": {
            name.replace("_", "-"): getattr(layout, name)
            for name in LabelLayout.__slots__
            if name not in ("key", "label")
        },
    }


def _clean(text: str) -> str:
    return printable(text).text


def missing_label_signs(sheet: LabelSheet) -> tuple[Notice, ...]:
    """Notice that names the signs of a label no packed font has; empty when all can be printed."""
    texts = (sheet.name, sheet.ingredients, *sheet.sentences, sheet.maker, *sheet.imprint.notes)
    return missing_notice(tuple(sign for text in texts for sign in printable(text).missing))
