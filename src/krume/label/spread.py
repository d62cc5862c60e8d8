"""How far a product may lie from the tables, goods apart from each other."""

import math
from collections.abc import Iterable, Mapping
from fnmatch import fnmatchcase

from krume.base import DataError, Interval
from krume.evidence import Row, column, load, optional
from krume.label.energy import EU_PARTS, US_PARTS, salt_g, us_energy_kcal
from krume.label.nutrients import Span, content, goods_of, has_masses
from krume.label.product import Product
from krume.pantry import ROLES, Ingredient, plausible
from krume.properties import constants

SPREAD_COLUMNS = (
    column("key", "key"),
    column("nutrient", "key"),
    column("pattern"),
    optional("role", "one of", *ROLES),
    optional("share_pct", "number"),
    optional("most", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
)
_QUANTITIES = {
    "carbohydrate": "carbohydrate_g", "sugars": "sugars_g", "added-sugars": "sugars_g",
    "fibre": "fibre_g", "protein": "protein_g", "fat": "fat_g", "saturated": "saturated_g",
    "sodium": "sodium_mg", "alcohol": "alcohol_g",
}  # fmt: skip


def goods_spread(nutrient: str, goods: Ingredient, amount: float) -> Span:
    """How far one lot of goods may lie below and above an amount per 100 g.

    A share of the amount and no more than a mass, by the rows; never past the range of its class.
    """
    row = _row(nutrient, goods)
    share, most = row.maybe("share_pct"), row.maybe("most")
    width = min(
        math.inf if share is None else amount * share / 100, math.inf if most is None else most
    )
    low, high = plausible(goods.kind, goods.key).get(_QUANTITIES.get(nutrient, ""), (0.0, math.inf))
    return Span(min(width, max(0.0, amount - low)), min(width, max(0.0, high - amount)))


def _row(nutrient: str, goods: Ingredient) -> Row:
    for row in load("nutrient_spread.csv", SPREAD_COLUMNS):
        fits = fnmatchcase(goods.key, row.text("pattern"))
        if row.text("nutrient") == nutrient and fits and row.text("role") in ("", goods.role):
            return row
    message = f"nutrient_spread.csv has no row for {nutrient}."
    raise DataError(message, field="nutrient", got=nutrient, want="a row")


def spread(
    product: Product, key: str, *, market: str, own: Mapping[str, Ingredient] | None = None
) -> Interval | None:
    """A row of a panel per 100 g with the spread of the tables; None while a mass is not known.

    best -+ root of the summed squares of what each of the goods brings; what a blank leaves open
    is added to both ends in full

    Parameters
    ----------
    product : what is sold
    key : a nutrient, or `calories`, `energy-kcal`, `energy-kj`, `salt`
    market : us or eu
    own : suppliers' sheets by the pantry's key

    Returns
    -------
    low, best, high per 100 g, in the unit of the panel

    Raises
    ------
    DataError : the table of spreads has no row for the nutrient

    Valid for
    ---------
    Goods of different lots. A control's tolerance stands for the spread of a table.

    Source
    ------
    `eu-tolerances-2012`, table 1, from memory

    Examples
    --------
    >>> from krume.label import Product, Used
    >>> sugar = Used("sugar", "sugar-granulated", "sugar", "sugar", 60.0)
    >>> water = Used("water", "water-tap", "water", "water", 40.0)
    >>> syrup = Product("syrup", "formula", (sugar, water), 100.0, "measured", {})
    >>> found = spread(syrup, "carbohydrate", market="eu")
    >>> [] if found is None else [round(end, 2) for end in (found.low, found.best, found.high)]
    [59.69, 59.99, 60.0]
    """
    if not has_masses(product) or product.finished_g is None:
        return None
    factors = _factors(key, market)
    lows, highs, below, above = [], [], [], []
    for used in product.used:
        goods = goods_of(used, own or {})
        share = (used.mass_g or 0.0) / product.finished_g
        for nutrient, factor in factors.items():
            span = content(nutrient, goods, market)
            weight = share * factor
            lows.append(span.low * weight)
            highs.append(span.high * weight)
            if goods is not None:
                width = goods_spread(nutrient, goods, (span.low + span.high) / 2)
                below.append(width.low * weight)
                above.append(width.high * weight)
    low, high = math.fsum(lows), math.fsum(highs)
    return Interval(max(0.0, low - _root(below)), (low + high) / 2, high + _root(above))


def _root(parts: Iterable[float]) -> float:
    return math.sqrt(math.fsum(part * part for part in parts))


def _factors(key: str, market: str) -> dict[str, float]:
    """What a row of the panel is made of: each nutrient with what 1 g or mg of it counts."""
    if key == "salt":
        return {"sodium": salt_g(1.0)}
    if key == "calories" or (key == "energy-kcal" and market == "us"):
        return {name: us_energy_kcal({name: 1.0}) for name in US_PARTS}
    if key in ("energy-kcal", "energy-kj"):
        table, unit = constants("declared.csv"), key.removeprefix("energy-")
        found = {name: table[f"eu-{name}-{unit}"] for name in EU_PARTS}
        # Polyols stand in the carbohydrate too, so they only count their difference from it.
        return found | {"polyols": found["polyols"] - found["carbohydrate"]}
    return {key: 1.0}
