"""What a mixture is like: heat, water, gas, foam, gel."""

from krume.properties.activity import (
    SOLUTES,
    ideal_activity,
    norrish_activity,
    ross_activity,
    solution_activity,
    syrup_activity,
)
from krume.properties.colour import Lab, ScreenColour, light_of, screen_colour
from krume.properties.constant_table import CONSTANT_COLUMNS, constant, constants, within
from krume.properties.foam import overrun_pct, specific_gravity
from krume.properties.gas import molar_volume_ml, powder_gas_ml, soda_gas_ml
from krume.properties.gel import BloomSwap, bloom_swap
from krume.properties.heat import (
    COMPONENTS,
    FoodProperties,
    component,
    component_polynomial,
    food_properties,
    porous_conductivity_w_mk,
)
from krume.properties.setting import (
    Leaf,
    LeafSwap,
    Setting,
    alcohol_pct,
    in_leaves,
    leaves,
    most_spirit_g,
    setting,
    settings,
)
from krume.properties.water import boiling_point_c, pressure_at_altitude_pa, vapour_pressure_pa

__all__ = [
    "COMPONENTS",
    "CONSTANT_COLUMNS",
    "SOLUTES",
    "BloomSwap",
    "FoodProperties",
    "Lab",
    "Leaf",
    "LeafSwap",
    "ScreenColour",
    "Setting",
    "alcohol_pct",
    "bloom_swap",
    "boiling_point_c",
    "component",
    "component_polynomial",
    "constant",
    "constants",
    "food_properties",
    "ideal_activity",
    "in_leaves",
    "leaves",
    "light_of",
    "molar_volume_ml",
    "most_spirit_g",
    "norrish_activity",
    "overrun_pct",
    "porous_conductivity_w_mk",
    "powder_gas_ml",
    "pressure_at_altitude_pa",
    "ross_activity",
    "screen_colour",
    "setting",
    "settings",
    "soda_gas_ml",
    "solution_activity",
    "specific_gravity",
    "syrup_activity",
    "vapour_pressure_pa",
    "within",
]
