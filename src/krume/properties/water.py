"""Water: vapour pressure, pressure at a height, boiling point of water and of a syrup."""

import math
from functools import cache

from krume.evidence import column, load, optional
from krume.properties.activity import syrup_activity
from krume.properties.constant_table import constant, within

SATURATION_COLUMNS = (
    column("key", "key"),
    column("value", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
)


@cache
def _coefficients() -> tuple[float, ...]:
    rows = load("saturation.csv", SATURATION_COLUMNS)
    return tuple(row.number_of("value") for row in rows)


def vapour_pressure_pa(temp_c: float) -> float:
    """Vapour pressure of pure water over itself.

    p = (2 C / (-B + sqrt(B2 - 4 A C)))4 MPa, with A, B, C quadratics of
    theta = T + n9 / (T - n10), T in kelvin

    Parameters
    ----------
    temp_c : temperature [degC]

    Returns
    -------
    pressure [Pa]

    Raises
    ------
    OutOfRangeError : temp_c is outside 0 to 373.9 degC

    Valid for
    ---------
    273.15 to 647.096 K, the saturation line (region 4).

    Source
    ------
    `iapws-if97`, equation 30 and table 34

    Examples
    --------
    >>> round(vapour_pressure_pa(25.0), 1)
    3169.7
    """
    within("temp_c", temp_c, 0.0, 373.946, "C")
    n1, n2, n3, n4, n5, n6, n7, n8, n9, n10 = _coefficients()
    kelvin = temp_c + constant("celsius-zero")
    theta = kelvin + n9 / (kelvin - n10)
    a = theta**2 + n1 * theta + n2
    b = n3 * theta**2 + n4 * theta + n5
    c = n6 * theta**2 + n7 * theta + n8
    root: float = 2 * c / (-b + math.sqrt(b * b - 4 * a * c))
    return 1e6 * root**4


def pressure_at_altitude_pa(altitude_m: float) -> float:
    """Air pressure of the standard atmosphere at a height.

    P = P0 (1 - L H / T0)^5.25588

    Parameters
    ----------
    altitude_m : H, height above the sea [m]

    Returns
    -------
    pressure [Pa]

    Raises
    ------
    OutOfRangeError : altitude_m is outside -500 to 11 000 m

    Valid for
    ---------
    The lowest layer of the standard atmosphere; the day's weather moves it by some 3 %.

    Source
    ------
    `us-standard-atmosphere-1976`

    Examples
    --------
    >>> round(pressure_at_altitude_pa(1600.0))
    83524
    """
    within("altitude_m", altitude_m, constant("altitude-least"), constant("altitude-most"), "m")
    share = 1 - constant("sea-lapse") * altitude_m / constant("sea-temperature")
    return float(constant("standard-pressure") * share ** constant("sea-exponent"))


def boiling_point_c(pressure_pa: float, *, sugar_pct: float = 0.0) -> float:
    """Temperature at which water, or a sugar syrup, boils under a pressure.

    a_w(S, T) p(T) = P, solved by halving

    Parameters
    ----------
    pressure_pa : P, pressure of the air [Pa]
    sugar_pct : S, sugar over sugar and water [%]

    Returns
    -------
    temperature [degC]

    Raises
    ------
    OutOfRangeError : the pressure is outside 20 to 200 kPa, or the sugar outside 0 to 90 %

    Valid for
    ---------
    Sucrose in water; a batter's other solutes are not counted.

    Source
    ------
    `iapws-if97`, `starzak-peacock-1997`

    Examples
    --------
    >>> round(boiling_point_c(101325.0), 2), round(boiling_point_c(101325.0, sugar_pct=50.0), 2)
    (99.97, 101.8)
    """
    low_pa, high_pa = constant("pressure-least"), constant("pressure-most")
    within("pressure_pa", pressure_pa, low_pa, high_pa, "Pa")
    low, high = 20.0, 200.0
    while True:
        middle = (low + high) / 2
        if middle in (low, high):
            return middle
        if syrup_activity(sugar_pct, temp_c=middle) * vapour_pressure_pa(middle) < pressure_pa:
            low = middle
        else:
            high = middle
