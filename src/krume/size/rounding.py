"""Amounts rounded to what a scale shows, so that the ratios of a formula stay closest."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from krume.base import OutOfRangeError, as_text
from krume.size.limits import value
from krume.size.whole_steps import whole_steps

_NOISE = 1e-9
# Amounts are taken to a billionth of a step: finer differences are a float's noise.
_FINEST = 10**9


@dataclass(frozen=True, slots=True)
class Rounded:
    """Rounded masses, and which of them stay finer than the scale because rounding would hurt."""

    masses_g: tuple[float, ...]
    too_fine: tuple[bool, ...]


def round_masses(exact_g: Sequence[float], *, step_g: float) -> Rounded:
    """Round masses to a scale's step, so that their ratios stay closest.

    Their sum is the exact sum rounded to the step; among all vectors of whole steps with that
    sum, the worst relative error of a line is the smallest, then the sum of the squared ones, and
    of equal answers the one with more in the earlier line is taken (`whole_steps` shows why). A
    heavy line may so move by two steps where a light one would be hurt by one. A line that a whole
    step would move by more than a tenth keeps one digit more, is reported and takes no part,
    because nothing rounds away.

    >>> round_masses([32.4, 16.2, 24.3, 7.29, 4.86], step_g=1.0).masses_g
    (33.0, 16.0, 24.0, 7.0, 5.0)
    >>> round_masses([70.0, 0.25], step_g=1.0)
    Rounded(masses_g=(70.0, 0.25), too_fine=(False, True))
    >>> round_masses([5.4, 5.4, 5.4, 5.4, 5.4, 1000.0], step_g=1.0).masses_g
    (5.0, 5.0, 5.0, 5.0, 5.0, 1002.0)
    """
    _check(exact_g, step_g)
    units = [mass / step_g for mass in exact_g]
    fine = tuple(_hurts(u) for u in units)
    plain = [u for u, f in zip(units, fine, strict=True) if not f]
    whole = iter(_whole(plain))
    masses = tuple(
        _finer(mass, step_g) if f else _times(next(whole), step_g)
        for mass, f in zip(exact_g, fine, strict=True)
    )
    return Rounded(masses, fine)


def worst_line_error(exact_g: Sequence[float], rounded_g: Sequence[float]) -> float:
    """The largest |rounded - exact| / exact of a line; a line of nothing has no error.

    >>> round(worst_line_error([40.0, 6.4], [40.0, 6.0]), 6)
    0.0625
    """
    pairs = zip(exact_g, rounded_g, strict=True)
    return max((abs(new - mass) / mass for mass, new in pairs if mass > 0), default=0.0)


def _check(exact_g: Sequence[float], step_g: float) -> None:
    if not 0 < step_g < math.inf:
        raise OutOfRangeError(
            f"A scale that shows steps of {step_g} g is not one. Type the step, for example 0.1.",
            field="step_g",
            got=str(step_g),
            want="more than 0",
        )
    for mass in exact_g:
        if not 0 <= mass < math.inf:
            raise OutOfRangeError(
                f"{as_text(mass)} g cannot be weighed. Type 0 or more grams for each line.",
                field="exact_g",
                got=as_text(mass),
                want="0 or more",
            )


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


def _whole(units: Sequence[float]) -> list[int]:
    """Whole steps, exactly the best for the amounts to a billionth of a step."""
    return whole_steps([round(unit * _FINEST) for unit in units], step=_FINEST)
