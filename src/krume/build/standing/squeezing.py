"""How much a soft layer carries before it flows out at its edge; closed forms of plasticity."""

import math

from krume.base import OutOfRangeError
from krume.build.standing.figures import value


def disc_carries_pa(
    yield_pa: float, *, diameter_mm: float, height_mm: float, sticking_share: float = 1.0
) -> float:
    r"""Mean pressure that a round layer between two rough faces carries.

    p = sqrt(3) tau + (2/3) m tau R / h

    Parameters
    ----------
    yield_pa : tau, yield stress of the layer in shear [Pa]
    diameter_mm : 2 R, width of the layer [mm]
    height_mm : h, its height [mm]
    sticking_share : m, 1 where it tears before it slides, 0 where it slides freely

    Returns
    -------
    pressure [Pa]

    Raises
    ------
    OutOfRangeError : a size is not above 0, or the yield stress is negative

    Valid for
    ---------
    Stiff faces above and below, an even layer no higher than wide. A soft crumb gives earlier at
    the rim than this says.

    Source
    ------
    `martinie-2013` for the first term; the second is the equilibrium of a ring by calculus

    Examples
    --------
    >>> round(disc_carries_pa(100.0, diameter_mm=195.0, height_mm=10.0), 1)
    823.2
    """
    tau = _at_least_zero("yield", yield_pa)
    radius = _above_zero("diameter", diameter_mm) / 2
    return tau * (
        math.sqrt(3) + 2 * sticking_share * radius / (3 * _above_zero("height", height_mm))
    )


def strip_carries_pa(
    yield_pa: float, *, width_mm: float, height_mm: float, sticking_share: float = 1.0
) -> float:
    r"""Mean pressure that a long strip between two rough faces carries: a slice, or a roll.

    p = 2 tau + m tau w / (2 h)

    Parameters
    ----------
    yield_pa : tau, yield stress of the layer in shear [Pa]
    width_mm : w, width of the strip [mm]
    height_mm : h, its height [mm]
    sticking_share : m, 1 where it tears before it slides, 0 where it slides freely

    Returns
    -------
    pressure [Pa]

    Raises
    ------
    OutOfRangeError : a size is not above 0, or the yield stress is negative

    Valid for
    ---------
    Strips longer than wide between stiff faces.

    Source
    ------
    equilibrium of a strip, by calculus

    Examples
    --------
    >>> strip_carries_pa(100.0, width_mm=40.0, height_mm=10.0)
    400.0
    """
    tau = _at_least_zero("yield", yield_pa)
    width = _above_zero("width", width_mm)
    return tau * (2 + sticking_share * width / (2 * _above_zero("height", height_mm)))


def edge_needs_pa(*, height_mm: float, density_g_ml: float) -> float:
    r"""Yield stress that an upright free edge needs to stand by itself.

    tau = rho g h / n, with n = 2: the sure bound

    Parameters
    ----------
    height_mm : h, height of the edge [mm]
    density_g_ml : rho, density [g/ml]

    Returns
    -------
    yield stress [Pa]

    Raises
    ------
    OutOfRangeError : a height or density is negative

    Valid for
    ---------
    An edge without a ring, a coat or paper around it.

    Source
    ------
    plane equilibrium, by calculus

    Examples
    --------
    >>> round(edge_needs_pa(height_mm=10.0, density_g_ml=0.75), 1)
    36.8
    """
    tall = _at_least_zero("height", height_mm)
    return _at_least_zero("density", density_g_ml) * tall * value("gravity") / value("upright")


def _above_zero(name: str, size: float) -> float:
    if 0 < size < math.inf:
        return size
    raise OutOfRangeError(
        f"{name} is {size:g} mm; a layer that carries something is thicker than 0.",
        field=name, got=f"{size:g}", want="more than 0 mm",
    )  # fmt: skip


def _at_least_zero(name: str, size: float) -> float:
    if 0 <= size < math.inf:
        return size
    raise OutOfRangeError(
        f"{name} is {size:g}; it is 0 or more.", field=name, got=f"{size:g}", want="0 or more"
    )
