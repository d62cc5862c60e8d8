"""Water between the layers of a torte: which gives, which takes, and what is wet by when."""

from krume.keep.moisture.figures import Rate, moisture_figure, rate
from krume.keep.moisture.holding import Holding, holding_of
from krume.keep.moisture.migrating import Migration, MovedLayer, migration
from krume.keep.moisture.softening import HoursUntil, SoftBase
from krume.keep.moisture.sorption import (
    Curve,
    starch_water_g,
    sugar_solution_activity,
    sugar_water_g,
)
from krume.keep.moisture.spreading import Line, Spread, spread_water

__all__ = [
    "Curve",
    "Holding",
    "HoursUntil",
    "Line",
    "Migration",
    "MovedLayer",
    "Rate",
    "SoftBase",
    "Spread",
    "holding_of",
    "migration",
    "moisture_figure",
    "rate",
    "spread_water",
    "starch_water_g",
    "sugar_solution_activity",
    "sugar_water_g",
]
