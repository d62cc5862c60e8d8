"""A formula made smaller or larger: every gram and every counted piece by one factor."""

from dataclasses import replace

from krume.base import Interval, OutOfRangeError
from krume.design.formula import Formula, Line, Use

_PARTS = {0.5: "half a batch", 0.25: "a quarter of a batch", 0.75: "three quarters of a batch"}


def scaled(formula: Formula, factor: float) -> Formula:
    r"""The formula times a factor above 0; what its plan said of the whole bake is left out.

    >>> from krume.design.reader import read
    >>> half = scaled(read("Cream\n\n400 g whole milk\n80 g caster sugar\n").value, 0.5)
    >>> half.name, [line.mass_g for line in half.lines]
    ('Cream, half a batch', [200.0, 40.0])
    """
    if not 0 < factor < float("inf"):
        message = f"A formula cannot be made {factor:g} times. Type a factor above 0."
        raise OutOfRangeError(message, field="factor", got=f"{factor:g}", want="above 0")
    if factor == 1:
        return formula
    return replace(
        formula,
        name=None if formula.name is None else f"{formula.name}, {part_named(factor)}",
        lines=tuple(_line(line, factor) for line in formula.lines),
        uses=tuple(_use(use, factor) for use in formula.uses),
        baked=None,
    )


def part_named(factor: float) -> str:
    """How much of a batch a factor is, in words.

    >>> part_named(0.5), part_named(1.2)
    ('half a batch', '1.2 batches')
    """
    return _PARTS.get(factor, f"{factor:g} batches" if factor > 1 else f"{factor:g} of a batch")


def _line(line: Line, factor: float) -> Line:
    amount = line.amount
    span = line.mass_interval_g
    return replace(
        line,
        amount=amount.times(factor) if isinstance(amount, Interval) else _times(amount, factor),
        mass_g=_times(line.mass_g, factor),
        mass_interval_g=None if span is None else span.times(factor),
    )


def _use(use: Use, factor: float) -> Use:
    return replace(use, mass_g=_times(use.mass_g, factor))


def _times(value: float | None, factor: float) -> float | None:
    return None if value is None else value * factor
