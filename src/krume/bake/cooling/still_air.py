"""Still air at a warm face: films by the way it looks, radiation, and water that leaves it."""

from dataclasses import dataclass

import numpy as np

from krume.bake.cooling.rows import cooling_value
from krume.bake.grid import Array
from krume.bake.material import (
    COUNT,
    GAS_J_MOLK,
    MOST_OF_PRESSURE,
    SATURATION_PA,
    START_K,
    STEP_K,
    WATER_KG_MOL,
    latent_j_kg,
)
from krume.bake.parameters import value
from krume.bake.surfaces import STEFAN_BOLTZMANN

WAYS = ("up", "down", "wall", "log")
_PLATES = {"up": "plate-up", "down": "plate-down"}


@dataclass(frozen=True, slots=True)
class Film:
    """Film of air [W/m2K]: `base` + `slope` times the fourth root of the difference [K]."""

    base_w_m2k: float
    slope: float = 0.0

    def at(self, difference_k: Array) -> Array:
        """Film at a difference between face and air."""
        return self.base_w_m2k + self.slope * np.abs(difference_k) ** 0.25

    def times(self, share: float) -> "Film":
        """The same film where only a share of it is there."""
        return Film(share * self.base_w_m2k, share * self.slope)


def still_film(way: str, length_m: float) -> Film:
    r"""Natural convection at a warm face in still air.

    Nu = c0 + C Ra^(1/4), Ra = g dT L^3 / (T nu alpha), h = Nu k / L

    Parameters
    ----------
    way : `up` or `down` (a plate's face looks there), `wall` (upright), `log` (a lying cylinder)
    length_m : area over rim of a plate, height of a wall, diameter of a log [m]

    Returns
    -------
    film of air by its difference of temperature

    Valid for
    ---------
    Laminar films: plates and walls up to about 30 cm, differences up to 80 K, no draught.

    Source
    ------
    `mcadams-1954`, `churchill-chu-1975`, `morgan-1975`

    Examples
    --------
    >>> round(float(still_film("up", 0.05).at(40.0)), 2)
    7.21
    >>> round(float(still_film("down", 0.05).at(40.0)), 2)
    3.6
    """
    air = cooling_value("air-viscosity") * cooling_value("air-diffusivity")
    per_k = cooling_value("gravity") * length_m**3 / (cooling_value("air-film") * air)
    scale = cooling_value("air-conduction") / length_m
    if way == "wall":
        slope = cooling_value("wall-slope")
        return Film(scale * cooling_value("wall-still"), scale * slope * per_k**0.25)
    slope = cooling_value("log-slope" if way == "log" else _PLATES[way])
    return Film(0.0, scale * slope * per_k**0.25)


def radiation(emissivity: float, face_k: Array, room_k: Array) -> Array:
    """Radiation of a face to a room as warm as its air, as a coefficient [W/m2K]."""
    glow: Array = emissivity * STEFAN_BOLTZMANN * (face_k**2 + room_k**2) * (face_k + room_k)
    return glow


@dataclass(frozen=True, slots=True)
class Vapour:
    """Water that leaves a face [kg/m2s], its slope over temperature, latent heat [J/kg]."""

    flux: Array
    slope: Array
    latent: Array


def vapour_from(
    face_k: Array, resistance_s_m: Array, activity: float, room_pa: Array, pressure_pa: float
) -> Vapour:
    """Stefan flow from a moist face through crust and film; none where the room's air is wetter."""
    saturation, steep = _saturation(face_k)
    held = activity * saturation
    most = MOST_OF_PRESSURE * pressure_pa
    capped, held = held > most, np.minimum(held, most)
    scale = WATER_KG_MOL * pressure_pa / (GAS_J_MOLK * face_k) / resistance_s_m
    flux = scale * np.log((pressure_pa - room_pa) / (pressure_pa - held))
    slope = np.where(capped, 0.0, scale * activity * steep / (pressure_pa - held)) - flux / face_k
    wet = flux > 0
    return Vapour(np.where(wet, flux, 0.0), np.where(wet, slope, 0.0), latent_j_kg(face_k))


def _saturation(face_k: Array) -> tuple[Array, Array]:
    """Saturation pressure [Pa] and its slope, straight between the entries of the bake's table."""
    place = np.minimum(np.maximum((face_k - START_K) / STEP_K, 0), COUNT - 2)
    low = place.astype(np.intp)
    rise = SATURATION_PA[low + 1] - SATURATION_PA[low]
    return SATURATION_PA[low] + (place - low) * rise, rise / STEP_K


def film_resistance_s_m(film_w_m2k: Array) -> Array:
    """What the film itself holds vapour back [s/m], by the likeness of heat and vapour."""
    resistance: Array = cooling_value("air-heat") / (value("lewis") * film_w_m2k)
    return resistance


def crust_resistance_s_m(crust_m: Array) -> Array:
    """What a dry crust holds vapour back [s/m]: its depth over the diffusion in it."""
    diffusion = value("diffusion-air") * (330 / 273.15) ** 1.8 * value("crust-diffusion")
    resistance: Array = crust_m / diffusion
    return resistance
