"""Allergens by the words of a bag or a sheet; a word that means nothing known stays unknown."""

import re
from collections.abc import Iterator
from functools import cache

from krume.evidence import column, load, optional
from krume.pantry.additives import additive_kinds, additive_named
from krume.pantry.allergens import Allergen, allergens_of, unknown_allergen
from krume.pantry.finding import find
from krume.pantry.lot_words import parts_listed, without_share

WORD_COLUMNS = (
    column("key", "key"),
    column("words"),
    optional("allergens"),
    optional("stands"),
    column("status", "status"),
    column("source", "source"),
)
_INSIDE = re.compile(r"^(?P<outer>[^([]+?)\s*(?:[(\[](?P<inner>.*)[)\]]|:\s*(?P<after>.+))$")


@cache
def _meant() -> dict[str, tuple[str, ...]]:
    return {
        word.strip(): tuple(each for each in row.text("allergens").split(";") if each)
        for row in load("allergen_words.csv", WORD_COLUMNS)
        for word in row.text("words").split(";")
    }


@cache
def allergen_names(allergen: str) -> tuple[str, ...]:
    """Plain names that say an allergen where they stand in a list: soya says soybean.

    >>> allergen_names("soybean")
    ('soya', 'soy', 'soja', 'soybean', 'soya bean')
    """
    return tuple(
        name
        for row in load("allergen_words.csv", WORD_COLUMNS)
        if row.text("allergens") == allergen
        for name in row.text("stands").split(";")
        if name
    )


def _declared(names: tuple[str, ...]) -> tuple[Allergen, ...]:
    return tuple(Allergen("contains", name, "declared", "supplier-sheet") for name in names)


@cache
def allergens_said(words: str) -> tuple[Allergen, ...]:
    """Allergens of a word of a record; a word that means none known is unknown, never none.

    A part with its own list in brackets is opened: what stands inside speaks for it.

    >>> [a.allergen for a in allergens_said("emulsifier (soya lecithin)")]
    ['soybean']
    >>> [a.presence for a in allergens_said("emulsifier: E322")]
    ['unknown']
    """
    said = " ".join(without_share(words).split())
    plain = said.casefold()
    if plain in _meant():
        return _declared(_meant()[plain])
    additive = additive_named(plain)
    if additive is not None:
        return unknown_allergen() if additive.allergens is None else _declared(additive.allergens)
    opened = _INSIDE.match(said)
    if opened is not None:
        return tuple(dict.fromkeys(_of_opened(opened)))
    return allergens_of(find(said))


def _of_opened(opened: re.Match[str]) -> Iterator[Allergen]:
    """What the list inside says, and what the outer name brings by itself."""
    outer = opened["outer"].strip()
    if outer.casefold() not in additive_kinds():
        yield from (a for a in allergens_said(outer) if a.presence == "contains")
    for part in parts_listed(opened["inner"] or opened["after"]):
        yield from allergens_said(part)
