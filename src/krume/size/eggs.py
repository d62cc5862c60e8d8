"""Whole eggs: how many, what is over, and the factors at which every egg line is whole."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from krume.base import OutOfRangeError

_WHOLE = 0.005
"""A count this close to a whole number is whole: a planned mass is written to 0.1 g."""


@dataclass(frozen=True, slots=True)
class Eggs:
    """Eggs of one line: a whole count, and the grams from one more (negative: weigh that out)."""

    count: int
    make_up_g: float


def nearest_eggs(mass_g: float, *, each_g: float) -> Eggs:
    """Nearest whole number of eggs to a shelled mass; an exact half goes down.

    count = ceil(m / e - 1/2), make-up = m - count e

    Parameters
    ----------
    mass_g : m, wanted without shell [g]
    each_g : e, shelled mass of one egg, or of its yolk or white [g]

    Returns
    -------
    count, and make-up [g]: positive from a part egg, negative to weigh out of the last

    Raises
    ------
    OutOfRangeError : mass_g is negative, each_g is not above 0

    Valid for
    ---------
    Planning masses; eggs of one size differ by about 4 g either way.

    Source
    ------
    `mathematics`, definition; a part egg is easier added than taken out, hence the half goes down

    Examples
    --------
    >>> nearest_eggs(127.5, each_g=51.0)
    Eggs(count=2, make_up_g=25.5)
    """
    for name, mass, least in (("mass_g", mass_g, 0.0), ("each_g", each_g, 1e-9)):
        if not least <= mass < math.inf:
            want = "0 or more" if least == 0 else "more than 0"
            raise OutOfRangeError(
                f"{name} is {mass} g; eggs need {want}.", field=name, got=str(mass), want=want
            )
    count = math.ceil(round(mass_g / each_g, 9) - 0.5)
    return Eggs(count, round(mass_g - count * each_g, 9))


def whole_factors(counts: Sequence[float], *, near: float) -> tuple[float, ...]:
    """Factors at which every count is whole, around a wanted factor: at most two on each side.

    >>> whole_factors([5.0], near=1.0323)
    (0.8, 1.0, 1.2, 1.4)
    >>> whole_factors([4.0, 5.0], near=1.5)
    (1.0, 2.0, 3.0)
    """
    first = counts[0]
    most = max(math.ceil(first * near) + 2, 2) * 6
    found = [n / first for n in range(1, most + 1) if _all_whole(counts, n / first)]
    below = [f for f in found if f <= near][-2:]
    above = [f for f in found if f > near][:2]
    return (*below, *above)


def _all_whole(counts: Sequence[float], factor: float) -> bool:
    return all(_is_whole(count * factor) for count in counts)


def _is_whole(count: float) -> bool:
    return round(count) >= 1 and abs(count - round(count)) <= _WHOLE * count
