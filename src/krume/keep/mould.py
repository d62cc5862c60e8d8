"""Mould-free days of a plain cake from its equilibrium humidity."""

import math

from krume.base import Interval, OutOfRangeError
from krume.properties import constants, within

TEMPS_C = (21.0, 27.0)


def mould_free_days(erh_pct: float, *, temp_c: float) -> float:
    """Days without mould of a cake without preservative, kept at one temperature.

    log10 d = 7.91 - 0.081 ERH at 21 degC · log10 d = 6.42 - 0.0647 ERH at 27 degC

    Parameters
    ----------
    erh_pct : equilibrium relative humidity, 100 times the water activity [%]
    temp_c : 21 or 27 [degC]

    Returns
    -------
    time [days]

    Raises
    ------
    OutOfRangeError : erh_pct is outside 74 to 90 %, or temp_c is neither 21 nor 27 degC

    Valid for
    ---------
    Cake without preservative at constant water activity. Fitted to wheat cakes: for gluten-free
    cake an assumption. Mould only; it says nothing of pathogens.

    Source
    ------
    `fmbra-150` (21 degC), `adams-moss` (27 degC)

    Examples
    --------
    >>> round(mould_free_days(80.0, temp_c=21.0), 1)
    26.9
    """
    table = constants("keeping.csv")
    within("erh", erh_pct, table["mould-driest"], table["mould-wettest"], "%")
    if temp_c not in TEMPS_C:
        raise OutOfRangeError(
            f"temp is {temp_c:g} C; the lines were measured at 21 C and at 27 C only.",
            field="temp", got=f"{temp_c:g}", want="21 or 27",
        )  # fmt: skip
    line = f"mould-{temp_c:.0f}"
    return float(10.0 ** (table[f"{line}-constant"] - table[f"{line}-slope"] * erh_pct))


def mould_free_span(activity: Interval, *, temp_c: float) -> tuple[float | None, float]:
    """Days without mould of a water activity with its doubt: at least (None is not told), at most.

    The lines hold from 74 to 90 %. Wetter than 90 % no day is promised, and the line's days at 90 %
    are the most; drier than 74 % its days there are the least, and the most are not told (inf).

    >>> low, high = mould_free_span(Interval(0.86, 0.88, 0.90), temp_c=21.0)
    >>> round(low or 0.0, 1), round(high, 1)
    (4.2, 8.8)
    """
    table = constants("keeping.csv")
    driest, wettest = table["mould-driest"], table["mould-wettest"]
    wet, dry = 100 * activity.high, 100 * activity.low
    least = None if wet > wettest else mould_free_days(max(wet, driest), temp_c=temp_c)
    most = math.inf if dry < driest else mould_free_days(min(dry, wettest), temp_c=temp_c)
    return least, most
