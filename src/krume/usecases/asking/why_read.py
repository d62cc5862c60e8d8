"""Where a figure of a formula that was read comes from."""

from krume.base import as_text
from krume.design import Formula, Line
from krume.size import area_cm2, volume_ml
from krume.usecases.asking.answer import Explanation
from krume.usecases.asking.why import doubt_of, key_meant, line_input, source_rows

_BASES = {
    "weighed": "A mass is written in the line.",
    "measure": "A volume is written; the pantry's density makes a mass of it.",
    "count": "Pieces are written; the pantry's usual mass of one makes a mass of them.",
    "egg": "Eggs are counted; the shelled mass of one of that size makes a mass of them.",
    "ratio": "The line is tied to another line's mass.",
    "trade": "A kitchen's small measure is written; its usual mass is taken.",
    "unknown": "No mass is known for it.",
}


def explain_read(asked: str, formula: Formula) -> Explanation:
    """Explanation of the figure a person means: a line, the tin, the core."""
    known = _lines(formula) | _tin(formula) | _times(formula)
    return known[key_meant(asked, known)]


def _lines(formula: Formula) -> dict[str, Explanation]:
    """Each line by its number and, once, by its ingredient."""
    found = {f"line {line.number}": _line(f"line {line.number}", line) for line in formula.lines}
    for line in reversed(formula.lines):
        if line.ingredient is not None:
            found[line.ingredient] = _line(line.ingredient, line)
    return found


def _line(key: str, line: Line) -> Explanation:
    amount = "" if not isinstance(line.amount, int | float) else as_text(line.amount, 3)
    written = " ".join(part for part in (amount, line.unit) if part)
    how = _BASES.get(line.basis, line.basis)
    inputs = (line_input(line),)
    return Explanation(
        key=key,
        value=line.mass_g,
        unit="g",
        how=f"{how} Written: {written or line.read}.",
        status=line.status,
        low=None,
        high=None,
        doubt=doubt_of(inputs),
        inputs=inputs,
        sources=source_rows((line.source,)),
    )


def _tin(formula: Formula) -> dict[str, Explanation]:
    if formula.tin is None:
        return {}
    measures = (
        ("tin.volume_ml", volume_ml(formula.tin), "ml", "Up to the rim, by its inside measures."),
        ("tin.area_cm2", area_cm2(formula.tin), "cm2", "The floor, by its inside measures."),
    )
    return {
        key: Explanation(key, value, unit, how, "declared" if value is None else "derived")
        for key, value, unit, how in measures
    }


def _times(formula: Formula) -> dict[str, Explanation]:
    told = (
        ("core_c", formula.core_c, "°C", "The core the formula's own steps name."),
        ("bake_min", formula.bake_min, "min", "The minutes the formula's own steps name."),
        ("density_g_ml", formula.density_g_ml, "g/ml", "The density the formula names."),
    )
    return {
        key: Explanation(key, value, unit, how, "declared")
        for key, value, unit, how in told
        if value is not None
    }
