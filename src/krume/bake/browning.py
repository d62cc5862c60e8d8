"""Colour of a crust after a time at one surface temperature."""

import math

from krume.properties import constant, within


def browning_delta_e(time_min: float, *, temp_c: float) -> float:
    """Colour difference of a crust held at one surface temperature.

    dE = 52 (1 - exp(-k t)), k = 42000 exp(-64151 / (R T)) per second

    Parameters
    ----------
    time_min : time at that temperature [min]
    temp_c : temperature of the surface [degC]

    Returns
    -------
    colour difference, no unit

    Raises
    ------
    OutOfRangeError : time_min is negative, or temp_c outside 0 to 250 degC

    Valid for
    ---------
    Bread crumb at 140 to 250 degC; below 140 degC an extrapolation, and cake sugar browns
    differently.

    Source
    ------
    `zanoni-1995-browning`

    Examples
    --------
    >>> round(browning_delta_e(15.0, temp_c=150.0), 2)
    19.03
    """
    within("time", time_min, 0.0, math.inf, "min")
    within("temp", temp_c, 0.0, constant("browning-fitted-to"), "C")
    kelvin = temp_c + constant("celsius-zero")
    energy = constant("browning-energy") / (constant("gas-constant") * kelvin)
    rate = constant("browning-rate") * math.exp(-energy)
    return -constant("browning-limit") * math.expm1(-rate * 60 * time_min)
