"""A rolled sheet: how many turns, how thick, and how much its outer face stretches."""

import math
from dataclasses import dataclass

from krume.base import OutOfRangeError


@dataclass(frozen=True, slots=True)
class Roll:
    """A rolled sheet of cake with its cream."""

    turns: float
    diameter_cm: float
    outer_strain_pct: float


def roll(
    length_cm: float, *, thickness_cm: float, cream_cm: float = 0.0, core_cm: float = 0.0
) -> Roll:
    """Turns and diameter of a rolled sheet, and the stretch of its outer face at the core.

    R = sqrt(r2 + L t / pi), turns = (R - r) / t, strain = (s / 2) / (r + s / 2), t = s + cream

    Parameters
    ----------
    length_cm : L, the side that is rolled up [cm]
    thickness_cm : s, of the sheet [cm]
    cream_cm : cream spread over the whole sheet [cm]
    core_cm : r, radius of the hollow in the middle [cm]

    Returns
    -------
    turns, outside diameter [cm] and strain of the innermost turn's outer face [%]

    Raises
    ------
    OutOfRangeError : a length or thickness is not above 0, or cream or core is negative

    Valid for
    ---------
    A cylinder of the sheet's own area: within 1 % of the exact spiral from one turn on. The
    strain takes the middle face as unstretched: an upper estimate, because crumb gives.

    Source
    ------
    `mathematics`, plane geometry: the area of the section is kept

    Examples
    --------
    >>> round(roll(38.0, thickness_cm=1.0, cream_cm=0.4, core_cm=0.8).diameter_cm, 2)
    8.38
    """
    _check(length_cm=length_cm, thickness_cm=thickness_cm, cream_cm=cream_cm, core_cm=core_cm)
    pitch = thickness_cm + cream_cm
    outer = math.sqrt(core_cm**2 + length_cm * pitch / math.pi)
    return Roll(
        turns=(outer - core_cm) / pitch,
        diameter_cm=2 * outer,
        outer_strain_pct=100 * (thickness_cm / 2) / (core_cm + thickness_cm / 2),
    )


def _check(**lengths: float) -> None:
    for name, value in lengths.items():
        may_be_zero = name in ("cream_cm", "core_cm")
        if value < 0 or (value == 0 and not may_be_zero) or not math.isfinite(value):
            want = "0 or more" if may_be_zero else "more than 0"
            raise OutOfRangeError(
                f"{name} is {value}; a roll needs {want}.", field=name, got=str(value), want=want
            )
