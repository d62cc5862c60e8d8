"""One ingredient of the packed pantry: what 100 g hold, from where, and how sure that is."""

from dataclasses import dataclass

from krume.base import NotFoundError
from krume.evidence import Source, source
from krume.label import beside_of_allergens, beside_of_goods, market_rule
from krume.pantry import (
    MARKETS,
    QUANTITIES,
    Allergen,
    Ingredient,
    RecordNeed,
    allergens,
    find,
    ingredient,
    ingredients,
    record_need,
)
from krume.store import book_at, studio_of
from krume.usecases.asking.answer import Asked
from krume.usecases.sold.papers import papers_of

_UNITS = {"g": "g", "mg": "mg", "ug": "µg", "kcal": "kcal"}
_MOST = 60


@dataclass(frozen=True, slots=True)
class Content:
    """One quantity of 100 g; None is not known."""

    name: str
    amount: float | None
    unit: str


@dataclass(frozen=True, slots=True)
class ListedIn:
    """What the list of one market says of an ingredient, empty where it does not have it."""

    market: str
    name: str
    words: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class IngredientNow:
    """An ingredient with its papers; `is_own` where a supplier's sheet of the book is read.

    `lists` is what each market declares of it, empty where no list names it; `beside` is what the
    book's own market does not list and somebody may ask for.
    """

    key: str
    name: str
    label_name: str
    role: str
    status: str
    source: Source | None
    source_id: str
    contents: tuple[Content, ...]
    carbohydrate_basis: str
    allergens: tuple[Allergen, ...]
    lists: tuple[ListedIn, ...]
    beside: tuple[str, ...]
    need: RecordNeed
    note: str
    is_own: bool


@dataclass(frozen=True, slots=True)
class NamedIngredient:
    """One ingredient of a list: its key, its everyday name, the name in its source."""

    key: str
    label_name: str
    name: str


@dataclass(frozen=True, slots=True)
class IngredientsFound:
    """What a search found, and what is asked where the words mean several goods."""

    rows: tuple[NamedIngredient, ...]
    more: int
    question: str


def ingredients_found(words: str) -> IngredientsFound:
    """Ingredients whose names hold every word, the one the words mean first."""
    asked = " ".join(words.split())
    if not asked:
        return IngredientsFound((), 0, "")
    meant = find(asked)
    wanted = asked.casefold().split()
    keys = [key for key in (meant.key, *meant.others) if key]
    keys += [each.key for each in ingredients() if _holds(each, wanted)]
    rows = tuple(_named(ingredient(key)) for key in dict.fromkeys(keys))
    question = meant.question if meant.kind in ("ask", "close", "lookalike") else ""
    return IngredientsFound(rows[:_MOST], max(0, len(rows) - _MOST), question)


def _holds(each: Ingredient, wanted: list[str]) -> bool:
    text = f"{each.key} {each.name} {each.label_name}".casefold()
    return all(word in text for word in wanted)


def _named(each: Ingredient) -> NamedIngredient:
    return NamedIngredient(each.key, each.label_name, each.name)


def ingredient_now(name: str, asked: Asked) -> IngredientNow:
    """An ingredient by its key or its everyday name; a supplier's sheet goes before the table."""
    key = _key_of(name)
    packed, mine = ingredient(key), papers_of(asked).sheets.get(key)
    found = mine or packed
    return IngredientNow(
        key=key,
        name=found.name,
        label_name=packed.label_name,
        role=packed.role,
        status=found.status,
        source=source(found.source) if found.source and mine is None else None,
        source_id=found.source_id,
        contents=_contents(found),
        carbohydrate_basis=_BASES.get(found.composition.carbohydrate_basis, ""),
        allergens=allergens(key),
        lists=_lists(key),
        beside=_beside(key, packed, asked),
        need=record_need(packed.label_name, key),
        note=found.note,
        is_own=mine is not None,
    )


_BASES = {
    "by_difference": "carbohydrate is by difference: the fibre is inside it",
    "available": "carbohydrate is the available part: the fibre stands beside it",
}


def _lists(key: str) -> tuple[ListedIn, ...]:
    """What each market declares of the goods by themselves."""
    held = [each for each in allergens(key) if each.allergen]
    if not held:
        return ()
    return tuple(
        ListedIn(market, market_rule(market).name, tuple(w for a in held for w in a.words(market)))
        for market in MARKETS
    )


def _beside(key: str, goods: Ingredient, asked: Asked) -> tuple[str, ...]:
    market = studio_of(book_at(asked.book)).market or "eu"
    return (
        *beside_of_goods(key, goods.label_name, market),
        *beside_of_allergens(allergens(key), market),
    )


def _key_of(name: str) -> str:
    try:
        return ingredient(name).key
    except NotFoundError:
        found = find(name).key
    if found is None:
        message = f"The pantry has nothing called {name}. Search for a word of its name."
        raise NotFoundError(message, where=name, got=name)
    return found


def _contents(each: Ingredient) -> tuple[Content, ...]:
    """What is known of 100 g, and what a label needs even where it is not known."""
    held = each.composition
    return tuple(
        Content(_words(name), held.amount(name), _UNITS[name.rpartition("_")[2]])
        for name in QUANTITIES
        if held.amount(name) is not None or name in _WANTED
    )


_WANTED = frozenset(
    "water_g energy_kcal protein_g fat_g saturated_g carbohydrate_g fibre_g sugars_g starch_g "
    "ash_g sodium_mg".split()
)


def _words(name: str) -> str:
    plain = name.rpartition("_")[0].replace("_", " ")
    return {"protein n625": "protein, nitrogen × 6.25", "vitamin d": "vitamin D"}.get(plain, plain)
