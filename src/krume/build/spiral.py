"""The section of a roll: the band of the sheet, wound into a circle of the roll's own area."""

import math

_STEPS = 240
"""Points a turn: a step is then below a millimetre of a usual roll."""
_MOST_TURNS = 60
_DIVE = 0.34
"""Share of a turn over which the sheet dives under its outer end."""
_SEAM = math.radians(65)
"""Where the outer end lies, from the right and downwards: the seam of a roll lies below."""

Point = tuple[float, float]


def band(
    radius_mm: float, *, length_mm: float, thick_mm: float, pitch_mm: float
) -> tuple[list[Point], list[Point]]:
    """Outer and inner edge of a rolled sheet, from its outer end to its inner one.

    The outermost turn keeps the roll's radius; each later turn dives by one pitch. The outer end,
    which is left free of cream, is drawn pressed thin against the sheet that dives under it. The
    band ends when its area is that of the sheet.

    Parameters
    ----------
    radius_mm : radius of the roll [mm]
    length_mm : side of the sheet that is rolled up [mm]
    thick_mm : of the sheet [mm]
    pitch_mm : sheet and cream together [mm]

    Returns
    -------
    points of the outer and of the inner edge, around the middle of the roll [mm]

    Source
    ------
    `mathematics`, plane geometry

    Examples
    --------
    >>> outer, inner = band(37.2, length_mm=228.6, thick_mm=12.0, pitch_mm=19.0)
    >>> [round(math.hypot(*edge[120]), 1) for edge in (outer, inner)]
    [37.2, 25.2]
    """
    outer: list[Point] = []
    inner: list[Point] = []
    used = 0.0
    for step in range(_STEPS * _MOST_TURNS):
        turn = step / _STEPS
        r = radius_mm - pitch_mm * _dived(turn)
        deep = min(thick_mm, pitch_mm * _dived(turn + 1)) if turn < 1 else thick_mm
        if r < thick_mm or used > length_mm:
            break
        used += 2 * math.pi * (r - deep / 2) * deep / thick_mm / _STEPS
        angle = _SEAM + 2 * math.pi * turn
        outer.append((r * math.cos(angle), r * math.sin(angle)))
        inner.append(((r - deep) * math.cos(angle), (r - deep) * math.sin(angle)))
    return outer, inner


def _dived(turn: float) -> float:
    """How many pitches the sheet lies below the outermost turn: one more at the start of each."""
    whole = math.floor(turn)
    if whole < 1:
        return 0.0
    x = min(1.0, (turn - whole) / _DIVE)
    return whole - 1 + x * x * (3 - 2 * x)


def path(points: list[Point], *, x: float, y: float) -> str:
    """A line through points as path data, moved to a middle."""
    said = (f"{x + px:.2f} {y + py:.2f}" for px, py in points)
    return "M" + "L".join(said)
