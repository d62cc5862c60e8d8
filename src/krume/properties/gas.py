"""Gas that leavening gives: soda with acid, soda by heat alone, baking powder."""

import math

from krume.properties.constant_table import constant, within


def molar_volume_ml(temp_c: float) -> float:
    """Volume of one mole of an ideal gas at 101 325 Pa.

    V = R T / P

    Parameters
    ----------
    temp_c : temperature [degC]

    Returns
    -------
    volume [ml/mol]

    Raises
    ------
    OutOfRangeError : temp_c is outside 0 to 250 degC

    Valid for
    ---------
    Dry carbon dioxide in a batter: within 1 % of the real gas.

    Source
    ------
    `codata-2018`

    Examples
    --------
    >>> round(molar_volume_ml(25.0), 1)
    24465.4
    """
    within("temp_c", temp_c, constant("gas-coldest"), constant("gas-hottest"), "C")
    kelvin = temp_c + constant("celsius-zero")
    return 1e6 * constant("gas-constant") * kelvin / constant("standard-pressure")


def soda_gas_ml(mass_g: float, *, temp_c: float, with_acid: bool = True) -> float:
    """Carbon dioxide from baking soda, dry, at 101 325 Pa.

    V = m / M V_m; by heat alone half of it

    Parameters
    ----------
    mass_g : soda [g]
    temp_c : temperature of the gas [degC]
    with_acid : whether enough acid is there; without it two parts of soda give one of gas

    Returns
    -------
    volume [ml]

    Raises
    ------
    OutOfRangeError : mass_g is negative, or temp_c outside 0 to 250 degC

    Valid for
    ---------
    All soda reacted, no gas lost: an upper estimate.

    Source
    ------
    `ciaaw-atomic-weights`, stoichiometry

    Examples
    --------
    >>> round(soda_gas_ml(1.0, temp_c=25.0), 1)
    291.2
    """
    within("mass_g", mass_g, 0.0, math.inf, "g")
    share = 1.0 if with_acid else constant("soda-without-acid")
    return share * mass_g / constant("molar-soda") * molar_volume_ml(temp_c)


def powder_gas_ml(mass_g: float, *, available_pct: float, temp_c: float) -> float:
    """Carbon dioxide from baking powder by what it has available, dry, at 101 325 Pa.

    V = (p / 100) m / M V_m

    Parameters
    ----------
    mass_g : baking powder [g]
    available_pct : available carbon dioxide by mass, as its maker states it [%]
    temp_c : temperature of the gas [degC]

    Returns
    -------
    volume [ml]

    Raises
    ------
    OutOfRangeError : mass_g is negative, available_pct outside 0 to 100, temp_c outside 0 to 250

    Valid for
    ---------
    All of it released, no gas lost: an upper estimate.

    Source
    ------
    `ciaaw-atomic-weights`

    Examples
    --------
    >>> round(powder_gas_ml(1.0, available_pct=12.0, temp_c=25.0), 1)
    66.7
    """
    within("mass_g", mass_g, 0.0, math.inf, "g")
    within("available_pct", available_pct, 0.0, 100.0, "%")
    gas_g = mass_g * available_pct / 100
    return gas_g / constant("molar-carbon-dioxide") * molar_volume_ml(temp_c)
