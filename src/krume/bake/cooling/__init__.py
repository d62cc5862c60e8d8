"""After the oven: what cools, how fast, and when it may be split, filled, rolled or wrapped."""

from krume.bake.cooling.after_oven import WAYS, cool
from krume.bake.cooling.cooled import Cooling, CoolingCurve
from krume.bake.cooling.plain_cake import plain_cake_minutes
from krume.bake.cooling.rows import cooling_figures, cooling_value
from krume.bake.cooling.vessel import Cold, Vessel, cold, vessel, vessel_hours, vessels
from krume.bake.cooling.ways import CoolingWay, cooling_ways

__all__ = [
    "WAYS",
    "Cold",
    "Cooling",
    "CoolingCurve",
    "CoolingWay",
    "Vessel",
    "cold",
    "cool",
    "cooling_figures",
    "cooling_value",
    "cooling_ways",
    "plain_cake_minutes",
    "vessel",
    "vessel_hours",
    "vessels",
]
