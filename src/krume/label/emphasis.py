"""Allergens standing out in a name: in capitals, in brackets where the name does not say them."""

import re
from functools import cache

from krume.label.market_rules import MarketRule
from krume.pantry import Allergen, allergen_names, declared


def emphasised(text: str, found: tuple[Allergen, ...], rule: MarketRule) -> str:
    """The text with its allergens; in brackets behind it what it does not say.

    >>> from krume.label.market_rules import market_rule
    >>> from krume.pantry import allergens
    >>> emphasised("butter", allergens("butter-unsalted"), market_rule("eu"))
    'butter (MILK)'
    >>> emphasised("butter", allergens("butter-unsalted"), market_rule("us"))
    'butter (milk)'
    """
    missing: list[str] = []
    for allergen in dict.fromkeys(each.allergen for each in found):
        told = declared(allergen, rule.key)
        if told is None:
            continue
        if not says(text, allergen, told.named):
            missing.append(told.named)
        elif rule.has_emphasis:
            text = _pattern(allergen, told.named).sub(lambda match: match[0].upper(), text)
    words = [word.upper() if rule.has_emphasis else word for word in dict.fromkeys(missing)]
    return f"{text} ({', '.join(words)})" if words else text


def says(text: str, allergen: str, named: str) -> bool:
    """Whether a text says an allergen by one of its plain names."""
    return _pattern(allergen, named).search(text) is not None


@cache
def _pattern(allergen: str, named: str) -> re.Pattern[str]:
    names = sorted({named, *allergen_names(allergen)}, key=len, reverse=True)
    choice = "|".join(re.escape(name) for name in names)
    return re.compile(rf"\b(?:{choice})(?:s|es)?\b", re.IGNORECASE)
