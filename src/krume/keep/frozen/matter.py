"""What freezes: heat content and conductivity over temperature, from composition and density."""

import math
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from krume.base import OutOfRangeError
from krume.keep.frozen.rows import frozen_value
from krume.properties import component, constant, food_properties, porous_conductivity_w_mk

Array = NDArray[np.float64]

_AT_C = 5.0
_AXIS_C: Array = np.arange(-42.0, 62.0 + 1e-9, 0.05)


@dataclass(frozen=True, slots=True)
class Matter:
    """Heat content and conductivity over an axis of temperatures; density as it stands."""

    axis_c: Array
    heat_j_kg: Array
    conduction_w_mk: Array
    ice_fraction: Array
    density_kg_m3: float
    freezing_c: float

    def temp_c(self, heat_j_kg: Array) -> Array:
        """Temperature of a heat content."""
        found: Array = np.interp(heat_j_kg, self.heat_j_kg, self.axis_c)
        return found

    def conduction(self, temp_c: Array) -> Array:
        """Conductivity at a temperature."""
        found: Array = np.interp(temp_c, self.axis_c, self.conduction_w_mk)
        return found

    @property
    def least_heat_j_kgk(self) -> float:
        """Least heat a degree takes anywhere on the axis."""
        return float((np.diff(self.heat_j_kg) / np.diff(self.axis_c)).min())

    def heat_at(self, temp_c: float) -> float:
        """Heat content at a temperature [J/kg]."""
        return float(np.interp(temp_c, self.axis_c, self.heat_j_kg))


def freezing_point_c(activity: float) -> float:
    """Temperature at which ice begins to form in something of a water activity.

    ln a_w = (L / R) (1 / T0 - 1 / T)

    Parameters
    ----------
    activity : water activity, above 0 to 1

    Returns
    -------
    temperature [degC]

    Raises
    ------
    OutOfRangeError : activity is outside 0.7 to 1

    Valid for
    ---------
    Ideal ice, one heat of melting; within 0.3 K down to -10 degC.

    Source
    ------
    `mathematics`, equilibrium of ice and solution, calculus

    Examples
    --------
    >>> round(freezing_point_c(0.98), 2)
    -2.07
    """
    if not 0.7 <= activity <= 1.0:
        raise OutOfRangeError(
            f"A water activity of {activity:g} is outside 0.7 to 1.",
            field="activity", got=f"{activity:g}", want="0.7 to 1",
        )  # fmt: skip
    zero = constant("celsius-zero")
    slope = constant("gas-constant") / frozen_value("fusion")
    return 1 / (1 / zero - slope * math.log(activity)) - zero


def matter_of(fractions: Mapping[str, float], *, density_kg_m3: float, freezing_c: float) -> Matter:
    """Heat content and conductivity of a food that freezes, pores included.

    x_ice = (x_w - x_b) (1 - T_f / T) · H = int c dT - L x_ice

    Parameters
    ----------
    fractions : mass fractions of water, protein, fat, carbohydrate, fibre, ash; sum 1
    density_kg_m3 : as it stands, with its pores [kg/m3]
    freezing_c : where ice begins to form, below 0 [degC]

    Returns
    -------
    tables over -42 to 62 degC

    Raises
    ------
    OutOfRangeError : fractions do not sum to 1, the density is not above 0, or freezing_c is not
        below 0

    Valid for
    ---------
    Foods whose sugar stays dissolved; no supercooling, no glass.

    Source
    ------
    `chen-1985`, `choi-okos-1986`

    Examples
    --------
    >>> wet = dict(water=0.6, protein=0.04, fat=0.16, carbohydrate=0.19, fibre=0.0, ash=0.01)
    >>> found = matter_of(wet, density_kg_m3=750.0, freezing_c=-2.0)
    >>> round((found.heat_at(5.0) - found.heat_at(-18.0)) / 1000)
    233
    """
    if not 0 < density_kg_m3 < math.inf or not freezing_c < 0:
        raise OutOfRangeError(
            "A density is above 0 kg/m3, and ice forms below 0 °C in what holds sugar.",
            field="density_kg_m3", got=f"{density_kg_m3:g}", want="more than 0",
        )  # fmt: skip
    ice = _ice(fractions, freezing_c)
    wet = food_properties(fractions, temp_c=_AT_C)
    lighter = component("water", "heat-capacity", _AT_C) - frozen_value("ice-heat")
    capacity = wet.heat_capacity_j_kgk - ice * lighter
    step = float(_AXIS_C[1] - _AXIS_C[0])
    sensible = np.concatenate([[0.0], np.cumsum((capacity[1:] + capacity[:-1]) / 2 * step)])
    heat = sensible - frozen_value("latent") * ice
    solid = _solid_conduction(fractions, ice, wet.density_kg_m3)
    pores = min(max(1 - density_kg_m3 / wet.density_kg_m3, 0.0), 0.95)
    return Matter(
        _AXIS_C, heat - heat[0], _with_pores(solid, pores), ice, density_kg_m3, freezing_c
    )


def _ice(fractions: Mapping[str, float], freezing_c: float) -> Array:
    """Mass fraction of ice over the axis."""
    bound = frozen_value("bound") * fractions.get("protein", 0.0)
    free = max(fractions.get("water", 0.0) - bound, 0.0)
    below = np.minimum(_AXIS_C, freezing_c)
    return np.where(freezing_c > _AXIS_C, free * (1 - freezing_c / below), 0.0)


def _solid_conduction(fractions: Mapping[str, float], ice: Array, wet_kg_m3: float) -> Array:
    """Conductivity without pores: parts by their volumes, frozen water as ice."""
    others = sum(
        share * component(name, "conductivity", _AT_C) / component(name, "density", _AT_C)
        for name, share in fractions.items()
        if name != "water"
    )
    water = component("water", "conductivity", _AT_C) / component("water", "density", _AT_C)
    frozen = frozen_value("ice-conduction") / frozen_value("ice-density")
    liquid = fractions.get("water", 0.0) - ice
    found: Array = wet_kg_m3 * (others + liquid * water + ice * frozen)
    return found


def _with_pores(solid: Array, pores: float) -> Array:
    gas = frozen_value("pores")
    ends = np.linspace(float(solid.min()), float(solid.max()) + 1e-9, 32)
    known = [porous_conductivity_w_mk(float(k), gas_w_mk=gas, pore_fraction=pores) for k in ends]
    found: Array = np.interp(solid, ends, known)
    return found
