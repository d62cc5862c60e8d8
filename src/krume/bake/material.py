"""What the batter is like at each temperature: one table per draw, looked up every step."""

from dataclasses import dataclass

import numpy as np

from krume.bake.batter import Batter
from krume.bake.draws import Draws
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

START_K, STEP_K, COUNT = 273.15, 0.05, 5001
AXIS_K: Array = START_K + STEP_K * np.arange(COUNT, dtype=np.float64)
_FREEZE_K = constant("celsius-zero")
GAS_J_MOLK = constant("gas-constant")
WATER_KG_MOL = constant("molar-water") / 1000
_ACTIVITY_AT_C = 96.85  # 370 K, where the front stands for most of a bake
SATURATION_PA: Array = np.array([vapour_pressure_pa(t) for t in AXIS_K - _FREEZE_K])
SLOPE_PA_K: Array = np.asarray(np.gradient(SATURATION_PA, STEP_K), dtype=np.float64)
_EGG_SET_K = 353.15
_GAS_FULL_K = 343.15


@dataclass(frozen=True, slots=True)
class Material:
    """Tables over AXIS_K: (COUNT,) where all draws share one, else flat (draws * COUNT,)."""

    conduction: Array
    heat: Array
    starch_rate: Array
    egg_rate: Array
    pore_ratio: Array
    growth: Array
    porosity: Array
    water_activity: float
    boiling_k: float
    pressure_pa: float


def material_of(batter: Batter, pressure_pa: float, draws: Draws) -> Material:
    """Tables of a batter for all draws at one pressure."""
    celsius = AXIS_K - _FREEZE_K
    conduction, _, heat = _solid(batter, celsius)
    _, dense, _ = _solid(batter, np.array([20.0]))
    sugar_pct = 100 * batter.sugar_share
    activity = syrup_activity(sugar_pct, temp_c=_ACTIVITY_AT_C)
    vapour = np.minimum(activity * SATURATION_PA, 0.9 * pressure_pa)
    pores = _pore_conduction(draws, pressure_pa, activity, vapour)
    return Material(
        conduction=conduction,
        heat=heat,
        starch_rate=_starch_rate(batter),
        egg_rate=_egg_rate(batter),
        pore_ratio=((conduction - pores) / (2 * conduction + pores)).ravel(),
        growth=_growth(batter, draws, pressure_pa, activity, vapour).ravel(),
        porosity=np.maximum(1 - draws.density / float(dense[0]), value("least-air")),
        water_activity=activity,
        boiling_k=boiling_point_c(pressure_pa, sugar_pct=sugar_pct) + _FREEZE_K,
        pressure_pa=pressure_pa,
    )


def _solid(batter: Batter, celsius: Array) -> tuple[Array, Array, Array]:
    """Conductivity, density and heat capacity without gas, from the component polynomials."""

    def each(name: str, quantity: str) -> Array:
        a, b, c = component_polynomial(name, quantity)
        curve: Array = a + b * celsius + c * celsius * celsius
        return curve

    shares = np.array(batter.parts)[:, None]
    volumes = shares / np.stack([each(name, "density") for name in COMPONENTS])
    density: Array = 1 / volumes.sum(axis=0)
    conductions = np.stack([each(name, "conductivity") for name in COMPONENTS])
    heats = np.stack([each(name, "heat-capacity") for name in COMPONENTS])
    return (conductions * volumes).sum(axis=0) * density, density, (heats * shares).sum(axis=0)


def _pore_conduction(draws: Draws, pressure: float, activity: float, vapour: Array) -> Array:
    """Air, and heat carried by water that evaporates at the warm side of a pore."""
    air = value("conduction-air") * (AXIS_K / _FREEZE_K) ** 0.85
    spread = value("diffusion-air") * (AXIS_K / _FREEZE_K) ** 1.8 * 101325.0 / pressure
    latent = 2.501e6 - 2370.0 * (AXIS_K - _FREEZE_K)
    carried = (
        spread * WATER_KG_MOL * latent / (GAS_J_MOLK * AXIS_K)
        * pressure / (pressure - vapour) * activity * SLOPE_PA_K
    )  # fmt: skip
    both = air + draws.vapour_conduction[:, None] * carried
    return np.minimum(both, value("conduction-pore-cap"))


def _growth(batter: Batter, draws: Draws, pressure: float, activity: float, vapour: Array) -> Array:
    """Gas volume over whipped-in gas volume: warmth, vapour and leavening, as far as it is kept."""
    start = draws.start_k[:, None]
    at_start, _ = interpolated(start)
    first = np.minimum(activity * at_start, 0.9 * pressure)
    leaven = 1 + batter.gas_ratio * np.clip((AXIS_K - start) / (_GAS_FULL_K - start), 0, 1)
    free = AXIS_K / start * (pressure - first) / (pressure - vapour) * leaven
    return 1 + draws.gas_retention[:, None] * (free - 1)


def _starch_rate(batter: Batter) -> Array:
    share = batter.sugar_share
    shift = value("starch-sugar-linear") * share + value("starch-sugar-square") * share**2
    kind = "gluten-free" if batter.gluten_free else "wheat"
    peak = value(f"starch-peak-{kind}") + _FREEZE_K
    slope = value("starch-activation") / GAS_J_MOLK
    at_peak = value("starch-scan") / 60 * slope / peak**2
    return np.minimum(at_peak * np.exp(-slope * (1 / (AXIS_K - shift) - 1 / peak)), _FASTEST)


_FASTEST = 50.0  # 1/s: set at once; keeps the tables finite


def _egg_rate(batter: Batter) -> Array:
    if not batter.egg:
        return np.full(COUNT, _FASTEST)
    shift = value("egg-sugar") * batter.sugar_share
    slope = value("egg-activation") / GAS_J_MOLK
    rate = value("egg-rate") * np.exp(-slope * (1 / (AXIS_K - shift) - 1 / _EGG_SET_K))
    return np.minimum(rate, _FASTEST)


def nearest(temp_k: Array) -> np.ndarray[tuple[int, ...], np.dtype[np.int32]]:
    """Nearest table entry of a temperature, kept inside the table; what is no number is entry 0."""
    index = np.nan_to_num((temp_k - START_K) / STEP_K + 0.5).astype(np.int32)
    return np.clip(index, 0, COUNT - 1)


def interpolated(temp_k: Array) -> tuple[Array, Array]:
    """Saturation pressure and its slope between table entries."""
    place = np.clip(np.nan_to_num((temp_k - START_K) / STEP_K), 0, COUNT - 1.001)
    low = place.astype(np.int32)
    part = place - low
    pressure = SATURATION_PA[low] * (1 - part) + SATURATION_PA[low + 1] * part
    slope = SLOPE_PA_K[low] * (1 - part) + SLOPE_PA_K[low + 1] * part
    return pressure, slope
