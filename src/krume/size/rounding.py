"""Amounts rounded to what a scale shows, so that the ratios of a formula stay closest."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from krume.base import OutOfRangeError
from krume.size.limits import value

_NOISE = 1e-9


@dataclass(frozen=True, slots=True)
class Rounded:
    """Rounded masses, and which of them stay finer than the scale because rounding would hurt."""

    masses_g: tuple[float, ...]
    too_fine: tuple[bool, ...]


def round_masses(exact_g: Sequence[float], *, step_g: float) -> Rounded:
    """Round masses to a scale's step, each up or down, so that their ratios stay closest.

    Their sum is the exact sum rounded to the step; among all ways of rounding with that sum, the
    worst relative error of a line is the smallest, then the largest remainders go up. A line that
    a whole step would move by more than a tenth keeps one digit more and is reported, because
    nothing rounds away.

    >>> round_masses([32.4, 16.2, 24.3, 7.29, 4.86], step_g=1.0).masses_g
    (33.0, 16.0, 24.0, 7.0, 5.0)
    >>> round_masses([70.0, 0.25], step_g=1.0)
    Rounded(masses_g=(70.0, 0.25), too_fine=(False, True))
    """
    if not 0 < step_g < math.inf:
        raise OutOfRangeError(
            f"A scale that shows steps of {step_g} g is not one. Type the step, for example 0.1.",
            field="step_g",
            got=str(step_g),
            want="more than 0",
        )
    units = [mass / step_g for mass in exact_g]
    fine = tuple(_hurts(u) for u in units)
    plain = [u for u, f in zip(units, fine, strict=True) if not f]
    whole = iter(_whole_steps(plain))
    masses = tuple(
        _finer(mass, step_g) if f else _times(next(whole), step_g)
        for mass, f in zip(exact_g, fine, strict=True)
    )
    return Rounded(masses, fine)


def _hurts(units: float) -> bool:
    error = abs(round(units) - units)
    return units > 0 and error > value("line-error-most") * units + _NOISE


def _finer(mass: float, step: float) -> float:
    """A mass at a tenth of the step, or finer still until rounding moves it by a tenth at most."""
    finer = step / 10
    while abs(round(mass / finer) * finer - mass) > value("line-error-most") * mass + _NOISE:
        finer /= 10
    return _times(round(mass / finer), finer)


def _times(count: int, step: float) -> float:
    return round(count * step, 9)


def _whole_steps(units: Sequence[float]) -> list[int]:
    down = [math.floor(u + _NOISE) for u in units]
    ups = round(sum(units)) - sum(down)
    can_rise = [i for i, u in enumerate(units) if u - down[i] > _NOISE]
    up = _which_go_up(units, can_rise, min(max(ups, 0), len(can_rise)))
    return [d + (i in up) for i, d in enumerate(down)]


def _which_go_up(units: Sequence[float], can_rise: list[int], ups: int) -> set[int]:
    """Lines to round up: the smallest worst relative error first, then the largest remainders."""
    for limit in sorted({e for i in can_rise for e in _errors(units[i])} | {0.0}):
        must = {i for i in can_rise if _errors(units[i])[0] > limit}
        may = [i for i in can_rise if i not in must and _errors(units[i])[1] <= limit]
        forced_well = all(_errors(units[i])[1] <= limit for i in must)
        if forced_well and len(must) <= ups <= len(must) + len(may):
            by_remainder = sorted(may, key=lambda i: (-(units[i] - math.floor(units[i])), i))
            return must | set(by_remainder[: ups - len(must)])
    return set(can_rise[:ups])


def _errors(units: float) -> tuple[float, float]:
    """Relative error of rounding down and of rounding up."""
    low = math.floor(units + _NOISE)
    return (units - low) / units, (low + 1 - units) / units
