"""Water spreading along a line of cells by its activity: implicit, and none of it is lost."""

from dataclasses import dataclass
from typing import Protocol

import numpy as np
from scipy.linalg.lapack import dptsv

from krume.keep.moisture.sorption import Array, State, Unit

_GAMMA = 1 - 2**-0.5
"""Of the two-stage implicit step that damps what is stiff and is of the second order."""
_NEAR = 1e-6
_MOST_TRIES = 25
_MOVING = 2
"""What passes through a face is taken anew in the first tries of a stage, and then kept."""
_FACE_TRIES = 1
_FLAT = 1e-7
_LARGEST_MOVE = 1.5
_FIRST_S, _GROWS, _LONGEST_SHARE = 60.0, 1.7, 1 / 18
"""First step, how the steps grow, and the longest as a share of the whole time."""


class Sorption(Protocol):
    """What each cell holds at a variable that has one activity in all of them."""

    @property
    def starch(self) -> Array:
        """What swells in each cell [kg/m2]."""

    @property
    def sugars(self) -> Array:
        """What dissolves in each cell [kg/m2]."""

    def unit(self, y: Array) -> Unit:
        """Activity, and what one part of each holds."""

    def state(self, y: Array) -> State:
        """Activity, water [kg/m2] and their slopes over that variable."""


@dataclass(frozen=True, slots=True)
class Line:
    """Cells in a row: width [m], diffusivity [m2/s], what they hold, and what stands between.

    Of each inner face the share `open_share` is free; over the rest lies a film that lets
    `gives` through at one step of activity [kg/(m2 s)]. Where one line ends and the next begins
    both are 0.
    """

    wide_m: Array
    diffusivity_m2_s: Array
    holds: Sorption
    open_share: Array
    gives: Array


@dataclass(frozen=True, slots=True)
class Spread:
    """Water of each cell [kg/m2] and its activity at each time; rows are times."""

    time_s: Array
    water: Array
    activity: Array


def spread_water(
    line: Line,
    y: Array,
    *,
    time_s: float,
    longest_s: float | None = None,
    grows: float = _GROWS,
) -> Spread:
    r"""Water along a line over time, no water leaving at its ends.

    dw/dt = d/dx (D (dw/da) da/dx), by finite volumes in x and a two-stage implicit step in t

    Parameters
    ----------
    line : cells of the line
    y : (n,) their state at the start, the variable of what they hold
    time_s : how long [s]
    longest_s : longest step [s]; a share of the whole time where it is not said
    grows : how many times the step before a step may be

    Returns
    -------
    water and activity of each cell at the end of each step

    Valid for
    ---------
    Flat layers, at one temperature; sugar, starch and fat stay where they are.

    Source
    ------
    `mathematics`: conservation by calculus, a two-stage singly diagonal implicit step
    """
    longest = longest_s or time_s * _LONGEST_SHARE
    now, step = 0.0, min(_FIRST_S, longest)
    at = line.holds.state(y)
    water = at.water
    faces = (y[:-1] + y[1:]) / 2
    times, waters, activities = [now], [water], [at.activity]
    while now < time_s * (1 - 1e-12):
        step = min(step, time_s - now)
        found = _stepped(line, y, faces, water, step)
        if found is None:
            step /= 4
            continue
        y, faces, water, activity = found
        now += step
        times.append(now)
        waters.append(water)
        activities.append(activity)
        step = min(step * grows, longest)
    return Spread(np.array(times), np.array(waters), np.array(activities))


def _stepped(
    line: Line, y: Array, faces: Array, water: Array, step_s: float
) -> tuple[Array, Array, Array, Array] | None:
    """One step in two stages; the water of each is moved by fluxes, so its sum stays."""
    part = _GAMMA * step_s
    first = _stage(line, y, faces, water, part)
    if first is None:
        return None
    between = water + (step_s - part) * first.gained
    second = _stage(line, first.y, first.faces, between, part)
    if second is None:
        return None
    return second.y, second.faces, between + part * second.gained, second.activity


@dataclass(frozen=True, slots=True)
class _Stage:
    """A state that its own fluxes made: cells, faces, activity, what each cell gains a second."""

    y: Array
    faces: Array
    activity: Array
    gained: Array


def _stage(line: Line, y: Array, faces: Array, water: Array, part_s: float) -> _Stage | None:
    """State whose water is `water` and what the fluxes at that state bring in `part_s`."""
    least = _NEAR * np.maximum(np.abs(water), water.mean() * 1e-3)
    through = line.gives
    for tried in range(_MOST_TRIES):
        at = line.holds.state(y)
        holds = at.water_slope / at.activity_slope
        if tried < _MOVING:
            faces, through = _through(line, y, at, faces)
        gained = _net(through, at.activity)
        missing = at.water - water - part_s * gained
        if tried >= 1 and (np.abs(missing) < least).all():
            return _Stage(y, faces, at.activity, gained)
        sides = part_s * through
        holds[:-1] += sides
        holds[1:] += sides
        *_, moved, wrong = dptsv(holds, -sides, -missing, overwrite_d=1)
        if wrong:
            return None
        y = y + np.clip(moved / at.activity_slope, -_LARGEST_MOVE, _LARGEST_MOVE)
    return None


def _through(line: Line, y: Array, at: State, faces: Array) -> tuple[Array, Array]:
    """State at each inner face, and the water through it at one step of activity [kg/(m2 s)].

    In a layer the flux is the diffusivity times the fall of water over the distance; at the face
    both sides have one activity and one flux. The face is found by its slope, from where it was.
    """
    speeds = 2 * line.diffusivity_m2_s / line.wide_m**2
    before, after = slice(None, -1), slice(1, None)
    low, high = np.minimum(y[before], y[after]), np.maximum(y[before], y[after])
    faces = np.clip(faces, low, high)
    for _ in range(_FACE_TRIES):
        unit = line.holds.unit(faces)
        given, taken = (_half(line, unit, speeds, at, side) for side in (before, after))
        steep = sum(_half_slope(line, unit, speeds, side) for side in (before, after))
        faces = np.clip(faces - (given + taken) / steep, low, high)
    unit = line.holds.unit(faces)
    resists = [_resists(line, unit, speeds, at, side) for side in (before, after)]
    both = resists[0] + resists[1]
    film = line.gives / (1 + line.gives * both)
    return faces, line.open_share / both + (1 - line.open_share) * film


def _half(line: Line, unit: Unit, speeds: Array, at: State, side: slice) -> Array:
    """Water that flows from the face into the cells of a side [kg/(m2 s)]."""
    found: Array = speeds[side] * (
        unit.water(line.holds.starch[side], line.holds.sugars[side]) - at.water[side]
    )
    return found


def _half_slope(line: Line, unit: Unit, speeds: Array, side: slice) -> Array:
    found: Array = speeds[side] * unit.water_slope(line.holds.starch[side], line.holds.sugars[side])
    return found


def _resists(line: Line, unit: Unit, speeds: Array, at: State, side: slice) -> Array:
    """Step of activity over the flux of half a cell: by the fall, by the slope where it is flat."""
    step = unit.activity - at.activity[side]
    flat = np.abs(step) < _FLAT
    slope = at.activity_slope[side] / (speeds[side] * at.water_slope[side])
    flow = _half(line, unit, speeds, at, side)
    found: Array = np.where(flat, slope, step / np.where(flat, 1.0, flow))
    return found


def _net(through: Array, activity: Array) -> Array:
    flow = through * np.diff(activity)
    net = np.zeros_like(activity)
    net[:-1] += flow
    net[1:] -= flow
    return net
