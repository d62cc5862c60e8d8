"""What the page needs to work out a slip without the network: lines, bowls, the scale, limits."""

from krume.design import Formula, Slip, bowls_of, egg_lines, role_of, slip_figure
from krume.evidence import figures
from krume.usecases.asking.as_json import Json

_FLOURS = ("flour", "starch")


def ground_of(formula: Formula, step_g: float) -> dict[str, Json]:
    """The ground the closed forms stand on, as plain values."""
    eggs = {egg.line: egg for egg in egg_lines(formula)}
    lines: list[Json] = []
    for number, line in enumerate(formula.lines):
        egg = eggs.get(number)
        lines.append(
            {
                "name": line.name,
                "plan_g": line.mass_g,
                "is_egg": role_of(line) == "egg",
                "count": None if egg is None else egg.count,
                "each_g": None if egg is None else egg.each_g,
                "part": None if egg is None else egg.part,
            }
        )
    return {
        "lines": lines,
        "bowls": _bowls(formula, step_g),
        "step_g": step_g,
        "factor_most": slip_figure("factor-most"),
        "jar_most": slip_figure("jar-most"),
        "error_most": figures("tins.csv")["line-error-most"].value,
    }


def _bowls(formula: Formula, step_g: float) -> list[Json]:
    empty = Slip(formula, tuple(None for _ in formula.lines), step_g=step_g)
    return [
        {
            "key": bowl.key,
            "is_blend": bowl.is_blend,
            "items": [
                {
                    "line": item.line,
                    "plan_g": item.plan_g,
                    "is_bulk": item.is_bulk,
                    "is_flour": item.role in _FLOURS,
                }
                for item in bowl.items
            ],
        }
        for bowl in bowls_of(empty).all
    ]
