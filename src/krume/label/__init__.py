"""What the buyer must be told: ingredients, allergens, the gluten gate, panel, net quantity."""

from krume.label.carbohydrate import SliceCarbohydrate, slice_carbohydrate, slices_in_range
from krume.label.diets import (
    Diet,
    DietFinding,
    Piece,
    diet_rules,
    is_illness,
    judge_diets,
    read_diets,
)
from krume.label.energy import US_PARTS, atwater_kcal, eu_energy, salt_g, us_energy_kcal
from krume.label.eu_panel import EuNutrient, eu_amount, eu_intake_pct, eu_nutrients
from krume.label.gate import ROOM, GateRecord, GlutenGate, gluten_gate
from krume.label.gluten import GlutenMix, GlutenPart, gluten_mix
from krume.label.net_quantity import (
    figure_height_mm,
    may_stand_behind_clause,
    servings_per_container,
    sulphites_are_declared,
    tolerable_error_g,
)
from krume.label.nutrients import NutrientSum, Span, nutrient_sums
from krume.label.panel import (
    Panel,
    PanelRow,
    eu_columns,
    eu_panel,
    panel_unknowns,
    us_columns,
    us_panel,
)
from krume.label.parts import Opened, Unknown, lots_in_use, opened
from krume.label.printed import PanelAmount
from krume.label.product import (
    Product,
    Used,
    family_key,
    product_of_formula,
    product_of_torte,
)
from krume.label.quantity import declared_share_pct
from krume.label.reference import reference_amount, servings_of
from krume.label.servings import Servings, us_servings
from krume.label.spread import spread
from krume.label.statement import (
    Item,
    Statement,
    contains_line,
    kitchen_line,
    may_contain_line,
    share_text,
    statement,
)
from krume.label.us_panel import (
    panel_unit,
    us_amount,
    us_daily_value_pct,
    us_nutrients,
)

__all__ = [
    "ROOM",
    "US_PARTS",
    "Diet",
    "DietFinding",
    "EuNutrient",
    "GateRecord",
    "GlutenGate",
    "GlutenMix",
    "GlutenPart",
    "Item",
    "NutrientSum",
    "Opened",
    "Panel",
    "PanelAmount",
    "PanelRow",
    "Piece",
    "Product",
    "Servings",
    "SliceCarbohydrate",
    "Span",
    "Statement",
    "Unknown",
    "Used",
    "atwater_kcal",
    "contains_line",
    "declared_share_pct",
    "diet_rules",
    "eu_amount",
    "eu_columns",
    "eu_energy",
    "eu_intake_pct",
    "eu_nutrients",
    "eu_panel",
    "family_key",
    "figure_height_mm",
    "gluten_gate",
    "gluten_mix",
    "is_illness",
    "judge_diets",
    "kitchen_line",
    "lots_in_use",
    "may_contain_line",
    "may_stand_behind_clause",
    "nutrient_sums",
    "opened",
    "panel_unit",
    "panel_unknowns",
    "product_of_formula",
    "product_of_torte",
    "read_diets",
    "reference_amount",
    "salt_g",
    "servings_of",
    "servings_per_container",
    "share_text",
    "slice_carbohydrate",
    "slices_in_range",
    "spread",
    "statement",
    "sulphites_are_declared",
    "tolerable_error_g",
    "us_amount",
    "us_columns",
    "us_daily_value_pct",
    "us_energy_kcal",
    "us_nutrients",
    "us_panel",
    "us_servings",
]
