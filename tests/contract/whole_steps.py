"""Rounding to a scale's steps and counting eggs, the long way."""

from collections.abc import Sequence
from itertools import product
from math import ceil, floor

SLACK = 1e-9


def worst_error(masses_g: Sequence[float], rounded_g: Sequence[float]) -> float:
    """The largest change of any line, as a share of that line."""
    return max(abs(r / m - 1) for m, r in zip(masses_g, rounded_g, strict=True) if m)


def counted_out(masses_g: Sequence[float], *, step_g: float, steps: int, reach: int = 3) -> float:
    """The least worst error of all roundings with so many steps in all, each one looked at."""
    near = [
        range(max(0, floor(m / step_g) - reach), ceil(m / step_g) + reach + 1) for m in masses_g
    ]
    return min(
        worst_error(masses_g, [k * step_g for k in row])
        for row in product(*near)
        if sum(row) == steps
    )


def squeezed(masses_g: Sequence[float], *, step_g: float, steps: int) -> float:
    """As `counted_out` for many lines: the least bound within which the total can be met."""
    bounds = sorted(
        {
            abs(k * step_g / m - 1)
            for m in masses_g
            for k in range(2 * ceil(m / step_g) + 2)
        }
    )  # fmt: skip
    for bound in bounds:
        low = [ceil(m * (1 - bound) / step_g - SLACK) for m in masses_g]
        high = [floor(m * (1 + bound) / step_g + SLACK) for m in masses_g]
        possible = all(a <= b for a, b in zip(low, high, strict=True))
        if possible and sum(low) <= steps <= sum(high):
            return bound
    raise ValueError("no rounding has that total")


def fewest_eggs(
    *, whole: int, yolk_g: float, white_g: float, yolk_of_one_g: float, white_of_one_g: float
) -> int:
    """The fewest eggs of one size that give whole ones, yolk and white, tried in turn."""
    parted = 0
    while parted * yolk_of_one_g < yolk_g - SLACK or parted * white_of_one_g < white_g - SLACK:
        parted += 1
    return whole + parted
