"""The one caution of a card: what is known to be in it, what is not known, what is not said."""

import re

from krume.base import NotFoundError
from krume.design import Formula, Line, family
from krume.label import Statement
from krume.pantry import Ingredient, allergens, ingredient
from krume.publish.words import listed

_HEATED = re.compile(
    r"\b(?:bake|boil|simmer|scald|cook|backen|kochen|aufkochen)\b|\bwarm\b.*\d|\d\s*°?\s*C\b",
    re.IGNORECASE,
)
_LAW = "Local law decides."
_GLUTEN = "No gluten sentence: evidence not judged yet."


def cautions(
    formula: Formula,
    market: str,
    *,
    gluten: str | None = None,
    gelatine: str | None = None,
    declared: Statement | None = None,
) -> tuple[str, ...]:
    """Sentences of the caution, the one another person's health rests on first.

    `gluten` says how the gate stands, where the records were judged; `declared` is what the
    lots in use declare, where there are any.
    """
    goods = tuple(_good(line) for line in formula.lines)
    told = (
        _contains(goods, market, declared),
        _may_contain(declared),
        _ask_about(list(zip(formula.lines, goods, strict=True)), declared),
        gluten or _GLUTEN,
        *_by_kind(formula, goods, gelatine),
        _LAW,
    )
    return tuple(text for text in told if text)


def torte_cautions(
    formulas: tuple[Formula, ...],
    market: str,
    *,
    keep: str | None,
    gelatine: str | None,
    gluten: str | None = None,
    declared: Statement | None = None,
) -> tuple[str, ...]:
    """Sentences of a torte's caution: those of all its formulas, each once.

    `gelatine` is the animal its gelatine is from, where lot or text says it; `keep` is how the
    plan says that the torte is kept; `declared` is what the lots in use declare.
    """
    goods = [(line, _good(line)) for formula in formulas for line in formula.lines]
    found = tuple(good for _, good in goods)
    told = (
        _contains(found, market, declared),
        _may_contain(declared),
        _ask_about(goods, declared),
        *_of_torte(found, formulas, gelatine),
        f"Keep: {keep}. The cold chain holds until it is served." if _is_cold(keep) else "",
        gluten or _GLUTEN,
        _LAW,
    )
    return tuple(text for text in told if text)


def _is_cold(keep: str | None) -> bool:
    return keep is not None and "cold" in keep.casefold()


def _of_torte(
    goods: tuple[Ingredient | None, ...], formulas: tuple[Formula, ...], gelatine: str | None
) -> tuple[str, ...]:
    said = [text for formula in formulas for text in _by_kind(formula, _goods_of(formula))]
    kept = [text for text in said if not text.startswith(("Gelatine", "Raw batter"))]
    if any(good is not None and "gelatin" in good.key for good in goods):
        animal = "its animal is not stated" if gelatine is None else f"from {gelatine}"
        kept.append(f"Gelatine: {animal}.")
    return tuple(dict.fromkeys(kept))


def _goods_of(formula: Formula) -> tuple[Ingredient | None, ...]:
    return tuple(_good(line) for line in formula.lines)


def _good(line: Line) -> Ingredient | None:
    try:
        return None if line.ingredient is None else ingredient(line.ingredient)
    except NotFoundError:
        return None


def _contains(goods: tuple[Ingredient | None, ...], market: str, declared: Statement | None) -> str:
    """Allergens of the goods by themselves, and those that only their lots declare."""
    words = tuple(
        word
        for good in goods
        if good is not None
        for allergen in allergens(good.key)
        for word in allergen.words(market)
    )
    words += () if declared is None else declared.contains
    return f"Contains {listed(words)}." if words else "No declared allergen known in it."


def _may_contain(declared: Statement | None) -> str:
    if declared is None or not declared.may_contain:
        return ""
    return f"May contain {listed(declared.may_contain)}."


def _ask_about(goods: list[tuple[Line, Ingredient | None]], declared: Statement | None) -> str:
    """Goods whose allergens nobody has said: no row of the pantry, and no lot in use."""
    names = tuple(
        line.name or line.read.strip()
        for line, good in goods
        if good is None or _is_open(good, declared)
    )
    return f"Ask the supplier about {listed(names)}." if names else ""


def _is_open(good: Ingredient, declared: Statement | None) -> bool:
    if declared is None:
        return any(a.presence == "unknown" for a in allergens(good.key))
    return any(u.of == good.label_name and "allergens" in u.what for u in declared.unknown)


def _by_kind(
    formula: Formula, goods: tuple[Ingredient | None, ...], gelatine: str | None = None
) -> tuple[str, ...]:
    roles = {good.role for good in goods if good is not None}
    keys = " ".join(good.key for good in goods if good is not None)
    told: list[str] = []
    has_egg = "egg" in roles or any(line.basis == "egg" for line in formula.lines)
    if "flour" in roles and _is_batter(formula):
        told.append("Raw batter is not for tasting.")
    elif has_egg and not any(_HEATED.search(step) for step in formula.steps):
        told.append("Raw egg: not for the pregnant, small children, the old or the ill.")
    if "gelatin" in keys:
        animal = "its animal is not stated" if gelatine is None else f"from {gelatine}"
        told.append(f"Gelatine: {animal}.")
    if "spirit" in roles:
        told.append("Contains alcohol: not for children.")
    return tuple(told)


def _is_batter(formula: Formula) -> bool:
    try:
        return formula.family is None or family(formula.family).kind == "batter"
    except NotFoundError:
        return True
