"""Figures rounded so that a column adds up as it is printed."""

from collections.abc import Sequence


def apportioned(values: Sequence[float], *, total: float, digits: int = 1) -> list[float]:
    """Values rounded to `digits` so that they add up to the rounded total.

    Each is rounded down, and the steps that are then missing go to the largest remainders, the
    earlier first.

    >>> apportioned([412.35, 412.35], total=824.7)
    [412.4, 412.3]
    """
    scale = 10**digits
    floors = [int(value * scale + 1e-9) for value in values]
    missing = round(round(total, digits) * scale) - sum(floors)
    rest = sorted(range(len(values)), key=lambda i: (floors[i] - values[i] * scale, i))
    for index in rest[: max(0, missing)]:
        floors[index] += 1
    return [floor / scale for floor in floors]
