"""What a blend should hold, as typed: `protein 6, fat 1.1, fibre 2.6`."""

import re
from types import MappingProxyType

from krume.base import Option, Problem, Read, read_number

PROPERTY_WORDS = MappingProxyType(
    {
        "protein": ("protein", "proteins", "eiweiß", "eiweiss"),
        "fat": ("fat", "fett"),
        "fibre": ("fibre", "fiber", "fibres", "dietary fibre", "dietary fiber", "ballaststoffe"),
        "starch": ("starch", "starches", "pure starch", "starch share", "stärke"),
        "water": ("water", "moisture", "wasser"),
        "sugars": ("sugars", "sugar", "zucker"),
        "ash": ("ash", "asche"),
        "binder": ("binder", "binders", "bindemittel"),
    }
)
"""Properties of a blend and the words for each; the first three are those it is matched by."""

_MARKS = re.compile(r"[;\n]|,(?!\d)")
_WANT = re.compile(
    r"^(?P<name>[^\W\d][\w -]*?)\s*[:=]?\s*(?P<number>\d[\d.,]*|[.,]\d+)\s*"
    r"(?:%|g|g/100\s*g|g per 100\s*g)?$"
)
_EXAMPLE = "protein 6, fat 1.1, fibre 2.6"
_MOST = 100.0


def property_named(words: str) -> str | None:
    """Property that a word stands for, or None.

    >>> property_named("Fiber"), property_named("taste")
    ('fibre', None)
    """
    said = " ".join(words.casefold().split())
    return next((name for name, known in PROPERTY_WORDS.items() if said in known), None)


def read_wants(text: str, *, where: str) -> Read[dict[str, float]]:
    """Read what 100 g of a blend should hold; what cannot be read is asked.

    >>> read_wants("protein 6, fat 1,1; fibre 2.6", where="--want").value
    {'protein': 6.0, 'fat': 1.1, 'fibre': 2.6}
    """
    found: dict[str, float] = {}
    for part in filter(None, (part.strip() for part in _MARKS.split(text))):
        match = _WANT.match(part)
        name = property_named(match["name"]) if match else None
        number = read_number(match["number"], comma_is_decimal=True) if match else None
        if name is None or number is None or number.value > _MOST or name in found:
            return Read({}, (_unread(part, text, where),))
        found[name] = number.value
    return Read(found) if found else Read({}, (_unread(text, text, where),))


def _unread(part: str, text: str, where: str) -> Problem:
    known = ", ".join(PROPERTY_WORDS)
    ask = (
        f"'{part}' is not read as something a blend holds. Type a word and its grams in 100 g, "
        f"each once: {_EXAMPLE}. There are: {known}."
    )
    return Problem("want-unread", where, text, ask, (Option("Such as", _EXAMPLE),))
