"""How far the shelled grams of eggs may lie from plan, and how many spare eggs make it likely."""

import math
from dataclasses import dataclass

from krume.base import Interval
from krume.pantry import egg_size


@dataclass(frozen=True, slots=True)
class Spread:
    """Shelled grams of some eggs of one size.

    `mass_g` goes from all light to all heavy; `likely_half_g` is the half-width where each egg
    lies by itself. `spare_count` and `sure_count` are eggs more that make up for the one and for
    the other.
    """

    size: str
    part: str
    count: float
    mass_g: Interval
    likely_half_g: float
    spare_count: int
    sure_count: int


def spread_of(count: float, size: str, part: str = "whole") -> Spread:
    """Spread of the grams of some eggs of one size.

    likely h = h1 sqrt(n), all one way h = h1 n; spare = ceil(h / m)

    Parameters
    ----------
    count : n, eggs or parts of eggs
    size : key of an egg size, with m and h1 in `eggs.csv` [g]
    part : whole, yolk or white

    Returns
    -------
    low, best and high grams, the likely half-width [g], and eggs more that make up for either

    Valid for
    ---------
    Eggs of one size whose masses do not hang together; a carton from one young flock lies to one
    side, and then `mass_g` from low to high holds.

    Source
    ------
    `mathematics`, statistics: variances of what is independent add up

    Examples
    --------
    >>> found = spread_of(8, "eu-m")
    >>> found.mass_g, round(found.likely_half_g, 1), found.spare_count, found.sure_count
    (Interval(low=376.0, best=408.0, high=440.0), 11.3, 1, 1)
    """
    each = egg_size(size).part_g(part)
    likely = each.half_width * math.sqrt(count)
    spare, sure = (math.ceil(h / each.best - 1e-9) for h in (likely, each.half_width * count))
    return Spread(size, part, count, each.times(count), likely, spare, sure)
