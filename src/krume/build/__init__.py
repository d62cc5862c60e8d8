"""Putting it together: torte plans and orders, as people type them."""

from krume.build.adding import apportioned
from krume.build.assemble import build_torte, incomplete
from krume.build.cake_cuts import layers_of
from krume.build.figures import figure
from krume.build.filling import Filled, Inset, filled
from krume.build.gelling import GelUse, gels
from krume.build.masses import weakest
from krume.build.materials import Material, Working, materials, working
from krume.build.order_text import HandOver, Order, OrderLine, read_order
from krume.build.outline import Outline, floor_of
from krume.build.plain import PlainLine
from krume.build.plan_lines import (
    PIECES,
    PLACES,
    Component,
    RingLine,
    TortePlan,
    formula_names,
    tier_names,
)
from krume.build.saying import Said, said_of
from krume.build.section import (
    cross_section,
    cross_sections,
    section_sentence,
    section_size_mm,
)
from krume.build.side_view import side_sentence, side_size_mm, side_view
from krume.build.solids import cap_ml, cap_skin_cm2
from krume.build.standing import (
    Crush,
    Firmness,
    Standing,
    StandingCheck,
    StandingLayer,
    disc_carries_pa,
    edge_needs_pa,
    firmness,
    standing,
    strip_carries_pa,
)
from krume.build.torte import (
    Batch,
    BuildFinding,
    CakeCut,
    ComponentFormula,
    Cover,
    Cut,
    EggsLeft,
    EggsNeeded,
    EggUse,
    Gel,
    Layer,
    Skin,
    Slice,
    Tier,
    Torte,
)
from krume.build.torte_text import read_torte
from krume.build.when import read_clock, read_date

__all__ = [
    "PIECES",
    "PLACES",
    "Batch",
    "BuildFinding",
    "CakeCut",
    "Component",
    "ComponentFormula",
    "Cover",
    "Crush",
    "Cut",
    "EggUse",
    "EggsLeft",
    "EggsNeeded",
    "Filled",
    "Firmness",
    "Gel",
    "GelUse",
    "HandOver",
    "Inset",
    "Layer",
    "Material",
    "Order",
    "OrderLine",
    "Outline",
    "PlainLine",
    "RingLine",
    "Said",
    "Skin",
    "Slice",
    "Standing",
    "StandingCheck",
    "StandingLayer",
    "Tier",
    "Torte",
    "TortePlan",
    "Working",
    "apportioned",
    "build_torte",
    "cap_ml",
    "cap_skin_cm2",
    "cross_section",
    "cross_sections",
    "disc_carries_pa",
    "edge_needs_pa",
    "figure",
    "filled",
    "firmness",
    "floor_of",
    "formula_names",
    "gels",
    "incomplete",
    "layers_of",
    "materials",
    "read_clock",
    "read_date",
    "read_order",
    "read_torte",
    "said_of",
    "section_sentence",
    "section_size_mm",
    "side_sentence",
    "side_size_mm",
    "side_view",
    "standing",
    "strip_carries_pa",
    "tier_names",
    "weakest",
    "working",
]
