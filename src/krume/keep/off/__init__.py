"""The fridge was off: what is kept, what is thrown away, what is not shown, and by whose rule."""

from krume.keep.off.judging import (
    DISCARD,
    DOORS,
    KEEP,
    NOT_SHOWN,
    OffEvidence,
    OffVerdict,
    judge_off,
    worst_of,
)
from krume.keep.off.places import PlaceRule, place_rule, place_rules
from krume.keep.off.spoiling import Spoiling, spoiling

__all__ = [
    "DISCARD",
    "DOORS",
    "KEEP",
    "NOT_SHOWN",
    "OffEvidence",
    "OffVerdict",
    "PlaceRule",
    "Spoiling",
    "judge_off",
    "place_rule",
    "place_rules",
    "spoiling",
    "worst_of",
]
