"""Figures of creams and fillings: grams per kilogram or litre, and the ratios that make them."""

import re

from krume.base import Interval
from krume.design.formula import Formula, Line
from krume.design.ratios import Value, mass, ratio, scaled
from krume.design.shares import Sums, Total

_PERCENT = re.compile(r"(\d{1,2}(?:[.,]\d+)?)\s*%")


def cream_figures(family: str, formula: Formula, sums: Sums) -> dict[str, Value]:
    """Figures of a cream by the keys of its bands; what is not written is None."""
    total_g = mass(sums)
    density = formula.density_g_ml
    per_kg = {
        f"{name}_g_kg": _per(mass(sums, source), total_g, 1000.0)
        for name, source in _PER_KG
        if family in _GELLED
    }
    more: dict[str, Value] = {}
    if family in ("custard", "custard-lightened", "custard-buttercream"):
        more |= _custard(family, sums)
    elif family == "cooked-white-buttercream":
        more["sugar_per_white"] = ratio(sums, "sugar", "egg_white")
        more["butter_per_white"] = ratio(sums, "butter", "egg_white")
    elif family == "ganache":
        more["chocolate_per_cream"] = ratio(sums, "chocolate", "cream")
        more["butter_per_chocolate"] = scaled(ratio(sums, "butter", "chocolate"), 100)
        more["chocolate_cocoa_pct"] = _written_pct(formula.lines, "chocolate")
    elif family == "jelly":
        more["gelatine_g_l"] = _per_litre(mass(sums, "gelatine"), total_g, density)
        more["sugar_g_l"] = _per_litre(mass(sums, "sugar"), total_g, density)
    elif family == "syrup":
        more["sugar_per_water"] = ratio(sums, "sugar", "water")
        more["spirit_pct"] = _per(mass(sums, "spirit"), total_g, 100.0)
    elif family == "set-cream":
        more["density_g_ml"] = density
        more["cream_fat_pct"] = _written_pct(formula.lines, "cream")
    return per_kg | more


_GELLED = ("set-cream", "fruit-mousse", "custard-lightened")
_PER_KG = (("gelatine", "gelatine"), ("sugar", "sugar"), ("puree", "fruit"), ("cream", "cream"))


def _custard(family: str, sums: Sums) -> dict[str, Value]:
    found: dict[str, Value] = {
        "yolk_per_milk": scaled(ratio(sums, "egg_yolk", "milk"), 100),
        "sugar_per_milk": scaled(ratio(sums, "sugar", "milk"), 100),
        "starch_per_milk": scaled(ratio(sums, "starch", "milk"), 100),
    }
    if family == "custard-lightened":
        found["custard_per_cream"] = _rest_over(sums, "cream", inverse=False)
    if family == "custard-buttercream":
        found["butter_per_custard"] = _rest_over(sums, "butter", inverse=True)
    return found


def _rest_over(sums: Sums, name: str, *, inverse: bool) -> Value:
    """All but one class over that class, or the other way round."""
    part, whole = sums.total(name), sums.all
    if not (part.is_known and whole.is_known) or part.low <= 0:
        return None
    rest = Total(whole.low - part.low, whole.best - part.best, whole.high - part.high)
    over, under = (part, rest) if inverse else (rest, part)
    if under.low <= 0:
        return None
    if over.low == over.high and under.low == under.high:
        return over.best / under.best
    return Interval(over.low / under.high, over.best / under.best, over.high / under.low)


def _per(part: Value, whole: Value, scale: float) -> Value:
    if part is None or whole is None:
        return None
    if isinstance(part, float) and isinstance(whole, float):
        return scale * part / whole if whole > 0 else None
    low_part, high_part = _ends(part)
    low_whole, high_whole = _ends(whole)
    if low_whole <= 0:
        return None
    best = scale * _best(part) / _best(whole)
    return Interval(scale * low_part / high_whole, best, scale * high_part / low_whole)


def _ends(value: float | Interval) -> tuple[float, float]:
    return (value.low, value.high) if isinstance(value, Interval) else (value, value)


def _best(value: float | Interval) -> float:
    return value.best if isinstance(value, Interval) else value


def _per_litre(part_g: Value, total_g: Value, density_g_ml: float | None) -> Value:
    if density_g_ml is None or total_g is None:
        return None
    return _per(part_g, scaled(total_g, 1 / density_g_ml), 1000.0)


def _written_pct(lines: tuple[Line, ...], word: str) -> Value:
    for line in lines:
        if word in line.read.casefold() and (match := _PERCENT.search(line.read)):
            return float(match[1].replace(",", "."))
    return None
