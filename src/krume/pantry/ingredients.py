"""What is on the shelf: every ingredient with its composition, its role and its papers."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from krume.base import NotFoundError
from krume.evidence import Column, Row, column, load, optional
from krume.pantry.composition import UNKNOWN, Composition

CLASSES = (
    *("flour", "starch", "sugar", "fat", "egg", "dairy", "nut", "fruit", "cocoa"),
    *("leavening", "gel", "spice", "alcohol", "other"),
)
ROLES = (
    *("flour", "starch", "nut", "sugar", "egg", "fat", "dairy", "liquid", "water", "binder"),
    *("leavening", "acid", "salt", "flavour", "gel", "cocoa", "chocolate", "fruit", "spirit"),
    "other",
)
BASES = ("by_difference", "available")
_TEXTS = ("carbohydrate_basis", "energy_basis")
_EXTRA = ("carbohydrate_available_g", "protein_n625_g", "polyols_g", "organic_acids_g")


def _columns(quantities: Iterable[str]) -> tuple[Column, ...]:
    return tuple(optional(name, "number") for name in quantities if name not in _TEXTS)


_SHARED = tuple(n for n in Composition.__slots__ if n not in (*_EXTRA, "energy_basis"))
_HEAD = (
    column("key", "key"),
    column("name"),
    column("class", "one of", *CLASSES),
    column("source_key", "source"),
    column("source_id"),
    optional("fdc_id", "count"),
    column("carbohydrate_basis", "one of", *BASES),
)
INGREDIENT_COLUMNS = (*_HEAD, *_columns(_SHARED))
SUPPLEMENT_COLUMNS = (
    *INGREDIENT_COLUMNS,
    *_columns(_EXTRA),
    optional("energy_basis"),
    optional("name_original"),
    optional("value_notes"),
)
GAP_COLUMNS = (column("key", "key"), column("name"), column("why"), column("user_must_supply"))
FACTOR_COLUMNS = (
    column("key", "key"),
    column("source_id"),
    optional("nitrogen_to_protein", "number"),
    optional("kcal_per_g_protein", "number"),
    optional("kcal_per_g_fat", "number"),
    optional("kcal_per_g_carbohydrate", "number"),
    column("source_key", "source"),
)
ROLE_COLUMNS = (
    column("key", "key"),
    column("label_name"),
    column("role", "one of", *ROLES),
    optional("sweet_rice", "flag"),
    optional("pure_starch", "flag"),
    optional("liquid", "flag"),
    optional("acid", "flag"),
    optional("binder", "flag"),
    optional("leavening", "one of", "baking-powder", "soda", "cream-of-tartar", "yeast", "ammonia"),
    optional("added_fat_pct", "number"),
    optional("gluten_grain", "one of", "wheat", "rye", "barley", "oat"),
    optional("note"),
)


@dataclass(frozen=True, slots=True)
class EnergyFactors:
    """Factors that belong to one food: nitrogen to protein, and kcal per gram of each part."""

    nitrogen_to_protein: float | None
    kcal_per_g_protein: float | None
    kcal_per_g_fat: float | None
    kcal_per_g_carbohydrate: float | None


@dataclass(frozen=True, slots=True)
class Ingredient:
    """A thing that can be weighed into a formula.

    `kind` is its class in the table, `role` what it does in a balance. `added_fat_pct` is the
    share a balance counts as added fat. `status` and `source` are those of the composition;
    where no table has a row the composition is unknown and `note` says what must be supplied.
    """

    key: str
    name: str
    label_name: str
    kind: str
    role: str
    composition: Composition = UNKNOWN
    source: str = ""
    source_id: str = ""
    status: str = "published"
    sweet_rice: bool = False
    pure_starch: bool = False
    liquid: bool = False
    acid: bool = False
    binder: bool = False
    leavening: str = ""
    added_fat_pct: float | None = None
    gluten_grain: str = ""
    factors: EnergyFactors | None = None
    contains: tuple[str, ...] | None = None
    may_contain: tuple[str, ...] | None = None
    note: str = ""

    @property
    def is_flour(self) -> bool:
        """Whether it counts into the 100 of baker's percent: flours and starches."""
        return self.role in ("flour", "starch")


@cache
def _rows(file: str) -> dict[str, Row]:
    return {row.text("key"): row for row in load(file, _COLUMNS[file])}


_COLUMNS = {
    "ingredients.csv": INGREDIENT_COLUMNS,
    "supplement.csv": SUPPLEMENT_COLUMNS,
    "gaps.csv": GAP_COLUMNS,
    "energy_factors.csv": FACTOR_COLUMNS,
    "roles.csv": ROLE_COLUMNS,
}


@cache
def _packed(key: str) -> Ingredient | None:
    role = _rows("roles.csv").get(key)
    if role is None:
        return None
    row = _rows("ingredients.csv").get(key) or _rows("supplement.csv").get(key)
    if row is None:
        return _gap(_rows("gaps.csv")[key], role)
    factors = _rows("energy_factors.csv").get(key)
    return _measured(row, role, _factors(factors) if factors else None)


def _measured(row: Row, role: Row, factors: EnergyFactors | None) -> Ingredient:
    notes = row.text("value_notes") if "value_notes" in row.cells else ""
    return _with_role(
        role,
        name=row.text("name"),
        kind=row.text("class"),
        composition=_composition(row),
        source=row.text("source_key"),
        source_id=row.text("source_id"),
        factors=factors,
        note="; ".join(note for note in (role.text("note"), notes) if note),
    )


def _gap(row: Row, role: Row) -> Ingredient:
    why = f"composition unknown: {row.text('why')}; wanted: {row.text('user_must_supply')}"
    return _with_role(
        role,
        name=row.text("name"),
        kind=_CLASS_OF_ROLE.get(role.text("role"), role.text("role")),
        status="assumed",
        note=why,
    )


_CLASS_OF_ROLE = {
    "binder": "gel",
    "acid": "other",
    "salt": "spice",
    "flavour": "spice",
    "chocolate": "cocoa",
    "spirit": "alcohol",
    "water": "other",
    "liquid": "other",
}


def _with_role(
    role: Row,
    *,
    name: str,
    kind: str,
    composition: Composition = UNKNOWN,
    source: str = "",
    source_id: str = "",
    status: str = "published",
    factors: EnergyFactors | None = None,
    note: str = "",
) -> Ingredient:
    return Ingredient(
        key=role.text("key"),
        name=name,
        label_name=role.text("label_name"),
        kind=kind,
        role=role.text("role"),
        composition=composition,
        source=source,
        source_id=source_id,
        status=status,
        sweet_rice=role.flag("sweet_rice"),
        pure_starch=role.flag("pure_starch"),
        liquid=role.flag("liquid"),
        acid=role.flag("acid"),
        binder=role.flag("binder"),
        leavening=role.text("leavening"),
        added_fat_pct=role.maybe("added_fat_pct"),
        gluten_grain=role.text("gluten_grain"),
        factors=factors,
        note=note,
    )


def _composition(row: Row) -> Composition:
    cells = row.cells
    figures = {
        name: row.maybe(name)
        for name in Composition.__slots__
        if name in cells and name not in _TEXTS
    }
    basis = row.text("energy_basis") if "energy_basis" in cells else "usda_specific_atwater"
    return Composition(
        carbohydrate_basis=row.text("carbohydrate_basis"), energy_basis=basis, **figures
    )


def _factors(row: Row) -> EnergyFactors:
    return EnergyFactors(
        nitrogen_to_protein=row.maybe("nitrogen_to_protein"),
        kcal_per_g_protein=row.maybe("kcal_per_g_protein"),
        kcal_per_g_fat=row.maybe("kcal_per_g_fat"),
        kcal_per_g_carbohydrate=row.maybe("kcal_per_g_carbohydrate"),
    )


def ingredient(key: str, *, own: tuple[Ingredient, ...] = ()) -> Ingredient:
    """Ingredient of a key; one's own go before the packed ones. NotFoundError when none has it."""
    for mine in own:
        if mine.key == key:
            return mine
    found = _packed(key)
    if found is None:
        message = f"the pantry has no ingredient '{key}'. Type its everyday name instead."
        raise NotFoundError(message, field="ingredient", got=key, want="a key of the pantry")
    return found


def ingredients() -> tuple[Ingredient, ...]:
    """All packed ingredients, those without a composition too."""
    return tuple(ingredient(key) for key in _rows("roles.csv"))
