"""What in a formula decides how it keeps and what must be said: egg, cream, fruit, spirit, nuts."""

import re

from krume.base import NotFoundError
from krume.design import Formula, Line, family
from krume.keep.egg_steps import hottest_c, steps_heat_egg
from krume.pantry import Ingredient, ingredient
from krume.properties import constants

_COOKED = re.compile(
    r"\b(?:boil\w*|simmer\w*|scald\w*|cook\w*|bake\w*|kochen|aufkochen|backen)\b", re.IGNORECASE
)
_NEGATED = re.compile(
    r"\b(?:not|never|without|don't|do not|no)\b[^.;]{0,20}\b(?:boil|cook|bake)", re.IGNORECASE
)
_WHIPPED = re.compile(r"\b(?:whip\w*|whisk\w*|schlagen|geschlagen\w*)\b", re.IGNORECASE)
_HOT_SUGAR = re.compile(r"\bcaramel\w*|\bkaramell?\w*", re.IGNORECASE)
_SUGAR_WORDS = re.compile(r"\b(?:sugar|syrup|zucker|sirup)\b", re.IGNORECASE)


def traits(formula: Formula, kind: str | None) -> frozenset[str]:
    """Traits of a formula of a family, None where it has none.

    raw-egg, egg-heat-unknown or heated-egg · whipped-cream · fresh-fruit · alcohol · nuts · honey
    · gelatine · hot-sugar · raw-batter · buckwheat
    """
    goods = [(line, _goods(line)) for line in formula.lines]
    known = [item for _, item in goods if item is not None]
    found = {_egg_trait(formula, kind, goods)}
    keys = " ".join(item.key for item in known)
    roles = {item.role for item in known}
    words = " ".join(line.name.casefold() for line in formula.lines)
    checks = {
        "alcohol": "spirit" in roles,
        "nuts": "nut" in roles,
        "honey": "honey" in keys or "honey" in words,
        "gelatine": "gelatin" in keys or "gelatin" in words,
        "buckwheat": "buckwheat" in keys or "buckwheat" in words,
        "raw-batter": "flour" in roles and not _is_cream(kind),
        "hot-sugar": _has_hot_sugar(formula),
        "whipped-cream": _has_unset_cream(formula, kind, known),
        "fresh-fruit": _has_fresh_fruit(formula, kind, known),
    }
    found |= {name for name, holds in checks.items() if holds}
    return frozenset(name for name in found if name)


def _goods(line: Line) -> Ingredient | None:
    try:
        return None if line.ingredient is None else ingredient(line.ingredient)
    except NotFoundError:
        return None


def _is_cream(kind: str | None) -> bool:
    return kind is not None and family(kind).kind == "cream"


def _egg_trait(
    formula: Formula, kind: str | None, goods: list[tuple[Line, Ingredient | None]]
) -> str:
    eggs = [
        item for line, item in goods
        if line.basis == "egg" or (item is not None and item.role == "egg")
    ]  # fmt: skip
    if not eggs:
        return ""
    if kind is not None and not _is_cream(kind):
        return "heated-egg"
    if all(item is not None and "pasteur" in item.key for item in eggs):
        return "heated-egg"
    if steps_heat_egg(formula):
        return "heated-egg"
    return "raw-egg" if formula.steps else "egg-heat-unknown"


def is_cooked(formula: Formula) -> bool:
    """Whether a step boils or bakes, or names a heat from which egg counts as heated.

    A step that says not to is no heat; the toasting of nuts and the melting of gelatine are none.
    """
    heat = constants("keep_limits.csv")["egg-heat-c"]
    for step in formula.steps:
        if _NEGATED.search(step):
            continue
        if _COOKED.search(step) or (hottest_c(step) >= heat and "toast" not in step.casefold()):
            return True
    return formula.oven is not None


def _has_hot_sugar(formula: Formula) -> bool:
    limit = constants("keep_limits.csv")["hot-sugar-c"]
    return any(
        _HOT_SUGAR.search(step)
        or (
            _SUGAR_WORDS.search(step)
            and not re.search(r"\bbake\b|\btoast\b", step, re.IGNORECASE)
            and hottest_c(step) >= limit
        )
        for step in formula.steps
    )


def _has_unset_cream(formula: Formula, kind: str | None, known: list[Ingredient]) -> bool:
    if kind is not None and kind not in ("set-cream", "fruit-mousse"):
        return False
    cream = any(item.key.startswith("cream-") and item.role == "dairy" for item in known)
    sets = any(item.role in ("gel", "starch", "binder", "chocolate") for item in known)
    return cream and not sets and any(_WHIPPED.search(step) for step in formula.steps)


def _has_fresh_fruit(formula: Formula, kind: str | None, known: list[Ingredient]) -> bool:
    """Raw fruit in something that is neither baked nor set as a jelly."""
    if (kind is not None and not _is_cream(kind)) or kind == "jelly" or is_cooked(formula):
        return False
    return any(item.role == "fruit" and item.key.endswith("-raw") for item in known)
