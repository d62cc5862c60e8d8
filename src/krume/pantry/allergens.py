"""Allergens an ingredient brings by itself; what only a supplier can say stays unknown."""

from dataclasses import dataclass
from functools import cache

from krume.evidence import column, load, optional
from krume.pantry.finding import Found, find
from krume.pantry.ingredients import Ingredient, ingredient

ALLERGEN_COLUMNS = (
    column("key", "key"),
    column("presence", "one of", "contains", "none", "unknown"),
    optional("us"),
    optional("eu"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)


@dataclass(frozen=True, slots=True)
class Allergen:
    """One allergen: the words each law declares it by; a blank word is not declared there.

    `presence` is `contains` or `unknown` (only the supplier can say).
    """

    presence: str
    us: str
    eu: str
    status: str
    source: str
    note: str = ""

    def word(self, market: str) -> str:
        """The declaring word of a market, `us` or `eu`."""
        return self.us if market == "us" else self.eu


@cache
def _table() -> dict[str, tuple[Allergen, ...]]:
    found: dict[str, tuple[Allergen, ...]] = {}
    for row in load("allergens.csv", ALLERGEN_COLUMNS, ("key", "presence", "us", "eu")):
        key = row.text("key")
        items = found.setdefault(key, ())
        if row.text("presence") != "none":
            texts = ("presence", "us", "eu", "status", "source", "note")
            found[key] = (*items, Allergen(*(row.text(name) for name in texts)))
    return found


_SUPPLIER = Allergen("unknown", "", "", "assumed", "krume", "only the supplier can say")


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
        return allergens(found.key)
    good = found.good
    if good is None or good.us is None or good.eu is None:
        return (_SUPPLIER,)
    us = tuple(Allergen("contains", word, "", "law", "falcpa") for word in good.us)
    eu = tuple(Allergen("contains", "", word, "law", "eu-1169-2011") for word in good.eu)
    return (*us, *eu, _SUPPLIER) if good.composite else (*us, *eu)


def names_gluten_grain(found: Found) -> bool:
    """Whether what words were found to mean is or holds wheat, rye or barley."""
    if found.key is not None:
        return contains_gluten_grain(found.key)
    words = (*(found.good.us or ()), *(found.good.eu or ())) if found.good is not None else ()
    return any(grain in word for word in words for grain in ("wheat", "rye", "barley"))


def contains_gluten_grain(key: str, *, own: tuple[Ingredient, ...] = ()) -> bool:
    """Whether an ingredient is made of wheat, rye or barley; oats are told apart by their grain."""
    return ingredient(key, own=own).gluten_grain in ("wheat", "rye", "barley")
