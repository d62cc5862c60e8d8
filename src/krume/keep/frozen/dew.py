"""Where a cold cake sweats: the dew point of a room's air."""

from krume.properties import vapour_pressure_pa, within

_HALVINGS = 60


def dew_point_c(temp_c: float, *, humidity_pct: float) -> float:
    """Temperature at which the air of a room leaves its water on a surface.

    p_sat(T_dew) = RH p_sat(T)

    Parameters
    ----------
    temp_c : air [degC]
    humidity_pct : water in it over what it can hold [%]

    Returns
    -------
    temperature [degC]

    Raises
    ------
    OutOfRangeError : temp_c is outside 0.5 to 60 degC, humidity_pct outside 5 to 100 %, or the
        dew point lies below 0 degC

    Valid for
    ---------
    Dew, no frost: above 0 degC.

    Source
    ------
    `iapws-if97`

    Examples
    --------
    >>> round(dew_point_c(21.0, humidity_pct=50.0), 1)
    10.2
    """
    within("temp", temp_c, 0.5, 60.0, "C")
    within("humidity", humidity_pct, 5.0, 100.0, "%")
    wanted = humidity_pct / 100 * vapour_pressure_pa(temp_c)
    least = 0.01
    within("dew point", 1.0 if wanted >= vapour_pressure_pa(least) else -1.0, 0.0, 60.0, "C")
    low, high = least, temp_c
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if vapour_pressure_pa(middle) < wanted else (low, middle)
    return (low + high) / 2
