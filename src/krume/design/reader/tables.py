"""Tables pasted from a spreadsheet: which column is the name, which the amount, in which unit."""

import re
from functools import lru_cache
from typing import NamedTuple

from krume.base import Unit, read_number, unit_named
from krume.design.reader.cleaning import clean

_CELL = re.compile(r"[^\t|;]+")
_INDEX = frozenset("no nr pos position # number lfd".split())
_NAME = frozenset("ingredient ingredients zutat zutaten item name what was".split())


class Cell(NamedTuple):
    """A cell of a row with its place in the source."""

    text: str
    start: int
    end: int


class RowAmount(NamedTuple):
    """What a row of a table with a head says: a name, a figure and the unit of its column."""

    name: Cell
    figure: Cell
    value: float
    unit: Unit


def cells(source: str) -> list[Cell]:
    """Cells of a row, empty ones between two separators included."""
    text = clean(source).text
    found: list[Cell] = []
    start = 0
    for at, sign in enumerate((*text, "\t")):
        if sign in "\t|;":
            found.append(Cell(text[start:at].strip(), start, at))
            start = at + 1
    return found


@lru_cache(maxsize=1024)
def columns(source: str) -> tuple[str, ...]:
    r"""Role of each column by a table's head: index, name, a unit, or nothing.

    >>> columns("no\titem\tkg\tg")
    ('index', 'name', 'kg', 'g')
    """
    return tuple(_role(cell.text) for cell in cells(source))


def _role(head: str) -> str:
    words = re.findall(r"[^\W\d_]+|#", head.casefold())
    if not words:
        return ""
    if words[0] in _INDEX:
        return "index"
    if words[0] in _NAME:
        return "name"
    unit = next((u for u in map(unit_named, reversed(words)) if u is not None), None)
    return unit.name if unit is not None and unit.kind in ("mass", "volume") else ""


@lru_cache(maxsize=8192)
def row_amount(source: str, roles: tuple[str, ...]) -> RowAmount | None:
    """Name and amount of a row under a head that names units by column."""
    row = cells(source)
    if "name" not in roles or len(row) != len(roles):
        return None
    name = row[roles.index("name")]
    for role, cell in zip(roles, row, strict=True):
        unit = unit_named(role) if role not in ("", "index", "name") else None
        number = read_number(cell.text) if unit is not None else None
        if unit is not None and number is not None and name.text:
            return RowAmount(name, cell, number.value, unit)
    return None
