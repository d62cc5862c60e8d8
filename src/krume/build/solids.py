"""Volumes and skins of a torte's bodies: upright walls, and a domed top as a cap of a ball."""

import math

from krume.base import OutOfRangeError
from krume.build.outline import Outline


def cap_ml(base_cm: float, *, high_cm: float) -> float:
    """Volume of a dome: the cap of a ball over a round base.

    V = pi h (3 a2 + h2) / 6 with the base's radius a

    Parameters
    ----------
    base_cm : diameter of the base [cm]
    high_cm : h, height of the dome [cm]

    Returns
    -------
    volume [ml]

    Raises
    ------
    OutOfRangeError : a length is negative, or the dome is higher than half a ball

    Valid for
    ---------
    A dome of at most half a ball.

    Source
    ------
    `mathematics`, solid geometry

    Examples
    --------
    >>> round(cap_ml(20.0, high_cm=10.0), 1)
    2094.4
    """
    check_cap(base_cm, high_cm)
    radius = base_cm / 2
    return math.pi * high_cm * (3 * radius**2 + high_cm**2) / 6


def cap_skin_cm2(base_cm: float, *, high_cm: float) -> float:
    """Surface of a dome without its base.

    A = pi (a2 + h2) with the base's radius a; a dome without height is its disc

    Parameters
    ----------
    base_cm : diameter of the base [cm]
    high_cm : h, height of the dome [cm]

    Returns
    -------
    area [cm2]

    Raises
    ------
    OutOfRangeError : a length is negative, or the dome is higher than half a ball

    Valid for
    ---------
    A dome of at most half a ball.

    Source
    ------
    `mathematics`, solid geometry

    Examples
    --------
    >>> round(cap_skin_cm2(20.0, high_cm=0.0), 1), round(cap_skin_cm2(20.0, high_cm=10.0), 1)
    (314.2, 628.3)
    """
    check_cap(base_cm, high_cm)
    return math.pi * ((base_cm / 2) ** 2 + high_cm**2)


def cap_arc_cm(base_cm: float, *, high_cm: float) -> float:
    """Way over a dome from edge to edge.

    s = 2 R asin(a / R) with R = (a2 + h2) / 2h

    Parameters
    ----------
    base_cm : diameter of the base [cm]
    high_cm : h, height of the dome [cm]

    Returns
    -------
    length of the arc [cm]

    Raises
    ------
    OutOfRangeError : a length is negative, or the dome is higher than half a ball

    Valid for
    ---------
    A dome of at most half a ball.

    Source
    ------
    `mathematics`, plane geometry

    Examples
    --------
    >>> cap_arc_cm(20.0, high_cm=0.0), round(cap_arc_cm(20.0, high_cm=10.0), 2)
    (20.0, 31.42)
    """
    check_cap(base_cm, high_cm)
    if high_cm < 1e-9:
        return base_cm
    return 2 * ball_radius_cm(base_cm, high_cm) * 2 * math.atan2(high_cm, base_cm / 2)


def ball_radius_cm(base_cm: float, high_cm: float) -> float:
    """Radius of the ball a dome is cut from [cm]."""
    return ((base_cm / 2) ** 2 + high_cm**2) / (2 * high_cm)


def dome_at(off: float, across: float, dome: float) -> float:
    """Height of a dome over its rim, so far off its middle; all in one unit.

    >>> dome_at(0.0, 200.0, 40.0), dome_at(100.0, 200.0, 40.0), dome_at(50.0, 200.0, 0.0)
    (40.0, 0.0, 0.0)
    """
    if dome <= 0:
        return 0.0
    ball = ball_radius_cm(across, dome)
    return math.sqrt(max(0.0, ball**2 - off**2)) - (ball - dome)


def check_cap(base_cm: float, high_cm: float) -> None:
    """Refuse a dome that is no cap of at most half a ball."""
    if high_cm < 0 or base_cm < 0 or high_cm > base_cm / 2 * (1 + 1e-9):
        raise OutOfRangeError(
            f"A dome over {base_cm:g} cm is 0 to {base_cm / 2:g} cm high; here {high_cm:g} cm.",
            field="high_cm", got=f"{high_cm:g}", want=f"0 to {base_cm / 2:g}",
        )  # fmt: skip


def round_cm(outline: Outline) -> float:
    """Length of an outline all around; the hole of a ring is not counted.

    >>> round(round_cm(Outline(20.0)), 2), round_cm(Outline(length_cm=30.0, width_cm=20.0))
    (62.83, 100.0)
    """
    if outline.diameter_cm is not None:
        return math.pi * outline.diameter_cm
    return 2 * (outline.length_cm + outline.width_cm)


def body_ml(outline: Outline, *, high_cm: float, dome_cm: float = 0.0) -> float:
    """Volume of upright walls with a dome on them; `high_cm` is up to the rim."""
    upright = outline.area_cm2 * high_cm
    if dome_cm <= 0 or outline.diameter_cm is None:
        return upright
    return upright + cap_ml(outline.diameter_cm, high_cm=dome_cm)


def top_cm2(outline: Outline, *, dome_cm: float = 0.0) -> float:
    """Area of the top: flat, or the skin of its dome."""
    if dome_cm <= 0 or outline.diameter_cm is None:
        return outline.area_cm2
    return cap_skin_cm2(outline.diameter_cm, high_cm=dome_cm)
