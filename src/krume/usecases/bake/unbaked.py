"""What gets no minutes for what it is, or for how its own text says it is baked."""

import re

from krume.base import Problem
from krume.design import Formula, balance, family
from krume.usecases.bake.wish import BakeWish

_BAKED = r"\b(?:re)?bak(?:e|ed|es|ing)\b"
# A bath for whipping eggs and a microwave for melting butter are no way of baking.
_WAYS = {
    "frozen": rf"\bfrom (?:the )?(?:frozen|freezer)\b|{_BAKED} (?:it |them )?frozen\b",
    "water": (
        rf"{_BAKED}.*\b(?:water[- ]bath|bain[- ]marie)\b"
        r"|\b(?:tin|mould|pan|ring)\b.*\b(?:water[- ]bath|bain[- ]marie)\b"
        rf"|\b(?:water[- ]bath|bain[- ]marie)\b.*{_BAKED}"
    ),
    "steamed": (
        rf"{_BAKED}.*\b(?:with|under|in) steam\b|^steam\b|\bsteamed? (?:for )?\d+|\bin a steamer\b"
    ),
    "microwave": rf"{_BAKED}.*\bmicrowave\b|^microwave (?:it |the batter |the cake )?(?:for )?\d+",
}
_FOUND = {way: re.compile(pattern, re.IGNORECASE) for way, pattern in _WAYS.items()}
_WHY = {
    "frozen": "is baked from frozen: the model knows no thawing and gives no minutes. Let it thaw "
    "and take the step out, or bake by the probe.",
    "water": "is baked in a water bath, and minutes without the water would be far too few. Add "
    "--jacket water, or take the water out of the text.",
    "steamed": "is baked in steam: the model knows dry air only and gives no minutes.",
    "microwave": "is baked by microwave: the model heats from outside only and gives no minutes.",
}


def unbaked(formula: Formula, wish: BakeWish) -> tuple[Problem, ...]:
    """Why a formula gets no minutes: no batter in a tin, or baked as the model does not know."""
    return _no_batter(formula) or _other_way(formula, wish)


def _no_batter(formula: Formula) -> tuple[Problem, ...]:
    """A cream is not baked, and a dough rolled thin is outside what the model is made for."""
    key = balance(formula).family
    if key is None:
        return ()
    kind = family(key)
    if kind.has_batter_in_tin:
        return ()
    ask = f"A {kind.label} has no batter in a tin: the model gives no minutes for it."
    return (Problem("not-a-batter", "line 1", kind.label, ask),)


def _other_way(formula: Formula, wish: BakeWish) -> tuple[Problem, ...]:
    for line in formula.source_lines:
        way = _way(line.text) if line.kind in ("step", "note") else None
        if way is not None and (way, wish.jacket) != ("water", "water"):
            ask = f"Line {line.number} says it {_WHY[way]}"
            return (Problem(f"baked-{way}", f"line {line.number}", line.text.strip(), ask),)
    return ()


def _way(text: str) -> str | None:
    """How one sentence of a text says that it is baked, where the model does not know it."""
    sentences = [each.strip(" -*0123456789)") for each in re.split(r"[.;]\s", text)]
    found = (way for way, at in _FOUND.items() if any(at.search(each) for each in sentences))
    return next(found, None)
