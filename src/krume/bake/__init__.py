"""What the oven does: minutes as an interval, the rule that came last, the dial, browning."""

from typing import TYPE_CHECKING

from krume.bake.batter import JACKETS, RACKS, UNDERS, AirCourse, Around, Batter, Oven
from krume.bake.browning import browning_delta_e
from krume.bake.cool_readings import CoolLeft, cool_left
from krume.bake.crust_colour import CrustStep, crust_colour, crust_steps, crust_word
from krume.bake.dial_setting import Dial, dial
from krume.bake.parameters import Wall, figures, wall, walls
from krume.bake.series import heating_theta
from krume.base import on_first_use

if TYPE_CHECKING:
    from krume.bake.cooling import (
        Cold,
        Cooling,
        CoolingCurve,
        CoolingWay,
        Vessel,
        cold,
        cool,
        cooling_figures,
        cooling_value,
        cooling_ways,
        plain_cake_minutes,
        vessel,
        vessel_hours,
        vessels,
    )
    from krume.bake.crowding import OvenLoad
    from krume.bake.draws import Draws, draw, nominal
    from krume.bake.footing import depth_cm
    from krume.bake.grid import Cells, Footprint, equivalent_radius_m
    from krume.bake.limits import RULES, core_notices, discrepancy_of, is_core_capped, outside
    from krume.bake.lines_matter import LineBake, LinesBake, Rival, lines_bake
    from krume.bake.loads_together import LoadTogether, Together, together
    from krume.bake.mixture import batter_of
    from krume.bake.oven_air import (
        OvenBox,
        door_back_min,
        oven_air_figures,
        oven_box,
        warming_kwh,
    )
    from krume.bake.prediction import (
        Bake,
        Bakes,
        Prediction,
        drawn,
        likeliest,
        predict,
        simulate,
        simulate_many,
    )
    from krume.bake.probe import ToCore, to_core
    from krume.bake.published import HeatEvidence, PublishedBake, heat_evidence, published_bakes
    from krume.bake.section import Section, sections
    from krume.bake.state import Track
    from krume.bake.unknown_shares import Unknown, unknowns, unknowns_of

# What needs numpy and scipy is imported when it is first asked for: a dial sum must not wait.
_HEAVY = {
    "batter_of": "mixture", "Draws": "draws", "draw": "draws", "nominal": "draws",
    "Cells": "grid", "Footprint": "grid", "equivalent_radius_m": "grid",
    "RULES": "limits", "Bake": "prediction", "Bakes": "prediction", "Prediction": "prediction",
    "LineBake": "lines_matter", "LinesBake": "lines_matter", "Rival": "lines_matter",
    "lines_bake": "lines_matter",
    "ToCore": "probe", "to_core": "probe", "likeliest": "prediction",
    "depth_cm": "footing", "predict": "prediction", "simulate": "prediction",
    "core_notices": "limits", "discrepancy_of": "limits", "is_core_capped": "limits",
    "outside": "limits",
    "simulate_many": "prediction", "Track": "state", "Section": "section", "sections": "section",
    "drawn": "prediction", "Unknown": "unknown_shares", "unknowns": "unknown_shares",
    "unknowns_of": "unknown_shares",
    "HeatEvidence": "published", "PublishedBake": "published", "heat_evidence": "published",
    "published_bakes": "published",
    "LoadTogether": "loads_together", "Together": "loads_together", "together": "loads_together",
    "OvenLoad": "crowding", "OvenBox": "oven_air", "oven_box": "oven_air",
    "oven_air_figures": "oven_air", "warming_kwh": "oven_air",
    "door_back_min": "oven_air",
    "Cooling": "cooling", "CoolingCurve": "cooling", "CoolingWay": "cooling", "cool": "cooling",
    "cooling_figures": "cooling", "cooling_value": "cooling", "cooling_ways": "cooling",
    "Cold": "cooling", "Vessel": "cooling", "cold": "cooling", "vessel": "cooling",
    "vessel_hours": "cooling", "vessels": "cooling", "plain_cake_minutes": "cooling",
}  # fmt: skip


__getattr__ = on_first_use(__name__, _HEAVY)

__all__ = [
    "JACKETS",
    "RACKS",
    "RULES",
    "UNDERS",
    "AirCourse",
    "Around",
    "Bake",
    "Bakes",
    "Batter",
    "Cells",
    "Cold",
    "CoolLeft",
    "Cooling",
    "CoolingCurve",
    "CoolingWay",
    "CrustStep",
    "Dial",
    "Draws",
    "Footprint",
    "HeatEvidence",
    "LineBake",
    "LinesBake",
    "LoadTogether",
    "Oven",
    "OvenBox",
    "OvenLoad",
    "Prediction",
    "PublishedBake",
    "Rival",
    "Section",
    "ToCore",
    "Together",
    "Track",
    "Unknown",
    "Vessel",
    "Wall",
    "batter_of",
    "browning_delta_e",
    "cold",
    "cool",
    "cool_left",
    "cooling_figures",
    "cooling_value",
    "cooling_ways",
    "core_notices",
    "crust_colour",
    "crust_steps",
    "crust_word",
    "depth_cm",
    "dial",
    "discrepancy_of",
    "door_back_min",
    "draw",
    "drawn",
    "equivalent_radius_m",
    "figures",
    "heat_evidence",
    "heating_theta",
    "is_core_capped",
    "likeliest",
    "lines_bake",
    "nominal",
    "outside",
    "oven_air_figures",
    "oven_box",
    "plain_cake_minutes",
    "predict",
    "published_bakes",
    "sections",
    "simulate",
    "simulate_many",
    "to_core",
    "together",
    "unknowns",
    "unknowns_of",
    "vessel",
    "vessel_hours",
    "vessels",
    "wall",
    "walls",
    "warming_kwh",
]
