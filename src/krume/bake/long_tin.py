"""A tin much longer than wide: a body between cylinder and slab that heats like its middle."""

import math
from functools import lru_cache
from itertools import pairwise

import numpy as np
from scipy.optimize import brentq
from scipy.special import gamma, jv

from krume.bake.grid import CONDUCTION_W_MK, FILM_W_M2K, equivalent_radius_m, first_lateral_per_m
from krume.bake.series import heating_theta

# Half an hour to an hour of a bake, as diffusivity times time; half and double move the minutes of
# a loaf by less than 1 %.
_SOAKED_M2 = 6e-4
# Up to the first ratio of the sides the cylinder stands, as it was fitted with; from the second on
# the bent body does, and between them the one goes over into the other.
_CYLINDER_TO, _BENT_FROM = 1.9, 2.2
_MOST_ROOT = 40.0
_DECAYED = 40.0


def body_of_rectangle(length_m: float, width_m: float) -> tuple[float, float]:
    r"""Radius and bend of the body that heats like the middle of a rectangle.

    The rings of a body of bend n grow outwards as r^n: 1 is a cylinder, 0 a slab. Radius and bend
    are those of the same first lateral eigenvalue and of the same middle after alpha t = 6 cm2:
    x J(v+1)(x) = Bi J(v)(x) with v = (n - 1)/2, x = mu R

    Parameters
    ----------
    length_m : inside length [m]
    width_m : inside width [m]

    Returns
    -------
    radius [m] and bend

    Valid for
    ---------
    Ratios of the sides above 2.2, to 2 % of the minutes; below 1.9 the cylinder is given.

    Source
    ------
    `carslaw-jaeger-1959`, product solutions

    Examples
    --------
    >>> radius, bend = body_of_rectangle(0.30, 0.11)
    >>> round(radius, 4), round(bend, 2)
    (0.0615, 0.35)
    >>> body_of_rectangle(0.2, 0.2)[1]
    1.0
    """
    cylinder = equivalent_radius_m(length_m, width_m)
    ratio = max(length_m, width_m) / min(length_m, width_m)
    part = min(max((ratio - _CYLINDER_TO) / (_BENT_FROM - _CYLINDER_TO), 0.0), 1.0)
    if part == 0:
        return cylinder, 1.0
    radius, bend = _bent(length_m, width_m)
    return cylinder + part * (radius - cylinder), 1.0 + part * (bend - 1.0)


@lru_cache(maxsize=64)
def _bent(length_m: float, width_m: float) -> tuple[float, float]:
    per_m = first_lateral_per_m(length_m, width_m)
    middle = 1.0
    for half in (length_m / 2, width_m / 2):
        biot = FILM_W_M2K * half / CONDUCTION_W_MK
        middle *= heating_theta("slab", biot=biot, fourier=_SOAKED_M2 / half**2)

    def off(bend: float) -> float:
        radius = _radius(bend, per_m)
        biot, fourier = FILM_W_M2K * radius / CONDUCTION_W_MK, _SOAKED_M2 / radius**2
        return bent_theta(bend, biot=biot, fourier=fourier) - middle

    bend = float(brentq(off, 0.0, 1.0, xtol=1e-4)) if off(0.0) * off(1.0) < 0 else 1.0
    return _radius(bend, per_m), bend


def _radius(bend: float, per_m: float) -> float:
    """Radius at which a body of a bend has the first eigenvalue."""
    order = (bend - 1) / 2
    biot = FILM_W_M2K / (CONDUCTION_W_MK * per_m)

    def off(x: float) -> float:
        return float(jv(order + 1, x) - biot * jv(order, x))

    first_zero = math.pi / 2 + bend * (2.404825557695773 - math.pi / 2)
    return float(brentq(off, 1e-6, first_zero + 0.02)) / per_m


def bent_theta(bend: float, *, biot: float, fourier: float) -> float:
    """Unaccomplished temperature in the middle of a body whose rings grow as r^bend.

    sum c_n exp(-b_n2 Fo), b J(v+1)(b) = Bi J(v)(b), v = (bend - 1)/2; slab and cylinder at 0 and 1
    """
    order, total = (bend - 1) / 2, 0.0
    grid = np.linspace(1e-6, _MOST_ROOT, 800)
    value = grid * jv(order + 1, grid) - biot * jv(order, grid)
    for (low, high), (at_low, at_high) in zip(pairwise(grid), pairwise(value), strict=True):
        if at_low * at_high > 0:
            continue
        b = float(brentq(lambda x: x * jv(order + 1, x) - biot * jv(order, x), low, high))
        own, next_ = float(jv(order, b)), float(jv(order + 1, b))
        norm = (own * own + next_ * next_ - 2 * order / b * own * next_) / 2
        middle = (b / 2) ** order / gamma(order + 1)
        total += next_ / b / norm * float(middle) * math.exp(-b * b * fourier)
        if b * b * fourier > _DECAYED:
            break
    return total
