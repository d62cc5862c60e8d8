"""A foam by the scale: specific gravity and overrun from one cup weighed twice."""

import math

from krume.base import OutOfRangeError
from krume.properties.constant_table import within


def specific_gravity(empty_g: float, *, water_g: float, batter_g: float) -> float:
    """Specific gravity of a batter: its mass over that of water in the same cup.

    SG = (batter - empty) / (water - empty)

    Parameters
    ----------
    empty_g : the cup alone [g]
    water_g : the cup full of water [g]
    batter_g : the cup full of batter [g]

    Returns
    -------
    specific gravity, no unit

    Raises
    ------
    OutOfRangeError : a mass is negative, or a full cup weighs no more than the empty one

    Valid for
    ---------
    A cup struck level both times.

    Source
    ------
    `mathematics`, definition

    Examples
    --------
    >>> round(specific_gravity(82.0, water_g=318.0, batter_g=195.3), 3)
    0.48
    """
    within("empty", empty_g, 0.0, math.inf, "g")
    for name, mass_g in (("water", water_g), ("batter", batter_g)):
        if not empty_g < mass_g < math.inf:
            raise OutOfRangeError(
                f"The cup with {name} weighs {mass_g:g} g, the empty cup {empty_g:g} g. "
                "Type the whole weight, cup included.",
                field=name, got=f"{mass_g:g}", want=f"more than {empty_g:g} g",
            )  # fmt: skip
    return (batter_g - empty_g) / (water_g - empty_g)


def overrun_pct(before_g: float, *, after_g: float) -> float:
    """Volume gained by whipping, from the mass of one and the same volume.

    overrun = (before - after) / after

    Parameters
    ----------
    before_g : unwhipped, in the same volume, without the cup [g]
    after_g : whipped, in the same volume, without the cup [g]

    Returns
    -------
    overrun [%]; negative when the foam grew denser

    Raises
    ------
    OutOfRangeError : a mass is not above 0

    Valid for
    ---------
    Masses net of the cup.

    Source
    ------
    `mathematics`, definition

    Examples
    --------
    >>> round(overrun_pct(236.0, after_g=124.0), 1)
    90.3
    """
    for name, mass_g in (("before", before_g), ("after", after_g)):
        if not 0 < mass_g < math.inf:
            raise OutOfRangeError(
                f"{name} is {mass_g:g} g; the same cup holds more than 0 g.",
                field=name, got=f"{mass_g:g}", want="more than 0 g",
            )  # fmt: skip
    return 100 * (before_g - after_g) / after_g
