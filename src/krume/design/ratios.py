"""Percent of a basis and ratios of two classes; an unsettled mass gives an interval, never 0."""

from dataclasses import dataclass

from krume.base import Interval
from krume.design.shares import Sums, Total

Value = float | Interval | None

PERCENT_KEYS = (
    *("egg", "egg_yolk", "egg_white", "sugar", "added_fat", "butter", "starch", "sweet_rice"),
    *("nut", "nut_fat", "liquid", "binder", "xanthan", "psyllium", "acid", "cream_of_tartar"),
    *("baking_powder", "soda", "salt", "cocoa", "chocolate", "fruit", "flavour"),
)
# Of the flours alone, even where nut counts into the basis.
OF_FLOUR = ("starch", "sweet_rice")
_PRINTED_DIGITS = 2


@dataclass(frozen=True, slots=True)
class Basis:
    """What 100 is: its word, the classes that add up to it, and their sum."""

    name: str
    classes: tuple[str, ...]
    total: Total


def basis_of(sums: Sums, name: str, classes: tuple[str, ...]) -> Basis:
    """Basis made of classes that do not overlap."""
    parts = [sums.total(each) for each in classes]
    total = Total(
        sum(part.low for part in parts),
        sum(part.best for part in parts),
        sum(part.high for part in parts),
        all(part.is_known for part in parts),
    )
    return Basis(name, classes, total)


def percent(sums: Sums, name: str, basis: Basis) -> Value:
    """Percent of the basis that a class makes.

    A class inside the basis moves both sides of its percentage: its least share is its least mass
    over itself and the most of the rest. A line of unknown class may be in it, in the basis, or
    in neither.
    """
    part = sums.total(name)
    if not (part.is_known and basis.total.is_known and sums.loose.is_known):
        return None
    if basis.total.best <= 0:
        return None
    if part.low == part.high and basis.total.low == basis.total.high and sums.loose.high == 0:
        return 100 * part.best / basis.total.best
    return _spread(part, basis.total, sums.loose.high, inside=_is_inside(name, basis), scale=100)


def _is_inside(name: str, basis: Basis) -> bool:
    return name in basis.classes or (name in OF_FLOUR and "flour" in basis.classes)


def ratio(sums: Sums, name: str, to: str) -> Value:
    """Mass of one class over another's; None where the second is nothing or unknown."""
    part, whole = sums.total(name), sums.total(to)
    if not (part.is_known and whole.is_known and sums.loose.is_known):
        return None
    if whole.best <= 0:
        return None
    if part.low == part.high and whole.low == whole.high and sums.loose.high == 0:
        return part.best / whole.best
    return _spread(part, whole, sums.loose.high, inside=False, scale=1)


def _spread(part: Total, whole: Total, loose_g: float, *, inside: bool, scale: float) -> Value:
    best = scale * part.best / whole.best
    if inside:
        low_whole = whole.high - part.high + part.low + loose_g
        high_whole = whole.low - part.low + part.high + loose_g
    else:
        low_whole, high_whole = whole.high + loose_g, whole.low
    if low_whole <= 0 or high_whole <= 0:
        return None
    low = scale * part.low / low_whole
    high = scale * (part.high + loose_g) / high_whole
    if round(low, _PRINTED_DIGITS) == round(high, _PRINTED_DIGITS):
        return best
    return Interval(min(low, best), best, max(high, best))


def mass(sums: Sums, name: str | None = None) -> Value:
    """Mass of a class [g], or of all lines; an interval where a line's mass is not settled."""
    total = sums.all if name is None else sums.total(name)
    loose = 0.0 if name is None else sums.loose.high
    if not total.is_known or (name is not None and not sums.loose.is_known):
        return None
    if total.low == total.high and loose == 0:
        return total.best
    return Interval(total.low, total.best, total.high + loose)


def scaled(value: Value, factor: float) -> Value:
    """A value times a factor of zero or more; unknown stays unknown."""
    if value is None:
        return None
    return value.times(factor) if isinstance(value, Interval) else value * factor


def best_of(value: Value) -> float | None:
    """Best single number of a value; None is unknown."""
    return value.best if isinstance(value, Interval) else value
