"""Grams of an item: weighed, by measure, by piece or by trade custom, with the doubt kept."""

import re
from typing import NamedTuple

from krume.base import Interval, as_text
from krume.design.reader.amounts import EACH, Amount
from krume.design.reader.asking import Asking, grams
from krume.design.reader.besides import two_amounts
from krume.design.reader.items import Item
from krume.design.reader.settings import limit
from krume.pantry import Found, Measure, ingredient, measure

_STRUCTURAL = frozenset(("flour", "starch", "nut", "cocoa"))
_BINDING = frozenset(("binder", "gel"))


class Weight(NamedTuple):
    """Grams planned with, how they came about, and their doubt; `mass_g` None is unknown."""

    mass_g: float | None
    basis: str
    interval_g: Interval | None
    status: str
    source: str


_LIKE = {"knifepoint": "pinch"}
UNKNOWN = Weight(None, "unknown", None, "declared", "")


def weigh(item: Item, found: Found, asking: Asking) -> Weight:
    """Grams of an item that is not a count of eggs."""
    second = two_amounts(item, asking)
    amount = item.amount
    if amount.about:
        asking.note("about", f"about {as_text(amount.best or 0)}: taken as it stands")
    if amount.grams is not None:
        return _weighed(amount, second)
    if second is not None:
        return _weighed(second, None)
    if item.pack is not None:
        return _packed(item, found)
    if amount.best is None or amount.unit is None:
        return UNKNOWN
    return _measured(item, found, asking)


def _weighed(amount: Amount, second: Amount | None) -> Weight:
    stated = (
        second if second is not None and _is_metric(second) and not _is_metric(amount) else amount
    )
    size = stated.unit.size if stated.unit is not None and stated.unit.size is not None else 1.0
    interval = stated.value.times(size) if isinstance(stated.value, Interval) else None
    return Weight(stated.grams, "weighed", interval, "declared", "")


def _is_metric(amount: Amount) -> bool:
    return amount.unit is not None and amount.unit.name in ("g", "kg", "mg")


def _packed(item: Item, found: Found) -> Weight:
    pack = item.pack
    count = item.amount.best
    if pack is None or count is None:
        return UNKNOWN
    if pack.grams is not None:
        return Weight(count * pack.grams, "weighed", None, "declared", "")
    one = _measure(found, pack.unit.name if pack.unit else "")
    if one is None or pack.best is None:
        return UNKNOWN
    mass = one.times(pack.best * count)
    return Weight(mass.best, "measure", mass, one.status, one.source)


def _measure(found: Found, unit: str) -> Measure | None:
    """Grams of one unit; where goods share a name, the span of all of them."""
    keys = [found.key] if found.key else [choice.key for choice in found.choices]
    known = [m for m in (measure(key, unit) for key in keys if key) if m is not None]
    if not known:
        return None
    span = Interval(
        min(m.mass_g.low for m in known), known[0].mass_g.best, max(m.mass_g.high for m in known)
    )
    return Measure(span, known[0].status, known[0].source, known[0].note)


def _measured(item: Item, found: Found, asking: Asking) -> Weight:
    unit = item.amount.unit
    one = _measure(found, _LIKE.get(unit.name, unit.name)) if unit is not None else None
    if one is None or unit is None:
        return UNKNOWN
    value = item.amount.value
    mass = _product(value, one.mass_g)
    basis = {"volume": "measure", "count": "trade"}[unit.kind] if unit is not EACH else "count"
    _say(item, found, one, mass, asking)
    _say_level(item, asking)
    return Weight(mass.best, basis, mass, one.status, one.source)


_HEAPED = frozenset("heaped heaping rounded generous".split())
_LESS = re.compile(r"^\s*(less\s+\S+\s+[^\W\d_]+)\s", re.IGNORECASE)


def _say_level(item: Item, asking: Asking) -> None:
    """What a measure is heaped by, or falls short by, is said and not weighed."""
    less = _LESS.match(item.name)
    if item.how_full in _HEAPED:
        asking.note("measure-level", f"'{item.how_full}' is weighed as level: weigh yours once")
    elif less is not None:
        asking.note("measure-level", f"'{less[1]}' is not taken off: weigh it, or type the grams")


def _product(value: float | Interval | None, one: Interval) -> Interval:
    if isinstance(value, Interval):
        return Interval(value.low * one.low, value.best * one.best, value.high * one.high)
    return one.times(value or 0.0)


def _say(item: Item, found: Found, one: Measure, mass: Interval, asking: Asking) -> None:
    """Note what a measure was taken for, or ask where its spread matters to the crumb."""
    written = asking.source[item.amount.start : item.amount.end] or (item.amount.unit or EACH).name
    each = f"{grams(one.mass_g.best)} each" if item.amount.best != 1 else ""
    spread = f"{grams(mass.low)} to {grams(mass.high)}" if mass.high > mass.low else ""
    about = ", ".join(t for t in (each, spread, one.status, one.note) if t)
    asking.note("measure", f"{written} of {item.name.strip()[:40]}: {grams(mass.best)} ({about})")
    if item.amount.unit is not EACH and asks_for_grams(found, mass):
        _ask_grams(item, one, mass, written, asking)


def asks_for_grams(found: Found, mass: Interval) -> bool:
    """Whether the spread of a measure is too wide for what the ingredient does."""
    if mass.best <= 0:
        return False
    keys = [found.key] if found.key else [choice.key for choice in found.choices if choice.key]
    roles = {ingredient(key).role for key in keys if key}
    spread_pct = mass.half_width / mass.best * 100
    if roles & _STRUCTURAL:
        wide = spread_pct > limit("measure-asks-over")
        return wide and mass.half_width >= limit("measure-asks-from")
    return bool(roles & _BINDING) and spread_pct > limit("small-measure-asks-over")


def _ask_grams(item: Item, one: Measure, mass: Interval, written: str, asking: Asking) -> None:
    unit = item.amount.unit
    is_volume = unit is not None and unit.kind == "volume"
    each = "" if item.amount.best == 1 else f" ({grams(one.mass_g.best)} each)"
    name = item.name.strip()[:40]
    code = "volume-mass" if is_volume else "trade-measure"
    matters = "" if is_volume else " It matters here: a little more or less changes the crumb."
    asking.ask(
        code,
        f"{written} of {name} is a range, {grams(mass.low)} to {grams(mass.high)}: weigh it, "
        f"or choose {grams(mass.best)}{each}.{matters}",
        *((f"{grams(g)}", _in_grams(item, g, asking)) for g in (mass.best, mass.low, mass.high)),
    )


def _in_grams(item: Item, mass_g: float, asking: Asking) -> str:
    start, end = item.amount.start, item.amount.end
    if end == start:
        start, end = item.start, item.name_start
        return asking.edit(start, end, f"{grams(mass_g)} ")
    return asking.edit(start, end, grams(mass_g))
