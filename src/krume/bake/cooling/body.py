"""What cools, as plain arrays: stuff, cells, faces, and the stages it goes through."""

import math
from dataclasses import dataclass

import numpy as np

from krume.bake.cooling.still_air import Film
from krume.bake.grid import Array, Grid
from krume.bake.material import AXIS_K as AXIS
from krume.bake.material import SATURATION_PA

START_K, STEP_K, COUNT = 263.15, 0.25, 481
AXIS_K: Array = START_K + STEP_K * np.arange(COUNT, dtype=np.float64)
_WETTEST = 0.85


@dataclass(frozen=True, slots=True)
class Stuff:
    """Conduction [W/mK] and specific heat [J/kgK] over AXIS_K, (draws or 1, COUNT)."""

    conduction: Array
    heat: Array

    def at(self, temp_k: Array) -> tuple[Array, Array]:
        """Both at the nearest entry of every cell's temperature."""
        place = np.clip((temp_k - START_K) / STEP_K + 0.5, 0, COUNT - 1)
        index = place.astype(np.intp)
        own = index + (np.arange(len(temp_k)) * COUNT)[:, None, None]
        return (
            self.conduction.take(own if len(self.conduction) > 1 else index),
            self.heat.take(own if len(self.heat) > 1 else index),
        )


def even_stuff(conduction_w_mk: float | Array, heat_j_kgk: float | Array) -> Stuff:
    """Stuff whose properties do not change with its temperature."""
    flat = np.ones(COUNT)
    k, c = (np.atleast_1d(np.asarray(each, float)) for each in (conduction_w_mk, heat_j_kgk))
    return Stuff(k[:, None] * flat, c[:, None] * flat)


@dataclass(frozen=True, slots=True)
class Body:
    """Cells of all draws: mass (draws, rows, rings) [kg], row height (draws, rows) [m].

    No cell is above `boiling_k`: what would be leaves as steam.
    """

    grid: Grid
    stuff: Stuff
    cell_mass: Array
    row_height: Array
    boiling_k: float = math.inf

    @property
    def draws(self) -> int:
        """How many draws there are."""
        return len(self.cell_mass)


def body_of(
    grid: Grid, stuff: Stuff, *, mass_kg: Array, height_m: Array, boiling_k: float = math.inf
) -> Body:
    """A body of even density, one mass and height a draw."""
    share = grid.ring_area / grid.ring_area.sum() * grid.z_share[:, None]
    return Body(
        grid, stuff, mass_kg[:, None, None] * share, height_m[:, None] * grid.z_share, boiling_k
    )


@dataclass(frozen=True, slots=True)
class Surroundings:
    """Air of all draws, (draws, 1): temperature [K], water in it [Pa], and how brisk its films."""

    air_k: Array
    vapour_pa: Array
    brisk: Array
    pressure_pa: float = 101325.0
    activity: float = 1.0

    @property
    def wettest_k(self) -> float:
        """Temperature at which a moist face's vapour has most of the air's pressure."""
        return float(np.interp(_WETTEST * self.pressure_pa / self.activity, SATURATION_PA, AXIS))


@dataclass(frozen=True, slots=True)
class Face:
    """One side of a body, from the crumb outwards.

    `layer` [m2K/W] lies between crumb and node (a gap, a cloth), `store` [J/m2K] is the node's own
    heat (a tin), `breath` [s/m] is what holds vapour back besides the film; None lets none pass.
    `drying` [s/m per kg/m2] is what every further kilogram leaves dry behind it, from the first
    `wet` [kg/m2] on.
    `start_k` is the node's first temperature, None that of the crumb at it. `own` is what is round
    this face alone (ice water), None what is round the body.
    """

    film: Film
    emissivity: float = 0.0
    layer: Array | float = 0.0
    store: float = 0.0
    breath: Array | float | None = None
    drying: Array | float = 0.0
    wet: Array | float = 0.0
    start_k: Array | None = None
    own: Surroundings | None = None


@dataclass(frozen=True, slots=True)
class Stage:
    """Faces and air until a moment [s] after the start; `inner` is the wall of a hole."""

    until_s: float
    around: Surroundings
    top: Face
    bottom: Face
    side: Face | None = None
    inner: Face | None = None


@dataclass(frozen=True, slots=True)
class Course:
    """What happened: (steps,) seconds, then (steps, draws) hottest, mean and coldest [K].

    `water_kg` has left until then; `lost_j` left by the faces, `given_j` came out of body and tin.
    """

    time_s: Array
    hottest_k: Array
    mean_k: Array
    coldest_k: Array
    water_kg: Array
    lost_j: Array
    given_j: Array

    def reached_s(self, goal_k: Array | float, which: str = "hottest_k") -> Array:
        """Second at which each draw has come down to a goal, (draws,); never is infinite."""
        temps: Array = getattr(self, which)
        below = temps <= goal_k
        first = below.argmax(axis=0)
        draws = np.arange(temps.shape[1])
        before = np.maximum(first - 1, 0)
        high, low = temps[before, draws], temps[first, draws]
        drop = np.where(high > low, high - low, 1.0)
        part = np.clip((high - goal_k) / drop, 0.0, 1.0)
        when = self.time_s[before] + part * (self.time_s[first] - self.time_s[before])
        return np.where(below.any(axis=0), np.where(first == 0, 0.0, when), np.inf)
