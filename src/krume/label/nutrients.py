"""Nutrients of the finished product, each between what is known and what an unknown could add."""

import math
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from fnmatch import fnmatchcase
from functools import cache

from krume.evidence import Row, column, load, optional
from krume.label.product import Product, Used
from krume.pantry import ROLES, Composition, Ingredient, ingredient

BOUND_COLUMNS = (
    column("key", "key"),
    column("quantity"),
    column("pattern"),
    optional("role", "one of", *ROLES),
    column("most", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)
NITROGEN_COLUMNS = (
    column("key", "key"),
    column("pattern"),
    optional("role", "one of", *ROLES),
    column("factor", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)
ADDED_COLUMNS = (
    column("key", "key"),
    column("pattern"),
    optional("role", "one of", *ROLES),
    column("counts", "one of", "all", "none", "between"),
    column("status", "status"),
    column("source", "source"),
)
_N_TO_PROTEIN = 6.25
_PER = {"g": 100.0, "mg": 100_000.0, "ug": 100_000_000.0}
_INSIDE = {
    "saturated_g": "fat_g",
    "trans_g": "fat_g",
    "sugars_g": "carbohydrate_g",
    "fibre_g": "carbohydrate_g",
    "polyols_g": "carbohydrate_g",
}


@dataclass(frozen=True, slots=True)
class Span:
    """An amount between two ends; both are the same where it is known."""

    low: float
    high: float

    def __add__(self, other: "Span") -> "Span":
        return Span(self.low + other.low, self.high + other.high)

    def times(self, factor: float) -> "Span":
        """Both ends times a factor that is not negative."""
        return Span(self.low * factor, self.high * factor)

    @property
    def is_known(self) -> bool:
        """Whether both ends are the same."""
        return self.low == self.high


NOTHING = Span(0.0, 0.0)


@dataclass(frozen=True, slots=True)
class NutrientSum:
    """One nutrient per 100 g of the finished product, and whose unknown widens it."""

    key: str
    span: Span
    open_goods: tuple[str, ...]


def nutrient_sums(
    product: Product, *, market: str, own: Mapping[str, Ingredient] | None = None
) -> dict[str, NutrientSum] | None:
    """Nutrients per 100 g of the finished product; None while a mass is not known.

    What a table leaves blank lies between nothing and the row of its class, else all of the
    goods' own mass; a supplier's sheet in `own` goes before the table.
    """
    if not has_masses(product):
        return None
    goods = [(used, goods_of(used, own or {})) for used in product.used]
    sums = {key: _sum(key, read, goods, product, market) for key, read in _READERS.items()}
    return _sugars_inside(sums)


def has_masses(product: Product) -> bool:
    """Whether everything in it and the finished whole have a mass."""
    finished = product.finished_g
    masses = [used.mass_g for used in product.used]
    return finished is not None and 0 < finished < math.inf and bool(masses) and None not in masses


def goods_of(used: Used, own: Mapping[str, Ingredient]) -> Ingredient | None:
    """The row that is read for goods of a product: a supplier's sheet before the table."""
    return own.get(used.key or "") or (None if used.key is None else ingredient(used.key))


def content(key: str, goods: Ingredient | None, market: str) -> Span:
    """A nutrient in 100 g of goods, as a panel of the market counts it."""
    return _READERS[key](goods, market)


def _sum(
    key: str,
    read: Callable[[Ingredient | None, str], Span],
    goods: list[tuple[Used, Ingredient | None]],
    product: Product,
    market: str,
) -> NutrientSum:
    finished_g = product.finished_g or math.inf
    low, high = [], []
    wide: dict[str, None] = {}
    for used, row in goods:
        span, mass_g = read(row, market), used.mass_g or 0.0
        low.append(span.low * (mass_g / finished_g))
        high.append(span.high * (mass_g / finished_g))
        if mass_g > 0 and span.low != span.high:
            wide[used.label_name] = None
    return NutrientSum(key, Span(math.fsum(low), math.fsum(high)), tuple(wide))


def _sugars_inside(sums: dict[str, NutrientSum]) -> dict[str, NutrientSum]:
    """Sugars are analysed and carbohydrate is by difference: sugars never print above it."""
    most = sums["carbohydrate"].span
    for key in ("sugars", "added-sugars"):
        span = sums[key].span
        inside = Span(min(span.low, most.low), min(span.high, most.high))
        sums[key] = NutrientSum(key, inside, sums[key].open_goods)
    return sums


def _amount(goods: Ingredient | None, quantity: str) -> Span:
    """An amount per 100 g as the table has it, or from nothing to what bounds it."""
    unit = quantity.rsplit("_", 1)[1]
    if goods is None:
        return Span(0.0, _PER[unit])
    value = goods.composition.amount(quantity)
    if value is not None:
        return Span(value, value)
    row = next((r for r in _bounds() if r.text("quantity") == quantity and _fits(r, goods)), None)
    most = _PER[unit] if row is None else row.number_of("most")
    whole = _INSIDE.get(quantity)
    inside = None if whole is None else _whole(goods.composition, whole)
    return Span(0.0, most if inside is None else min(most, inside))


def _whole(composition: Composition, quantity: str) -> float | None:
    return composition.carbohydrate_total_g if quantity == "carbohydrate_g" else composition.fat_g


@cache
def _bounds() -> tuple[Row, ...]:
    return load("unknown_bounds.csv", BOUND_COLUMNS)


def _fits(row: Row, goods: Ingredient) -> bool:
    return fnmatchcase(goods.key, row.text("pattern")) and row.text("role") in ("", goods.role)


def _carbohydrate(goods: Ingredient | None, market: str) -> Span:
    """In the EU without fibre, in the US with it."""
    if goods is None:
        return Span(0.0, 100.0)
    c = goods.composition
    exact = c.carbohydrate_net_g if market == "eu" else c.carbohydrate_total_g
    if exact is not None:
        return Span(exact, exact)
    if c.carbohydrate_g is None:
        return Span(0.0, 100.0)
    fibre = _amount(goods, "fibre_g").high
    if c.carbohydrate_basis == "by_difference":
        return Span(max(0.0, c.carbohydrate_g - fibre), c.carbohydrate_g)
    return Span(c.carbohydrate_g, min(100.0, c.carbohydrate_g + fibre))


def _protein(goods: Ingredient | None, market: str) -> Span:
    """In the EU nitrogen times 6.25, in the US as the table has it."""
    if goods is None or market != "eu":
        return _amount(goods, "protein_g")
    c = goods.composition
    if c.protein_n625_g is not None:
        return Span(c.protein_n625_g, c.protein_n625_g)
    return _amount(goods, "protein_g").times(_N_TO_PROTEIN / _nitrogen(goods))


def _nitrogen(goods: Ingredient) -> float:
    own = goods.factors.nitrogen_to_protein if goods.factors is not None else None
    if own is not None:
        return own
    rows = load("nitrogen.csv", NITROGEN_COLUMNS)
    return next(row for row in rows if _fits(row, goods)).number_of("factor")


def _added_sugars(goods: Ingredient | None, _: str) -> Span:
    sugars = _amount(goods, "sugars_g")
    if goods is None:
        return sugars
    rows = load("added_sugars.csv", ADDED_COLUMNS)
    counts = next(row for row in rows if _fits(row, goods)).text("counts")
    return {"all": sugars, "none": NOTHING}.get(counts, Span(0.0, sugars.high))


def _zero_if_blank(quantity: str) -> Callable[[Ingredient | None, str], Span]:
    """Polyols and acids that a table does not tell apart stand in its carbohydrate."""

    def read(goods: Ingredient | None, _: str) -> Span:
        value = None if goods is None else goods.composition.amount(quantity)
        return NOTHING if value is None else Span(value, value)

    return read


def _plain(quantity: str) -> Callable[[Ingredient | None, str], Span]:
    return lambda goods, _: _amount(goods, quantity)


_READERS: dict[str, Callable[[Ingredient | None, str], Span]] = {
    "fat": _plain("fat_g"),
    "saturated": _plain("saturated_g"),
    "trans": _plain("trans_g"),
    "cholesterol": _plain("cholesterol_mg"),
    "sodium": _plain("sodium_mg"),
    "carbohydrate": _carbohydrate,
    "fibre": _plain("fibre_g"),
    "sugars": _plain("sugars_g"),
    "added-sugars": _added_sugars,
    "protein": _protein,
    "vitamin-d": _plain("vitamin_d_ug"),
    "calcium": _plain("calcium_mg"),
    "iron": _plain("iron_mg"),
    "potassium": _plain("potassium_mg"),
    "alcohol": _plain("alcohol_g"),
    "polyols": _zero_if_blank("polyols_g"),
    "organic-acids": _zero_if_blank("organic_acids_g"),
}


def open_goods(sums: Iterable[NutrientSum]) -> tuple[str, ...]:
    """Goods whose unknown widens any of these sums, each once."""
    return tuple(dict.fromkeys(name for each in sums for name in each.open_goods))
