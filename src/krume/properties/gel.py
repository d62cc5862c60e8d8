"""Gelatine of another strength, by the two rules in use, which disagree."""

import math
from dataclasses import dataclass

from krume.base import OutOfRangeError, as_text
from krume.properties.constant_table import constant


@dataclass(frozen=True, slots=True)
class BloomSwap:
    """Gelatine to take instead, by the square-root rule and by the ratio rule [g]."""

    by_root_g: float
    by_ratio_g: float


def bloom_swap(mass_g: float, *, from_bloom: float, to_bloom: float) -> BloomSwap:
    """Mass of a gelatine of another bloom number for the same firmness.

    by root: m sqrt(B1 / B2) · by ratio: m B1 / B2

    Parameters
    ----------
    mass_g : m, as the formula has it [g]
    from_bloom : B1, strength the formula was written for [bloom]
    to_bloom : B2, strength at hand [bloom]

    Returns
    -------
    both masses [g]

    Raises
    ------
    OutOfRangeError : the mass is negative, or a bloom number outside 50 to 350

    Valid for
    ---------
    Powder and sheet gelatine of 50 to 350 bloom. Both rules are in use and disagree.

    Source
    ------
    `common-practice`

    Examples
    --------
    >>> bloom_swap(8.0, from_bloom=200.0, to_bloom=160.0).by_ratio_g
    10.0
    """
    if not 0 <= mass_g < math.inf:
        raise OutOfRangeError(
            f"mass is {mass_g:g} g; type 0 g or more.",
            field="mass", got=f"{mass_g:g}", want="0 or more",
        )  # fmt: skip
    low, high = constant("bloom-least"), constant("bloom-most")
    want = f"{as_text(low)} to {as_text(high)}"
    for name, bloom in (("from", from_bloom), ("to", to_bloom)):
        if not low <= bloom <= high:
            raise OutOfRangeError(
                f"{name} is {bloom:g} bloom; gelatine has {want}. Its number stands on the packet.",
                field=name, got=f"{bloom:g}", want=want,
            )  # fmt: skip
    ratio = from_bloom / to_bloom
    return BloomSwap(mass_g * math.sqrt(ratio), mass_g * ratio)
