"""What a column of a packed table may hold, and how one cell is read."""

import re
from collections.abc import Callable
from dataclasses import dataclass

from krume.base import STATUSES, UNITS, InputError, read_number

Cell = str | float | bool | None

_KEY = re.compile(r"^[a-z0-9]+(-[a-z0-9]+)*$")
_COMPOSED_UNITS = frozenset(
    "% 1 g/100g kcal/100g mg/100g ug/100g g/ml g/cm2 g/kg g/l kg/m3 mm/mm min/mm K kJ/g kcal/g "
    "points ratio ppm mg/kg W/mK J/kgK Pa text".split()
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
    return Column(name, kind, True, allowed)


def optional(name: str, kind: str = "text", *allowed: str) -> Column:
    """A column where a blank is a value: unknown, or not so."""
    return Column(name, kind, kind == "flag", allowed)


def read_cell(declared: Column, text: str, known_sources: frozenset[str]) -> Cell:
    """Read one cell by its column, or raise with what was wanted."""
    if declared.kind == "flag":
        return _flag(text)
    if not text:
        return _blank(declared)
    return _READERS[declared.kind](text, declared, known_sources)


def _blank(declared: Column) -> Cell:
    if declared.required:
        raise _refuse(declared, "", "a value")
    return None if declared.kind in ("number", "count") else ""


def _refuse(declared: Column, got: str, want: str) -> InputError:
    return InputError(f"want {want}", field=declared.name, got=got, want=want)


def _flag(text: str) -> bool:
    if text not in ("", "yes"):
        raise InputError("want yes or nothing", got=text, want="yes or nothing")
    return text == "yes"


def _text(text: str, declared: Column, known: frozenset[str]) -> Cell:
    return text


def _key(text: str, declared: Column, known: frozenset[str]) -> Cell:
    if not _KEY.match(text):
        raise _refuse(declared, text, "small letters and digits joined by single hyphens")
    return text


def _number(text: str, declared: Column, known: frozenset[str]) -> Cell:
    try:
        value = float(text)
    except ValueError:
        raise _refuse(declared, text, "a number") from None
    if value != value or value in (float("inf"), float("-inf")):
        raise _refuse(declared, text, "a finite number")
    return value


def _count(text: str, declared: Column, known: frozenset[str]) -> Cell:
    if not text.isascii() or not text.isdigit():
        raise _refuse(declared, text, "a whole number")
    return float(text)


def _printed(text: str, declared: Column, known: frozenset[str]) -> Cell:
    if read_number(text.lstrip("-")) is None:
        raise _refuse(declared, text, "a number as its source prints it")
    return text


def _status(text: str, declared: Column, known: frozenset[str]) -> Cell:
    if text not in STATUSES:
        raise _refuse(declared, text, "one of " + ", ".join(STATUSES))
    return text


def _source(text: str, declared: Column, known: frozenset[str]) -> Cell:
    if text not in known:
        raise _refuse(declared, text, "a key of sources.csv")
    return text


def _unit(text: str, declared: Column, known: frozenset[str]) -> Cell:
    if text not in UNITS and text not in _COMPOSED_UNITS:
        raise _refuse(declared, text, "a unit this program knows")
    return text


def _one_of(text: str, declared: Column, known: frozenset[str]) -> Cell:
    if text not in declared.allowed:
        raise _refuse(declared, text, "one of " + ", ".join(declared.allowed))
    return text


_READERS: dict[str, Callable[[str, Column, frozenset[str]], Cell]] = {
    "text": _text,
    "key": _key,
    "number": _number,
    "count": _count,
    "printed": _printed,
    "status": _status,
    "source": _source,
    "unit": _unit,
    "one of": _one_of,
}
