"""Whose temperature stands in a clause: the oven's, or a core's, a pan's, a room's."""

import re

BAKES = re.compile(
    r"\b(?:bak(?:e|ed|ing)|ovens?|preheat\w*|(?:vor)?backen|gebacken|backofen|ofen|vorheizen|vorgeheizt\w*|umluft|ober)\b",
    re.IGNORECASE,
)
NOT_BAKED = re.compile(
    r"\b(?:toast\w*|roast\w*|röst\w*|core|kern\w*|melt\w*|cool\w*|warm\w*|internal|thermometer|syrup|boil\w*|dry)\b",
    re.IGNORECASE,
)
_OF_CORE = re.compile(r"\b(?:core|kern\w*|internal)\b", re.IGNORECASE)
_ONCE_MORE = re.compile(r"\s*(?:[(\[/=,]|or\b)\s*(?:or\s+|about\s+)?", re.IGNORECASE)


def is_left(text: str, match: re.Match[str], *, keyed: bool) -> bool:
    """Whether a temperature is not the oven's: of a core, of a pan, of a step without an oven."""
    clause = clause_before(text, match.start())
    if keyed:
        return _OF_CORE.search(clause) is not None
    return bool(NOT_BAKED.search(clause)) or not BAKES.search(_sentence(text, match.start()))


def in_other_unit(text: str, left_at: int, match: re.Match[str]) -> bool:
    """Whether it says once more, in the other unit, the temperature before it that was left."""
    return left_at >= 0 and _ONCE_MORE.fullmatch(text, left_at, match.start()) is not None


def clause_before(text: str, at: int) -> str:
    """The clause a place of a text stands in, up to that place."""
    start = max(text.rfind(sign, 0, at) for sign in (",", ";", ". ", "(")) + 1
    return text[start:at]


def _sentence(text: str, at: int) -> str:
    start = text.rfind(". ", 0, at) + 1
    end = text.find(". ", at)
    return text[start : end if end >= 0 else len(text)]
