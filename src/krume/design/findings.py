"""Findings: figures outside their bands, in words, with the grams that lead back inside."""

import math
from dataclasses import dataclass

from krume.base import Interval, as_text
from krume.design.bands import Band
from krume.design.ratios import OF_FLOUR, Basis, Value
from krume.design.recognise import limit
from krume.design.shares import Sums

_SLACK = 1e-9
_UNIT_WORDS = {"%": " %", "ratio": "", "g/cm2": " g/cm2", "mm": " mm", "g/kg": " g/kg",
               "g/l": " g/l", "g/ml": " g/ml"}  # fmt: skip
_DIGITS = {"%": 1, "ratio": 3, "g/cm2": 3, "g/ml": 3}
_NO_REMEDY = frozenset({"nut_fat", "baked_mm", "batter_g_cm2", "added_fat", "density_g_ml"})


@dataclass(frozen=True, slots=True)
class Finding:
    """A figure outside its band, or near one of its edges.

    `code` is the figure's key and side (`starch-low`; near an edge `starch-near-low`). `change_g`
    is what to add (or, below 0, to take away) of it, the rest as it is, to come back inside; None
    where no single line does. `warns` says that something is known to go wrong out there.
    """

    code: str
    quantity: str
    value: float | Interval
    low: float
    high: float
    unit: str
    status: str
    text: str
    change_g: float | None = None
    warns: bool = False


def finding(band: Band, value: Value, *, sums: Sums, basis: Basis | None) -> Finding | None:
    """Finding of a figure that lies outside its band; unknown finds nothing."""
    if value is None:
        return None
    best = value.best if isinstance(value, Interval) else value
    slack = _SLACK * max(1.0, abs(band.high))
    if best < band.low - slack:
        return _outside(band, value, best, "low", sums, basis)
    if best > band.high + slack:
        return _outside(band, value, best, "high", sums, basis)
    return None


def near_edge(band: Band, value: Value) -> Finding | None:
    """Remark on a figure inside its band that is near an edge, or whose doubt crosses it.

    A low edge of 0 is no edge: there is nothing below it.
    """
    if value is None:
        return None
    spread = value if isinstance(value, Interval) else Interval(value, value, value)
    reach = limit("near-edge") / 100 * (band.high - band.low)
    low = band.low > 0 and min(spread.best - reach, spread.low) < band.low - _SLACK
    high = band.high > 0 and max(spread.best + reach, spread.high) > band.high + _SLACK
    if not (low or high):
        return None
    side = "low" if low else "high"
    edge = band.low if low else band.high
    words = f"{band.label} {_shown(value, band)}; usual is {_range(band)}."
    text = f"{words} Near the edge at {as_text(edge)}."
    return _finding(band, value, f"near-{side}", text, None, warns=False)


def _outside(
    band: Band, value: float | Interval, best: float, side: str, sums: Sums, basis: Basis | None
) -> Finding:
    edge = band.low if side == "low" else band.high
    change = _change_g(band, edge, sums, basis)
    warns = band.warn_high is not None and best > band.warn_high
    words = [f"{band.label} {_shown(value, band, edge)}; usual is {_range(band)}."]
    if change is not None:
        words.append(_remedy(band, change))
    if warns and band.note:
        words.append(f"{band.note[:1].upper()}{band.note[1:]}.")
    return _finding(band, value, side, " ".join(words), change, warns=warns)


def _finding(
    band: Band, value: float | Interval, side: str, text: str, change: float | None, *, warns: bool
) -> Finding:
    return Finding(
        code=f"{band.quantity}-{side}",
        quantity=band.quantity,
        value=value,
        low=band.low,
        high=band.high,
        unit=band.unit,
        status=band.status,
        text=text,
        change_g=change,
        warns=warns,
    )


def _change_g(band: Band, edge: float, sums: Sums, basis: Basis | None) -> float | None:
    """Grams x of the class that bring the figure to its edge, the other lines as they are.

    Outside the basis: (p + x) / b = edge. Inside it: (p + x) / (b + x) = edge.
    """
    if basis is None or band.quantity in _NO_REMEDY or band.unit not in ("%", "ratio"):
        return None
    if band.quantity == "sugar_per_egg":
        egg = sums.total("egg_white" if band.basis == "white" else "egg").best
        return edge * egg - sums.total("sugar").best
    part, share = sums.total(band.quantity).best, edge / 100
    whole = sums.total("flour").best if band.quantity in OF_FLOUR else basis.total.best
    if band.quantity in OF_FLOUR or band.quantity in basis.classes:
        return (share * whole - part) / (1 - share) if share < 1 else None
    return share * whole - part


def _remedy(band: Band, change_g: float) -> str:
    digits = 1 if abs(change_g) >= 1 else 2
    step = 10**digits
    grams = math.ceil(abs(change_g) * step - _SLACK) / step
    what = "sugar" if band.quantity == "sugar_per_egg" else band.label.lower()
    more = "more" if change_g > 0 else "less"
    return f"{as_text(grams, digits)} g {more} {what}, the rest as it is, comes back inside."


def _range(band: Band) -> str:
    if band.low == band.high == 0:
        return "none"
    unit = "" if band.unit in ("%", "ratio") else _UNIT_WORDS[band.unit]
    return f"{as_text(band.low)} to {as_text(band.high)}{unit}"


def _shown(value: float | Interval, band: Band, edge: float | None = None) -> str:
    unit = _UNIT_WORDS[band.unit]
    if isinstance(value, Interval):
        digits = _DIGITS.get(band.unit, 1)
        return f"{as_text(value.low, digits)} to {as_text(value.high, digits)}{unit}"
    return f"{_printed(value, band, edge)}{unit}"


def _printed(value: float, band: Band, edge: float | None) -> str:
    """A number with as many digits as keep it on its own side of the edge in print."""
    first = _DIGITS.get(band.unit, 1) + (1 if band.unit == "%" and value < 1 else 0)
    for digits in range(first, 7):
        text = as_text(value, digits)
        if edge is None or float(text) != edge:
            return text
    return as_text(value, 9)
