"""What the batter is like at each temperature: tables shared by all draws, looked up every step."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from krume.bake.batter import Batter
from krume.bake.grid import Array
from krume.bake.parameters import value
from krume.properties import (
    COMPONENTS,
    boiling_point_c,
    component_polynomial,
    constant,
    syrup_activity,
    vapour_pressure_pa,
)

Index = np.ndarray[tuple[int, ...], np.dtype[np.intp]]

START_K, STEP_K, COUNT = 268.15, 0.05, 3101
AXIS_K: Array = START_K + STEP_K * np.arange(COUNT, dtype=np.float64)
_ZERO_K = constant("celsius-zero")
GAS_J_MOLK = constant("gas-constant")
WATER_KG_MOL = constant("molar-water") / 1000
_ACTIVITY_AT_C = 96.85  # 370 K, where the front stands for most of a bake
SATURATION_PA: Array = np.array([vapour_pressure_pa(t) for t in np.maximum(AXIS_K - _ZERO_K, 0.0)])
SLOPE_PA_K: Array = np.asarray(np.gradient(SATURATION_PA, STEP_K), dtype=np.float64)
_EGG_SET_K = 353.15
GAS_FULL_K = 343.15
# Vapour is taken no closer to the air's pressure than so much of it, or its flow has no end.
MOST_OF_PRESSURE, _MOST_IN_PORES = 0.985, 0.9
_FASTEST = 50.0  # 1/s: set at once; keeps the tables finite


@dataclass(frozen=True, slots=True)
class Material:
    """Tables of one batter at one air pressure over AXIS_K, one row each.

    `cell` has 1/k of the solid, 2 + air over solid conductivity, the vapour path over the solid's
    conductivity, the cap of both on the scale of the second, heat capacity, rates of setting of
    starch and egg, and the gas law T/(P - p). `front` has what vapour flow takes at a drying
    front: drive and its slope, the share of the oven's vapour and its slope, latent heat, axis.
    """

    cell: Array
    front: Array
    solid_kg_m3: float
    water_activity: float
    boiling_k: float
    pressure_pa: float

    @property
    def heat(self) -> Array:
        """Heat capacity over AXIS_K [J/kgK]."""
        heat: Array = self.cell[4]
        return heat


def nearest(temp_k: Array) -> Index:
    """Nearest table entry of a temperature, kept inside the table."""
    place = (temp_k - (START_K - STEP_K / 2)) * (1 / STEP_K)
    index: Index = np.fmin(np.fmax(place, 0.0), COUNT - 1.0).astype(np.intp)
    return index


@lru_cache(maxsize=256)
def boiling_k(sugar_share: float, pressure_pa: float) -> float:
    """Boiling point of a batter by its sugar over sugar and water [K]."""
    return boiling_point_c(pressure_pa, sugar_pct=100 * sugar_share) + _ZERO_K


@lru_cache(maxsize=64)
def material_of(batter: Batter, pressure_pa: float) -> Material:
    """Tables of a batter at one pressure."""
    celsius = AXIS_K - _ZERO_K
    solid, _, heat = solid_curves(batter.parts, celsius)
    _, dense, _ = solid_curves(batter.parts, np.array([20.0]))
    sugar_pct = 100 * batter.sugar_share
    activity = syrup_activity(sugar_pct, temp_c=_ACTIVITY_AT_C)
    vapour = pore_vapour_pa(SATURATION_PA, activity, pressure_pa)
    path = vapour_path_w_mk(AXIS_K, vapour, SLOPE_PA_K, activity=activity, pressure_pa=pressure_pa)
    cell = (
        1 / solid,
        2 + air_w_mk(AXIS_K) / solid,
        path / solid,
        2 + value("conduction-pore-cap") / solid,
        heat,
        _starch_rate(batter),
        _egg_rate(batter),
        AXIS_K / (pressure_pa - vapour),
    )
    return Material(
        cell=np.stack(cell),
        front=front_tables(pressure_pa, activity),
        solid_kg_m3=float(dense[0]),
        water_activity=activity,
        boiling_k=boiling_k(batter.sugar_share, pressure_pa),
        pressure_pa=pressure_pa,
    )


Parts = tuple[float, float, float, float, float, float]


def solid_curves(parts: Parts, celsius: Array) -> tuple[Array, Array, Array]:
    """Conductivity, density and heat capacity without gas, from the component polynomials."""

    def each(name: str, quantity: str) -> Array:
        a, b, c = component_polynomial(name, quantity)
        curve: Array = a + b * celsius + c * celsius * celsius
        return curve

    shares = np.array(parts)[:, None]
    volumes = shares / np.stack([each(name, "density") for name in COMPONENTS])
    density: Array = 1 / volumes.sum(axis=0)
    conductions = np.stack([each(name, "conductivity") for name in COMPONENTS])
    heats = np.stack([each(name, "heat-capacity") for name in COMPONENTS])
    return (conductions * volumes).sum(axis=0) * density, density, (heats * shares).sum(axis=0)


def latent_j_kg(temp_k: Array) -> Array:
    """Latent heat of water at a temperature."""
    latent: Array = value("latent-cold") - value("latent-fall") * (temp_k - _ZERO_K)
    return latent


def air_w_mk(temp_k: Array) -> Array:
    """Conductivity of the air in pores."""
    conduction: Array = value("conduction-air") * (temp_k / _ZERO_K) ** 0.85
    return conduction


def pore_vapour_pa(saturation_pa: Array, activity: float, pressure_pa: float) -> Array:
    """Vapour in the pores of a crumb, by its water activity."""
    return np.minimum(activity * saturation_pa, _MOST_IN_PORES * pressure_pa)


def vapour_path_w_mk(
    temp_k: Array, vapour_pa: Array, slope_pa_k: Array, *, activity: float, pressure_pa: float
) -> Array:
    """Conductivity by water that evaporates at the warm side of a pore and settles at the cold.

    `vapour_pa` is what the pore holds, `slope_pa_k` the slope of the saturation pressure.
    """
    at_sea = constant("standard-pressure")
    spread = value("diffusion-air") * (temp_k / _ZERO_K) ** 1.8 * at_sea / pressure_pa
    carried: Array = (
        spread * WATER_KG_MOL * latent_j_kg(temp_k) / (GAS_J_MOLK * temp_k)
        * pressure_pa / (pressure_pa - vapour_pa) * activity * slope_pa_k
    )  # fmt: skip
    return carried


def front_tables(pressure: float, activity: float) -> Array:
    """Stefan flow at a front, for each resistance: j = (drive - ln P/(P - p_oven) share) / r."""
    wet = np.minimum(activity * SATURATION_PA, MOST_OF_PRESSURE * pressure)
    share = WATER_KG_MOL * pressure / (GAS_J_MOLK * AXIS_K)
    drive = share * -np.log1p(-wet / pressure)
    drive_slope, share_slope = np.gradient(drive, STEP_K), np.gradient(share, STEP_K)
    return np.stack([drive, drive_slope, share, share_slope, latent_j_kg(AXIS_K), AXIS_K])


def _starch_rate(batter: Batter) -> Array:
    share = batter.sugar_share
    shift = value("starch-sugar-linear") * share + value("starch-sugar-square") * share**2
    kind = "gluten-free" if batter.gluten_free else "wheat"
    peak = value(f"starch-peak-{kind}") + _ZERO_K
    slope = value("starch-activation") / GAS_J_MOLK
    at_peak = value("starch-scan") / 60 * slope / peak**2
    return np.minimum(at_peak * np.exp(-slope * (1 / (AXIS_K - shift) - 1 / peak)), _FASTEST)


def _egg_rate(batter: Batter) -> Array:
    if not batter.egg:
        return np.full(COUNT, _FASTEST)
    shift = value("egg-sugar") * batter.sugar_share
    slope = value("egg-activation") / GAS_J_MOLK
    rate = value("egg-rate") * np.exp(-slope * (1 / (AXIS_K - shift) - 1 / _EGG_SET_K))
    return np.minimum(rate, _FASTEST)


def interpolated(temp_k: Array) -> tuple[Array, Array]:
    """Saturation pressure and its slope between table entries."""
    pressure: Array = np.interp(temp_k, AXIS_K, SATURATION_PA)
    slope: Array = np.interp(temp_k, AXIS_K, SLOPE_PA_K)
    return pressure, slope
