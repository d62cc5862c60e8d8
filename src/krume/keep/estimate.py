"""Water activity of a component from its sugar and water: a remark with its doubt, no evidence."""

import math

from krume.base import Interval, NotFoundError, OutOfRangeError
from krume.design import Formula, Line
from krume.pantry import Composition, ingredient
from krume.properties import constants, norrish_activity

_HUNDRED = 100.0


def activity_estimate(formula: Formula, *, evaporated_g: float = 0.0) -> Interval | None:
    r"""Water activity of a formula, its sugars taken as sucrose in all of its water.

    ln(a_w / X_w) = K X_s2 over the sugar and the water that is left

    Parameters
    ----------
    formula : lines with their masses and their rows of the pantry
    evaporated_g : water lost in the oven [g]

    Returns
    -------
    water activity with its doubt, 0 to 1; None where too much is unknown

    Raises
    ------
    OutOfRangeError : never; what lies outside the form is None

    Valid for
    ---------
    A remark only. Starch, protein and other solutes lower the true value; it is no measurement.

    Source
    ------
    `norrish-1966`, one solute

    Examples
    --------
    >>> from krume.design import read
    >>> found = activity_estimate(read("Syrup\n\n100 g sugar\n100 g water").value)
    >>> round(found.best, 3)
    0.935
    """
    limits = constants("keep_limits.csv")
    masses = [line.mass_g for line in formula.lines if line.mass_g is not None]
    total = math.fsum(masses)
    if len(masses) < len(formula.lines) or total <= 0:
        return None
    found = [(line.mass_g or 0.0, _composition(line)) for line in formula.lines]
    unknown = math.fsum(mass for mass, c in found if not _is_known(c))
    if _HUNDRED * unknown > limits["activity-unknown-most"] * total:
        return None
    water = math.fsum(mass * (c.water_g or 0.0) for mass, c in found) / _HUNDRED - evaporated_g
    sugar = math.fsum(mass * (c.sugars_g or 0.0) for mass, c in found) / _HUNDRED
    return _with_doubt(sugar, water, limits["activity-doubt"])


def _composition(line: Line) -> Composition:
    try:
        return Composition() if line.ingredient is None else ingredient(line.ingredient).composition
    except NotFoundError:
        return Composition()


def _is_known(composition: Composition) -> bool:
    """Whether water and sugars are known; a row without carbohydrate needs no sugars."""
    has_sugars = composition.sugars_g is not None or composition.starch_g is not None
    return composition.water_g is not None and has_sugars


def _with_doubt(sugar_g: float, water_g: float, doubt: float) -> Interval | None:
    if water_g <= 0:
        return None
    try:
        best = norrish_activity({"sucrose": sugar_g}, water_g=water_g)
    except OutOfRangeError:
        return None
    return Interval(max(0.0, best - doubt), best, min(1.0, best + doubt))
