"""The ingredient list: descending by mass at mixing, composites opened, allergens standing out."""

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from functools import cache

from krume.evidence import column, load
from krume.label.net_quantity import may_stand_behind_clause
from krume.label.parts import Opened, Unknown, opened
from krume.label.product import Product
from krume.label.quantity import declared_share_pct
from krume.pantry import Allergen, Lot, without_share
from krume.properties import constants

NAMED_COLUMNS = (
    column("key", "key"),
    column("word"),
    column("why"),
    column("status", "status"),
    column("source", "source"),
)
_OTHER_NAMES = {
    "soybean": ("soya", "soy"),
    "milk": ("buttermilk",),
    "walnut": ("walnuts",),
}
_LEAST_STEM = 5
CLAUSE = "contains 2 % or less of"


@dataclass(frozen=True, slots=True)
class Item:
    """One ingredient as declared; in the EU `text` has its allergens in capitals.

    `quid_pct` is its share of the finished product, printed where the name speaks of it.
    """

    name: str
    text: str
    mass_g: float | None
    share_pct: float | None
    quid_pct: float | None
    allergens: tuple[str, ...]
    lots: tuple[str, ...]
    of: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Statement:
    """What is in it, in the words of a market, and what is not known of it."""

    market: str
    items: tuple[Item, ...]
    text: str
    contains: tuple[str, ...]
    may_contain: tuple[str, ...]
    animals: tuple[str, ...]
    unknown: tuple[Unknown, ...]


def statement(
    product: Product,
    lots: tuple[Lot, ...],
    *,
    market: str,
    chosen: frozenset[str] = frozenset(),
) -> Statement:
    """Ingredient list of a product with the lots in use; what is not known closes it by name."""
    found = [opened(used, lots, chosen) for used in product.used]
    named = _named_words(product.name)
    items = _merged([_item(each, product, market, named) for each in found])
    contains = _words([a for each in found for a in each.contains], market)
    traces = _words([a for each in found for a in each.traces], market)
    unknown = [u for each in found for u in each.unknown] + _unweighed(product, items)
    return Statement(
        market=market,
        items=items,
        text=_text(items, market),
        contains=contains,
        may_contain=tuple(t for t in traces if not _is_among(t, contains)),
        animals=tuple(dict.fromkeys(each.animal for each in found if each.animal is not None)),
        unknown=tuple(dict.fromkeys(unknown)),
    )


def _words(found: list[Allergen], market: str) -> tuple[str, ...]:
    return tuple(sorted({a.word(market) for a in found if a.word(market)}))


def _is_among(trace: str, contains: tuple[str, ...]) -> bool:
    return trace in contains


def _unweighed(product: Product, items: tuple[Item, ...]) -> list[Unknown]:
    open_ones = [
        Unknown(used.label_name, "its mass", "label", f"Grams of {used.name} in the text open it.")
        for used in product.used
        if used.mass_g is None
    ]
    named = [item for item in items if item.quid_pct is not None and math.isnan(item.quid_pct)]
    if named and not open_ones:
        opens = "A line such as “Baked: 50 mm high, 482 g” opens it."
        names = ", ".join(item.name for item in named)
        open_ones.append(Unknown(names, "its share of the finished cake", "label", opens))
    return open_ones


def _item(each: Opened, product: Product, market: str, named: frozenset[str]) -> Item:
    used = each.used
    words = _words(list(each.contains), market)
    text = _emphasised(_with_animal(each), words, market)
    parts = [
        _emphasised(without_share(p), _words_of_part(each, p, market), market) for p in each.parts
    ]
    inside = ", ".join(parts)
    mixed = product.mixed_g
    quid = _quid(each, product) if _is_named(used.label_name, named) else None
    return Item(
        name=used.label_name,
        text=f"{text} ({inside})" if inside else text,
        mass_g=used.mass_g,
        share_pct=_share(used.mass_g, mixed),
        quid_pct=quid,
        allergens=words,
        lots=tuple(lot.key for lot in each.lots),
        of=used.of,
    )


def _words_of_part(each: Opened, part: str, market: str) -> tuple[str, ...]:
    return tuple(w for w in _words(list(each.contains), market) if _place(part, _noun(w)))


def _with_animal(each: Opened) -> str:
    return (
        each.used.label_name if each.animal is None else f"{each.used.label_name} ({each.animal})"
    )


def _share(mass_g: float | None, mixed_g: float | None) -> float | None:
    if mass_g is None or mixed_g is None or mixed_g <= 0:
        return None
    return 100 * mass_g / mixed_g


def _quid(each: Opened, product: Product) -> float:
    """Share of named goods over the finished product; not a number where a mass is not known."""
    mass, finished, mixed = each.used.mass_g, product.finished_g, product.mixed_g
    if mass is None or finished is None or mixed is None or finished <= 0:
        return math.nan
    evaporated = max(0.0, mixed - finished)
    return declared_share_pct(mass, total_g=finished + evaporated, evaporated_g=evaporated)


def share_text(share_pct: float) -> str:
    """A share as printed: nearest whole percent, below 5 nearest half; halves go up.

    >>> share_text(11.4), share_text(2.7)
    ('11 %', '2.5 %')
    """
    limits = constants("declared.csv")
    is_fine = share_pct < limits["share-fine-below"]
    step = Decimal(repr(limits["share-fine-step"])) if is_fine else Decimal(1)
    amount = Decimal(repr(round(share_pct, 9)))
    rounded = (amount / step).quantize(Decimal(1), ROUND_HALF_UP) * step
    text = f"{rounded:f}"
    return f"{text.rstrip('0').rstrip('.') if '.' in text else text} %"


@cache
def _unnamed() -> frozenset[str]:
    return frozenset(row.text("word") for row in load("named_words.csv", NAMED_COLUMNS))


def _named_words(title: str) -> frozenset[str]:
    words = re.split(r"[^\w]+", title.casefold())
    return frozenset(word for word in words if word) - _unnamed()


def _is_named(label_name: str, named: frozenset[str]) -> bool:
    """Whether a word of the goods stands in the product's name, whole or as its beginning."""
    own = [w for w in re.split(r"[^\w]+", label_name.casefold()) if w and w not in _unnamed()]
    return any(_is_same(word, mine) for word in named for mine in own)


def _is_same(word: str, mine: str) -> bool:
    singular = mine.removesuffix("s")
    if word in (mine, singular):
        return True
    return len(word) >= _LEAST_STEM and mine.startswith(word)


def _noun(word: str) -> str:
    """The goods in an allergen's declaring words: `nuts (hazelnut)` is hazelnut."""
    inside = re.search(r"\(([^)]+)\)", word)
    return inside[1] if inside else word


def _place(text: str, noun: str) -> re.Match[str] | None:
    names = "|".join(re.escape(name) for name in (noun, *_OTHER_NAMES.get(noun, ())))
    return re.search(rf"\b(?:{names})(?:s|es)?\b", text, re.IGNORECASE)


def _emphasised(text: str, words: tuple[str, ...], market: str) -> str:
    """The name with its allergens, in the EU in capitals; what it does not say is in brackets."""
    missing = []
    for word in words:
        found = _place(text, _noun(word))
        if found is None:
            missing.append(_noun(word).upper() if market == "eu" else _noun(word))
        elif market == "eu":
            text = text[: found.start()] + found[0].upper() + text[found.end() :]
    return f"{text} ({', '.join(missing)})" if missing else text


def _merged(items: list[Item]) -> tuple[Item, ...]:
    """Goods that carry one name on the label stand in one place."""
    by_text: dict[str, Item] = {}
    for item in items:
        known = by_text.get(item.text)
        by_text[item.text] = item if known is None else _together(known, item)
    return tuple(sorted(by_text.values(), key=lambda i: (-(i.mass_g or 0.0), i.name)))


def _together(one: Item, other: Item) -> Item:
    return Item(
        one.name, one.text, _plus(one.mass_g, other.mass_g), _plus(one.share_pct, other.share_pct),
        _plus(one.quid_pct, other.quid_pct), one.allergens,
        tuple(dict.fromkeys((*one.lots, *other.lots))),
        tuple(dict.fromkeys((*one.of, *other.of))),
    )  # fmt: skip


def _plus(one: float | None, other: float | None) -> float | None:
    return None if one is None or other is None else one + other


def _text(items: tuple[Item, ...], market: str) -> str:
    if market == "us":
        return _us_text(items)
    return ", ".join(_with_quid(item) for item in items)


def _with_quid(item: Item) -> str:
    if item.quid_pct is None or math.isnan(item.quid_pct):
        return item.text
    if item.quid_pct > 100:
        return f"{item.text} ({item.quid_pct:.0f} g per 100 g)"
    return f"{item.text} ({share_text(item.quid_pct)})"


def _us_text(items: tuple[Item, ...]) -> str:
    """Small amounts behind the clause the law allows; their order is free, here by mass."""
    small = [i for i in items if i.share_pct is not None and may_stand_behind_clause(i.share_pct)]
    large = [item.text for item in items if item not in small]
    if not small or not large:
        return ", ".join(item.text for item in items)
    return f"{', '.join(large)}, {CLAUSE}: {', '.join(item.text for item in small)}"


def contains_line(found: Statement) -> str:
    """The line of allergens: `Contains: egg, milk`; nothing known and nothing open has none."""
    if not found.contains:
        return ""
    return f"Contains: {', '.join(found.contains)}"


def may_contain_line(found: Statement) -> str:
    """The line of traces, by what the lots in use say."""
    return f"May contain: {', '.join(found.may_contain)}" if found.may_contain else ""


def kitchen_line(found: Statement, kitchen_nuts: Mapping[str, str]) -> str:
    """Which nuts the kitchen uses for other things: never that there are none.

    `kitchen_nuts` holds the declaring word of each nut in the book, with the formula it is in.
    """
    others = sorted(_noun(word) for word in kitchen_nuts if word not in found.contains)
    if not others:
        return ""
    return f"Made where nuts are used: {', '.join(others)}."
