"""The ingredient list: descending by mass, composites opened, allergens standing out."""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from krume.label.additive_words import must_say_of
from krume.label.alcohol import Alcohol, alcohol_of
from krume.label.beside import beside
from krume.label.listing import Item, ListStyle, PartList, Scope, items_of, list_text
from krume.label.market_rules import MarketRule, market_rule
from krume.label.named_goods import named_and_missing
from krume.label.parts import Opened, Unknown, opened
from krume.label.product import Product, ProductPart, Used
from krume.label.water import is_water, water_left_g
from krume.pantry import Allergen, Ingredient, Lot
from krume.properties import constants

_PLAIN = ListStyle()
_NO_SHEETS: Mapping[str, Ingredient] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Statement:
    """What is in it, in the words of a market, and what is not known of it.

    `parts` are the lists of its parts, where each has its own. `must_say` are sentences the law
    wants beside the list, `beside` what no list of the market names and somebody may ask for.
    """

    market: str
    items: tuple[Item, ...]
    text: str
    contains: tuple[str, ...]
    may_contain: tuple[str, ...]
    animals: tuple[str, ...]
    unknown: tuple[Unknown, ...]
    parts: tuple[PartList, ...] = ()
    must_say: tuple[str, ...] = ()
    beside: tuple[str, ...] = ()
    not_food: tuple[str, ...] = ()
    alcohol: Alcohol | None = None


@dataclass(frozen=True, slots=True)
class _Reading:
    """What a statement is read from: the papers, and how the market wants it."""

    lots: tuple[Lot, ...]
    chosen: frozenset[str]
    sheets: Mapping[str, Ingredient]
    rule: MarketRule
    opened: dict[Used, Opened] = field(default_factory=dict)

    def open(self, used: Used) -> Opened:
        if used not in self.opened:
            self.opened[used] = opened(
                used, self.lots, self.chosen,
                market=self.rule.key, sheet=self.sheets.get(used.key or ""),
            )  # fmt: skip
        return self.opened[used]


def statement(
    product: Product,
    lots: tuple[Lot, ...],
    *,
    market: str,
    chosen: frozenset[str] = frozenset(),
    sheets: Mapping[str, Ingredient] = _NO_SHEETS,
    style: ListStyle = _PLAIN,
) -> Statement:
    """Ingredient list of a product with the lots in use; what is not known closes it by name.

    `sheets` are suppliers' sheets by the pantry's key, `style` how the list is set.
    """
    rule = market_rule(market)
    reading = _Reading(lots, chosen, sheets, rule)
    found = [reading.open(used) for used in product.used]
    left_g = water_left_g(product) if rule.water_is_finished else None
    scope = Scope(product.name, product.mixed_g, product.finished_g, left_g)
    items = items_of(found, scope, rule, style)
    parts = _part_lists(product, reading, style) if style.by_part else ()
    held = [allergen for each in found for allergen in each.contains]
    contains = _words(held, market)
    traces = _words([a for each in found for a in each.traces], market)
    unknown = [u for each in found for u in each.unknown]
    unknown += _unweighed(product, items, rule, left_g)
    return Statement(
        market=market,
        items=items,
        text=_joined(parts) if parts else list_text(items, rule),
        contains=contains,
        may_contain=tuple(word for word in traces if word not in contains),
        animals=tuple(dict.fromkeys(each.animal for each in found if each.animal is not None)),
        unknown=tuple(dict.fromkeys(unknown)),
        parts=parts,
        must_say=must_say_of(found, product.finished_g, rule),
        beside=(
            *_name_told(product),
            *beside(product.used, held, market),
            *_water_told(product, left_g),
        ),
        not_food=product.not_food,
        alcohol=alcohol_of(product, market, sheets),
    )


def _words(found: Iterable[Allergen], market: str) -> tuple[str, ...]:
    return tuple(sorted({word for each in found for word in each.words(market)}))


def _part_lists(product: Product, reading: _Reading, style: ListStyle) -> tuple[PartList, ...]:
    """Lists of the parts, the heaviest in the finished product first."""
    if len(product.parts) < 2:
        return ()
    lists = [_part_list(part, product, reading, style) for part in product.parts]
    return tuple(sorted(lists, key=lambda each: (-(each.mass_g or 0.0), each.title)))


def _part_list(
    part: ProductPart, product: Product, reading: _Reading, style: ListStyle
) -> PartList:
    alone = Product(
        product.name, "part", part.used, part.finished_g, "", product.families, parts=(part,)
    )
    left_g = water_left_g(alone) if reading.rule.water_is_finished else None
    scope = Scope(product.name, product.mixed_g, product.finished_g, left_g)
    items = items_of([reading.open(used) for used in part.used], scope, reading.rule, style)
    mass = part.mixed_g if part.finished_g is None else part.finished_g
    text = list_text(items, reading.rule, is_part=True)
    is_alone = len(items) == 1 and items[0].name.casefold() == part.title.casefold()
    line = text if is_alone else f"{part.title} ({text})"
    return PartList(part.name, part.title, mass, text, line)


def _joined(parts: tuple[PartList, ...]) -> str:
    return "; ".join(part.line for part in parts)


def _unweighed(
    product: Product, items: tuple[Item, ...], rule: MarketRule, left_g: float | None
) -> list[Unknown]:
    open_ones = [
        Unknown(used.label_name, "its mass", "label", f"Grams of {used.name} in the text open it.")
        for used in product.used
        if used.mass_g is None
    ]
    if open_ones:
        return open_ones
    opens = "A line such as “Baked: 50 mm high, 482 g” opens it."
    named = [item for item in items if item.quid_pct is not None and math.isnan(item.quid_pct)]
    if named:
        names = ", ".join(item.name for item in named)
        open_ones.append(Unknown(names, "its share of the finished cake", "label", opens))
    if rule.water_is_finished and left_g is None and _water_could_move(product):
        open_ones.append(Unknown("water", "how much of it is left", "label", opens))
    return open_ones


def _water_could_move(product: Product) -> bool:
    """Whether goods lighter than the added water stand in the list: it could belong below them."""
    water = math.fsum(used.mass_g or 0.0 for used in product.used if is_water(used))
    return any((used.mass_g or 0.0) < water for used in product.used if not is_water(used))


def _name_told(product: Product) -> tuple[str, ...]:
    """What the name promises and no list holds, by itself or among the parts it is bought with."""
    said = [word for used in product.used for word in (used.label_name, used.name)]
    return tuple(
        f"The name speaks of {word}, and none is on the list: a name must not mislead."
        for word in named_and_missing(product.name, said)
    )


def _water_told(product: Product, left_g: float | None) -> tuple[str, ...]:
    """Where the law lets so little added water be left out."""
    finished = product.finished_g
    most = constants("declared.csv")["added-water-may-go-pct"]
    if not left_g or not finished or 100 * left_g / finished > most:
        return ()
    share = 100 * left_g / finished
    return (
        f"Water is {share:.1f} % of what is sold: up to {most:g} % it may be left out of the list.",
    )


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


def _noun(word: str) -> str:
    """The goods in an allergen's declaring words: `nuts (hazelnut)` is hazelnut."""
    return word.partition("(")[2].rstrip(")") or word
