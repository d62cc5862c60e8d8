"""What a layer is made of, as far as water asks: water, sugars, what swells, fat."""

import math
from dataclasses import dataclass

from krume.base import NotFoundError
from krume.design import Formula, Line
from krume.keep.moisture.figures import moisture_figure
from krume.pantry import Ingredient, ingredient

_WHOLE = 100.0
_SWEET_ROLES = frozenset({"fruit", "acid", "liquid", "sugar", "flavour", "spirit"})
"""Of these the carbohydrate is sugar where the table does not tell them apart."""


@dataclass(frozen=True, slots=True)
class Holding:
    """Shares of the mass of a finished component; they add up to 1.

    `sugar` is all that dissolves, `starch_share` all that swells (starch, protein, fibre); `fat`
    takes no water.
    """

    water: float
    sugar: float
    starch_share: float
    fat: float

    @property
    def is_barrier(self) -> bool:
        """Whether it keeps water back: chocolate, or fat alone."""
        dry = _WHOLE * self.water <= moisture_figure("barrier-water-most")
        return dry and _WHOLE * self.fat >= moisture_figure("barrier-fat-least")


def holding_of(formula: Formula, *, lost_share: float | None = 0.0) -> Holding | str:
    """What a formula holds once it is finished, or in words why that is not known.

    `lost_share` is the water that left in the oven, over the mass at mixing; None is not known.
    Goods without a composition count as what swells while they make up little of it, and are named
    otherwise; alcohol counts as water.
    """
    name = " ".join((formula.name or "it").split())
    if lost_share is None:
        return f"how much {name} loses in the oven is not known"
    masses = [line.mass_g for line in formula.lines]
    total = math.fsum(mass for mass in masses if mass is not None)
    if None in masses or total <= 0:
        return f"a line of {name} has no grams"
    found = [(line, _goods(line)) for line in formula.lines]
    unknown = [line for line, good in found if good is None or good.composition.water_g is None]
    missing_g = math.fsum(line.mass_g or 0.0 for line in unknown)
    if _WHOLE * missing_g > moisture_figure("unknown-most") * total:
        names = ", ".join(dict.fromkeys(line.name or line.read.strip() for line in unknown))
        return f"the composition of {names} in {name} is not known"
    return _held(found, total, lost_share * total, name)


def _goods(line: Line) -> Ingredient | None:
    try:
        return None if line.ingredient is None else ingredient(line.ingredient)
    except NotFoundError:
        return None


def _held(
    found: list[tuple[Line, Ingredient | None]], total_g: float, lost_g: float, name: str
) -> Holding | str:
    parts = [(line.mass_g or 0.0, good) for line, good in found]
    water = math.fsum(mass * _water(good) for mass, good in parts) - lost_g
    left = total_g - lost_g
    if water <= 0:
        return f"{name} loses more in the oven than it holds of water"
    fat = math.fsum(mass * _fat(good) for mass, good in parts)
    sugar = math.fsum(mass * _sugar(good) for mass, good in parts)
    sugar = max(sugar, moisture_figure("solutes-least") * left)
    starch = max(left - water - fat - sugar, 0.0)
    whole = water + fat + sugar + starch
    return Holding(water / whole, sugar / whole, starch / whole, fat / whole)


def _water(good: Ingredient | None) -> float:
    if good is None or good.composition.water_g is None:
        return 0.0
    return (good.composition.water_g + (good.composition.alcohol_g or 0.0)) / _WHOLE


def _fat(good: Ingredient | None) -> float:
    return 0.0 if good is None else (good.composition.fat_g or 0.0) / _WHOLE


def _sugar(good: Ingredient | None) -> float:
    """Sugars of one gram; in fruit and sugar without the figure all carbohydrate but the fibre."""
    if good is None:
        return 0.0
    held = good.composition
    if held.sugars_g is not None:
        return held.sugars_g / _WHOLE
    if good.role not in _SWEET_ROLES:
        return 0.0
    net = held.carbohydrate_net_g
    return ((held.carbohydrate_g if net is None else net) or 0.0) / _WHOLE
