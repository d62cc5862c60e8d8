"""How much water a layer holds at a water activity: starch by GAB, sugar by Norrish, fat none."""

from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from krume.base import OutOfRangeError
from krume.keep.moisture.figures import moisture_figure
from krume.properties import constant, within

Array: TypeAlias = NDArray[np.float64]

_LEAST_LN, _MOST_LN = -9.0, 9.0
"""Between them a sugar phase is all sugar or all water: activity 0.0002 to 0.9999."""
_HALVINGS, _REFININGS = 20, 3
_LEAST_ACTIVITY = 1e-3


def starch_water_g(activity: float) -> float:
    """Water that 1 g of dry starch holds at a water activity.

    w = X0 C K a / ((1 - K a)(1 - K a + C K a))

    Parameters
    ----------
    activity : a, water activity, 0 to 1

    Returns
    -------
    water [g per g dry]

    Raises
    ------
    OutOfRangeError : activity is outside 0 to 1

    Valid for
    ---------
    25 degC or near, fitted from 0.11 to 0.90. Taken here for flour, protein and fibre as well.

    Source
    ------
    `rice-starch-2014`, constants of adsorption

    Examples
    --------
    >>> round(starch_water_g(0.5), 4)
    0.1156
    """
    within("activity", activity, 0.0, 1.0)
    return float(_starch(np.array([activity]))[0])


def _starch(a: Array) -> Array:
    first, many = moisture_figure("gab-first"), moisture_figure("gab-many")
    ka = many * a
    found: Array = (
        moisture_figure("gab-monolayer") * first * ka / ((1 - ka) * (1 - ka + first * ka))
    )
    return found


def sugar_solution_activity(ratio: float) -> float:
    """Water activity over a sugar solution of so many grams of water to one of sucrose.

    a = (1 - X) exp(K X2), X = 1 / (1 + q r), q the molar mass of sucrose over that of water

    Parameters
    ----------
    ratio : r, water over sugar by mass

    Returns
    -------
    water activity, 0 to 1

    Raises
    ------
    OutOfRangeError : ratio is not above 0

    Valid for
    ---------
    25 degC or near and 0.80 and more; below that it is drawn out, for sugar that stays dissolved.

    Source
    ------
    `norrish-1966`, one solute

    Examples
    --------
    >>> round(sugar_solution_activity(1.0), 4)
    0.9348
    """
    if not 0 < ratio < float("inf"):
        raise OutOfRangeError(
            f"ratio is {ratio:g}; a solution holds water.",
            field="ratio", got=f"{ratio:g}", want="more than 0",
        )  # fmt: skip
    return float(_activity(np.log(np.array([ratio])))[0])


def sugar_water_g(activity: float) -> float:
    """Water in which 1 g of sugar is dissolved at a water activity.

    r of a = (1 - X) exp(K X2), X = 1 / (1 + q r), by halving

    Parameters
    ----------
    activity : a, water activity, above 0 to 0.99

    Returns
    -------
    water [g per g of sugar]

    Raises
    ------
    OutOfRangeError : activity is not above 0, or is above 0.99

    Valid for
    ---------
    25 degC or near and 0.80 and more; below that it is drawn out, for sugar that stays dissolved.

    Source
    ------
    `norrish-1966`, one solute

    Examples
    --------
    >>> round(sugar_water_g(0.9348), 2)
    1.0
    """
    within("activity", activity, _LEAST_ACTIVITY, moisture_figure("sugar-most"))
    curve = Curve(np.zeros(1), np.ones(1))
    return float(np.exp(curve.at_activity(np.array([activity])))[0])


def _activity(ln_ratio: Array) -> Array:
    x = 1 / (1 + moisture_figure("molar-ratio") * np.exp(ln_ratio))
    found: Array = (1 - x) * np.exp(constant("norrish-sucrose") * x * x)
    return found


@dataclass(frozen=True, slots=True)
class Unit:
    """Activity and what one part of starch and one of sugar hold there, with the slopes over y."""

    activity: Array
    activity_slope: Array
    bound: Array
    bound_slope: Array
    loose: Array

    def water(self, starch: Array, sugars: Array) -> Array:
        """Water of so much starch and sugar."""
        found: Array = starch * self.bound + sugars * self.loose
        return found

    def water_slope(self, starch: Array, sugars: Array) -> Array:
        """Its slope over y; what is loose in sugar is its own slope."""
        found: Array = starch * self.bound_slope + sugars * self.loose
        return found


@dataclass(frozen=True, slots=True)
class State:
    """What each cell is at: activity and water [kg/m2, or any], and their slopes over y."""

    activity: Array
    activity_slope: Array
    water: Array
    water_slope: Array


@dataclass(frozen=True, slots=True)
class Curve:
    """Sorption of many places at once: starch-like solids and sugars in each [kg/m2, or any].

    Its own variable is y, the logarithm of water over sugar in the sugar phase: both the activity
    and the water are explicit in it, and no value of it leaves 0 to 1.
    """

    starch: Array
    sugars: Array

    def unit(self, y: Array) -> Unit:
        """What one part of each holds at y: the same in every layer."""
        first, many = moisture_figure("gab-first"), moisture_figure("gab-many")
        loose = np.exp(y)
        x = 1 / (1 + moisture_figure("molar-ratio") * loose)
        k = constant("norrish-sucrose")
        real = np.exp(k * x * x)
        activity = (1 - x) * real
        slope = real * (1 - 2 * k * x * (1 - x)) * x * (1 - x)
        ka = many * activity
        both = (1 - ka) * (1 + (first - 1) * ka)
        top = moisture_figure("gab-monolayer") * first
        steep = top * many * (1 + (first - 1) * ka * ka) / (both * both) * slope
        return Unit(activity, slope, top * ka / both, steep, loose)

    def state(self, y: Array) -> State:
        """Activity, water and their slopes at y."""
        at = self.unit(y)
        return State(
            at.activity,
            at.activity_slope,
            at.water(self.starch, self.sugars),
            at.water_slope(self.starch, self.sugars),
        )

    def activity(self, y: Array) -> Array:
        """Water activity."""
        return _activity(y)

    def water(self, y: Array) -> Array:
        """Water held, in the unit of the solids."""
        return self.state(y).water

    def at_water(self, water: Array) -> Array:
        """The variable at so much water: halving, then the slope."""
        low, high = np.full_like(water, _LEAST_LN), np.full_like(water, _MOST_LN)
        for _ in range(_HALVINGS):
            middle = (low + high) / 2
            is_less = self.water(middle) < water
            low, high = np.where(is_less, middle, low), np.where(is_less, high, middle)
        found: Array = (low + high) / 2
        for _ in range(_REFININGS):
            at = self.state(found)
            found = found + (water - at.water) / at.water_slope
        return found

    def at_activity(self, activity: Array) -> Array:
        """The variable at a water activity: halving, then the slope."""
        low, high = np.full_like(activity, _LEAST_LN), np.full_like(activity, _MOST_LN)
        for _ in range(_HALVINGS):
            middle = (low + high) / 2
            is_less = _activity(middle) < activity
            low, high = np.where(is_less, middle, low), np.where(is_less, high, middle)
        found: Array = (low + high) / 2
        for _ in range(_REFININGS):
            at = self.state(found)
            found = found + (activity - at.activity) / at.activity_slope
        return found
