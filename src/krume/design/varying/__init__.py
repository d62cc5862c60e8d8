"""Variations as a family: one thing for another, brought near the parent, linked to it."""

from krume.design.varying.asking import (
    Limit,
    Wanted,
    added_wanted,
    cut_wanted,
    egg_text,
    given_twice,
    swap_wanted,
    together,
)
from krume.design.varying.blended import blend_lineage, blended, flour_phrases, with_head
from krume.design.varying.child_text import child_text
from krume.design.varying.closing import Closed, Mover, close
from krume.design.varying.diets import avoided, diet_wanted
from krume.design.varying.drafting import Change, Wish
from krume.design.varying.following import Decision, Followed, follow
from krume.design.varying.lineage import (
    Lineage,
    fingerprint,
    lineage_of,
    lines_as_were,
    parent_as_was,
)
from krume.design.varying.matching import lines_named, role_of
from krume.design.varying.moving import PLAIN_OIL, PLAIN_OIL_NAME, WATER
from krume.design.varying.parts_of import HELD, Holding, is_blank, per_gram
from krume.design.varying.rules import (
    CocoaRule,
    DietWish,
    SwapRule,
    cocoa_rules,
    diet_wish,
    diet_wishes,
)
from krume.design.varying.variation import Variation, VariedLine, vary
from krume.design.varying.weights import weights_g

__all__ = [
    "HELD",
    "PLAIN_OIL",
    "PLAIN_OIL_NAME",
    "WATER",
    "Change",
    "Closed",
    "CocoaRule",
    "Decision",
    "DietWish",
    "Followed",
    "Holding",
    "Limit",
    "Lineage",
    "Mover",
    "SwapRule",
    "Variation",
    "VariedLine",
    "Wanted",
    "Wish",
    "added_wanted",
    "avoided",
    "blend_lineage",
    "blended",
    "child_text",
    "close",
    "cocoa_rules",
    "cut_wanted",
    "diet_wanted",
    "diet_wish",
    "diet_wishes",
    "egg_text",
    "fingerprint",
    "flour_phrases",
    "follow",
    "given_twice",
    "is_blank",
    "lineage_of",
    "lines_as_were",
    "lines_named",
    "parent_as_was",
    "per_gram",
    "role_of",
    "swap_wanted",
    "together",
    "vary",
    "weights_g",
    "with_head",
]
