"""What to ask for it: material, labour, energy, packaging, fixed share, price and break-even."""

from krume.cost.component import Component, Need, component
from krume.cost.heads import Heads, added, heads, missing_beside
from krume.cost.lines import Costed, LineCost, Missing, line_cost
from krume.cost.needs import Part, formula_need, is_baked, together, torte_needs
from krume.cost.offer import (
    Offer,
    break_even,
    margin_of,
    offer,
    price_for_margin,
    price_for_markup,
)
from krume.cost.planned import PLANNED, Planned, figure, missing_plans

__all__ = [
    "PLANNED",
    "Component",
    "Costed",
    "Heads",
    "LineCost",
    "Missing",
    "Need",
    "Offer",
    "Part",
    "Planned",
    "added",
    "break_even",
    "component",
    "figure",
    "formula_need",
    "heads",
    "is_baked",
    "line_cost",
    "margin_of",
    "missing_beside",
    "missing_plans",
    "offer",
    "price_for_margin",
    "price_for_markup",
    "together",
    "torte_needs",
]
