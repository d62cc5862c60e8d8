"""Where a figure of a balance comes from."""

from dataclasses import replace

from krume.base import Interval, as_text
from krume.design import Balance, Formula, Line, balance, band
from krume.usecases.asking.answer import ExplainInput, Explanation
from krume.usecases.asking.why import (
    doubt_of,
    key_meant,
    line_input,
    lines_with_sources,
    source_rows,
)

_NUDGE = 1.01
"""A line that is made this much heavier shows whether a figure stands on it."""


def figures_of(found: Balance) -> dict[str, float | Interval | None]:
    """Figures of a balance by the keys of their bands."""
    return {"sugar_per_egg": found.sugar_per_egg, **found.percent, **found.figures}


def _by_path(found: Balance) -> dict[str, float | Interval | None]:
    """Figures of a balance by their place in the answer."""
    per_egg = found.per_egg
    return {
        "total_g": found.total_g,
        "flour_g": found.flour_g,
        "basis_g": found.basis_g,
        **{f"percent.{key}": value for key, value in found.percent.items()},
        "ratios.sugar_per_egg": found.sugar_per_egg,
        "ratios.nut_share_pct": found.nut_share_pct,
        "per_egg.egg_g": None if per_egg is None else per_egg.egg_g,
        "per_egg.flour_g": None if per_egg is None else per_egg.flour_g,
        "per_egg.sugar_g": None if per_egg is None else per_egg.sugar_g,
        **{f"figures.{key}": value for key, value in found.figures.items()},
    }


def explain_balance(asked: str, formula: Formula, found: Balance) -> Explanation:
    """Explanation of the figure a person means."""
    values = _by_path(found)
    key = key_meant(asked, values)
    inputs = _inputs(key, formula, values[key])
    usual = None if found.family is None else band(found.family, key.rpartition(".")[2])
    return Explanation(
        key=key,
        value=values[key],
        unit=_unit(key) if usual is None else usual.unit,
        how=_how(key, found, values[key]),
        status="derived",
        low=None if usual is None else usual.low,
        high=None if usual is None else usual.high,
        doubt=doubt_of(inputs),
        inputs=inputs,
        sources=(
            *lines_with_sources(formula, (i.line for i in inputs)),
            *source_rows(() if usual is None else (usual.source,)),
        ),
    )


def _inputs(
    key: str, formula: Formula, before: float | Interval | None
) -> tuple[ExplainInput, ...]:
    """The lines a figure stands on: those whose mass moves it; of an unknown one, those without."""
    if before is None:
        return tuple(line_input(line) for line in formula.lines if line.mass_g is None)
    return tuple(
        line_input(line)
        for index, line in enumerate(formula.lines)
        if line.mass_g and _by_path(balance(_nudged(formula, index, line)))[key] != before
    )


def _nudged(formula: Formula, index: int, line: Line) -> Formula:
    spread = line.mass_interval_g
    heavier = replace(
        line,
        mass_g=None if line.mass_g is None else line.mass_g * _NUDGE,
        mass_interval_g=None if spread is None else spread.times(_NUDGE),
    )
    lines = (*formula.lines[:index], heavier, *formula.lines[index + 1 :])
    return replace(formula, lines=lines, family=balance(formula).family)


def _unit(key: str) -> str:
    if key.startswith("percent.") or key.endswith("_pct"):
        return "%"
    return "g" if key.endswith("_g") else ""


def _how(key: str, found: Balance, value: float | Interval | None) -> str:
    if value is None:
        return "It is not known: a mass or a class it needs is missing, or its basis is none."
    name = key.rpartition(".")[2]
    if key.startswith("percent."):
        return _percent_how(name, found, value)
    fixed = {
        "total_g": "The masses of all lines, added up.",
        "flour_g": "The masses of flours and starches, added up; binders and nuts are not in it.",
        "basis_g": f"What 100 is: {found.basis}.",
        "sugar_per_egg": "Grams of sugar over grams of shelled egg.",
        "nut_share_pct": "Nut over flour and nut together, times 100.",
        "egg_g": "Shelled mass of one egg of the size at hand.",
    }
    if key.startswith("per_egg.") and name != "egg_g":
        return "Its grams over the grams of egg, times the shelled mass of one egg."
    return fixed.get(name, f"By the rule of the family {found.family_label}.")


def _percent_how(name: str, found: Balance, value: float | Interval) -> str:
    of_flour = name in ("starch", "sweet_rice")
    whole = found.flour_g if of_flour else found.basis_g
    word = "flour" if of_flour else found.basis
    if not isinstance(value, float) or not isinstance(whole, float):
        return f"Its grams over the grams of {word}, times 100; what is not settled gives a range."
    part = as_text(value * whole / 100, 2)
    return f"{part} g over {as_text(whole, 2)} g of {word}, times 100."
