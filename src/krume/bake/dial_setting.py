"""What to set on the dial of an oven that is not what it shows."""

from dataclasses import dataclass

from krume.properties import constants, within


@dataclass(frozen=True, slots=True)
class Dial:
    """Setting in both units."""

    set_c: float
    set_f: float


def dial(want_c: float, *, offset_k: float) -> Dial:
    """Dial setting for a wanted oven temperature.

    set = want - offset, offset = true oven temperature - dial setting

    Parameters
    ----------
    want_c : wanted true temperature of the oven [degC]
    offset_k : true minus dial; negative in an oven that reads low [K]

    Returns
    -------
    setting [degC] and [degF]

    Raises
    ------
    OutOfRangeError : want_c is outside 30 to 350 degC, or offset_k outside -100 to 100 K

    Valid for
    ---------
    An offset measured near the wanted temperature.

    Source
    ------
    `mathematics`, definition of the offset

    Examples
    --------
    >>> dial(157.0, offset_k=-12.0).set_c
    169.0
    """
    limits = constants("ovens.csv")
    within("want", want_c, limits["want-least"], limits["want-most"], "C")
    within("offset", offset_k, -limits["offset-most"], limits["offset-most"], "C")
    setting = want_c - offset_k
    return Dial(setting, setting * 9 / 5 + 32)
