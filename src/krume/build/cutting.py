"""Small pieces for many guests: in rows from a rectangle, in rings from a round torte."""

import math
from functools import cache

from krume.build.figures import figure
from krume.build.outline import Outline
from krume.build.torte import Cut, Torte

_WAYS = (("event", "event pieces"), ("party", "party pieces"))
_DUST = 1e-9


@cache
def _sizes() -> tuple[tuple[str, str, float, float, str], ...]:
    found = []
    for key, words in _WAYS:
        wide, deep = figure(f"{key}-wide"), figure(f"{key}-deep")
        found.append((key, words, wide.value, deep.value, wide.status))
    return tuple(found)


def cuts_of(torte: Torte) -> tuple[Cut, ...]:
    """A torte in small pieces of the sizes in use; none of a roll, a tart or a torte of tiers."""
    if torte.outline is None or torte.kind not in ("stacked", "ring"):
        return ()
    return tuple(
        _cut(torte, torte.outline, key, words, (wide, deep), status)
        for key, words, wide, deep, status in _sizes()
        if pieces_of(torte.outline, wide_cm=wide, deep_cm=deep) > 0
    )


def _cut(
    torte: Torte, outline: Outline, key: str, words: str, size: tuple[float, float], status: str
) -> Cut:
    count = pieces_of(outline, wide_cm=size[0], deep_cm=size[1])
    mass = None if torte.mass_g is None else torte.mass_g / outline.area_cm2 * size[0] * size[1]
    return Cut(key, words, size[0], size[1], count, mass, status)


def pieces_of(outline: Outline, *, wide_cm: float, deep_cm: float) -> int:
    """Whole pieces of a size from above: every one has at least that area.

    Of a rectangle in rows, the better way round. Of a round torte a ring `deep_cm` wide is cut off
    the outside and shared by its area, then the next one; what is left in the middle goes in
    wedges.

    >>> pieces_of(Outline(length_cm=30.0, width_cm=20.0), wide_cm=2.5, deep_cm=5.0)
    48
    >>> pieces_of(Outline(20.0), wide_cm=2.5, deep_cm=5.0)
    24
    """
    if outline.diameter_cm is None:
        return max(
            _rows(outline.length_cm, wide_cm) * _rows(outline.width_cm, deep_cm),
            _rows(outline.length_cm, deep_cm) * _rows(outline.width_cm, wide_cm),
        )
    count, radius, hole = 0, outline.diameter_cm / 2, outline.hole_cm / 2
    while radius > hole + _DUST:
        inner = max(hole, radius - deep_cm)
        count += _rows(math.pi * (radius**2 - inner**2), wide_cm * deep_cm)
        radius = inner
    return count


def _rows(length: float, each: float) -> int:
    return math.floor(length / each + _DUST)
