"""Mould-free days of a plain cake from its equilibrium humidity."""

from krume.base import OutOfRangeError
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
