"""The label as values: first what the law puts first, and no sentence that may not stand."""

import math
import re
from dataclasses import dataclass
from functools import cache

from krume.base import InputError, Notice
from krume.evidence import Row, column, load, optional
from krume.properties import constants
from krume.publish.card import Imprint
from krume.publish.label_facts import FactsBox, arrangements_let, printed_facts
from krume.publish.label_layout import LabelLayout
from krume.publish.label_qr import qr_drawing
from krume.publish.sheet import dated, is_unbaked, made_by
from krume.publish.signs import missing_notice, printable

HEIGHT_COLUMNS = (
    column("key", "key"),
    column("label"),
    column("least_letter_mm", "number"),
    optional("small_letter_mm", "number"),
    optional("small_below_cm2", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
)
_PT_PER_MM = 72 / 25.4
_STEP_PT = 0.1
_MAY_BREAK = "\u200b"
_LONG = re.compile(r"\S{16}(?=\S)")


@dataclass(frozen=True, slots=True)
class PanelLine:
    """One line of a nutrition table as printed; `is_inside` stands under the line above it."""

    label: str
    cells: tuple[str, ...]
    is_inside: bool = False


@dataclass(frozen=True, slots=True)
class PanelTable:
    """A nutrition table in our own layout: one column for each basis, and what stands below."""

    heads: tuple[str, ...]
    lines: tuple[PanelLine, ...]
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class NetWords:
    """The net quantity in phrases, and the least height of its figures by the market's rule."""

    phrases: tuple[str, ...] = ()
    least_mm: float = 0.0

    @property
    def text(self) -> str:
        """The phrases in one line; empty where the label states no quantity."""
        return " ".join(self.phrases)


@dataclass(frozen=True, slots=True)
class LabelSheet:
    """All that stands on one label; `sentences` are those that may be said, none beside them.

    A line of `ingredients` is a list of its own. `code` is the lot of the cake and `says` what
    the code square holds. `area_cm2` is the package's surface, None where it is not said.
    """

    name: str
    market: str
    ingredients: str
    sentences: tuple[str, ...]
    durability: str
    panel: PanelTable | FactsBox | None
    maker: str
    net: NetWords
    imprint: Imprint
    code: str = ""
    says: str = ""
    area_cm2: float | None = None


@cache
def _heights() -> dict[str, Row]:
    return {row.text("key"): row for row in load("letter_heights.csv", HEIGHT_COLUMNS)}


def letter_heights(key: str) -> Row:
    """Row of a market's least letters, or one sentence that names those there are."""
    found = _heights().get(key)
    if found is None:
        message = f"'{key}' is no market. Type one of {', '.join(_heights())}."
        raise InputError(message, field="market", got=key, want=", ".join(_heights()))
    return found


def least_letter_mm(market: str, area_cm2: float | None = None) -> float:
    """Least height of a small letter; a small package may have less where its area is said.

    >>> least_letter_mm("eu"), least_letter_mm("eu", 79.9), least_letter_mm("eu", 80)
    (1.2, 0.9, 1.2)
    """
    row = letter_heights(market)
    small, below = row.maybe("small_letter_mm"), row.maybe("small_below_cm2")
    is_small = area_cm2 is not None and below is not None and area_cm2 < below
    return small if is_small and small is not None else row.number_of("least_letter_mm")


def least_type_pt(market: str, area_cm2: float | None = None) -> float:
    """Smallest type whose small letters are as high as the law wants, rounded up to 0.1 pt.

    >>> least_type_pt("eu"), least_type_pt("us"), least_type_pt("eu", 60)
    (6.9, 9.1, 5.2)
    """
    share = constants("label_print.csv")["font-x-height"]
    return _up(least_letter_mm(market, area_cm2) / share * _PT_PER_MM)


def net_type_pt(net: NetWords) -> float:
    """Smallest type whose figures are as high as the net quantity must be.

    >>> net_type_pt(NetWords(("Net weight", "1190 g"), 6.0))
    25.5
    """
    return _up(net.least_mm / constants("label_print.csv")["font-figure-height"] * _PT_PER_MM)


def _up(size_pt: float) -> float:
    return round(math.ceil(size_pt / _STEP_PT - 1e-9) * _STEP_PT, 1)


def printed_label(sheet: LabelSheet, layout: LabelLayout) -> dict[str, object]:
    """Words of a label for paper, with the measures of its sheet."""
    lists = [_clean(line) for line in sheet.ingredients.splitlines() if line.strip()]
    return {
        "title": _clean(sheet.name),
        "keywords": ["label"],
        "market": sheet.market,
        "heading": "Ingredients:",
        "lists": lists,
        "sentences": [_clean(said) for said in sheet.sentences],
        "durability": _clean(sheet.durability),
        "table": _table(sheet.panel) if isinstance(sheet.panel, PanelTable) else None,
        "facts": _facts(sheet, layout) if isinstance(sheet.panel, FactsBox) else None,
        "maker": _clean(sheet.maker),
        "net": [_clean(phrase) for phrase in sheet.net.phrases],
        "net-size": net_type_pt(sheet.net),
        "code": _clean(sheet.code),
        "qr": _qr(sheet.says),
        "notes": [_clean(note) for note in sheet.imprint.notes],
        "unbaked": is_unbaked(sheet.imprint),
        "made-by": f"{made_by(sheet.imprint)}, {dated(sheet.imprint)}",
        "size": least_type_pt(sheet.market, sheet.area_cm2),
        "endless-size": constants("label_print.csv")["endless-type-pt"],
        "note-size": constants("label_print.csv")["note-type-pt"],
        "layout": {
            name.replace("_", "-"): getattr(layout, name)
            for name in LabelLayout.__slots__
            if name not in ("key", "label")
        },
    }


def _table(table: PanelTable) -> dict[str, object]:
    return {
        "heads": list(table.heads),
        "lines": [
            {"label": line.label, "cells": list(line.cells), "inside": line.is_inside}
            for line in table.lines
        ],
        "notes": [_clean(note) for note in table.notes],
    }


def _facts(sheet: LabelSheet, layout: LabelLayout) -> dict[str, object] | None:
    if not isinstance(sheet.panel, FactsBox):
        return None
    let = arrangements_let(layout.label_height_mm, sheet.area_cm2)
    return {**printed_facts(sheet.panel, sheet.area_cm2), "arrangements": list(let)}


def _qr(says: str) -> dict[str, object] | None:
    if not says:
        return None
    drawn = qr_drawing(says)
    return {"svg": drawn.svg, "side": drawn.side_mm}


def _clean(text: str) -> str:
    """Signs the fonts have; a run too long for a label may break, so that nothing is cut off."""
    return _LONG.sub(rf"\g<0>{_MAY_BREAK}", printable(text).text)


def missing_label_signs(sheet: LabelSheet) -> tuple[Notice, ...]:
    """Notice that names the signs of a label no packed font has; empty when all can be printed."""
    texts = (
        *(sheet.name, sheet.ingredients, *sheet.sentences, sheet.maker, sheet.code),
        *sheet.imprint.notes,
    )
    return missing_notice(tuple(sign for text in texts for sign in printable(text).missing))
