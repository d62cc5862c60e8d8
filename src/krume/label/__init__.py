"""What the buyer must be told: panel figures, energy, salt, gluten arithmetic, shares."""

from krume.label.energy import atwater_kcal, eu_energy, salt_g
from krume.label.gluten import GlutenMix, GlutenPart, gluten_mix
from krume.label.quantity import declared_share_pct
from krume.label.servings import Servings, us_servings
from krume.label.us_panel import (
    PanelAmount,
    panel_unit,
    us_amount,
    us_daily_value_pct,
    us_nutrients,
)

__all__ = [
    "GlutenMix",
    "GlutenPart",
    "PanelAmount",
    "Servings",
    "atwater_kcal",
    "declared_share_pct",
    "eu_energy",
    "gluten_mix",
    "panel_unit",
    "salt_g",
    "us_amount",
    "us_daily_value_pct",
    "us_nutrients",
    "us_servings",
]
