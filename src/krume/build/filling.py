"""How much of a cream fills a ring or a frame, beside what already lies in it."""

from collections.abc import Sequence
from dataclasses import dataclass

from krume.base import Clash, Infeasible, OutOfRangeError, as_text
from krume.build.outline import Outline, fits_in

_SLACK_ML = 1e-6


@dataclass(frozen=True, slots=True)
class Inset:
    """A piece that lies in a ring: its outline, its height, and how many of it there are."""

    outline: Outline
    high_mm: float
    count: int = 1

    @property
    def volume_ml(self) -> float:
        """Room all of them take."""
        return self.count * self.outline.area_cm2 * self.high_mm / 10


@dataclass(frozen=True, slots=True)
class Filled:
    """A ring's volume, what the pieces take of it, and what is left for cream."""

    ring_ml: float
    taken_ml: float
    cream_ml: float
    high_mm: float


def filled(ring: Outline, *, high_mm: float, pieces: Sequence[Inset] = ()) -> Filled | Infeasible:
    """Cream that fills a ring to a height around and between some pieces.

    V = A h - sum(n a t)

    Parameters
    ----------
    ring : inside of the ring, area A
    high_mm : h, how high it is filled [mm]
    pieces : what lies in it: n of area a and thickness t

    Returns
    -------
    volumes [ml]; the clashes where the pieces do not go in

    Raises
    ------
    OutOfRangeError : the height is not above 0

    Source
    ------
    `mathematics`, solid geometry

    Examples
    --------
    >>> discs = Inset(Outline(21.0), 12.0, 2)
    >>> found = filled(Outline(22.0), high_mm=52.0, pieces=[discs])
    >>> round(found.ring_ml, 1), round(found.cream_ml, 1)
    (1976.7, 1145.4)
    """
    if high_mm <= 0:
        raise OutOfRangeError(
            "A ring is more than 0 mm high.", field="high_mm", got=f"{high_mm:g}",
            want="more than 0",
        )  # fmt: skip
    clashes = tuple(_clashes(ring, high_mm, pieces))
    if clashes:
        return Infeasible(clashes)
    whole = ring.area_cm2 * high_mm / 10
    taken = sum(piece.volume_ml for piece in pieces)
    return Filled(whole, taken, max(0.0, whole - taken), high_mm)


def _clashes(ring: Outline, high_mm: float, pieces: Sequence[Inset]) -> list[Clash]:
    room = _size(ring)
    found = [
        Clash(
            "the ring", room, f"{_size(piece.outline)} across", f"{room} across",
            f"The ring is {room} across and a piece {_size(piece.outline)}. Nearest: trim the "
            f"piece to {room}, or take a ring of {_size(piece.outline)}.",
        )
        for piece in pieces
        if not fits_in(piece.outline, ring)
    ]  # fmt: skip
    stacked = sum(piece.count * piece.high_mm for piece in pieces)
    if stacked > high_mm + _SLACK_ML:
        high, needs = as_text(high_mm, 1), as_text(stacked, 1)
        said = (
            f"The pieces alone are {needs} mm high and the ring {high} mm: no cream goes in. "
            f"Nearest: a piece less, or a ring of {as_text(stacked / 10, 2)} cm and more."
        )
        found.append(Clash("the ring", room, f"{needs} mm", f"{high} mm", said))
    return found


def _size(outline: Outline) -> str:
    if outline.diameter_cm is not None:
        return f"{as_text(outline.diameter_cm, 2)} cm"
    return f"{as_text(outline.length_cm, 2)} × {as_text(outline.width_cm, 2)} cm"
