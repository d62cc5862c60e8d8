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
from krume.keep.off import (
    DISCARD,
    DOORS,
    KEEP,
    NOT_SHOWN,
    OffEvidence,
    OffVerdict,
    PlaceRule,
    Spoiling,
    judge_off,
    place_rule,
    place_rules,
    spoiling,
    worst_of,
)
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
from krume.keep.treated import (
    AlcoholKept,
    EggHeat,
    RawEgg,
    alcohol_kept,
    egg_heat,
    raw_egg,
)

if TYPE_CHECKING:
    from krume.keep.custard_way import (
        CustardCooling,
        CustardDepth,
        CustardVessel,
        custard_cooling,
        custard_depth,
    )
    from krume.keep.frozen import (
        CakeBox,
        ColdBody,
        FreezeThaw,
        OnTheRoad,
        Road,
        TakesFreezing,
        cake_boxes,
        dew_point_c,
        freeze_and_thaw,
        freezing_point_c,
        frozen_figures,
        frozen_value,
        hardest_to_freeze,
        matter_of,
        on_the_road,
        takes_freezing,
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

# Cooling, moving water and freezing need numpy and scipy: they are imported when asked for.
_HEAVY = (
    dict.fromkeys(
        ("CustardCooling", "CustardDepth", "CustardVessel", "custard_cooling", "custard_depth"),
        "custard_way",
    )
    | dict.fromkeys(
        (
            *("Holding", "HoursUntil", "Migration", "MovedLayer", "SoftBase", "holding_of"),
            *("migration", "moisture_figure", "starch_water_g", "sugar_solution_activity"),
            "sugar_water_g",
        ),
        "moisture",
    )
    | dict.fromkeys(
        (
            *(
                "CakeBox",
                "ColdBody",
                "FreezeThaw",
                "OnTheRoad",
                "Road",
                "TakesFreezing",
                "cake_boxes",
            ),
            *(
                "dew_point_c",
                "freeze_and_thaw",
                "freezing_point_c",
                "frozen_figures",
                "frozen_value",
            ),
            *("hardest_to_freeze", "matter_of", "on_the_road", "takes_freezing"),
        ),
        "frozen",
    )
)


__getattr__ = on_first_use(__name__, _HEAVY)

__all__ = [
    "DISCARD",
    "DOORS",
    "KEEP",
    "NOT_SHOWN",
    "AlcoholKept",
    "CakeBox",
    "Caution",
    "ColdBody",
    "Cooling",
    "CustardCooling",
    "CustardDepth",
    "CustardVessel",
    "Difference",
    "EggHeat",
    "FreezeThaw",
    "Holding",
    "HoursUntil",
    "KeepComponent",
    "KeepReason",
    "KeepRule",
    "Keeping",
    "Migration",
    "MovedLayer",
    "OffEvidence",
    "OffVerdict",
    "OnTheRoad",
    "OutOfCold",
    "PlaceRule",
    "RawEgg",
    "Road",
    "Saying",
    "SoftBase",
    "Spoiling",
    "TakesFreezing",
    "activity_estimate",
    "activity_of",
    "alcohol_kept",
    "assess",
    "cake_boxes",
    "caution",
    "cooling",
    "custard_cooling",
    "custard_depth",
    "dew_point_c",
    "differences",
    "egg_heat",
    "freeze_and_thaw",
    "freezing_point_c",
    "frozen_figures",
    "frozen_value",
    "hardest_to_freeze",
    "holding_of",
    "is_cooked",
    "judge_off",
    "keep_rule",
    "least_growth_activity",
    "lethality_min",
    "matter_of",
    "migration",
    "moisture_figure",
    "mould_free_days",
    "mould_free_span",
    "needs_cold",
    "on_the_road",
    "out_of_cold",
    "place_rule",
    "place_rules",
    "raw_egg",
    "room_rules",
    "rule_of_family",
    "spoiling",
    "starch_water_g",
    "sugar_solution_activity",
    "sugar_water_g",
    "takes_freezing",
    "traits",
    "use_by",
    "worst_of",
]
