"""What goes in: reading a baker's text, the formula, its balance, which weighing order."""

from typing import TYPE_CHECKING

from krume.base import on_first_use
from krume.design.balance import Balance, PerEgg, balance, batter_lines
from krume.design.bands import Band, Family, band, bands, families, family
from krume.design.blend_words import (
    LIMIT_EXAMPLES,
    PROPERTY_WORDS,
    AtHand,
    Members,
    TypedLimit,
    members_of,
    property_named,
    read_limits,
    read_wants,
)
from krume.design.blending import (
    BlendFit,
    BlendLimit,
    BlendTask,
    ClashingLimit,
    PropertyLimit,
)
from krume.design.bowls import BOWLS
from krume.design.findings import Finding
from krume.design.formula import BakedLine, Formula, Line, OvenLine, TextLine, Use
from krume.design.matters import (
    Doubt,
    Effect,
    LineMatter,
    Matters,
    Ranking,
    Scatter,
    Share,
    Slope,
    Twice,
    doubts,
    matters,
    ranking,
    with_masses,
)
from krume.design.premixing import MixStep, Premix, PremixPart, blend_figure, premix
from krume.design.ratios import Value
from krume.design.reader import apply_answers, decode_text, read, read_oven
from krume.design.scaling import part_named, scaled
from krume.design.slip import (
    ALREADY,
    GROWING,
    TAKE_OUT,
    Declined,
    Jar,
    Rescue,
    Shift,
    Slip,
    Way,
    WayEggs,
    WayLine,
    WayTin,
    at_masses,
    bowls_of,
    closest_split,
    corrected_rows,
    egg_lines,
    egg_words,
    rescue,
    rewritten,
    role_of,
    slip_figure,
)
from krume.design.weighing import Row, Weighing, weigh_out

if TYPE_CHECKING:
    from krume.design.blending.clashing import clashing_limits
    from krume.design.blending.solving import next_blends, solve_blend

# What needs numpy and scipy is imported when it is first asked for.
_HEAVY = {
    "clashing_limits": "blending.clashing",
    "next_blends": "blending.solving",
    "solve_blend": "blending.solving",
}


__getattr__ = on_first_use(__name__, _HEAVY)

__all__ = [
    "ALREADY",
    "BOWLS",
    "GROWING",
    "LIMIT_EXAMPLES",
    "PROPERTY_WORDS",
    "TAKE_OUT",
    "AtHand",
    "BakedLine",
    "Balance",
    "Band",
    "BlendFit",
    "BlendLimit",
    "BlendTask",
    "ClashingLimit",
    "Declined",
    "Doubt",
    "Effect",
    "Family",
    "Finding",
    "Formula",
    "Jar",
    "Line",
    "LineMatter",
    "Matters",
    "Members",
    "MixStep",
    "OvenLine",
    "PerEgg",
    "Premix",
    "PremixPart",
    "PropertyLimit",
    "Ranking",
    "Rescue",
    "Row",
    "Scatter",
    "Share",
    "Shift",
    "Slip",
    "Slope",
    "TextLine",
    "Twice",
    "TypedLimit",
    "Use",
    "Value",
    "Way",
    "WayEggs",
    "WayLine",
    "WayTin",
    "Weighing",
    "apply_answers",
    "at_masses",
    "balance",
    "band",
    "bands",
    "batter_lines",
    "blend_figure",
    "bowls_of",
    "clashing_limits",
    "closest_split",
    "corrected_rows",
    "decode_text",
    "doubts",
    "egg_lines",
    "egg_words",
    "families",
    "family",
    "matters",
    "members_of",
    "next_blends",
    "part_named",
    "premix",
    "property_named",
    "ranking",
    "read",
    "read_limits",
    "read_oven",
    "read_wants",
    "rescue",
    "rewritten",
    "role_of",
    "scaled",
    "slip_figure",
    "solve_blend",
    "weigh_out",
    "with_masses",
]
