"""Additives by name or number: their class on a list, and the allergens they may bring."""

import re
from dataclasses import dataclass
from fnmatch import fnmatchcase
from functools import cache

from krume.evidence import Row, column, load, optional

ADDITIVE_COLUMNS = (
    column("key", "key"),
    column("names"),
    column("number"),
    column("kind"),
    optional("goods"),
    optional("allergens"),
    optional("must_say"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)
_NUMBER = re.compile(r"^e\s*-?\s*(\d{3,4}[a-f]?)$", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Additive:
    """An additive: its class, its number, and the allergens it brings (None: not known).

    `must_say` is a sentence its rule wants on the label.
    """

    name: str
    number: str
    kind: str
    allergens: tuple[str, ...] | None = ()
    must_say: str = ""


@cache
def _rows() -> tuple[Row, ...]:
    return load("additives.csv", ADDITIVE_COLUMNS)


def _names(row: Row) -> tuple[str, ...]:
    return tuple(name.strip() for name in row.text("names").split(";"))


def _additive(row: Row) -> Additive:
    told = row.text("allergens")
    held = None if told == "?" else tuple(part for part in told.split(";") if part)
    return Additive(
        _names(row)[0], row.text("number"), row.text("kind"), held, row.text("must_say")
    )


@cache
def additive_named(words: str) -> Additive | None:
    """The additive of a name or a number; None where the words name none.

    A number alone says nothing of the source: E322 may be of soya, of sunflower or of egg.

    >>> additive_named("Soya lecithin").allergens, additive_named("E 322").allergens
    (('soybean',), None)
    """
    plain = " ".join(words.casefold().split())
    number = _NUMBER.match(plain)
    if number is not None:
        wanted = f"e{number[1]}"
        found = [row for row in _rows() if row.text("number").casefold() == wanted]
        return _of_number(found)
    return next((_additive(row) for row in _rows() if plain in _names(row)), None)


def _of_number(rows: list[Row]) -> Additive | None:
    """What all rows of one number share; an allergen that only some bring is not known."""
    found = [_additive(row) for row in rows]
    if not found:
        return None
    held = {each.allergens for each in found}
    first = found[0]
    shared = first.allergens if len(held) == 1 else None
    return Additive(first.number, first.number, first.kind, shared, first.must_say)


@cache
def additive_of(key: str) -> Additive | None:
    """The additive that a row of the pantry is, or None where it is a food.

    >>> additive_of("xanthan-gum").number, additive_of("flour-rice-white")
    ('E415', None)
    """
    for row in _rows():
        patterns = [pattern for pattern in row.text("goods").split(";") if pattern]
        if any(fnmatchcase(key, pattern) for pattern in patterns):
            return _additive(row)
    return None


@cache
def additive_kinds() -> frozenset[str]:
    """Names of the classes, one and several: `emulsifier`, `emulsifiers`."""
    kinds = {row.text("kind") for row in _rows()}
    return frozenset(kinds | {f"{kind}s" for kind in kinds})
