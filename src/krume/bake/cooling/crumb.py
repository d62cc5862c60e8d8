"""The baked cake as stuff that cools: what its crumb conducts and holds, cold and hot."""

import numpy as np

from krume.bake.batter import Batter
from krume.bake.cooling.body import AXIS_K, Stuff
from krume.bake.cooling.rows import cooling_value
from krume.bake.grid import Array
from krume.bake.material import GAS_J_MOLK, WATER_KG_MOL, interpolated
from krume.bake.parameters import value
from krume.properties import COMPONENTS, component_polynomial, constant, syrup_activity

_SOLID_AT_C = 20.0
_ACTIVITY_AT_C = 60.0


def solid_curves(parts: tuple[float, ...], celsius: Array) -> tuple[Array, Array, Array]:
    """Conduction, density and specific heat without gas, from the component polynomials."""

    def each(quantity: str) -> Array:
        found = [component_polynomial(name, quantity) for name in COMPONENTS]
        return np.stack([a + b * celsius + c * celsius * celsius for a, b, c in found])

    shares = np.array(parts)[:, None]
    volumes = shares / each("density")
    density: Array = 1 / volumes.sum(axis=0)
    conduction: Array = (each("conductivity") * volumes).sum(axis=0) * density
    heat: Array = (each("heat-capacity") * shares).sum(axis=0)
    return conduction, density, heat


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


def _pores(activity: float, share: Array, pressure: float) -> Array:
    saturation, slope = interpolated(AXIS_K)
    held = np.minimum(activity * saturation, 0.9 * pressure)
    warm = AXIS_K / constant("celsius-zero")
    spread = value("diffusion-air") * warm**1.8 * 101325.0 / pressure
    latent = 2.501e6 - 2370.0 * (AXIS_K - constant("celsius-zero"))
    carried = (
        spread * WATER_KG_MOL * latent / (GAS_J_MOLK * AXIS_K)
        * pressure / (pressure - held) * activity * slope
    )  # fmt: skip
    return np.minimum(value("conduction-air") * warm**0.85 + share * carried,
                      value("conduction-pore-cap"))  # fmt: skip


def in_cloth(stuff: Stuff, sheet_m: Array) -> Stuff:
    """Conduction across turns of cake with a layer of cloth between them."""
    cloth = cooling_value("cloth") / 1000
    both = sheet_m[:, None] / stuff.conduction + cloth / cooling_value("cloth-conduction")
    return Stuff((sheet_m[:, None] + cloth) / both, stuff.heat)
