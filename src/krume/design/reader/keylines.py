"""Key lines: `Baked: 50 mm high, 482 g`, `Eggs: EU sizes`, `Density: 0.75 g/ml`, `Core: 95 C`."""

import re
from functools import lru_cache
from typing import NamedTuple

from krume.base import Interval, unit_named
from krume.design.formula import BakedLine
from krume.design.reader.cleaning import clean
from krume.design.reader.settings import limit
from krume.design.reader.wording import KEY_LINE, KEYS, MAKES_LINE
from krume.pantry import egg_size_named, region_named

_LENGTH = re.compile(
    r"(\d+(?:[.,]\d+)?)\s*(mm|cm|in\b|inch(?:es)?)\s*(high|thick|tall|hoch|dick|deep)?",
    re.IGNORECASE,
)
_MASS = re.compile(r"(\d+(?:[.,]\d+)?)\s*(g|kg|oz|lb)\b", re.IGNORECASE)
CORE = re.compile(
    r"\b(?:core|kern(?:temperatur)?|internal)\b[^.\d]{0,24}(\d{1,3}(?:[.,]\d)?)\s*(?:°\s*)?(c|f)?\b",
    re.IGNORECASE,
)


class KeyLine(NamedTuple):
    """A key line: which key, its value, and the key's word as typed."""

    key: str
    value: str
    word: str


@lru_cache(maxsize=8192)
def key_line(source: str) -> KeyLine | None:
    """The key line a source line is, or None.

    >>> key_line("Tin: round 20 x 7 cm"), key_line("Butter: 100 g")
    (KeyLine(key='tin', value='round 20 x 7 cm', word='Tin'), None)
    """
    text = clean(source).text
    match = KEY_LINE.match(text)
    if match is None:
        makes = MAKES_LINE.match(text)
        return KeyLine("makes", makes[2], makes[1]) if makes and len(text.split()) < 14 else None
    word, value = match[1].strip(), (match[2] or "").strip()
    key = KEYS.get(word.casefold())
    if key is None or (not value and key not in ("tin", "oven")):
        return None
    if key == "eggs" and not (region_named(value) or _size_key(value)):
        return None
    if key == "makes" and word.casefold() == "for" and not re.search(r"\d", value):
        return None
    return KeyLine(key, value, word)


def _size_key(value: str) -> str | None:
    sizes = egg_size_named(value)
    return sizes[0].key if len(sizes) == 1 else None


def eggs_said(value: str) -> tuple[str | None, str | None]:
    """Region and size of an `Eggs:` line; `EU sizes` names the region alone."""
    return region_named(value), _size_key(value)


@lru_cache(maxsize=4096)
def baked_of(source: str, value: str) -> BakedLine:
    """The plan of a `Baked:` line."""
    height = thickness = None
    for match in _LENGTH.finditer(value):
        unit = unit_named(match[2])
        length_mm = float(match[1].replace(",", ".")) * 10 * (unit.size or 1.0 if unit else 1.0)
        if (match[3] or "").casefold() in ("thick", "dick"):
            thickness = round(length_mm, 4)
        elif height is None:
            height = round(length_mm, 4)
    mass = _MASS.search(value)
    unit = unit_named(mass[2]) if mass else None
    mass_g = float(mass[1].replace(",", ".")) * (unit.size or 1.0) if mass and unit else None
    status = "measured" if re.search(r"\bmeasured|gemessen\b", value, re.IGNORECASE) else "assumed"
    return BakedLine(source, height, mass_g, thickness, status)


def core_of(text: str) -> float | None:
    """Core temperature a text names [°C]; a bare figure above 130 is Fahrenheit."""
    match = CORE.search(text)
    if match is None:
        return None
    value = float(match[1].replace(",", "."))
    unit = (match[2] or ("f" if value > limit("core-hottest") else "c")).casefold()
    return round((value - 32) / 1.8, 1) if unit == "f" else value


def family_said(value: str) -> str:
    """Words of a `Family:` line, without what stands in brackets."""
    return re.sub(r"\(.*?\)", "", value).strip()


def minutes_said(value: str) -> Interval | None:
    """Minutes of a `Baking time:` line."""
    match = re.search(
        r"(\d{1,3})(?:\s*(?:-|–|to|bis)\s*(\d{1,3}))?\s*(h\b|hours?|stunden?)?", value
    )
    if match is None:
        return None
    low = float(match[1]) * (60 if match[3] else 1)
    high = float(match[2]) * (60 if match[3] else 1) if match[2] else low
    return Interval(low, (low + high) / 2, high) if high >= low else None
