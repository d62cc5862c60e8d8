"""A torte or a cake as something cold: its outside, its mass, and what it is made of."""

import math
from collections.abc import Iterable
from typing import TYPE_CHECKING

from krume.base import Infeasible, NotFoundError, as_text
from krume.build import Torte
from krume.design import Formula
from krume.keep import activity_of
from krume.pantry import Composition, Ingredient, ingredient
from krume.properties import constants
from krume.size import area_cm2
from krume.usecases.asking.answer import Asked
from krume.usecases.sold.product import Sold
from krume.usecases.torte.build import torte_of

if TYPE_CHECKING:
    from krume.keep import ColdBody

_NAMES = ("water", "protein", "fat", "carbohydrate", "fibre", "ash")
_UNKNOWN_SHAPE = (
    "Its shape is not known: a cake needs its tin and a line such as Baked: 50 mm high, 482 g; "
    "for a cream ask the torte it goes into."
)


def cold_body_of(sold: Sold, asked: Asked) -> "ColdBody | str":
    """The body, or the words that say what of it is not known."""
    from krume.keep import ColdBody

    shape, mass_g = _shape(sold, asked), sold.product.finished_g
    if isinstance(shape, str):
        return shape
    if mass_g is None:
        return "What it weighs is not known."
    found = _goods(sold)
    if isinstance(found, str):
        return found
    evaporated = max(0.0, math.fsum(mass for mass, _ in found) - mass_g)
    activity = activity_of(found, evaporated_g=evaporated)
    if activity is None:
        return "Its water activity cannot be estimated, and so not where it freezes."
    parts = _parts(found)
    parts["water"] = max(parts["water"] - evaporated, 0.0)
    whole = math.fsum(parts.values())
    fractions = tuple((name, parts[name] / whole) for name in _NAMES)
    return ColdBody(*shape, mass_g, fractions, activity.best)


def _shape(sold: Sold, asked: Asked) -> tuple[float, float] | str:
    """Radius and height [cm] of a round of the same floor, a roll as one that stands."""
    if sold.product.kind != "torte":
        return _cake_shape(next(iter(sold.formulas.values())))
    made = torte_of(sold.source or sold.name, asked)
    if isinstance(made.torte, Infeasible):
        return "The torte cannot stand as it is written."
    return _torte_shape(made.torte)


def _torte_shape(torte: Torte) -> tuple[float, float] | str:
    if torte.height_mm is None:
        return "How high it is is not known."
    if torte.roll_width_cm is not None:
        return torte.height_mm / 20, torte.roll_width_cm
    if torte.outline is None:
        return "How wide it is is not known."
    return math.sqrt(torte.outline.area_cm2 / math.pi), torte.height_mm / 10


def _cake_shape(formula: Formula) -> tuple[float, float] | str:
    baked, tin = formula.baked, formula.tin
    if baked is None or tin is None:
        return _UNKNOWN_SHAPE
    height, area = baked.height_mm or baked.thickness_mm, area_cm2(tin)
    if height is None or area is None:
        return _UNKNOWN_SHAPE
    return math.sqrt(area / math.pi), height / 10


def _goods(sold: Sold) -> list[tuple[float, Ingredient | None]] | str:
    """Grams at mixing of all that goes in; words where grams or too much of it are unknown."""
    used = sold.product.used
    if any(each.mass_g is None for each in used):
        return "A line has no grams."
    found = [(each.mass_g or 0.0, _ingredient(each.key)) for each in used]
    total = math.fsum(mass for mass, _ in found)
    unknown = math.fsum(m for m, goods in found if _composition(goods).water_g is None)
    most = constants("keep_limits.csv")["activity-unknown-most"]
    if total <= 0 or 100 * unknown > most * total:
        return f"What is in more than {as_text(most)} % of it is not known."
    return found


def _ingredient(key: str | None) -> Ingredient | None:
    try:
        return None if key is None else ingredient(key)
    except NotFoundError:
        return None


def _composition(goods: Ingredient | None) -> Composition:
    return Composition() if goods is None else goods.composition


def _parts(found: Iterable[tuple[float, Ingredient | None]]) -> dict[str, float]:
    """Grams of each part; what a row does not say of small parts counts with the carbohydrate."""
    grams = dict.fromkeys(_NAMES, 0.0)
    for mass, goods in found:
        c = _composition(goods)
        known = {
            "water": c.water_g, "protein": c.protein_g, "fat": c.fat_g, "fibre": c.fibre_g,
            "ash": c.ash_g,
        }  # fmt: skip
        said = {name: (share or 0.0) * mass / 100 for name, share in known.items()}
        for name, each in said.items():
            grams[name] += each
        grams["carbohydrate"] += max(mass - math.fsum(said.values()), 0.0)
    return grams
