"""Reading what is in the house and in the shop: eggs by count and size, packs by grams."""

import re

from krume.base import Option, Problem, plain_digits, read_number
from krume.pantry import egg_size_named, egg_sizes
from krume.plan.eggs.rules import rule
from krume.plan.eggs.wanting import EggStock, Liquid

_COUNTED = re.compile(r"^\s*(\d{1,5})\s*x?\s*(?:eggs?\b,?)?\s*(\D.*|.*\d)$", re.IGNORECASE)
_WEIGHED = re.compile(r"^\s*([\d.,]+)\s*(g|kg)\s+(.+)$", re.IGNORECASE)
_NOTHING = frozenset({"none", "nothing", "no", "0"})
_MOST_EGGS = 10_000
_MOST_G = 100_000.0


def read_house(
    text: str, *, where: str, region: str | None, sugar_pct: float | None = None
) -> EggStock | Problem:
    """Eggs or packs in the house: `10 EU M`, `200 g pasteurised yolk`.

    >>> read_house("10 EU M", where="--have", region=None).house
    (('eu-m', 10),)
    """
    weighed = _WEIGHED.match(plain_digits(text))
    if weighed is not None:
        return _weighed(weighed, text, where, sugar_pct)
    counted = _COUNTED.match(plain_digits(text))
    if counted is None:
        return _unread(text, where)
    count = int(counted[1])
    size = _size(counted[2], text, where, region, before=f"{count} ")
    if isinstance(size, Problem):
        return size
    return _unread(text, where) if count > _MOST_EGGS else EggStock(house=((size, count),))


def read_shop(
    text: str, *, where: str, region: str | None, sugar_pct: float | None = None
) -> EggStock | Problem:
    """What the shop has: `EU L`, `pasteurised white`, or none.

    >>> read_shop("EU L", where="--shop", region=None).shop
    ('eu-l',)
    """
    if text.strip().casefold() in _NOTHING:
        return EggStock(shop=())
    liquid = _liquid(text, None, sugar_pct)
    if liquid is not None:
        return EggStock(shop=(), liquids=(liquid,))
    size = _size(text, text, where, region, before="")
    return size if isinstance(size, Problem) else EggStock(shop=(size,))


def _weighed(
    found: re.Match[str], text: str, where: str, sugar_pct: float | None
) -> EggStock | Problem:
    number = read_number(found[1])
    mass = 0.0 if number is None else number.value * (1000 if found[2].casefold() == "kg" else 1)
    liquid = _liquid(found[3], mass, sugar_pct)
    if liquid is None or not 0 < mass <= _MOST_G:
        return _unread(text, where)
    return EggStock(liquids=(liquid,))


def _liquid(text: str, mass_g: float | None, sugar_pct: float | None) -> Liquid | None:
    words = text.casefold()
    part = next((p for p in ("yolk", "white", "whole") if p in words), None)
    if part is None or not re.search(r"pasteuri[sz]ed|sugared|liquid", words):
        return None
    if "sugared" not in words:
        return Liquid(part, mass_g)
    return Liquid(part, mass_g, rule("sugar-in-yolk").value if sugar_pct is None else sugar_pct)


def _size(words: str, text: str, where: str, region: str | None, *, before: str) -> str | Problem:
    found = egg_size_named(words.strip(" ,"), region)
    if len(found) == 1:
        return found[0].key
    if not found:
        return _unread(text, where)
    options = tuple(Option(size.label, f"{before}{size.label}") for size in found)
    named = " or ".join(f"{size.label} {size.whole_g.best:g} g" for size in found)
    return Problem("egg-size-missing", where, text, f"Which size is it: {named}?", options)


def _unread(text: str, where: str) -> Problem:
    sizes = ", ".join(size.label for size in egg_sizes()[:4])
    ask = (
        f"I cannot read '{text}' as eggs. Type a count and a size, such as 10 EU M (sizes: "
        f"{sizes}, US Large …), or grams of a pack, such as 200 g pasteurised yolk."
    )
    if where.startswith("--shop"):
        ask = (
            f"I cannot read '{text}' as what a shop has. Type a size, such as EU L (sizes: "
            f"{sizes}, US Large …), a pack, such as pasteurised white, or none."
        )
    return Problem("eggs-unread", where, text, ask)
