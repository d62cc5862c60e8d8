"""Whether the steps of a formula heat its egg: only a heat that is said of the egg itself."""

import re

from krume.base import NotFoundError
from krume.design import Formula, Line
from krume.pantry import ingredient
from krume.properties import constants

_EGG = r"(?:eggs?|yolks?|whites|egg white|eigelbe?|eiwei(?:ß|ss)e?|eiern?|ei|eischnee)"
_NAMES_EGG = re.compile(rf"\b{_EGG}\b", re.IGNORECASE)
_RAW = re.compile(
    rf"\b(?:raw|uncooked|unheated|cold|rohe?[mnrs]?)\s+(?:\w+\s+){{0,2}}?{_EGG}\b"
    rf"|\b{_EGG}\s+(?:\w+\s+){{0,2}}?(?:raw|uncooked|unheated|cold|roh)\b",
    re.IGNORECASE,
)
_NOT_ABOVE = re.compile(
    r"\b(?:not|never|don't|no)\b[^.;]{0,20}?\b(?:above|over|beyond|hotter|more)\b[^,.;]*"
    r"|\b(?:below|under|at most)\s+\d[^,.;]*",
    re.IGNORECASE,
)
_NEGATED = re.compile(
    r"\b(?:not|never|without|don't|no)\b[^.;]{0,20}"
    rf"\b(?:boil|simmer|scald|cook|bake|heat|{_EGG})",
    re.IGNORECASE,
)
_CLAUSES = re.compile(
    r"[.;!](?!\d)|(?:,|\band\b|\bthen\b)\s*(?=(?:and\s+|then\s+)?(?:fold|stir|pour|add|whisk|beat|"
    r"cool|mix|whip|boil|cook|heat|warm|bring|bake|off|take)\b)",
    re.IGNORECASE,
)
_COOKED = re.compile(
    r"\b(?:boil|boils|simmer|simmers|scald|cook|bake|baked|kochen|aufkochen|backen)\b",
    re.IGNORECASE,
)
_ELSEWHERE = re.compile(
    r"\b(?:toast\w*|preheat\w*|oven|base|syrup|sirup|caramel\w*|pour\w*|drizzle\w*|trickle\w*)\b"
    rf"|\b(?:on|onto|over|into|to)\s+(?:the\s+)?(?:\w+\s+)?{_EGG}\b",
    re.IGNORECASE,
)
_CELSIUS = re.compile(r"(\d{2,3}(?:[.,]\d)?)\s*°?\s*C\b")
_FAHRENHEIT = re.compile(r"(\d{2,3})\s*°?\s*F\b")


def steps_heat_egg(formula: Formula) -> bool:
    """Whether a step boils the egg or names for it a heat from which it counts as heated.

    The heat of a syrup, a base or another of the goods is not the egg's; a clause that names no
    goods speaks of all that is in the bowl by then. Egg that is called raw or cold is not heated.
    """
    if any(_RAW.search(step) for step in formula.steps):
        return False
    clauses = [part for step in formula.steps for part in _CLAUSES.split(step) if part.strip()]
    first = next((i for i, part in enumerate(clauses) if _NAMES_EGG.search(part)), 0)
    others = _other_words(formula)
    heated = any(
        _heats(part) and (_NAMES_EGG.search(part) or (i >= first and not _worded(part) & others))
        for i, part in enumerate(clauses)
    )
    return heated or _has_own_oven(formula)


def _has_own_oven(formula: Formula) -> bool:
    """Whether a line of its own says the oven: one in a step may be for something else."""
    said = " ".join(formula.steps)
    return formula.oven is not None and "oven" not in said.casefold()


def _heats(clause: str) -> bool:
    said = _NOT_ABOVE.sub(" ", clause)
    if _NEGATED.search(said) or _ELSEWHERE.search(said):
        return False
    limit = constants("keep_limits.csv")["egg-heat-c"]
    return _COOKED.search(said) is not None or hottest_c(said) >= limit


def hottest_c(step: str) -> float:
    """Highest temperature that a step names [degC]; 0 where it names none.

    >>> hottest_c("Warm to 60 C, then to 160 F.")
    71.11111111111111
    """
    celsius = [float(digits.replace(",", ".")) for digits in _CELSIUS.findall(step)]
    fahrenheit = [(float(digits) - 32) / 1.8 for digits in _FAHRENHEIT.findall(step)]
    return max([*celsius, *fahrenheit], default=0.0)


def _worded(text: str) -> frozenset[str]:
    return frozenset(re.split(r"[^\w]+", text.casefold())) - {""}


def _other_words(formula: Formula) -> frozenset[str]:
    """Words of the goods that are no egg."""
    names = (line.name for line in formula.lines if not is_egg(line))
    return frozenset(word for name in names for word in _worded(name) if not word.isdigit())


def is_egg(line: Line) -> bool:
    """Whether a line is egg, counted or weighed."""
    if line.basis == "egg":
        return True
    try:
        return line.ingredient is not None and ingredient(line.ingredient).role == "egg"
    except NotFoundError:
        return False
