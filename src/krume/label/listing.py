"""The lines of an ingredient list: each of the goods in the words of a market, in their order."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal

from krume.label.additive_words import additive_text, part_text
from krume.label.emphasis import emphasised, says
from krume.label.market_rules import MarketRule
from krume.label.named_goods import is_named, words_of_name
from krume.label.net_quantity import may_stand_behind_clause
from krume.label.parts import Opened
from krume.label.product import Used
from krume.label.quantity import declared_share_pct
from krume.label.water import is_water
from krume.pantry import Additive, Allergen, additive_named, additive_of, allergens_said, declared
from krume.properties import constants

# Grams that are equal but for their last bits stand by name.
_DIGITS = 6
CLAUSE = "contains 2 % or less of"


@dataclass(frozen=True, slots=True)
class ListStyle:
    """How a list is set: additives by their numbers, and each part with a list of its own."""

    by_number: bool = False
    by_part: bool = False


@dataclass(frozen=True, slots=True)
class Item:
    """One ingredient as declared; where the market wants it `text` has its allergens in capitals.

    `mass_g` is what it stands by: grams at mixing, of added water what is left where the market
    wants that. `quid_pct` is its share of the finished product, printed where the name speaks of
    it.
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
class PartList:
    """The list of one part of a product: what the part weighs in it, and what is in the part.

    `line` is how it is listed: its name with its list in brackets, or one of the goods by itself.
    """

    name: str
    title: str
    mass_g: float | None
    text: str
    line: str


@dataclass(frozen=True, slots=True)
class Scope:
    """What shares and places are judged by: the whole product, and the water left in the list."""

    title: str
    mixed_g: float | None
    finished_g: float | None
    water_left_g: float | None


def items_of(
    found: Iterable[Opened], scope: Scope, rule: MarketRule, style: ListStyle
) -> tuple[Item, ...]:
    """Ingredients as declared, the heaviest first; water that is all gone is none of them."""
    named = words_of_name(scope.title)
    return _merged(
        [_item(each, scope, rule, style, named) for each in found if _is_in(each, scope)]
    )


def _is_in(each: Opened, scope: Scope) -> bool:
    return not (is_water(each.used) and scope.water_left_g == 0.0)


def _item(
    each: Opened, scope: Scope, rule: MarketRule, style: ListStyle, named: frozenset[str]
) -> Item:
    used = each.used
    quid = _quid(each, scope) if rule.has_shares and is_named(used.label_name, named) else None
    return Item(
        name=used.label_name,
        text=_item_text(each, rule, style),
        mass_g=_place_g(used, scope),
        share_pct=_share(used.mass_g, scope.mixed_g),
        quid_pct=quid,
        allergens=tuple(sorted({w for a in each.contains for w in a.words(rule.key)})),
        lots=tuple(lot.key for lot in each.lots),
        of=used.of,
    )


def _place_g(used: Used, scope: Scope) -> float | None:
    if is_water(used) and scope.water_left_g is not None:
        return scope.water_left_g
    return used.mass_g


def _item_text(each: Opened, rule: MarketRule, style: ListStyle) -> str:
    told = {a.allergen for part in each.parts for a in allergens_said(part)}
    name = _name(each, rule, style)
    outside = tuple(a for a in each.contains if a.allergen not in told or _says(name, a, rule))
    text = emphasised(name, outside, rule)
    inside = [_part(part, rule, style) for part in each.parts]
    return f"{text} ({', '.join(inside)})" if inside else text


def _says(name: str, allergen: Allergen, rule: MarketRule) -> bool:
    found = declared(allergen.allergen, rule.key)
    return found is not None and says(name, allergen.allergen, found.named)


def _part(part: str, rule: MarketRule, style: ListStyle) -> str:
    found = tuple(a for a in allergens_said(part) if a.presence == "contains")
    return emphasised(part_text(part, rule, by_number=style.by_number), found, rule)


def _name(each: Opened, rule: MarketRule, style: ListStyle) -> str:
    additive = additive_in(each.used)
    if additive is not None:
        return additive_text(additive, each.used.label_name, rule, by_number=style.by_number)
    animal = each.animal
    return each.used.label_name if animal is None else f"{each.used.label_name} ({animal})"


def additive_in(used: Used) -> Additive | None:
    """The additive that goods are, by their row of the pantry or by their name."""
    return additive_named(used.name) if used.key is None else additive_of(used.key)


def _share(mass_g: float | None, mixed_g: float | None) -> float | None:
    if mass_g is None or mixed_g is None or mixed_g <= 0:
        return None
    return 100 * mass_g / mixed_g


def _quid(each: Opened, scope: Scope) -> float:
    """Share of named goods over the finished product; not a number where a mass is not known."""
    mass, finished, mixed = each.used.mass_g, scope.finished_g, scope.mixed_g
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


def _merged(items: list[Item]) -> tuple[Item, ...]:
    """Goods that carry one name on the label stand in one place."""
    by_text: dict[str, Item] = {}
    for item in items:
        known = by_text.get(item.text)
        by_text[item.text] = item if known is None else _together(known, item)
    return tuple(sorted(by_text.values(), key=lambda i: (-round(i.mass_g or 0.0, _DIGITS), i.name)))


def _together(one: Item, other: Item) -> Item:
    return Item(
        one.name, one.text, _plus(one.mass_g, other.mass_g), _plus(one.share_pct, other.share_pct),
        _plus(one.quid_pct, other.quid_pct), one.allergens,
        tuple(dict.fromkeys((*one.lots, *other.lots))),
        tuple(dict.fromkeys((*one.of, *other.of))),
    )  # fmt: skip


def _plus(one: float | None, other: float | None) -> float | None:
    return None if one is None or other is None else one + other


def list_text(items: tuple[Item, ...], rule: MarketRule, *, is_part: bool = False) -> str:
    """The list in one line; the clause of small amounts speaks of the whole, never of a part."""
    if rule.has_clause and not is_part:
        return _with_clause(items)
    return ", ".join(_with_quid(item) for item in items)


def _with_quid(item: Item) -> str:
    if item.quid_pct is None or math.isnan(item.quid_pct):
        return item.text
    if item.quid_pct > 100:
        return f"{item.text} ({item.quid_pct:.0f} g per 100 g)"
    return f"{item.text} ({share_text(item.quid_pct)})"


def _with_clause(items: tuple[Item, ...]) -> str:
    """Small amounts behind the clause the law allows; their order is free, here by mass."""
    small = [i for i in items if i.share_pct is not None and may_stand_behind_clause(i.share_pct)]
    large = [item.text for item in items if item not in small]
    if not small or not large:
        return ", ".join(item.text for item in items)
    return f"{', '.join(large)}, {CLAUSE}: {', '.join(item.text for item in small)}"
