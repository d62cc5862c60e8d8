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


def spiral_length_cm(inner_cm: float, *, outer_cm: float, pitch_cm: float) -> float:
    """Exact length of a spiral of even pitch between two radii.

    r = a x, L = a / 2 (x sqrt(1 + x2) + asinh x) between r1 / a and r2 / a, with a = pitch / 2 pi

    Parameters
    ----------
    inner_cm : r1, where it begins [cm]
    outer_cm : r2, where it ends [cm]
    pitch_cm : sheet and cream together [cm]

    Returns
    -------
    length [cm]

    Raises
    ------
    OutOfRangeError : the pitch is not above 0, a radius is negative, or the outer is the smaller

    Valid for
    ---------
    A spiral whose turns lie on one another.

    Source
    ------
    `mathematics`, plane geometry

    Examples
    --------
    >>> round(spiral_length_cm(0.0, outer_cm=3.718, pitch_cm=1.9), 2)
    23.42
    """
    if pitch_cm <= 0 or inner_cm < 0 or outer_cm < inner_cm:
        raise OutOfRangeError(
            "A spiral has a pitch of more than 0 and ends further out than it begins.",
            field="outer_cm", got=f"{outer_cm:g}", want=f"{inner_cm:g} or more",
        )  # fmt: skip
    a = pitch_cm / (2 * math.pi)

    def length(radius: float) -> float:
        x = radius / a
        return a / 2 * (x * math.sqrt(1 + x * x) + math.asinh(x))

    return length(outer_cm) - length(inner_cm)


def _check(**lengths: float) -> None:
    for name, value in lengths.items():
        may_be_zero = name in ("cream_cm", "core_cm")
        if value < 0 or (value == 0 and not may_be_zero) or not math.isfinite(value):
            want = "0 or more" if may_be_zero else "more than 0"
            raise OutOfRangeError(
                f"{name} is {value}; a roll needs {want}.", field=name, got=str(value), want=want
            )
