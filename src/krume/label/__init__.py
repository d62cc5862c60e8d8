"""What the buyer must be told: ingredients, allergens, the gluten gate, panel, net quantity."""

from krume.label.alcohol import Alcohol, alcohol_of
from krume.label.beside import beside_of_allergens, beside_of_goods
from krume.label.carbohydrate import (
    MOST_SLICES,
    SliceCarbohydrate,
    cut_share,
    slice_carbohydrate,
    slices_in_range,
)
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
from krume.label.gate import GlutenGate, gluten_gate
from krume.label.gate_records import GatePaper, GateRecord
from krume.label.gate_room import ROOM, RoomStanding, room_list
from krume.label.gluten import GlutenMix, GlutenPart, gluten_mix
from krume.label.listing import Item, ListStyle, PartList, share_text
from krume.label.market_rules import MarketRule, market_rule
from krume.label.net_quantity import (
    figure_height_mm,
    may_stand_behind_clause,
    servings_per_container,
    sulphites_are_declared,
    tolerable_error_g,
    us_figure_height_mm,
)
from krume.label.net_words import net_height_mm, net_phrases
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
    ProductPart,
    Used,
    family_key,
    product_of_formula,
    product_of_torte,
)
from krume.label.quantity import declared_share_pct
from krume.label.reference import reference_amount, servings_of
from krume.label.servings import Servings, own_servings, us_servings
from krume.label.spread import spread
from krume.label.statement import (
    Statement,
    contains_line,
    kitchen_line,
    may_contain_line,
    statement,
)
from krume.label.us_panel import (
    panel_unit,
    us_amount,
    us_daily_value_pct,
    us_nutrients,
)

__all__ = [
    "MOST_SLICES",
    "ROOM",
    "US_PARTS",
    "Alcohol",
    "Diet",
    "DietFinding",
    "EuNutrient",
    "GatePaper",
    "GateRecord",
    "GlutenGate",
    "GlutenMix",
    "GlutenPart",
    "Item",
    "ListStyle",
    "MarketRule",
    "NutrientSum",
    "Opened",
    "Panel",
    "PanelAmount",
    "PanelRow",
    "PartList",
    "Piece",
    "Product",
    "ProductPart",
    "RoomStanding",
    "Servings",
    "SliceCarbohydrate",
    "Span",
    "Statement",
    "Unknown",
    "Used",
    "alcohol_of",
    "atwater_kcal",
    "beside_of_allergens",
    "beside_of_goods",
    "contains_line",
    "cut_share",
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
    "market_rule",
    "may_contain_line",
    "may_stand_behind_clause",
    "net_height_mm",
    "net_phrases",
    "nutrient_sums",
    "opened",
    "own_servings",
    "panel_unit",
    "panel_unknowns",
    "product_of_formula",
    "product_of_torte",
    "read_diets",
    "reference_amount",
    "room_list",
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
    "us_figure_height_mm",
    "us_nutrients",
    "us_panel",
    "us_servings",
]
