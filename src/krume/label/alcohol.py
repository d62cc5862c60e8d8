"""Alcohol in a product: how much at most, and whether a market wants it printed on a food."""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from krume.base import NotFoundError
from krume.evidence import Row, column, load
from krume.label.product import Product, Used
from krume.pantry import MARKETS, Ingredient, ingredient
from krume.properties import constants

ALCOHOL_COLUMNS = (
    column("key", "key"),
    column("market", "one of", *MARKETS),
    column("food", "one of", "drink", "any", "pointer"),
    column("above_pct", "number"),
    column("text"),
    column("status", "status"),
    column("source", "source"),
    column("page"),
)


@dataclass(frozen=True, slots=True)
class Alcohol:
    """What a market asks about the alcohol of a product.

    `most_ml_per_100g` is as if none left the oven, None where it is not known. `line` is what has
    to be printed on a food, `rule` what the law says of it; both may be empty.
    """

    most_ml_per_100g: float | None
    line: str
    rule: str


def alcohol_of(
    product: Product, market: str, sheets: Mapping[str, Ingredient] | None = None
) -> Alcohol | None:
    """Alcohol of a product; None where no spirit, wine or liqueur goes in."""
    spirits = [used for used in product.used if used.role == "spirit"]
    if not spirits:
        return None
    most = _most_ml_per_100g(product, sheets or {})
    rule = next(
        (r for r in load("alcohol_rules.csv", ALCOHOL_COLUMNS) if r.cells["market"] == market), None
    )
    if rule is None:
        return Alcohol(most, "", "")
    return Alcohol(most, _line(most, rule), rule.text("text"))


def _line(most: float | None, rule: Row) -> str:
    """What is printed on a food that may lie above the limit, by volume at its densest."""
    if rule.text("food") != "any":
        return ""
    if most is None:
        return "Alcohol: ____ ml per 100 g"
    densest = constants("declared.csv")["densest-cake"]
    return (
        f"Alcohol: {most:.1f} ml per 100 g" if most * densest > rule.number_of("above_pct") else ""
    )


def _most_ml_per_100g(product: Product, sheets: Mapping[str, Ingredient]) -> float | None:
    finished = product.finished_g
    grams = [_alcohol_g(used, sheets) for used in product.used]
    known = [each for each in grams if each is not None]
    if not finished or len(known) < len(grams):
        return None
    return math.fsum(known) / constants("declared.csv")["ethanol-density"] / finished * 100


def _alcohol_g(used: Used, sheets: Mapping[str, Ingredient]) -> float | None:
    """Grams of alcohol that goods bring; goods that are no drink and say nothing bring none."""
    goods = _goods(used, sheets)
    share = None if goods is None else goods.composition.alcohol_g
    if share is None:
        return None if used.role == "spirit" else 0.0
    return None if used.mass_g is None else used.mass_g * share / 100


def _goods(used: Used, sheets: Mapping[str, Ingredient]) -> Ingredient | None:
    if used.key is None:
        return None
    try:
        return sheets.get(used.key) or ingredient(used.key)
    except NotFoundError:
        return None
