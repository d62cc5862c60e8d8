"""How long it lasts: keeping, mould, lethality, cooling, need of cold, cautions."""

from typing import TYPE_CHECKING

from krume.base import on_first_use
from krume.keep.assess import KeepComponent, Keeping, KeepReason, assess
from krume.keep.cold import needs_cold
from krume.keep.cooling_log import Cooling, cooling
from krume.keep.differences import Difference, Saying, differences
from krume.keep.estimate import activity_estimate, activity_of
from krume.keep.lethality import lethality_min
from krume.keep.mould import mould_free_days, mould_free_span
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

if TYPE_CHECKING:
    from krume.keep.custard_way import (
        CustardCooling,
        CustardDepth,
        CustardVessel,
        custard_cooling,
        custard_depth,
    )
    from krume.keep.moisture import (
        Holding,
        HoursUntil,
        Migration,
        MovedLayer,
        SoftBase,
        holding_of,
        migration,
        moisture_figure,
        starch_water_g,
        sugar_solution_activity,
        sugar_water_g,
    )

# A custard's cooling and moving water need numpy and scipy: they are imported when asked for.
_HEAVY = dict.fromkeys(
    ("CustardCooling", "CustardDepth", "CustardVessel", "custard_cooling", "custard_depth"),
    "custard_way",
) | dict.fromkeys(
    (
        *("Holding", "HoursUntil", "Migration", "MovedLayer", "SoftBase", "holding_of"),
        *("migration", "moisture_figure", "starch_water_g", "sugar_solution_activity"),
        "sugar_water_g",
    ),
    "moisture",
)


__getattr__ = on_first_use(__name__, _HEAVY)

__all__ = [
    "Caution",
    "Cooling",
    "CustardCooling",
    "CustardDepth",
    "CustardVessel",
    "Difference",
    "Holding",
    "HoursUntil",
    "KeepComponent",
    "KeepReason",
    "KeepRule",
    "Keeping",
    "Migration",
    "MovedLayer",
    "OutOfCold",
    "Saying",
    "SoftBase",
    "activity_estimate",
    "activity_of",
    "assess",
    "caution",
    "cooling",
    "custard_cooling",
    "custard_depth",
    "differences",
    "holding_of",
    "is_cooked",
    "keep_rule",
    "least_growth_activity",
    "lethality_min",
    "migration",
    "moisture_figure",
    "mould_free_days",
    "mould_free_span",
    "needs_cold",
    "out_of_cold",
    "room_rules",
    "rule_of_family",
    "starch_water_g",
    "sugar_solution_activity",
    "sugar_water_g",
    "traits",
    "use_by",
]
