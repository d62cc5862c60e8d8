"""What a column of a packed table may hold, and how one cell is read."""

import re
from collections.abc import Callable, Container
from dataclasses import dataclass
from functools import cache

from krume.base import STATUSES, UNITS, InputError

Cell = str | float | bool | None

_KEY = re.compile(r"^[a-z0-9]+(-[a-z0-9]+)*$")
_NUMBER = re.compile(r"^-?(?:\d+(?:\.\d+)?|\.\d+)(?:e-?\d+)?$")
_COMPOSED_UNITS = frozenset(
    "% 1 g/100g kcal/100g mg/100g ug/100g g/ml g/cm2 g/kg g/l kg/m3 mm/mm min/mm K kJ/g kcal/g "
    "points ratio ppm mg/kg W/mK W/K W J/K J/kgK kJ kWh C Pa text".split()
)


@dataclass(frozen=True, slots=True)
class Column:
    """A declared column: its name, its kind, and whether every row must fill it.

    Kinds: `text`, `key` (a slug), `number`, `count` (whole, not negative), `printed` (a number
    kept as its source prints it), `flag` (`yes` or blank), `status`, `source`, `unit`, `one of`.
    """

    name: str
    kind: str = "text"
    required: bool = True
    allowed: tuple[str, ...] = ()


def column(name: str, kind: str = "text", *allowed: str) -> Column:
    """A column every row must fill."""
    return Column(name, kind, required=True, allowed=allowed)


def optional(name: str, kind: str = "text", *allowed: str) -> Column:
    """A column where a blank is a value: unknown, or not so."""
    return Column(name, kind, required=False, allowed=allowed)


def cell_reader(declared: Column, known_sources: frozenset[str]) -> Callable[[str], Cell]:
    """Reader of the cells of one column; a text that comes again is not read again."""

    @cache
    def read(text: str) -> Cell:
        try:
            return read_cell(declared, text, known_sources)
        except InputError as error:
            error.field = declared.name
            raise

    return read


def read_cell(declared: Column, text: str, known_sources: frozenset[str]) -> Cell:
    """Read one cell by its column, or raise with what was wanted."""
    if declared.kind == "flag":
        return _flag(text)
    if not text:
        return _blank(declared)
    if declared.kind == "source":
        return _one_of(text, known_sources, "a key of sources.csv")
    if declared.kind == "one of":
        return _one_of(text, declared.allowed, _listed(declared.allowed))
    return _READERS[declared.kind](text)


def _blank(declared: Column) -> Cell:
    if declared.required:
        raise _refuse("", "a value")
    return None if declared.kind in ("number", "count") else ""


def _refuse(got: str, want: str) -> InputError:
    return InputError(f"found '{got}', want {want}", got=got, want=want)


def _flag(text: str) -> bool:
    if text not in ("", "yes"):
        raise _refuse(text, "yes or nothing")
    return text == "yes"


def _one_of(text: str, allowed: Container[str], want: str) -> Cell:
    if text not in allowed:
        raise _refuse(text, want)
    return text


def _listed(allowed: tuple[str, ...]) -> str:
    return "one of " + ", ".join(allowed)


def _key(text: str) -> Cell:
    if not _KEY.match(text):
        raise _refuse(text, "small letters and digits joined by single hyphens")
    return text


def _number(text: str) -> Cell:
    if not _NUMBER.match(text):
        raise _refuse(text, "a number")
    return float(text)


def _count(text: str) -> Cell:
    if not text.isascii() or not text.isdigit():
        raise _refuse(text, "a whole number")
    return float(text)


def _printed(text: str) -> Cell:
    if not _NUMBER.match(text):
        raise _refuse(text, "a number as its source prints it")
    return text


def _status(text: str) -> Cell:
    return _one_of(text, STATUSES, _listed(STATUSES))


def _unit(text: str) -> Cell:
    if text not in UNITS and text not in _COMPOSED_UNITS:
        raise _refuse(text, "a unit this program knows")
    return text


_READERS: dict[str, Callable[[str], Cell]] = {
    "text": str,
    "key": _key,
    "number": _number,
    "count": _count,
    "printed": _printed,
    "status": _status,
    "unit": _unit,
}
