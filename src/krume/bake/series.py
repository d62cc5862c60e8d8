"""Exact heating of plain shapes at the centre: the series the oven model is held against."""

import math
from collections.abc import Callable

from krume.base import OutOfRangeError
from krume.properties import within

SHAPES = ("slab", "cylinder", "short-cylinder")
_EARLY = 5e-3
"""Fourier number below which the centre has not moved by a float's last bit."""
_NEGLIGIBLE = 40.0
"""Terms decayed by exp(-40) and more move no digit of a float."""
_LAST_BITS = 4e-16


def heating_theta(shape: str, *, biot: float, fourier: float) -> float:
    """Unaccomplished temperature at the centre of a slab or of a long cylinder.

    slab: sum 4 sin b / (2 b + sin 2b) exp(-b2 Fo), b tan b = Bi
    cylinder: sum 2 J1(b) / (b (J0(b)2 + J1(b)2)) exp(-b2 Fo), b J1(b) = Bi J0(b)

    Parameters
    ----------
    shape : `slab`, heated on both faces, or `cylinder`, infinitely long
    biot : h L / k, with the half thickness or the radius as L
    fourier : alpha t / L2

    Returns
    -------
    (T - oven) / (start - oven) at the centre, 1 at the start and 0 at the end

    Raises
    ------
    OutOfRangeError : another shape, biot outside 0 to 10 000, fourier negative

    Valid for
    ---------
    Constant properties, one oven temperature, no evaporation. A short cylinder is the product of
    both.

    Source
    ------
    `carslaw-jaeger-1959`

    Examples
    --------
    >>> round(heating_theta("slab", biot=1.0, fourier=1.0), 10)
    0.5338594014
    >>> round(heating_theta("cylinder", biot=5.0, fourier=0.2), 10)
    0.6714184083
    """
    within("biot", biot, 0.0, 1e4)
    within("fourier", fourier, 0.0, math.inf)
    if shape not in _TERMS:
        raise OutOfRangeError(
            f"'{shape}' is no shape of this series. Type slab, cylinder or short-cylinder.",
            field="shape", got=shape, want=", ".join(SHAPES),
        )  # fmt: skip
    if biot == 0 or fourier < _EARLY:
        return 1.0
    term, root = _TERMS[shape]
    total, n = 0.0, 0
    while True:
        b = root(n, biot)
        decay = b * b * fourier
        total += term(b) * math.exp(-decay) if decay < 700 else 0.0
        if decay > _NEGLIGIBLE:
            return min(total, 1.0)
        n += 1


def _slab_term(b: float) -> float:
    return 4 * math.sin(b) / (2 * b + math.sin(2 * b))


def _slab_root(n: int, biot: float) -> float:
    low, high = n * math.pi, n * math.pi + math.pi / 2
    return _root(lambda b: b * math.sin(b) - biot * math.cos(b), low, high)


def _cylinder_term(b: float) -> float:
    j0, j1 = _bessel(0, b), _bessel(1, b)
    return 2 * j1 / (b * (j0 * j0 + j1 * j1))


def _cylinder_root(n: int, biot: float) -> float:
    """Root between the n-th zero of J1 and the next zero of J0."""
    low, high = _zero_of_j1(n), _zero_of_j0(n)
    return _root(lambda b: b * _bessel(1, b) - biot * _bessel(0, b), low, high)


def _zero_of_j0(n: int) -> float:
    about = (n + 0.75) * math.pi
    return _root(lambda b: _bessel(0, b), about - 0.5, about + 0.5)


def _zero_of_j1(n: int) -> float:
    if n == 0:
        return 0.0
    about = (n + 0.25) * math.pi
    return _root(lambda b: _bessel(1, b), about - 0.5, about + 0.5)


def _bessel(order: int, x: float) -> float:
    """Bessel function J of order 0 or 1 by its integral; the trapezoid converges exponentially."""
    count = 2 * math.ceil(abs(x)) + 64
    angles = (2 * math.pi * k / count for k in range(count))
    return math.fsum(math.cos(order * a - x * math.sin(a)) for a in angles) / count


def _root(function: Callable[[float], float], low: float, high: float) -> float:
    """Root of a function that changes sign between two ends, to a float's last bits.

    Ridders' rule: the bracket stays, and the digits double with every turn.
    """
    at_low, at_high, last = function(low), function(high), math.inf
    while True:
        middle = (low + high) / 2
        at = function(middle)
        if at == 0 or middle in (low, high):
            return middle
        away = math.copysign(at, at * at_low) / math.sqrt(at * at - at_low * at_high)
        root = middle + (middle - low) * away
        at_root = function(root)
        if at_root == 0 or abs(root - last) <= _LAST_BITS * root:
            return root
        last = root
        if (at > 0) != (at_root > 0):
            ends = sorted([(middle, at), (root, at_root)])
        elif (at_low > 0) != (at_root > 0):
            ends = [(low, at_low), (root, at_root)]
        else:
            ends = [(root, at_root), (high, at_high)]
        (low, at_low), (high, at_high) = ends


_TERMS = {"slab": (_slab_term, _slab_root), "cylinder": (_cylinder_term, _cylinder_root)}
