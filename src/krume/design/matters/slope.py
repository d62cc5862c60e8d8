"""How each figure of a balance moves with the mass of each line."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from krume.design.balance import Balance, balance
from krume.design.bands import Band, bands
from krume.design.formula import Formula
from krume.design.ratios import best_of

# Each line is read off the balance this share heavier and lighter. For a figure that is one sum of
# masses over another the share does not matter; it is large enough that rounding does not show.
_READING = 0.01
_STILL = 1e-13


@dataclass(frozen=True, slots=True)
class Slope:
    """One figure along the mass of one line: f(t) = f + slope t / (1 + bend t), t in grams."""

    per_g: float
    bend_per_g: float

    def change(self, off_g: float) -> float | None:
        """What so many grams more (below 0: less) do; None where nothing is left to divide by."""
        whole = 1 + self.bend_per_g * off_g
        return None if whole <= _STILL else self.per_g * off_g / whole


def judged(found: Balance) -> dict[Band, float]:
    """Figures that have both a value and a band with some width, by their band."""
    if found.family is None:
        return {}
    values = {"sugar_per_egg": found.sugar_per_egg, **found.percent, **found.figures}
    known = ((each, best_of(values.get(each.quantity))) for each in bands(found.family))
    return {each: value for each, value in known if value is not None and each.high > each.low}


def slopes(formula: Formula, index: int, base: Mapping[Band, float]) -> dict[Band, Slope]:
    r"""Slope of each figure along one line, by two readings of the balance.

    up = f(m + h) - f(m), down = f(m) - f(m - h); slope = (2 / h) / (1 / up + 1 / down),
    bend = (down - up) / (h (down + up))

    This is exact for a figure that is linear in the line's mass above and below its stroke, as
    every share and ratio of a balance is; any other is taken as one. A figure that a little more
    or less of the line takes away (a family or a basis that changes) is left out.
    """
    step = _READING * (formula.lines[index].mass_g or 0.0)
    heavier, lighter = (
        judged(balance(_with(formula, index, 1 + s))) for s in (_READING, -_READING)
    )
    return {
        band: _slope(heavier[band] - value, value - lighter[band], step, value)
        for band, value in base.items()
        if band in heavier and band in lighter
    }


def settled(formula: Formula) -> Formula:
    """The formula with its family written in: a little more of a line does not change it."""
    return replace(formula, family=balance(formula).family)


def with_masses(formula: Formula, masses_g: Mapping[int, float]) -> Formula:
    """The formula with other masses of some lines."""
    factors = {index: g / (formula.lines[index].mass_g or 1.0) for index, g in masses_g.items()}
    for index, factor in factors.items():
        formula = _with(formula, index, factor)
    return formula


def _with(formula: Formula, index: int, factor: float) -> Formula:
    line = formula.lines[index]
    spread = line.mass_interval_g
    other = replace(
        line,
        mass_g=None if line.mass_g is None else line.mass_g * factor,
        mass_interval_g=None if spread is None else spread.times(factor),
    )
    return replace(formula, lines=(*formula.lines[:index], other, *formula.lines[index + 1 :]))


def _slope(up: float, down: float, step: float, value: float) -> Slope:
    least = _STILL * max(1.0, abs(value))
    if abs(up) <= least or abs(down) <= least or up * down < 0:
        return Slope((up + down) / (2 * step) if max(abs(up), abs(down)) > least else 0.0, 0.0)
    return Slope(2 / (step * (1 / up + 1 / down)), (down - up) / (step * (down + up)))
