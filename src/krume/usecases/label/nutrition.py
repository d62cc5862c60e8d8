"""The nutrition of a label as its answer holds it: columns as printed, and the slice's own line."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from krume.base import Interval, as_text
from krume.label import (
    US_PARTS,
    NutrientSum,
    Panel,
    PanelRow,
    Product,
    Unknown,
    eu_columns,
    nutrient_sums,
    panel_unknowns,
    salt_g,
    servings_of,
    slices_in_range,
    spread,
    us_columns,
    us_energy_kcal,
)
from krume.pantry import Ingredient
from krume.usecases.label.carbohydrate import carbohydrate_of
from krume.usecases.label.result import (
    LabelCarbohydrate,
    LabelNutrition,
    LabelPanel,
    LabelRow,
    LabelSpread,
)

_PANELS = {"us": "us", "eu": "eu", "uk": "eu"}
"""Whose panel a market prints; of a market that is not here none is made."""
_HUNDRED = 100.0
_INTAKE = "Reference intake of an average adult (8 400 kJ/2 000 kcal)"
"""The sentence that the regulation asks for beside such percentages, in its own words."""


@dataclass(frozen=True, slots=True)
class NutritionWish:
    """How a panel is wished for.

    `slices` it is cut into go before those of the plan; `by_slice` is a slice sold on its own;
    `per_100_g` a free column in the US; `with_spread` how far lots may lie from the tables.
    """

    slices: int | None = None
    per_100_g: bool = False
    with_spread: bool = False
    by_slice: bool = False


AS_PLANNED = NutritionWish()
"""Slices as the plan has them, nothing more."""


@dataclass(frozen=True, slots=True)
class NutritionSaid:
    """The nutrition of one thing, and what keeps its panel closed."""

    nutrition: LabelNutrition | None
    unknown: tuple[Unknown, ...]


def nutrition_of(
    product: Product, sheets: Mapping[str, Ingredient], market: str, wish: NutritionWish
) -> NutritionSaid:
    """Columns of a market's panel; what is not known closes them by name."""
    law = _PANELS.get(market)
    if law is None:
        what = f"its nutrition panel (none is made here for {market.upper()})"
        opens = "That country's food law says what must stand there; --no-panel leaves it out."
        return NutritionSaid(None, (Unknown(product.name, what, "panel", opens),))
    sums = nutrient_sums(product, market=law, own=sheets)
    if sums is None:
        opens = "Grams in every line, and for a bake a line “Baked:” with its grams, open it."
        return NutritionSaid(None, (Unknown(product.name, "its finished mass", "panel", opens),))
    counts = product.slices if wish.slices is None else (slices_in_range(wish.slices),)
    columns = _columns(sums, product, law, counts, wish)
    said = _said(sums, columns, law)
    widths = _widths(product, sheets, law, columns) if wish.with_spread else {}
    kept = tuple(each for each in columns if each.is_required or _is_complete(each, columns[0]))
    shown = tuple(_column(each, widths) for each in kept)
    carbohydrate = carbohydrate_of(product, sheets, law, counts, sums)
    unknown = panel_unknowns(*columns) if columns else (_no_serving(product, law, wish),)
    nutrition = replace(
        _nutrition(said, shown, carbohydrate),
        notes=_portions(shown, counts),
        intake=_INTAKE if law == "eu" else "",
        left_out=_left_out(columns, kept),
    )
    return NutritionSaid(nutrition, unknown)


def _columns(
    sums: dict[str, NutrientSum],
    product: Product,
    law: str,
    counts: tuple[int, ...],
    wish: NutritionWish,
) -> tuple[Panel, ...]:
    if law == "us":
        if wish.by_slice and not counts:
            return ()
        servings = servings_of(product, slices=counts[0] if wish.by_slice else None)
        if servings is None:
            return ()
        return us_columns(sums, servings, per_100_g=wish.per_100_g)
    finished = product.finished_g
    portion = finished / counts[0] if counts and finished is not None else None
    return eu_columns(sums, portion_g=portion)


def _is_complete(column: Panel, first: Panel) -> bool:
    """Whether a free column has a figure wherever the first one has: else it is not shown."""
    pairs = zip(first.rows, column.rows, strict=True)
    return all(beside.text is not None for row, beside in pairs if row.text is not None)


def _left_out(columns: tuple[Panel, ...], kept: tuple[Panel, ...]) -> tuple[str, ...]:
    return tuple(
        f"The column {each.basis_text} is left out: a figure in it is not known."
        for each in columns
        if each not in kept
    )


def _no_serving(product: Product, law: str, wish: NutritionWish) -> Unknown:
    if wish.by_slice and not product.slices and wish.slices is None:
        opens = "--slices and how many it is cut into opens it."
        return Unknown(product.name, "the number of its slices", "panel", opens)
    opens = f"A torte or a cake has one in the {law.upper()} table; a cream alone has none."
    return Unknown(product.name, "its reference amount", "panel", opens)


def _said(sums: dict[str, NutrientSum], columns: tuple[Panel, ...], law: str) -> dict[str, float]:
    """Values per 100 g that are known, or whose doubt moves no printed digit of a column."""
    first = columns[0].rows if columns else ()
    printed = {row.key for row in first if row.text is not None}
    found = {
        key: (each.span.low + each.span.high) / 2
        for key, each in sums.items()
        if each.span.is_known or key in printed or (key == "sodium" and "salt" in printed)
    }
    return found | _energy(found, first, law)


def _energy(found: dict[str, float], rows: tuple[PanelRow, ...], law: str) -> dict[str, float]:
    if law == "us":
        known = {key: found[key] for key in US_PARTS if key in found}
        return {"energy-kcal": us_energy_kcal(known)} if len(known) == len(US_PARTS) else {}
    return {
        row.key: (row.low + row.high) / 2
        for row in rows
        if row.key.startswith("energy") and row.text is not None
    }


def _nutrition(
    said: dict[str, float],
    columns: tuple[LabelPanel, ...],
    carbohydrate: LabelCarbohydrate,
) -> LabelNutrition:
    sodium = said.get("sodium")
    portion = next((each for each in columns if each.kind == "portion"), None)
    return LabelNutrition(
        energy_kj=said.get("energy-kj"),
        energy_kcal=said.get("energy-kcal"),
        fat_g=said.get("fat"),
        saturated_g=said.get("saturated"),
        trans_g=said.get("trans"),
        cholesterol_mg=said.get("cholesterol"),
        carbohydrate_g=said.get("carbohydrate"),
        sugars_g=said.get("sugars"),
        added_sugars_g=said.get("added-sugars"),
        fibre_g=said.get("fibre"),
        protein_g=said.get("protein"),
        sodium_mg=sodium,
        salt_g=None if sodium is None else salt_g(sodium),
        vitamin_d_ug=said.get("vitamin-d"),
        calcium_mg=said.get("calcium"),
        iron_mg=said.get("iron"),
        potassium_mg=said.get("potassium"),
        panel=columns[0] if columns else None,
        portion=portion,
        beside=columns[1:],
        carbohydrate=carbohydrate,
    )


def _portions(columns: tuple[LabelPanel, ...], counts: tuple[int, ...]) -> tuple[str, ...]:
    """How many portions there are, which stands below a column of one."""
    portion = next((each for each in columns if each.kind == "portion"), None)
    if portion is None:
        return ()
    return (f"Cut into {counts[0]} portions of {as_text(portion.basis_g, 1)} g.",)


def _widths(
    product: Product, sheets: Mapping[str, Ingredient], law: str, columns: tuple[Panel, ...]
) -> dict[str, Interval]:
    """Spread of every row per 100 g, by its key."""
    keys = [row.key for row in columns[0].rows] if columns else []
    found = {key: spread(product, key, market=law, own=sheets) for key in keys}
    return {key: each for key, each in found.items() if each is not None}


def _column(panel: Panel, widths: Mapping[str, Interval]) -> LabelPanel:
    servings = panel.servings
    return LabelPanel(
        basis=panel.basis_text,
        basis_g=panel.basis_g,
        is_open=panel.is_open,
        rows=tuple(_row(row, widths.get(row.key), panel.basis_g) for row in panel.rows),
        kind=panel.kind,
        head=panel.head,
        is_required=panel.is_required,
        servings="" if servings is None else servings.count_text,
        serving_size="" if servings is None else servings.size_text,
    )


def _row(row: PanelRow, width: Interval | None, basis_g: float) -> LabelRow:
    share = basis_g / _HUNDRED
    scaled = (
        None if width is None
        else LabelSpread(width.low * share, width.best * share, width.high * share)
    )  # fmt: skip
    return LabelRow(
        row.key, row.label, row.text, row.low, row.high, row.unit, row.percent, row.open_goods,
        row.level, row.is_mandatory, scaled,
    )  # fmt: skip
