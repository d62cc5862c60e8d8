"""Where heat enters and water leaves: tin walls, and the wet, then dry, top."""

from dataclasses import dataclass

import numpy as np

from krume.bake.grid import Array
from krume.bake.material import GAS_J_MOLK, WATER_KG_MOL, interpolated
from krume.bake.parameters import Wall, value

STEFAN_BOLTZMANN = 5.670374419e-8  # W/m2K4, exact by definition of the SI


@dataclass(frozen=True, slots=True)
class Air:
    """The oven's air and walls at mid-step, all (draws, 1): temperature and film coefficients."""

    temp: Array
    heat: Array
    film: Array
    vapour: Array
    pressure: float

    def coefficient(self, emissivity: float, surface: Array) -> Array:
        """Film plus radiation [W/m2K] at the local surface temperature."""
        radiation = STEFAN_BOLTZMANN * (self.temp**2 + surface**2) * (self.temp + surface)
        return self.film + self.heat * emissivity * radiation


@dataclass(frozen=True, slots=True)
class WallStep:
    """One step of a tin wall after eliminating its own temperature: what the cells see."""

    diagonal: Array
    source: Array
    inward: Array
    outward: Array
    store: Array

    def next_temp(self, tin: Array, cell: Array, air: Array) -> Array:
        """Tin temperature after the step, from the cell's new temperature."""
        total = self.store + self.outward + self.inward
        moved: Array = (self.store * tin + self.inward * cell + self.outward * air) / total
        return moved


def wall_step(
    wall: Wall, air: Air, tin: Array, mid: Array, *, area: Array, inner: Array, step: Array
) -> WallStep:
    """Backward Euler on the tin node, eliminated exactly; `inner` is the resistance inside it."""
    inward = area / (wall.resistance_m2k_w + inner)
    outward = area * air.coefficient(wall.emissivity, mid)
    store = area * wall.heat_per_area_j_m2k / step
    total = store + outward + inward
    source = inward * (store * tin + outward * air.temp) / total
    return WallStep(inward * (1 - inward / total), source, inward, outward, store)


@dataclass(frozen=True, slots=True)
class TopStep:
    """One step of the top: front temperature, vapour flux, outer surface, and its slope."""

    front: Array
    flux: Array
    outer: Array
    slope: Array
    contact: Array

    def diagonal(self, area: Array) -> Array:
        """What the top adds to the cell's own coefficient."""
        return self.contact * (1 - self.slope) * area

    def source(self, area: Array, cell: Array) -> Array:
        """Heat the top brings at cell temperature zero."""
        return self.contact * (self.front - self.slope * cell) * area


@dataclass(frozen=True, slots=True)
class Skin:
    """State of the top that the balance needs: crust depth, conduction, first guess, last outer."""

    crust: Array
    conduction: Array
    contact: Array
    cell: Array
    guess: Array
    outer: Array


def top_step(
    air: Air, skin: Skin, crust_k: Array, crust_d: Array, activity: float, boiling_k: float
) -> TopStep:
    r"""Balance of heat and vapour at the drying front, two Newton steps.

    U (Ta - Tf) = L j + kz (Tf - Tcell);
    j = Mw P/(R Tf rm) ln[(P - p_oven)/(P - aw p_sat(Tf))]
    """
    outside = air.coefficient(value("emissivity-cake"), skin.outer)
    through = 1 / (1 / outside + skin.crust * np.maximum(1 / crust_k - 1 / skin.conduction, 0))
    film = value("lewis") * air.film / value("air-heat")
    resist = 1 / film + skin.crust / crust_d
    front = np.minimum(skin.guess, boiling_k - 1e-3)
    for _ in range(2):
        flux, slope, latent = _vapour(air, front, resist, activity)
        gap = through * (air.temp - front) - latent * flux - skin.contact * (front - skin.cell)
        front = np.clip(
            front + gap / (through + latent * slope + skin.contact), 250.0, boiling_k + 5
        )
    driven = front >= boiling_k
    front = np.where(driven, boiling_k, front)
    flux, slope, latent = _vapour(air, front, resist, activity)
    left = through * (air.temp - boiling_k) - skin.contact * (boiling_k - skin.cell)
    flux = np.where(driven, np.maximum(left / latent, 0), flux)
    follow = skin.contact / (through + latent * slope + skin.contact)
    outer = air.temp - through / outside * (air.temp - front)
    return TopStep(front, flux, outer, np.where(driven, 0.0, follow), skin.contact)


def _vapour(air: Air, front: Array, resist: Array, activity: float) -> tuple[Array, Array, Array]:
    saturation, slope = interpolated(front)
    pressure = activity * saturation
    capped = pressure > 0.985 * air.pressure
    pressure = np.minimum(pressure, 0.985 * air.pressure)
    scale = WATER_KG_MOL * air.pressure / (GAS_J_MOLK * front) / resist
    flux = scale * np.log((air.pressure - air.vapour) / (air.pressure - pressure))
    rise = np.where(capped, 0.0, scale * activity * slope / (air.pressure - pressure))
    rise = rise - flux / front
    wet = flux > 0
    latent = 2.501e6 - 2370.0 * (front - 273.15)
    return np.where(wet, flux, 0.0), np.where(wet, rise, 0.0), latent
