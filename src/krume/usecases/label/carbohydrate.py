"""The carbohydrate of a slice in words: for those who dose by it, on every surface the same."""

import math
from collections.abc import Mapping

from krume.base import Interval, as_text
from krume.label import Product, SliceCarbohydrate, slice_carbohydrate, spread
from krume.pantry import Ingredient
from krume.usecases.label.result import LabelCarbohydrate, LabelSlice

_CAUTION = (
    "Worked out from tables of goods, not analysed: no dose of insulin rests on it alone. "
    "Who doses by it weighs the slice and asks those who treat them."
)


def carbohydrate_of(
    product: Product,
    sheets: Mapping[str, Ingredient],
    law: str,
    counts: tuple[int, ...],
    *,
    is_open: bool,
) -> LabelCarbohydrate:
    """Carbohydrate of a slice of each number; none is told while the panel's own is not known.

    `law` is whose panel counts: in the EU without fibre, in the US with it.
    """
    with_fibre = law == "us"
    per_100_g = spread(product, "carbohydrate", market=law, own=sheets) if is_open else None
    counts = counts if is_open else ()
    found = (slice_carbohydrate(product, count, own=sheets) for count in counts)
    slices = tuple(_slice(each, with_fibre=with_fibre) for each in found if each is not None)
    return LabelCarbohydrate(
        per_100_g=per_100_g,
        fibre_is_in=with_fibre,
        slices=slices,
        text=" ".join(each.text for each in slices) or _text(per_100_g, with_fibre=with_fibre),
        caution=_CAUTION,
        status="derived",
    )


def _text(per_100_g: Interval | None, *, with_fibre: bool) -> str:
    if per_100_g is None:
        return "Carbohydrate of a slice: not known, because the panel's own is not known."
    basis = "fibre is counted in" if with_fibre else "fibre is not counted"
    return f"Carbohydrate in 100 g: {_range(per_100_g)}; {basis}."


def _slice(found: SliceCarbohydrate, *, with_fibre: bool) -> LabelSlice:
    counted = found.with_fibre_g if with_fibre else found.without_fibre_g
    fibre_g = max(0.0, found.with_fibre_g.best - found.without_fibre_g.best)
    said = "is counted in" if with_fibre else "is not counted"
    text = (
        f"Carbohydrate in 1 of {found.count} slices (about {as_text(found.slice_g.best, 0)} g): "
        f"{_range(counted)}; fibre ({as_text(fibre_g, 1)} g) {said}."
    )
    return LabelSlice(found.count, found.slice_g, found.without_fibre_g, found.with_fibre_g, text)


def _range(grams: Interval) -> str:
    """About the best, between ends that are rounded outward.

    >>> _range(Interval(33.4, 40.6, 47.2))
    'about 41 g, from 33 to 48 g'
    """
    low, high = math.floor(grams.low), math.ceil(grams.high)
    return f"about {as_text(grams.best, 0)} g, from {low} to {high} g"
