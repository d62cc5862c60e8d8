"""Area, volume, depth and fill of a tin from its inside dimensions."""

import math
from collections.abc import Callable, Sequence

from krume.base import OutOfRangeError
from krume.size.tin import ROUND_FLOOR, Tin

Section = tuple[float, float, float]
"""Horizontal section a0 + a1 z + a2 z2 of one tin or cup at the height z, in cm2 and cm."""


def area_cm2(tin: Tin) -> float | None:
    """Floor area of a tin, all its cups together; None when its dimensions are not given.

    round: pi d2 / 4 · tube: pi (d2 - hole2) / 4 · rectangle: length x width

    Parameters
    ----------
    tin : inside dimensions; where the walls flare the bottom's are taken

    Returns
    -------
    area [cm2]; of a ring-mould, whose floor is a line, the area of its opening

    Valid for
    ---------
    Plain walls. A fluted tin has a smaller floor than its outer diameter says.

    Source
    ------
    `mathematics`, plane geometry

    Examples
    --------
    >>> round(area_cm2(Tin("", "tube", diameter_cm=20.0, hole_cm=6.0)), 1)
    285.9
    """
    if tin.shape == "ring-mould":
        return _opening_of_ring_mould(tin)
    section = _section(tin, flared=False)
    return None if section is None else section[0] * tin.count


def volume_ml(tin: Tin) -> float | None:
    """Volume of a tin filled level to the rim, all its cups together; None when not known.

    frustum: pi h / 3 (R2 + R r + r2) · flared rectangle: h / 6 (A1 + 4 Am + A2)
    half torus: pi2 R r2, with R the mean radius of the ring and r that of its tube

    Parameters
    ----------
    tin : inside dimensions; a volume weighed with water stands before its geometry

    Returns
    -------
    volume [ml]

    Valid for
    ---------
    Plain walls, straight or evenly flared. A fluted tin: weigh it with water.

    Source
    ------
    `mathematics`, solid geometry (prismoidal formula; Pappus for the half torus)

    Examples
    --------
    >>> round(volume_ml(Tin("", "round", diameter_cm=22.0, top_cm=24.0, height_cm=7.0)), 1)
    2910.2
    """
    if tin.water_ml is not None:
        return tin.water_ml
    height = rim_cm(tin)
    return None if height is None else volume_at_ml(tin, height)


def rim_cm(tin: Tin) -> float | None:
    """Height of the rim above the floor: typed, of a half torus its tube's radius, or None."""
    if tin.shape == "ring-mould" and tin.diameter_cm is not None and tin.hole_cm is not None:
        return (tin.diameter_cm - tin.hole_cm) / 4
    if tin.height_cm is None and tin.water_ml is not None and not _is_flared(tin):
        floor = area_cm2(tin)
        return None if floor is None else tin.water_ml / floor
    return tin.height_cm


def volume_at_ml(tin: Tin, depth_cm: float) -> float | None:
    """Volume of a tin filled to a depth; above the rim the walls are taken as upright.

    V(z) = a0 z + a1 z2 / 2 + a2 z3 / 3, the integral of the horizontal section

    Parameters
    ----------
    tin : inside dimensions
    depth_cm : z, from the floor, 0 or more [cm]

    Returns
    -------
    volume [ml], of all the cups together; None when the tin's dimensions are not enough

    Raises
    ------
    OutOfRangeError : depth_cm is negative

    Valid for
    ---------
    Straight or evenly flared walls, and half a torus.

    Source
    ------
    `mathematics`, solid geometry

    Examples
    --------
    >>> round(volume_at_ml(Tin("", "round", diameter_cm=20.0), 3.44), 1)
    1080.7
    """
    if not 0 <= depth_cm < math.inf:
        raise OutOfRangeError(
            f"A depth of {depth_cm} cm cannot be filled. Type a depth of 0 cm or more.",
            field="depth_cm",
            got=str(depth_cm),
            want="0 or more",
        )
    if tin.shape == "ring-mould":
        return _half_torus_ml(tin, depth_cm)
    section = _section(tin, flared=True)
    if section is None:
        return None
    wall = depth_cm if tin.height_cm is None else min(depth_cm, tin.height_cm)
    return tin.count * (_under(section, wall) + _across(section, wall) * (depth_cm - wall))


def depth_cm(tin: Tin, volume_ml: float) -> float | None:
    """Depth of a volume in a tin, spread evenly over its cups; the inverse of `volume_at_ml`.

    V(z) = volume, solved by halving and false position together

    Parameters
    ----------
    tin : inside dimensions
    volume_ml : volume of the batter [ml]

    Returns
    -------
    depth [cm]; it may lie above the rim; None when the tin's dimensions are not enough

    Raises
    ------
    OutOfRangeError : volume_ml is negative or not finite

    Valid for
    ---------
    As `volume_at_ml`.

    Source
    ------
    `mathematics`, solid geometry

    Examples
    --------
    >>> round(depth_cm(Tin("", "round", diameter_cm=20.0), 1081.25), 2)
    3.44
    """
    return common_depth_cm((tin,), volume_ml)


def common_depth_cm(tins: Sequence[Tin], volume_ml: float) -> float | None:
    """Depth a volume reaches in several tins filled to one and the same depth, or None."""
    if not 0 <= volume_ml < math.inf:
        raise OutOfRangeError(
            f"{volume_ml} ml is not a volume of batter. Type 0 ml or more.",
            field="volume_ml",
            got=str(volume_ml),
            want="0 or more",
        )
    if not tins or any(volume_at_ml(tin, 1.0) is None for tin in tins):
        return None
    return _inverse(lambda z: sum(volume_at_ml(tin, z) or 0.0 for tin in tins), volume_ml)


def fill(tin: Tin, volume_ml: float) -> float | None:
    """Share of a tin's volume that a batter takes before it rises, or None."""
    whole = _level_ml(tin)
    return None if whole is None else volume_ml / whole


def _level_ml(tin: Tin) -> float | None:
    return volume_ml(tin)


def _is_flared(tin: Tin) -> bool:
    return tin.top_cm is not None or tin.top_length_cm is not None


def _section(tin: Tin, *, flared: bool) -> Section | None:
    if flared and _is_flared(tin) and tin.height_cm is None:
        return None
    rise = tin.height_cm if flared and tin.height_cm else math.inf
    if tin.shape in ROUND_FLOOR:
        return _round_section(tin, rise)
    return _rectangle_section(tin, rise)


def _round_section(tin: Tin, rise: float) -> Section | None:
    if tin.diameter_cm is None or (tin.shape == "tube" and tin.hole_cm is None):
        return None
    bottom, slope = tin.diameter_cm, _slope(tin.diameter_cm, tin.top_cm, rise)
    hole = (tin.hole_cm or 0.0) if tin.shape == "tube" else 0.0
    quarter = math.pi / 4
    return (
        quarter * (bottom**2 - hole**2),
        quarter * 2 * bottom * slope,
        quarter * slope**2,
    )


def _rectangle_section(tin: Tin, rise: float) -> Section | None:
    if tin.length_cm is None or tin.width_cm is None:
        return None
    length, width = tin.length_cm, tin.width_cm
    longer = _slope(length, tin.top_length_cm, rise)
    wider = _slope(width, tin.top_width_cm, rise)
    return length * width, length * wider + width * longer, longer * wider


def _slope(bottom: float, top: float | None, rise: float) -> float:
    return 0.0 if top is None else (top - bottom) / rise


def _across(section: Section, z: float) -> float:
    return section[0] + section[1] * z + section[2] * z * z


def _under(section: Section, z: float) -> float:
    return section[0] * z + section[1] * z**2 / 2 + section[2] * z**3 / 3


def _ring_radii(tin: Tin) -> tuple[float, float] | None:
    if tin.diameter_cm is None or tin.hole_cm is None:
        return None
    return (tin.diameter_cm + tin.hole_cm) / 4, (tin.diameter_cm - tin.hole_cm) / 4


def _opening_of_ring_mould(tin: Tin) -> float | None:
    radii = _ring_radii(tin)
    return None if radii is None else 4 * math.pi * radii[0] * radii[1] * tin.count


def _half_torus_ml(tin: Tin, z: float) -> float | None:
    radii = _ring_radii(tin)
    if radii is None:
        return None
    mean, tube = radii
    wall = min(z, tube)
    chord = math.sqrt(max(2 * tube * wall - wall**2, 0.0))
    segment = tube**2 * math.acos(1 - wall / tube) - (tube - wall) * chord
    return 2 * math.pi * mean * (max(segment, 0.0) + 2 * tube * (z - wall)) * tin.count


def _inverse(volume_of: Callable[[float], float], volume: float) -> float:
    """Depth at which a rising volume function reaches `volume`, to the last bits of a float."""
    high = 1.0
    while volume_of(high) < volume:
        high *= 2
    low = 0.0
    while True:
        middle = (low + high) / 2
        if middle in (low, high):
            return middle
        if volume_of(middle) < volume:
            low = middle
        else:
            high = middle
