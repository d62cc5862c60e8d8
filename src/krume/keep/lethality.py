"""Lethality of a heating, integrated exactly between straight readings."""

import math
from collections.abc import Sequence
from itertools import pairwise

from krume.base import InputError, OutOfRangeError


def lethality_min(
    times_min: Sequence[float], temps_c: Sequence[float], *, reference_c: float, z_k: float
) -> float:
    """Minutes at a reference temperature that kill as much as a whole heating.

    F = int 10^((T - Tref) / z) dt, exact for straight lines between the readings

    Parameters
    ----------
    times_min : time of each reading, rising [min]
    temps_c : temperature of each reading at the coldest place [degC]
    reference_c : Tref [degC]
    z_k : z, rise that kills ten times as fast [K]

    Returns
    -------
    equivalent time at the reference temperature [min]

    Raises
    ------
    InputError : the lists differ in length, or hold fewer than two readings
    OutOfRangeError : times do not rise, z_k is not above 0, or a temperature is outside -50 to 250

    Valid for
    ---------
    Straight death lines; a lag before them makes the true kill smaller.

    Source
    ------
    `mathematics`, integral of the D-z model

    Examples
    --------
    >>> round(lethality_min([0.0, 10.0], [50.0, 70.0], reference_c=60.0, z_k=10.0), 3)
    21.498
    """
    check_readings(times_min, temps_c)
    if not 0 < z_k < math.inf:
        raise OutOfRangeError(
            f"z is {z_k:g} K; type the rise in K that kills ten times as fast, for example 4.7.",
            field="z", got=f"{z_k:g}", want="more than 0",
        )  # fmt: skip
    readings = list(zip(times_min, temps_c, strict=True))
    return math.fsum(
        _segment(t1 - t0, (a - reference_c) / z_k, (b - reference_c) / z_k)
        for (t0, a), (t1, b) in pairwise(readings)
    )


def _segment(minutes: float, start: float, end: float) -> float:
    """Integral of 10^x over a straight run of x, without cancelling where x hardly moves."""
    run = (end - start) * math.log(10)
    mean = math.expm1(run) / run if run else 1.0
    return float(minutes * 10.0**start * mean)


def check_readings(times: Sequence[float], temps_c: Sequence[float]) -> None:
    """Refuse readings that are no log: too few, of unequal number, or not in order."""
    if len(times) != len(temps_c) or len(times) < 2:
        raise InputError(
            f"{len(times)} times and {len(temps_c)} temperatures: a log needs one temperature for "
            "each time, and two readings or more.",
            field="temps", got=str(len(temps_c)), want=f"{max(len(times), 2)} temperatures",
        )  # fmt: skip
    for before, after in pairwise(times):
        if not before < after:
            raise OutOfRangeError(
                f"After {before:g} comes {after:g}: the times of a log rise.",
                field="times", got=f"{after:g}", want=f"more than {before:g}",
            )  # fmt: skip
    for temp in temps_c:
        if not -50 <= temp <= 250:
            raise OutOfRangeError(
                f"{temp:g} C is no temperature of a food. Type a reading from -50 to 250 C.",
                field="temps", got=f"{temp:g}", want="-50 to 250",
            )  # fmt: skip
