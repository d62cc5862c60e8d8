"""A number as it is typed beside a fridge or a freezer: below zero too, with a unit or bare."""

import re

from krume.base import read_number

_UNIT = re.compile(r"\s*(?:°?\s*C|min|g)$")
_BELOW = ("-", "\N{MINUS SIGN}")


def typed_number(text: str) -> float | None:
    """The number, or None where the text is none.

    >>> typed_number("-18 °C"), typed_number("4,5"), typed_number("cold")
    (-18.0, 4.5, None)
    """
    words = _UNIT.sub("", text.strip())
    is_below = words.startswith(_BELOW)
    found = read_number(words[1:].strip() if is_below else words)
    if found is None:
        return None
    return -found.value if is_below else found.value
