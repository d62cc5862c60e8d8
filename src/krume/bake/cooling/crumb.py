"""The baked cake as stuff that cools: what its crumb conducts and holds, cold and hot."""

import numpy as np

from krume.bake.batter import Batter
from krume.bake.cooling.body import AXIS_K, Stuff
from krume.bake.cooling.rows import cooling_value
from krume.bake.grid import Array
from krume.bake.material import (
    air_w_mk,
    interpolated,
    pore_vapour_pa,
    solid_curves,
    vapour_path_w_mk,
)
from krume.bake.parameters import value
from krume.properties import constant, syrup_activity

_SOLID_AT_C = 20.0
_ACTIVITY_AT_C = 60.0


def crumb_of(
    batter: Batter, density_kg_m3: Array, pore_share: Array, *, pressure_pa: float
) -> Stuff:
    """Crumb of a batter at the densities it has when baked; pores carry heat with vapour.

    `pore_share` is how much of the vapour's way through the pores is open, one a draw.
    """
    celsius = AXIS_K - constant("celsius-zero")
    solid, _, heat = solid_curves(batter.parts, celsius)
    _, dense, _ = solid_curves(batter.parts, np.array([_SOLID_AT_C]))
    empty = np.clip(1 - density_kg_m3 / float(dense[0]), value("least-air"), 0.95)[:, None]
    gas = _pores(crumb_activity(batter), pore_share[:, None], pressure_pa)
    ratio = (solid - gas) / (2 * solid + gas)
    conduction = solid * (1 - 2 * empty * ratio) / (1 + empty * ratio)
    return Stuff(conduction, heat[None])


def crumb_activity(batter: Batter) -> float:
    """Water activity of the crumb by its sugar in its water, as in the oven."""
    return syrup_activity(100 * batter.sugar_share, temp_c=_ACTIVITY_AT_C)


def _pores(activity: float, share: Array, pressure_pa: float) -> Array:
    saturation, slope = interpolated(AXIS_K)
    held = pore_vapour_pa(saturation, activity, pressure_pa)
    carried = vapour_path_w_mk(AXIS_K, held, slope, activity=activity, pressure_pa=pressure_pa)
    return np.minimum(air_w_mk(AXIS_K) + share * carried, value("conduction-pore-cap"))


def in_cloth(stuff: Stuff, sheet_m: Array) -> Stuff:
    """Conduction across turns of cake with a layer of cloth between them."""
    cloth = cooling_value("cloth") / 1000
    both = sheet_m[:, None] / stuff.conduction + cloth / cooling_value("cloth-conduction")
    return Stuff((sheet_m[:, None] + cloth) / both, stuff.heat)
