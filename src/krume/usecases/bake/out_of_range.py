"""What no bake can be: asked at the line or the option it stands in, with what is needed."""

from krume.bake import Batter, Oven, outside
from krume.base import OutOfRangeError, Problem, as_text
from krume.design import Formula, Line
from krume.size import Tin

_OPTIONS = {
    "depth_cm": "--tin", "count": "--tin", "diameter_cm": "--tin", "length_cm": "--tin",
    "width_cm": "--tin", "height_cm": "--tin", "hole_cm": "--tin", "tin": "--tin",
    "temp_c": "--oven", "heat": "--oven", "altitude_m": "--altitude", "door_min": "--door",
    "warming_from_c": "--cold-start", "jacket": "--jacket", "under": "--under", "rack": "--rack",
}  # fmt: skip
_KEYS = {"density_g_ml": ("density", "dichte"), "core_c": ("core", "kern")}


def out_of_range(formula: Formula, batter: Batter, tin: Tin, oven: Oven) -> tuple[Problem, ...]:
    """What lies outside all that can be baked, at its line or option; nothing where all can be."""
    try:
        outside(batter, tin, oven)
    except OutOfRangeError as error:
        where, ask = _place(formula, error.field), _words(error, batter)
        return (Problem("out-of-range", where, error.got, ask),)
    return ()


def _words(error: OutOfRangeError, batter: Batter) -> str:
    if error.field == "water":
        pct = as_text(100 * batter.water, 1)
        return (
            f"{pct} % of this batter is water: nothing in it can steam and set. Is a line missing, "
            "eggs or milk? A batter has 2 % or more."
        )
    if error.field == "sugar":
        pct = as_text(100 * batter.sugar_share, 0)
        return (
            f"{pct} % of its sugar and water is sugar: such a syrup is not known to the model, up "
            "to 90 % is. Is a line missing, eggs or milk?"
        )
    if error.field == "depth_cm":
        return f"{error.message} Name a tin that fits the batter."
    return error.message


def _place(formula: Formula, field: str) -> str:
    """The option, the key line or the ingredient line that a figure of the batter stands on."""
    if field in _OPTIONS:
        return _OPTIONS[field]
    for line in formula.source_lines:
        word = line.text.strip().casefold().partition(":")[0]
        if line.kind == "key" and word.startswith(_KEYS.get(field, ("\n",))):
            return f"line {line.number}"
    if field == "water" and formula.lines:
        return f"after line {formula.lines[-1].number}"
    heaviest = max(formula.lines, key=_mass_g, default=None)
    return "line 1" if heaviest is None else f"line {heaviest.number}"


def _mass_g(line: Line) -> float:
    return line.mass_g or 0.0
