"""What sets a cream, read from its formula: how strong it is, in what, beside which spirit."""

import re

from krume.base import Interval, NotFoundError
from krume.build import Gel
from krume.design import Formula, Line
from krume.pantry import Ingredient, ingredient
from krume.properties import Setting, leaves, settings

_BLOOM = re.compile(r"\b(\d{2,3})\s*(?:°\s*)?bloom\b|\bbloom\s*(\d{2,3})\b", re.IGNORECASE)
_PERCENT = re.compile(r"(\d{1,3}(?:[.,]\d+)?)\s*%")
_USUAL_PCT = 40.0
"""Strength by volume of the pantry's spirits, as their names say it."""
_LEAST_BLOOM, _MOST_BLOOM = 50, 350
_WET = frozenset({"liquid", "water", "fruit", "dairy", "spirit"})


def gel_of(formula: Formula) -> Gel | None:
    """The gel of a formula, the first where there are several; None where nothing sets it so."""
    lines = [(line, _goods(line)) for line in formula.lines]
    for each in settings():
        for line, goods in lines:
            if _is(each, line, goods):
                return _gel(each.key, line, goods, lines)
    return None


def _is(each: Setting, line: Line, goods: Ingredient | None) -> bool:
    """Whether a line is what sets; a word that several goods share is known by itself."""
    if goods is None:
        return any(word in line.name.casefold() for word in each.words)
    return goods.role == "gel" and bool({*each.words} & {*goods.key.split("-")})


def _goods(line: Line) -> Ingredient | None:
    try:
        return None if line.ingredient is None else ingredient(line.ingredient)
    except NotFoundError:
        return None


def _gel(
    key: str, line: Line, goods: Ingredient | None, lines: list[tuple[Line, Ingredient | None]]
) -> Gel:
    spirits = [(x, g) for x, g in lines if g is not None and g.role == "spirit"]
    spirit_g = sum(x.mass_g or 0.0 for x, _ in spirits)
    return Gel(
        key=key,
        mass_g=_best(line.mass_g),
        strength_bloom=bloom_of(line.read),
        is_leaf=goods is not None and "leaf" in goods.key,
        line=line.number,
        has_liquid=any(g is None or g.liquid or g.role in _WET for _, g in lines),
        alcohol_g=None if any(_is_strong(x) for x, _ in spirits) else _sum(spirits, "alcohol_g"),
        water_g=_sum([(x, g) for x, g in lines if g is not None], "water_g"),
        spirit=", ".join(x.name or x.read for x, _ in spirits),
        spirit_g=spirit_g,
        spirit_water_g=_sum(spirits, "water_g") or 0.0,
    )


def _is_strong(line: Line) -> bool:
    """Whether a line says a spirit stronger than the pantry's rows: its alcohol is not known."""
    match = _PERCENT.search(line.read)
    return match is not None and float(match[1].replace(",", ".")) > _USUAL_PCT


def bloom_of(words: str) -> float | None:
    """Bloom number written in a line, or that of a grade of leaf; None where neither is.

    >>> bloom_of("8 g powdered gelatine, 200 bloom"), bloom_of("4 leaves of silver gelatine")
    (200.0, 160.0)
    """
    match = _BLOOM.search(words)
    if match is not None:
        found = float(match[1] or match[2])
        return found if _LEAST_BLOOM <= found <= _MOST_BLOOM else None
    said = words.casefold()
    return next((leaf.strength_bloom for leaf in leaves() if leaf.key in said), None)


def _sum(lines: list[tuple[Line, Ingredient]], name: str) -> float | None:
    """Grams of one thing in some lines; None where a mass or a composition is not known."""
    total = 0.0
    for line, goods in lines:
        share = getattr(goods.composition, name)
        mass = _best(line.mass_g)
        if share is None or mass is None:
            return None
        total += mass * share / 100
    return total


def _best(value: float | Interval | None) -> float | None:
    return value.best if isinstance(value, Interval) else value
