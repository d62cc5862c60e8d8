"""How long it lasts: keeping, mould, lethality, cooling, need of cold, cautions."""

from krume.keep.assess import KeepComponent, Keeping, KeepReason, assess
from krume.keep.cold import needs_cold
from krume.keep.cooling_log import Cooling, cooling
from krume.keep.estimate import activity_estimate
from krume.keep.lethality import lethality_min
from krume.keep.mould import mould_free_days
from krume.keep.out_of_cold import OutOfCold, out_of_cold
from krume.keep.rules import (
    Caution,
    KeepRule,
    caution,
    keep_rule,
    least_growth_activity,
    room_rules,
    rule_of_family,
    use_by,
)
from krume.keep.traits import is_cooked, traits

__all__ = [
    "Caution",
    "Cooling",
    "KeepComponent",
    "KeepReason",
    "KeepRule",
    "Keeping",
    "OutOfCold",
    "activity_estimate",
    "assess",
    "caution",
    "cooling",
    "is_cooked",
    "keep_rule",
    "least_growth_activity",
    "lethality_min",
    "mould_free_days",
    "needs_cold",
    "out_of_cold",
    "room_rules",
    "rule_of_family",
    "traits",
    "use_by",
]
