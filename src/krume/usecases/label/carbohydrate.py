"""The carbohydrate of a slice in words: for those who dose by it, on every surface the same."""

import math
from collections.abc import Mapping

from krume.base import Interval, as_text
from krume.label import (
    NutrientSum,
    Product,
    SliceCarbohydrate,
    slice_carbohydrate,
    spread,
)
from krume.pantry import Ingredient
from krume.properties import constants
from krume.usecases.label.result import LabelCarbohydrate, LabelSlice

_HUNDRED = 100.0
_SEEN_G = 0.5
_CAUTION = (
    "Worked out from tables of goods, not analysed: no dose of insulin rests on it alone. "
    "Who doses by it weighs the slice and asks those who treat them."
)


def carbohydrate_of(
    product: Product,
    sheets: Mapping[str, Ingredient],
    law: str,
    counts: tuple[int, ...],
    sums: Mapping[str, NutrientSum],
) -> LabelCarbohydrate:
    """Carbohydrate of a slice of each number; none is told while a blank could move it by much.

    `law` is whose panel counts: in the EU without fibre, in the US with it.
    """
    largest_g = (product.finished_g or 0.0) / min(counts) if counts else _HUNDRED
    if _left_open_g(sums, largest_g) > constants("declared.csv")["slice-unknown-most"]:
        return _answer(None, (), f"Carbohydrate: not known ({_open_goods(sums)}).", law)
    per_100_g = spread(product, "carbohydrate", market=law, own=sheets)
    found = (slice_carbohydrate(product, count, own=sheets) for count in counts)
    slices = tuple(_slice(each, sums, law) for each in found if each is not None)
    if slices or per_100_g is None:
        return _answer(per_100_g, slices, " ".join(each.text for each in slices), law)
    counted = "is counted in" if law == "us" else "is not counted"
    said = f"Carbohydrate in 100 g: {_range(per_100_g)}; fibre {counted}.{_open(sums, _HUNDRED)}"
    return _answer(per_100_g, (), said, law)


def _answer(
    per_100_g: Interval | None, slices: tuple[LabelSlice, ...], text: str, law: str
) -> LabelCarbohydrate:
    return LabelCarbohydrate(
        per_100_g=per_100_g,
        fibre_is_in=law == "us",
        slices=slices,
        text=text,
        caution=_CAUTION,
        status="derived",
    )


def _left_open_g(sums: Mapping[str, NutrientSum], slice_g: float) -> float:
    """What blanks of the tables leave open in a slice."""
    span = sums["carbohydrate"].span
    return (span.high - span.low) * slice_g / _HUNDRED


def _open(sums: Mapping[str, NutrientSum], slice_g: float) -> str:
    """What is not wholly known, where it is wide enough to be seen in whole grams."""
    if _left_open_g(sums, slice_g) < _SEEN_G:
        return ""
    return f" Not wholly known: {_open_goods(sums)}."


def _open_goods(sums: Mapping[str, NutrientSum]) -> str:
    return ", ".join(sums["carbohydrate"].open_goods)


def _slice(found: SliceCarbohydrate, sums: Mapping[str, NutrientSum], law: str) -> LabelSlice:
    fibre = sums["fibre"].span
    counted = found.with_fibre_g if law == "us" else found.without_fibre_g
    said = "is counted in" if law == "us" else "is not counted"
    low, high = (as_text(end * found.slice_g.best / _HUNDRED, 1) for end in (fibre.low, fibre.high))
    fibre_g = low if low == high else f"{low} to {high}"
    text = (
        f"Carbohydrate in 1 of {found.count} slices (about {as_text(found.slice_g.best, 0)} g): "
        f"{_range(counted)}; fibre ({fibre_g} g) {said}.{_open(sums, found.slice_g.best)}"
    )
    return LabelSlice(found.count, found.slice_g, found.without_fibre_g, found.with_fibre_g, text)


def _range(grams: Interval) -> str:
    """About the best, between ends that are rounded outward.

    >>> _range(Interval(33.4, 40.6, 47.2))
    'about 41 g, from 33 to 48 g'
    """
    low, high = math.floor(grams.low), math.ceil(grams.high)
    return f"about {as_text(grams.best, 0)} g, from {low} to {high} g"
