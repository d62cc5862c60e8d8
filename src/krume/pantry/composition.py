"""What 100 g of an ingredient holds; None is unknown, never nothing."""

from dataclasses import dataclass

from krume.base import DataError


@dataclass(frozen=True, slots=True)
class Composition:
    """Content per 100 g of edible part, in the unit of each name.

    `carbohydrate_basis` says what `carbohydrate_g` is: `by_difference` (fibre inside) or
    `available` (fibre outside, polyols inside). The two are never mixed without converting.
    """

    water_g: float | None = None
    energy_kcal: float | None = None
    protein_g: float | None = None
    fat_g: float | None = None
    saturated_g: float | None = None
    trans_g: float | None = None
    monounsaturated_g: float | None = None
    polyunsaturated_g: float | None = None
    cholesterol_mg: float | None = None
    carbohydrate_g: float | None = None
    carbohydrate_basis: str = ""
    fibre_g: float | None = None
    sugars_g: float | None = None
    starch_g: float | None = None
    sucrose_g: float | None = None
    glucose_g: float | None = None
    fructose_g: float | None = None
    lactose_g: float | None = None
    maltose_g: float | None = None
    ash_g: float | None = None
    sodium_mg: float | None = None
    potassium_mg: float | None = None
    calcium_mg: float | None = None
    iron_mg: float | None = None
    vitamin_d_ug: float | None = None
    alcohol_g: float | None = None
    caffeine_mg: float | None = None
    carbohydrate_available_g: float | None = None
    protein_n625_g: float | None = None
    polyols_g: float | None = None
    organic_acids_g: float | None = None
    energy_basis: str = ""

    @property
    def carbohydrate_net_g(self) -> float | None:
        """Carbohydrate without fibre; None where it cannot be formed."""
        if self.carbohydrate_basis == "available":
            return self.carbohydrate_g
        return _difference(self.carbohydrate_g, self.fibre_g)

    @property
    def carbohydrate_total_g(self) -> float | None:
        """Carbohydrate with fibre; None where it cannot be formed."""
        if self.carbohydrate_basis == "by_difference":
            return self.carbohydrate_g
        return _sum(self.carbohydrate_g, self.fibre_g)

    @property
    def is_complete(self) -> bool:
        """Whether water, protein, fat, carbohydrate, fibre and ash are all known."""
        core = (self.water_g, self.protein_g, self.fat_g, self.carbohydrate_g, self.fibre_g)
        return self.ash_g is not None and None not in core

    @property
    def parts_g(self) -> float | None:
        """Sum of the parts of 100 g; alcohol and acids count where they are known."""
        carbohydrate = self.carbohydrate_total_g
        known = (self.water_g, self.protein_g, self.fat_g, carbohydrate, self.ash_g)
        if None in known:
            return None
        extra = self.organic_acids_g if self.carbohydrate_basis == "available" else None
        return sum(part for part in (*known, self.alcohol_g, extra) if part is not None)

    def amount(self, quantity: str) -> float | None:
        """Content by the name of its field, such as `fat_g`; None is unknown."""
        if quantity not in QUANTITIES:
            message = f"'{quantity}' is no quantity of a composition: {', '.join(QUANTITIES)}"
            raise DataError(message, field="quantity", got=quantity, want="a quantity")
        value: float | None = getattr(self, quantity)
        return value


QUANTITIES = tuple(
    name
    for name in Composition.__slots__
    if name.endswith(("_g", "_mg", "_ug", "_kcal")) and not name.startswith("parts")
)
UNKNOWN = Composition()


def _difference(whole: float | None, part: float | None) -> float | None:
    return None if whole is None or part is None else max(whole - part, 0.0)


def _sum(one: float | None, other: float | None) -> float | None:
    return None if one is None or other is None else one + other
