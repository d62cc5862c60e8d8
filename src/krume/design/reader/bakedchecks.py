"""The plan of a `Baked:` line, held against the batter it comes from."""

from collections.abc import Iterator

from krume.base import Option, Problem, as_text
from krume.design.formula import Formula
from krume.design.reader.classifying import Kind

_DUST_G = 0.05


def baked_agrees(formula: Formula, kinds: list[Kind]) -> Iterator[Problem]:
    """Ask where a cake is planned heavier than all its lines: baking only takes water away."""
    planned = formula.baked
    if planned is None or planned.mass_g is None or not formula.lines:
        return
    masses = [line.mass_g for line in formula.lines]
    total_g = sum(mass for mass in masses if mass is not None)
    if None in masses or planned.mass_g <= total_g + _DUST_G:
        return
    kind = next((kind for kind in kinds if kind.source == planned.read), None)
    if kind is None:
        return
    said, weighed = as_text(planned.mass_g, 1), as_text(total_g, 1)
    yield Problem(
        "baked-above-batter",
        f"line {kind.number}",
        planned.read.strip(),
        f"Baked it is planned at {said} g, and all the lines weigh {weighed} g: a cake gets "
        "lighter in the oven. Is the baked mass right, or does a line lack grams?",
        _options(planned.height_mm),
    )


def _options(height_mm: float | None) -> tuple[Option, ...]:
    if height_mm is None:
        return ()
    height = f"{as_text(height_mm, 1)} mm high"
    return (Option("the height is planned, the mass is not known", f"Baked: {height} (plan)"),)
