"""What a swap takes away and brings, reckoned from the packed compositions."""

from collections.abc import Mapping, Sequence
from typing import Any

from krume.pantry import ingredient


def fat_g(key: str, mass_g: float) -> float | None:
    """Grams of fat that a mass of an ingredient brings; None where its fat is not known."""
    fat = ingredient(key).composition.fat_g
    return None if fat is None else fat * mass_g / 100


def fat_gap_g(old: str, new: str, mass_g: float) -> float:
    """Grams of fat missing after one is taken for the other, gram for gram."""
    before, after = fat_g(old, mass_g), fat_g(new, mass_g)
    if before is None or after is None:
        raise ValueError(f"the fat of {old} or {new} is not known")
    return before - after


def by_ingredient(lines: Sequence[Mapping[str, Any]]) -> dict[tuple[str, str | None], float]:
    """Grams by ingredient and part; the lines of one ingredient together."""
    sums: dict[tuple[str, str | None], float] = {}
    for line in lines:
        key = (line["ingredient"], line.get("part"))
        sums[key] = sums.get(key, 0.0) + line["mass_g"]
    return sums
