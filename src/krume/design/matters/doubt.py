"""How far off a line may be: a step of its scale, a usual slip, the spread of eggs by count."""

from dataclasses import dataclass

from krume.design.formula import Formula, Line
from krume.design.weighing import Weighing
from krume.evidence import figures


@dataclass(frozen=True, slots=True)
class Doubt:
    """What may be wrong with the mass of one line, an index into the formula's lines.

    `slip_g` is the largest of one step, the usual share of the line, and the half-width of a mass
    that is not settled; `slip_from` says which: `step`, `share`, `eggs` (by count) or `spread`.
    `step_g` is None where eggs are counted; `wide_g` is the doubt beside the step.
    """

    line: int
    mass_g: float
    step_g: float | None
    wide_g: float
    slip_g: float
    slip_from: str


def figure(key: str) -> float:
    """One number of the rule, from its row."""
    return figures("matters.csv")[key].value


def doubts(formula: Formula, weighing: Weighing) -> tuple[Doubt, ...]:
    """Doubt of each line that has a mass; its step is the coarsest of the bowls it goes into."""
    steps: dict[int, float] = {}
    for row in weighing.rows:
        if row.kind == "add" and row.line is not None:
            steps[row.line] = max(row.step_g, steps.get(row.line, 0.0))
    return tuple(
        _doubt(index, line, line.mass_g, steps.get(index, weighing.scale_g))
        for index, line in enumerate(formula.lines)
        if line.mass_g is not None and line.mass_g > 0
    )


def _doubt(index: int, line: Line, mass_g: float, step_g: float) -> Doubt:
    spread_g = 0.0 if line.mass_interval_g is None else line.mass_interval_g.half_width
    if line.basis == "egg" and spread_g > 0:
        return Doubt(index, mass_g, None, spread_g, spread_g, "eggs")
    share_g = mass_g * figure("slip-share") / 100
    wide_g, wide_from = max((share_g, "share"), (spread_g, "spread"))
    slip_g, slip_from = max((wide_g, wide_from), (step_g, "step"))
    return Doubt(index, mass_g, step_g, wide_g, slip_g, slip_from)
