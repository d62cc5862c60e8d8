"""Allergens an ingredient brings by itself; what only a supplier can say stays unknown."""

from dataclasses import dataclass
from functools import cache

from krume.evidence import column, load, optional
from krume.pantry.finding import Found, find
from krume.pantry.ingredients import Ingredient, ingredient
from krume.pantry.markets import declared_words

GLUTEN_GRAINS = ("wheat", "rye", "barley", "triticale")

ALLERGEN_COLUMNS = (
    column("key", "key"),
    column("presence", "one of", "contains", "none", "unknown"),
    optional("allergen"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)


@dataclass(frozen=True, slots=True)
class Allergen:
    """One allergen by its plain name; each market's list declares it in words of its own.

    `presence` is `contains` or `unknown` (only the supplier can say, and no allergen is named).
    """

    presence: str
    allergen: str
    status: str
    source: str
    note: str = ""

    def words(self, market: str) -> tuple[str, ...]:
        """Words of a market's line; none where its list does not have it."""
        return declared_words(self.allergen, market)

    def word(self, market: str) -> str:
        """The first of a market's words, or an empty one."""
        return next(iter(self.words(market)), "")


@cache
def _table() -> dict[str, tuple[Allergen, ...]]:
    found: dict[str, tuple[Allergen, ...]] = {}
    for row in load("allergens.csv", ALLERGEN_COLUMNS, ("key", "presence", "allergen")):
        key = row.text("key")
        items = found.setdefault(key, ())
        if row.text("presence") != "none":
            texts = ("presence", "allergen", "status", "source", "note")
            found[key] = (*items, Allergen(*(row.text(name) for name in texts)))
    return found


_SUPPLIER = Allergen("unknown", "", "assumed", "krume", "only the supplier can say")


def unknown_allergen() -> tuple[Allergen, ...]:
    """What is said of goods that only their supplier can speak for."""
    return (_SUPPLIER,)


def allergens(key: str, *, own: tuple[Ingredient, ...] = ()) -> tuple[Allergen, ...]:
    """Allergens of an ingredient; one with presence `unknown` means only the supplier can say.

    A supplier's own words go before the table; without them nothing is read as none.
    """
    mine = next((item for item in own if item.key == key), None)
    if mine is None:
        ingredient(key)
        return _table().get(key, (_SUPPLIER,))
    if mine.contains is None:
        return (_SUPPLIER,)
    return tuple(a for word in mine.contains for a in allergens_of_words(word))


def allergens_of_words(words: str) -> tuple[Allergen, ...]:
    """Allergens of an everyday name, goods beyond the pantry too; an unknown word is unknown."""
    return allergens_of(find(words))


def allergens_of(found: Found) -> tuple[Allergen, ...]:
    """Allergens of what words were found to mean."""
    if found.key is not None:
        held = allergens(found.key)
        return (*held, _SUPPLIER) if found.wanted and _SUPPLIER not in held else held
    good = found.good
    if good is None or good.allergens is None:
        return (_SUPPLIER,)
    known = tuple(Allergen("contains", each, "law", "eu-1169-2011") for each in good.allergens)
    return (*known, _SUPPLIER) if good.composite else known


def names_gluten_grain(found: Found) -> bool:
    """Whether what words were found to mean is or holds wheat, rye or barley."""
    if found.key is not None:
        return contains_gluten_grain(found.key)
    held = (found.good.allergens or ()) if found.good is not None else ()
    return any(grain in held for grain in GLUTEN_GRAINS)


def contains_gluten_grain(key: str, *, own: tuple[Ingredient, ...] = ()) -> bool:
    """Whether an ingredient is made of wheat, rye or barley; oats are told apart by their grain."""
    return ingredient(key, own=own).gluten_grain in GLUTEN_GRAINS
