"""Carbohydrate of a slice for those who dose by it: an interval, with its fibre and without."""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from krume.base import Interval, OutOfRangeError
from krume.label.product import Product
from krume.label.spread import spread
from krume.pantry import Ingredient
from krume.properties import constants

MOST_SLICES = 400
"""More slices than this no cake is cut into."""
_HUNDRED = 100.0


@dataclass(frozen=True, slots=True)
class SliceCarbohydrate:
    """One of `count` slices: its mass as it is cut, and its carbohydrate."""

    count: int
    slice_g: Interval
    without_fibre_g: Interval
    with_fibre_g: Interval


def slices_in_range(count: int) -> int:
    """The number of slices itself; what no cake can be cut into is refused."""
    if 1 <= count <= MOST_SLICES:
        return count
    raise OutOfRangeError(
        f"A cake is not cut into {count} slices. Type 1 to {MOST_SLICES}.",
        field="slices", got=str(count), want=f"1 to {MOST_SLICES}",
    )  # fmt: skip


def slice_carbohydrate(
    product: Product, count: int, *, own: Mapping[str, Ingredient] | None = None
) -> SliceCarbohydrate | None:
    """Carbohydrate of one of `count` slices; None while a mass is not known.

    best = what went in / count; the cut and the goods widen it as the root of summed squares

    Parameters
    ----------
    product : what is cut, with its finished mass
    count : slices that are cut from it
    own : suppliers' sheets by the pantry's key

    Returns
    -------
    mass of a slice and its carbohydrate, without fibre and with it [g]

    Raises
    ------
    OutOfRangeError : count is below 1, or no cake is cut into so many

    Valid for
    ---------
    Slices meant to be the same. What leaves in the oven is water, so no bake loss moves it.

    Source
    ------
    `eu-tolerances-2012` for the goods, from memory; the cut is assumed

    Examples
    --------
    >>> from krume.label import Product, Used
    >>> sugar = Used("sugar", "sugar-granulated", "sugar", "sugar", 60.0)
    >>> syrup = Product("syrup", "formula", (sugar,), 100.0, "measured", {})
    >>> found = slice_carbohydrate(syrup, 4)
    >>> 0.0 if found is None else round(found.with_fibre_g.best, 1)
    15.0
    """
    slices_in_range(count)
    without = spread(product, "carbohydrate", market="eu", own=own)
    whole = spread(product, "carbohydrate", market="us", own=own)
    if without is None or whole is None or product.finished_g is None:
        return None
    hundreds = product.finished_g / _HUNDRED
    settled = Interval.around(product.finished_g, 0.0)
    return SliceCarbohydrate(
        count,
        cut_share(settled, count),
        cut_share(_times(without, hundreds), count),
        cut_share(_times(whole, hundreds), count),
    )


def cut_share(whole_g: Interval, count: int) -> Interval:
    """What one of `count` slices holds of a whole, as it is cut by hand.

    best = whole / count; the cut and the spread of the whole as the root of summed squares

    >>> found = cut_share(Interval(360.0, 372.0, 384.0), 12)
    >>> [round(end, 1) for end in (found.low, found.best, found.high)]
    [27.7, 31.0, 34.3]
    """
    best = whole_g.best / slices_in_range(count)
    cut_g = best * constants("declared.csv")["slice-cut-spread"] / _HUNDRED
    below = math.hypot((whole_g.best - whole_g.low) / count, cut_g)
    above = math.hypot((whole_g.high - whole_g.best) / count, cut_g)
    return Interval(max(0.0, best - below), best, best + above)


def _times(each: Interval, factor: float) -> Interval:
    return Interval(each.low * factor, each.best * factor, each.high * factor)
