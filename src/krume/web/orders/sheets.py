"""The sheets of an order in the order of the work, each thing once with its formats."""

from dataclasses import dataclass
from itertools import groupby

from krume.usecases import KeptSheet

_KINDS = {
    "index": "All of them on one page",
    "order-sheet": "Order sheet",
    "timetable": "Timetable",
    "shopping-list": "Shopping list",
    "torte-plan": "Torte plan",
    "bench-card": "Bench card",
    "blend-card": "Blend card",
    "label": "Label",
    "cold-log": "Cold log",
    "gluten-page": "Gluten page",
}
_FORMATS = ("pdf", "html")


@dataclass(frozen=True, slots=True)
class SheetFile:
    """One format of a sheet."""

    file: str
    word: str


@dataclass(frozen=True, slots=True)
class SheetGroup:
    """One sheet: its kind and what it is of, its files for people, and why it is not fresh."""

    kind: str
    of: str
    files: tuple[SheetFile, ...]
    why: str


def grouped_sheets(sheets: tuple[KeptSheet, ...]) -> tuple[SheetGroup, ...]:
    """All sheets by kind and what they are of; files for machines are left out."""
    order = list(_KINDS)
    shown = [each for each in sheets if each.format in _FORMATS]
    ranked = sorted(shown, key=lambda each: _rank(each, order))
    return tuple(
        _group(list(found)) for _, found in groupby(ranked, key=lambda each: _stem(each.file))
    )


def _rank(sheet: KeptSheet, order: list[str]) -> tuple[int, str, str, int]:
    kind = order.index(sheet.kind) if sheet.kind in order else len(order)
    return (kind, sheet.of, _stem(sheet.file), _FORMATS.index(sheet.format))


def _stem(file: str) -> str:
    return file.rpartition(".")[0]


def _group(found: list[KeptSheet]) -> SheetGroup:
    first = found[0]
    files = tuple(SheetFile(each.file, "PDF" if each.format == "pdf" else "page") for each in found)
    why = next((each.why for each in found if each.why), "")
    return SheetGroup(_KINDS.get(first.kind, first.kind.replace("-", " ")), first.of, files, why)
