"""Grams rounded to what the scale shows, so that nothing has to come out of a bowl again."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from krume.base import as_text
from krume.design.slip.state import NOISE_G
from krume.size import round_masses

_DIGITS = 6


@dataclass(frozen=True, slots=True)
class Reached:
    """A mass as the scale can reach it from what lies there, and what the scale does badly."""

    mass_g: float
    add_g: float
    mark: str = ""


def reached(
    exact_g: Sequence[float], held_g: Sequence[float], *, step_g: float
) -> tuple[Reached, ...]:
    """Masses of one bowl at the scale's step, their sum kept to the step.

    What already lies there in full stays as it is and takes no part in the rounding. Less than a
    step is never added to what lies there; of a line that is not in the bowl yet and weighs less
    than a step, the grams stay and are marked.

    >>> [r.add_g for r in reached([52.0, 26.0, 11.7], [40.0, 26.0, 0.0], step_g=0.1)]
    [12.0, 0.0, 11.7]
    >>> reached([0.04], [0.0], step_g=0.1)[0].mark
    'less than one step of a 0.1 g scale: a finer scale or a premix'
    """
    full = [exact - held <= NOISE_G for exact, held in zip(exact_g, held_g, strict=True)]
    open_at = [at for at, is_full in enumerate(full) if not is_full]
    odd = [math.fmod(held_g[at], step_g) for at in open_at]
    odd = [0.0 if step_g - each < NOISE_G or each < NOISE_G else each for each in odd]
    rounded = round_masses(
        [exact_g[at] - each for at, each in zip(open_at, odd, strict=True)], step_g=step_g
    )
    found = {
        at: _reached(mass + each, held_g[at], step_g)
        for at, mass, each in zip(open_at, rounded.masses_g, odd, strict=True)
    }
    return tuple(
        found.get(at) or Reached(round(held, _DIGITS), 0.0) for at, held in enumerate(held_g)
    )


def _reached(mass_g: float, held_g: float, step_g: float) -> Reached:
    add = round(mass_g - held_g, _DIGITS)
    if add < step_g - NOISE_G and held_g > 0:
        return Reached(round(held_g, _DIGITS), 0.0)
    if add < step_g - NOISE_G:
        said = f"less than one step of a {as_text(step_g)} g scale: a finer scale or a premix"
        return Reached(round(mass_g, _DIGITS), add, said)
    units = add / step_g
    if abs(units - round(units)) > NOISE_G:
        finer = f"finer than a {as_text(step_g)} g scale shows: a finer scale or a premix"
        return Reached(round(mass_g, _DIGITS), add, finer)
    return Reached(round(mass_g, _DIGITS), add)
