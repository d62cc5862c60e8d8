"""What one gram of a line holds: fat, water, sugar, starch, protein, fibre; None is unknown."""

from dataclasses import dataclass, fields

from krume.base import NotFoundError
from krume.pantry import Ingredient, ingredient


@dataclass(frozen=True, slots=True)
class Holding:
    """Grams of what matters in a mass of one thing or another; None is unknown, never nothing.

    `starch_g` is the carbohydrate beside sugars and fibre.
    """

    fat_g: float | None = None
    water_g: float | None = None
    sugar_g: float | None = None
    starch_g: float | None = None
    protein_g: float | None = None
    fibre_g: float | None = None

    def times(self, factor: float) -> "Holding":
        """The same of another mass; nothing of it is nothing, even of what is unknown."""
        if factor == 0:
            return NOTHING
        return Holding(*(None if value is None else value * factor for value in self.values()))

    def plus(self, other: "Holding") -> "Holding":
        """Both together; what is unknown of one is unknown of both."""
        pairs = zip(self.values(), other.values(), strict=True)
        return Holding(*(None if a is None or b is None else a + b for a, b in pairs))

    def minus(self, other: "Holding") -> "Holding":
        """What is left without the other."""
        return self.plus(other.times(-1.0))

    def values(self) -> tuple[float | None, ...]:
        """Its figures in the order of `QUANTITIES`."""
        return tuple(getattr(self, field.name) for field in fields(self))


NOTHING = Holding(0.0, 0.0, 0.0, 0.0, 0.0, 0.0)
QUANTITIES = tuple(field.name.removesuffix("_g") for field in fields(Holding))
HELD = QUANTITIES[:4]
"""What a variation keeps as near to its parent as it can."""


def per_gram(found: Ingredient) -> Holding:
    """What a gram holds, by the row of the pantry; a fat by its planning share.

    >>> per_gram(known("oil-sunflower-linoleic")).fat_g, per_gram(known("butter-82-ciqual")).fat_g
    (1.0, 0.82)
    """
    row = found.composition
    net, sugars = row.carbohydrate_net_g, row.sugars_g
    starch = None if net is None or sugars is None else max(net - sugars, 0.0)
    fat = row.fat_g
    if found.role == "fat" and found.added_fat_pct is not None and fat is not None:
        fat = found.added_fat_pct
    per_100 = (fat, row.water_g, sugars, starch, row.protein_g, row.fibre_g)
    return Holding(*(None if value is None else value / 100 for value in per_100))


def is_blank(found: Ingredient) -> bool:
    """Whether the pantry does not know what it is made of."""
    held = per_gram(found)
    return held.fat_g is None or held.water_g is None


def known(key: str, own: tuple[Ingredient, ...] = ()) -> Ingredient:
    """Ingredient of a key, with a supplier's own sheet before the packed row."""
    return ingredient(key, own=own)


def maybe(key: str | None, own: tuple[Ingredient, ...] = ()) -> Ingredient | None:
    """Ingredient of a line's key; None where the pantry has no row."""
    if key is None:
        return None
    try:
        return ingredient(key, own=own)
    except NotFoundError:
        return None
