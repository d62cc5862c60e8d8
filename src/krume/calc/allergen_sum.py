"""The quick sum that names the allergens of a list of ingredients."""

from krume.base import NotFoundError
from krume.calc.declaring import Input, Json, Output, Values
from krume.calc.given import Given
from krume.calc.summing import Sum
from krume.label import beside_of_allergens, beside_of_goods
from krume.pantry import (
    MARKETS,
    Allergen,
    Found,
    allergens,
    allergens_of,
    allergens_said,
    declared,
    find,
    is_not_food,
)


def _allergens(given: Given) -> Values:
    market = given.text("market")
    contains: list[Json] = []
    unknown: list[Json] = []
    held: list[Allergen] = []
    named = given.texts("ingredients")
    for words in named:
        found = _of(words)
        held += found
        if any(item.presence == "unknown" for item in found):
            unknown.append(words)
        contains += [word for item in found for word in item.words(market)]
    if unknown:
        shown = ", ".join(str(word) for word in unknown)
        given.note("unknown", f"Only the supplier can say for: {shown}. The list is not complete.")
    for words in named:
        _tell_beside(given, beside_of_goods(_key(words), words, market))
        if is_not_food(words):
            given.note("not-food", f"{words}: not food, take it off before eating.")
    _tell_beside(given, beside_of_allergens(held, market))
    for item in held:
        listed = declared(item.allergen, market)
        given.cite("" if listed is None else listed.source)
    return {"contains": list(dict.fromkeys(contains)), "unknown": unknown}


def _tell_beside(given: Given, told: tuple[str, ...]) -> None:
    for text in told:
        given.note("beside-the-list", text)


def _of(words: str) -> tuple[Allergen, ...]:
    """Allergens of words; where they are asked and every answer agrees, no question is needed."""
    found: Found = find(words.replace("-", " "))
    direct = _by_key(words)
    if direct is not None:
        return direct
    keys = [choice.key for choice in found.choices if choice.key is not None]
    if found.kind == "ask" and not found.wanted and len(keys) == len(found.choices) and keys:
        sets = {allergens(key) for key in keys}
        if len(sets) == 1:
            return sets.pop()
    if found.kind in ("unknown", "close"):
        return allergens_said(words)
    return allergens_of(found)


def _key(words: str) -> str | None:
    return words.strip() if _by_key(words) is not None else find(words.replace("-", " ")).key


def _by_key(words: str) -> tuple[Allergen, ...] | None:
    """Allergens of a key of the pantry, or None when the words are none."""
    try:
        return allergens(words.strip())
    except NotFoundError:
        return None


ALLERGEN_SUM = Sum(
    "allergens",
    "Allergens that ingredients bring by themselves, in the words of a market's law.",
    (
        Input("ingredients", "names, separated by commas", kind="texts"),
        Input("market", "us, eu, uk, ca or au-nz", kind="choice", choices=MARKETS),
    ),
    (
        Output("contains", "declared words"),
        Output("unknown", "ingredients only the supplier can speak for"),
    ),
    _allergens,
    ("falcpa", "fda-allergen-guidance-5", "eu-1169-2011"),
    (("ingredients", "egg, butter, ground hazelnuts"), ("market", "eu")),
    "Traces are not in it. Only a supplier's sheet speaks of them.",
)
