"""Share of a named ingredient over the finished food."""

import math

from krume.base import OutOfRangeError
from krume.properties import within


def declared_share_pct(part_g: float, *, total_g: float, evaporated_g: float = 0.0) -> float:
    """Share of an ingredient as used, over the food as it leaves the oven.

    share = part / (total - evaporated)

    Parameters
    ----------
    part_g : the ingredient as it goes in [g]
    total_g : everything that goes in [g]
    evaporated_g : water lost in the oven [g]

    Returns
    -------
    share [%], not rounded; above 100 the law wants grams used per 100 g instead

    Raises
    ------
    OutOfRangeError : a mass is negative, the part exceeds the total, or nothing is left

    Valid for
    ---------
    Foods that lose water when they are made.

    Source
    ------
    `eu-1169-2011`, article 22 and annex VIII

    Examples
    --------
    >>> declared_share_pct(100.0, total_g=460.0, evaporated_g=60.0)
    25.0
    """
    within("part", part_g, 0.0, total_g, "g")
    within("evaporated", evaporated_g, 0.0, math.inf, "g")
    finished = total_g - evaporated_g
    if finished <= 0:
        raise OutOfRangeError(
            f"{evaporated_g:g} g evaporated of {total_g:g} g leave no food.",
            field="evaporated", got=f"{evaporated_g:g}", want=f"less than {total_g:g} g",
        )  # fmt: skip
    return 100 * part_g / finished
