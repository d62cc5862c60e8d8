"""Water activity of sugar solutions: Norrish for shelf life, a fitted syrup form for boiling."""

import math
from collections.abc import Mapping, Sequence

from krume.base import OutOfRangeError
from krume.properties.constant_table import constant, within

SOLUTES = ("sucrose", "glycerol", "sorbitol", "xylitol")


def norrish_activity(solutes_g: Mapping[str, float], *, water_g: float) -> float:
    """Water activity of one or more sugars and polyols in water.

    ln(a_w / X_w) = -(sum_i sqrt(-K_i) X_i)2, X mole fractions over all species

    Parameters
    ----------
    solutes_g : mass by name: sucrose, glycerol, sorbitol, xylitol [g]
    water_g : water they are dissolved in [g]

    Returns
    -------
    water activity, 0 to 1

    Raises
    ------
    OutOfRangeError : a mass is negative, no water, or the result falls below 0.80

    Valid for
    ---------
    25 degC or near, a_w of 0.80 and more.

    Source
    ------
    `norrish-1966` (constants as quoted), form of `baeza-2010`

    Examples
    --------
    >>> round(norrish_activity({"sucrose": 40.0, "glycerol": 20.0}, water_g=40.0), 4)
    0.8325
    """
    if not 0 < water_g < math.inf:
        raise OutOfRangeError(
            f"water_g is {water_g:g}; a solution needs water.",
            field="water_g", got=f"{water_g:g}", want="more than 0",
        )  # fmt: skip
    moles = {
        name: within(f"{name}_g", mass_g, 0.0, math.inf, "g") / constant(f"molar-{name}")
        for name, mass_g in solutes_g.items()
    }
    water = water_g / constant("molar-water")
    total = water + sum(moles.values())
    pull = sum(math.sqrt(-constant(f"norrish-{name}")) * n / total for name, n in moles.items())
    activity = water / total * math.exp(-(pull**2))
    within("water activity", activity, constant("norrish-least"), 1.0)
    return activity


def solution_activity(percent: float, *, solute: str) -> float:
    """Water activity of one solute in water by its mass percent.

    a_w = X_w exp(K X_s2), the one-solute case of `norrish_activity`

    Parameters
    ----------
    percent : solute over solute and water, w/w [%]
    solute : sucrose, glycerol, sorbitol or xylitol

    Returns
    -------
    water activity, 0 to 1

    Raises
    ------
    OutOfRangeError : percent is outside 0 to below 100, or the result falls below 0.80

    Valid for
    ---------
    25 degC or near, a_w of 0.80 and more.

    Source
    ------
    `norrish-1966`

    Examples
    --------
    >>> round(solution_activity(50.0, solute="sucrose"), 4)
    0.9348
    """
    within("percent", percent, 0.0, 99.9, "%")
    return norrish_activity({solute: percent}, water_g=100.0 - percent)


def ross_activity(activities: Sequence[float]) -> float:
    """Water activity of a mixture from each solute alone in all of its water.

    a_w = product of a_w,i

    Parameters
    ----------
    activities : water activity of each solute alone in all the water

    Returns
    -------
    water activity, 0 to 1

    Raises
    ------
    OutOfRangeError : the list is empty, or a value is outside 0 to 1

    Valid for
    ---------
    Solutes that do not bind each other; some 0.01 above the mixture form at a_w 0.84.

    Source
    ------
    `ross-1975`

    Examples
    --------
    >>> round(ross_activity([0.9348, 0.9026]), 4)
    0.8438
    """
    if not activities:
        raise OutOfRangeError(
            "No water activity was given. Type a list, for example 0.93,0.90.",
            field="aw", got="nothing", want="a list of values from 0 to 1",
        )  # fmt: skip
    return math.prod(within("aw", value, 0.0, 1.0) for value in activities)


def ideal_activity(percent: float, *, solute: str) -> float:
    """Water activity of an ideal solution: a bound that real sugars undercut.

    a_w = X_w (Raoult)

    Parameters
    ----------
    percent : solute over solute and water, w/w [%]
    solute : sucrose, glycerol, sorbitol or xylitol

    Returns
    -------
    water activity, 0 to 1

    Raises
    ------
    OutOfRangeError : percent is outside 0 to below 100

    Valid for
    ---------
    Dilute solutions.

    Source
    ------
    `mathematics`, definition of an ideal solution

    Examples
    --------
    >>> round(ideal_activity(50.0, solute="sucrose"), 4)
    0.95
    """
    within("percent", percent, 0.0, 99.9, "%")
    water = (100.0 - percent) / constant("molar-water")
    return water / (water + percent / constant(f"molar-{solute}"))


def syrup_activity(sugar_pct: float, *, temp_c: float) -> float:
    """Water activity of a sugar syrup at a temperature, as the bake model takes it.

    a_w = (1 - X) exp(Q / (R T) X2 (1 + b1 X + b2 X2)), X the mole fraction of sucrose

    Parameters
    ----------
    sugar_pct : sugar over sugar and water, w/w [%]
    temp_c : temperature [degC]

    Returns
    -------
    water activity, 0 to 1

    Raises
    ------
    OutOfRangeError : sugar_pct is outside 0 to 90 %

    Valid for
    ---------
    0 to 150 degC.

    Source
    ------
    `starzak-peacock-1997` (constants from memory)

    Examples
    --------
    >>> round(syrup_activity(50.0, temp_c=100.0), 4)
    0.9373
    """
    within("sugar_pct", sugar_pct, 0.0, constant("syrup-most"), "%")
    sugar = sugar_pct / constant("molar-sucrose")
    x = sugar / (sugar + (100.0 - sugar_pct) / constant("molar-water"))
    kelvin = temp_c + constant("celsius-zero")
    bend = 1 + constant("syrup-linear") * x + constant("syrup-square") * x * x
    energy = constant("syrup-energy") / (constant("gas-constant") * kelvin)
    return (1 - x) * math.exp(energy * x * x * bend)
