"""The heat a load takes from the oven, minute by minute: batter, tin, and water that leaves."""

import math
from dataclasses import dataclass

import numpy as np

from krume.bake.batter import Batter, Oven
from krume.bake.draws import nominal
from krume.bake.engine import march
from krume.bake.grid import Array, Cells
from krume.bake.material import STEP_K, nearest
from krume.bake.parameters import value
from krume.bake.prediction import case_of
from krume.bake.setting_up import start
from krume.bake.state import Setup, State
from krume.bake.stepping import tin_heat_j
from krume.size import Tin


@dataclass(frozen=True, slots=True)
class HeatTaken:
    """Heat one tin has taken since the door, by minute; both (points,) and rising from 0.

    `done_min` is when the nominal bake is done, infinite where it was not while it was in.
    """

    time_min: Array
    heat_j: Array
    done_min: float

    def by(self, minutes: Array) -> Array:
        """Heat taken by any minute [J]: nothing before the door, no more once it is out."""
        found: Array = np.interp(minutes, self.time_min, self.heat_j)
        return found


def heat_taken(batter: Batter, tin: Tin, oven: Oven, *, out_min: float | None = None) -> HeatTaken:
    """Heat of the nominal bake until it comes out; None is when it is done, 200 min at most."""
    setup = case_of(batter, tin, oven, nominal(batter, oven), Cells())
    enthalpy = _enthalpy(setup)
    first = _kept(setup, start(setup), enthalpy)
    times, heats, done = [0.0], [0.0], math.inf
    for state in march(setup):
        times.append(float(state.time[0]) / 60)
        heats.append(_kept(setup, state, enthalpy) - first)
        done = float(state.done[0].max()) / 60
        if times[-1] >= (done if out_min is None else out_min):
            break
    end = min(times[-1], done if out_min is None else out_min)
    # A rectangle is baked as a cylinder of another mass: its heat goes by the real one.
    real = batter.mass_g / 1000 / float(setup.own.cell_mass[0].sum())
    return _until(np.array(times), np.maximum.accumulate(np.array(heats)) * real, end, done)


def _until(times: Array, heats: Array, end: float, done: float) -> HeatTaken:
    """The course cut at the minute it comes out, inside the last step."""
    last = float(np.interp(end, times, heats))
    inside = times < end
    return HeatTaken(np.append(times[inside], end), np.append(heats[inside], last), done)


def _enthalpy(setup: Setup) -> Array:
    """Heat of a kilogram of batter over its table of temperatures [J/kg]."""
    heat = setup.material.heat
    total: Array = np.concatenate([[0.0], np.cumsum((heat[1:] + heat[:-1]) / 2)]) * STEP_K
    return total


def _kept(setup: Setup, state: State, enthalpy: Array) -> float:
    """Heat in batter and tin and in the water that has left [J], of the first draw."""
    batter = float((setup.own.cell_mass[0] * enthalpy.take(nearest(state.temp[0]))).sum())
    tin = float(tin_heat_j(setup, state)[0])
    return batter + tin + value("latent-heat") * float(state.lost[0])
