"""The lines of a formula in the order of weighing, as a slip names them."""

from collections import Counter
from dataclasses import dataclass

from krume.base import as_text
from krume.design import BOWLS, Formula, weigh_out
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.read import formula_of
from krume.usecases.formula.size import scale_step_g


@dataclass(frozen=True, slots=True)
class SlipRow:
    """A line that is weighed: `said` is what to call it, `field` a short word for a form.

    `planned_g` is all of it, for every bowl it goes into; None is not known.
    """

    field: str
    said: str
    name: str
    part: str | None
    bowl: str
    planned_g: float | None


def slip_rows(name: str, asked: Asked) -> tuple[SlipRow, ...]:
    """Lines of a formula in the order of weighing, each once; what is not weighed comes last."""
    formula = formula_of(name, asked).formula
    bowls: dict[int, str] = {}
    for row in weigh_out(formula, scale_g=scale_step_g(asked)).rows:
        if row.line is not None:
            bowls.setdefault(row.line, BOWLS[row.bowl])
    bowls |= {at: "" for at in range(len(formula.lines)) if at not in bowls}
    alike = Counter(line.number for line in formula.lines)
    return tuple(_row(formula, at, bowl, alike) for at, bowl in bowls.items())


def _row(formula: Formula, at: int, bowl: str, alike: Counter[int]) -> SlipRow:
    line = formula.lines[at]
    is_one = alike[line.number] == 1
    said = f"line {line.number}" if is_one else f"{line.name} {line.part or ''}".strip()
    field = f"g{line.number}" if is_one else f"g{line.number}-{as_text(at)}"
    return SlipRow(field, said, line.name, line.part, bowl, line.mass_g)
