"""Where a figure of a sized formula comes from."""

from krume.design import Formula
from krume.usecases.asking.answer import ExplainInput, Explanation
from krume.usecases.asking.why import (
    doubt_of,
    key_meant,
    line_input,
    lines_with_sources,
    source_rows,
)
from krume.usecases.formula.size_result import SizeResult

_BATTER = "batter mass over its density gives its volume, the tin's inside measures give its depth"
_HOW = {
    "factor.by_volume": ("", "Volume of the tins wanted over the volume of the formula's own tin."),
    "factor.by_area": ("", "Floor of the tins wanted over the floor of the formula's own tin."),
    "density.value_g_ml": ("g/ml", "The batter's density: the formula's own, or its family's."),
    "own_depth_cm": ("cm", f"In the formula's own tin: {_BATTER}."),
    "wanted_depth_cm": ("cm", "The depth asked for, else the depth in the formula's own tin."),
    "wanted_factor": ("", "What would reach the wanted depth exactly, eggs not yet whole."),
}


def explain_size(asked: str, formula: Formula, result: SizeResult) -> Explanation:
    """Explanation of the figure a person means."""
    values = _values(result)
    key = key_meant(asked, values)
    by_depth = "depth" in key or "fill" in key or key == "wanted_factor"
    inputs = _inputs(key, formula, by_depth=by_depth)
    density = result.density
    unit, how = _HOW.get(key) or _option_how(key)
    return Explanation(
        key=key,
        value=values[key],
        unit=unit,
        how=how if values[key] is not None else f"It is not known. {how}",
        status=density.status if key.startswith("density") else "derived",
        doubt=doubt_of(inputs),
        inputs=inputs,
        sources=(
            *lines_with_sources(formula, (i.line for i in inputs)),
            *source_rows((density.source,) if by_depth or key.startswith("density") else ()),
        ),
    )


def _values(result: SizeResult) -> dict[str, float | None]:
    values: dict[str, float | None] = {
        "factor.by_volume": result.factor.by_volume,
        "factor.by_area": result.factor.by_area,
        "density.value_g_ml": result.density.value_g_ml,
        "own_depth_cm": result.own_depth_cm,
        "wanted_depth_cm": result.wanted_depth_cm,
        "wanted_factor": result.wanted_factor,
    }
    for number, option in enumerate(result.options, start=1):
        values |= {
            f"options.{number}.factor": option.factor,
            f"options.{number}.depth_cm": option.depth_cm,
            f"options.{number}.fill": option.fill,
            f"options.{number}.total_g": option.total_g,
            f"options.{number}.make_up_g": option.eggs.make_up_g,
        }
    return values


def _option_how(key: str) -> tuple[str, str]:
    return {
        "factor": ("", "Chosen so that the eggs come whole, or that the wanted depth is met."),
        "depth_cm": ("cm", f"In the tins wanted: {_BATTER}."),
        "fill": ("", "Batter volume over the volume of the tins, before it rises."),
        "total_g": ("g", "The masses of all lines of this option, added up."),
        "make_up_g": ("g", "Egg wanted, less the whole eggs: what one more egg gives."),
    }[key.rpartition(".")[2]]


def _inputs(key: str, formula: Formula, *, by_depth: bool) -> tuple[ExplainInput, ...]:
    eggs_only = key.endswith("make_up_g")
    if not (by_depth or eggs_only or key.endswith("total_g")):
        return ()
    return tuple(line_input(line) for line in formula.lines if line.basis == "egg" or not eggs_only)
