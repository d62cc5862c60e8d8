"""What a custard's heating would kill in plain yolk: information with its limits, no promise."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from krume.keep.lethality import check_readings, lethality_min
from krume.properties import constants

_TABLE = "keep_egg_heat.csv"


@dataclass(frozen=True, slots=True)
class EggHeat:
    """Minutes at the reference that kill as much, and powers of ten; `is_more` is beyond those.

    `old_table_ratio` is how many times the heat of the old table for liquid sugared yolk.
    """

    minutes: float
    log_reduction_count: float
    is_more: bool
    old_table_ratio: float
    reference_c: float


def egg_heat(times_min: Sequence[float], temps_c: Sequence[float]) -> EggHeat:
    """Kill of Salmonella in plain yolk by a heating, counted only where it was measured.

    F = int 10^((T - Tref) / z) dt between 58 and 66 degC; hotter counts as 66 degC · n = F / D

    Parameters
    ----------
    times_min : time of each reading, rising [min]
    temps_c : temperature of each reading at the coldest place [degC]

    Returns
    -------
    minutes at 60 degC [min], and powers of ten killed, no more than are told

    Raises
    ------
    InputError : the lists differ in length, or hold fewer than two readings
    OutOfRangeError : times do not rise, or a temperature is outside -50 to 250 degC

    Valid for
    ---------
    Plain yolk, after the lag. Sugar, salt and starch protect: the true kill is smaller.

    Source
    ------
    `food-microbiology-2011`, D and z from 58 to 66 degC

    Examples
    --------
    >>> round(egg_heat([0.0, 1.0], [60.0, 60.0]).minutes, 3)
    1.0
    """
    check_readings(times_min, temps_c)
    limit = constants(_TABLE)
    reference, z = limit["reference"], limit["z"]
    low, high = limit["counted-from"], limit["counted-to"]
    minutes = sum(
        lethality_min(
            [0.0, run], [min(a, high), min(b, high)], reference_c=reference, z_k=z
        )
        for run, a, b in _counted(times_min, temps_c, (low, high))
    )  # fmt: skip
    logs = minutes / limit["d-reference"]
    old = lethality_min(
        [0.0, limit["old-table-min"]], [limit["old-table-temp"]] * 2, reference_c=reference, z_k=z
    )
    most = limit["told-most"]
    return EggHeat(minutes, min(logs, most), logs > most, minutes / old, reference)


def _counted(
    times_min: Sequence[float], temps_c: Sequence[float], edges_c: tuple[float, float]
) -> Iterator[tuple[float, float, float]]:
    """Straight runs (minutes, from, to), cut at both edges; those below the first are left out."""
    for (t0, a), (t1, b) in pairwise(zip(times_min, temps_c, strict=True)):
        cuts = sorted(
            {0.0, 1.0, *((e - a) / (b - a) for e in edges_c if min(a, b) < e < max(a, b))}
        )
        for begin, end in pairwise(cuts):
            first, last = a + begin * (b - a), a + end * (b - a)
            if (first + last) / 2 >= edges_c[0]:
                yield (end - begin) * (t1 - t0), first, last
