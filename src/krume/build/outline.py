"""The outline of a layer seen from above: a circle, a ring of cake, or a rectangle."""

import math
from dataclasses import dataclass, replace

from krume.size import Tin

_ROUND = frozenset({"round", "springform", "ring"})


@dataclass(frozen=True, slots=True)
class Outline:
    """A shape seen from above [cm]: `diameter_cm` with or without a hole, or length and width."""

    diameter_cm: float | None = None
    hole_cm: float = 0.0
    length_cm: float = 0.0
    width_cm: float = 0.0

    @property
    def area_cm2(self) -> float:
        """Area [cm2].

        >>> round(Outline(19.5).area_cm2, 1), Outline(length_cm=33.0, width_cm=20.0).area_cm2
        (298.6, 660.0)
        """
        if self.diameter_cm is None:
            return self.length_cm * self.width_cm
        return math.pi / 4 * (self.diameter_cm**2 - self.hole_cm**2)

    @property
    def across_cm(self) -> float:
        """Width of a section through the middle: the diameter, or the longer side."""
        return self.length_cm if self.diameter_cm is None else self.diameter_cm

    def grown(self, by_cm: float) -> "Outline":
        """The outline with a coat around it, round at no corner; a hole stays as it is."""
        if self.diameter_cm is None:
            return replace(
                self, length_cm=self.length_cm + 2 * by_cm, width_cm=self.width_cm + 2 * by_cm
            )
        return replace(self, diameter_cm=self.diameter_cm + 2 * by_cm)


def floor_of(tin: Tin) -> Outline | None:
    """Outline of one cake from a tin; None when its dimensions or its walls do not give one."""
    if tin.shape in _ROUND or tin.shape == "tube":
        if tin.diameter_cm is None or (tin.shape == "tube" and tin.hole_cm is None):
            return None
        return Outline(tin.diameter_cm, (tin.hole_cm or 0.0) if tin.shape == "tube" else 0.0)
    if tin.shape in ("square", "sheet", "loaf") and tin.length_cm is not None:
        width = tin.width_cm if tin.width_cm is not None else tin.length_cm
        return Outline(length_cm=max(tin.length_cm, width), width_cm=min(tin.length_cm, width))
    return None


def trimmed(
    floor: Outline, to_cm: float | None, wide_cm: float | None = None, *, is_disc: bool = False
) -> Outline:
    """Outline cut down to a diameter, or to two sides; with one size a rectangle gets square.

    A disc is round whatever it is cut from.
    """
    if to_cm is None:
        return floor
    if is_disc and floor.diameter_cm is None:
        return Outline(to_cm)
    if floor.diameter_cm is None:
        other = to_cm if wide_cm is None else wide_cm
        return Outline(length_cm=max(to_cm, other), width_cm=min(to_cm, other))
    return replace(floor, diameter_cm=to_cm)


def can_be_cut(floor: Outline, to_cm: float, wide_cm: float | None = None) -> bool:
    """Whether a cake of this outline is wide enough to be trimmed to a size."""
    slack = 1e-9
    other = to_cm if wide_cm is None else wide_cm
    if floor.diameter_cm is None:
        long, short = max(to_cm, other), min(to_cm, other)
        return long <= floor.length_cm + slack and short <= floor.width_cm + slack
    return wide_cm is None and floor.hole_cm < to_cm <= floor.diameter_cm + slack


def fits_in(inner: Outline, outer: Outline) -> bool:
    """Whether an outline lies inside another one, both about one middle.

    >>> fits_in(Outline(20.0), Outline(length_cm=20.0, width_cm=20.0))
    True
    >>> fits_in(Outline(length_cm=15.0, width_cm=15.0), Outline(20.0))
    False
    """
    slack = 1e-7
    if inner.diameter_cm is not None:
        room = outer.width_cm if outer.diameter_cm is None else outer.diameter_cm
        return inner.diameter_cm <= room + slack
    if outer.diameter_cm is not None:
        return math.hypot(inner.length_cm, inner.width_cm) <= outer.diameter_cm + slack
    return inner.length_cm <= outer.length_cm + slack and inner.width_cm <= outer.width_cm + slack
