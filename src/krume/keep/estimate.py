"""Water activity of a component from its sugar and water: a remark with its doubt, no evidence."""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from krume.base import Interval, NotFoundError, OutOfRangeError
from krume.design import Formula, Line
from krume.pantry import Composition, Ingredient, ingredient
from krume.properties import constant, constants, norrish_activity, ross_activity

_HUNDRED = 100.0


def activity_estimate(formula: Formula, *, evaporated_g: float = 0.0) -> Interval | None:
    r"""Water activity of a formula: its sugars by Norrish, salt and alcohol by Ross's product.

    a_w = X_w exp(-(sum_i sqrt(-K_i) X_i)2) · X_w,salt · X_w,alcohol, all in the water that is left

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
    A remark only. Sugars whose kind is not known count as sucrose. Starch, protein and other
    solutes lower the true value; it is no measurement.

    Source
    ------
    `norrish-1966`, `ross-1975`

    Examples
    --------
    >>> from krume.design import read
    >>> found = activity_estimate(read("Syrup\n\n100 g sugar\n100 g water").value)
    >>> round(found.best, 3)
    0.935
    """
    if any(line.mass_g is None for line in formula.lines):
        return None
    goods = [(line.mass_g or 0.0, _goods(line)) for line in formula.lines]
    return activity_of(goods, evaporated_g=evaporated_g)


def activity_of(
    goods: Sequence[tuple[float, Ingredient | None]], *, evaporated_g: float = 0.0
) -> Interval | None:
    """The same of grams of goods together, as in a torte; None where too much is unknown."""
    limits = constants("keep_limits.csv")
    found = [_counted(mass, each) for mass, each in goods]
    total = math.fsum(one.mass_g for one in found)
    unknown = math.fsum(one.mass_g for one in found if not one.is_known)
    if total <= 0 or _HUNDRED * unknown > limits["activity-unknown-most"] * total:
        return None
    solution = _solution(found)
    unsaid = math.fsum(one.mass_g * one.unsaid_g for one in found) / _HUNDRED
    water = solution["water"] - evaporated_g
    most, best, least = (_activity(solution, unsaid * part, water) for part in (0.0, 0.5, 1.0))
    if most is None or best is None or least is None:
        return None
    doubt = limits["activity-doubt"]
    return Interval(max(0.0, least - doubt), best, min(1.0, most + doubt))


@dataclass(frozen=True, slots=True)
class _Counted:
    """A line's grams and composition; `unsaid_g` bounds sugars its row does not say [g/100 g]."""

    mass_g: float
    composition: Composition
    is_known: bool
    unsaid_g: float


def _counted(mass_g: float, goods: Ingredient | None) -> _Counted:
    composition = Composition() if goods is None else goods.composition
    has_sugars = composition.sugars_g is not None or composition.starch_g is not None
    if composition.water_g is None or has_sugars or goods is None:
        return _Counted(mass_g, composition, composition.water_g is not None and has_sugars, 0.0)
    bound = _sugar_most_g(goods)
    return _Counted(mass_g, composition, bound is not None, bound or 0.0)


def _sugar_most_g(goods: Ingredient) -> float | None:
    """Most sugars of goods whose row has none: little in starch and flour, all of a fruit's."""
    if goods.role == "fruit":
        net = goods.composition.carbohydrate_net_g
        return goods.composition.carbohydrate_g if net is None else net
    return constants("keep_limits.csv").get(f"{goods.role}-sugar-most")


def _goods(line: Line) -> Ingredient | None:
    try:
        return None if line.ingredient is None else ingredient(line.ingredient)
    except NotFoundError:
        return None


def _solution(found: list[_Counted]) -> dict[str, float]:
    """Grams of water, of sugars by their kind, of sodium and of alcohol."""

    def grams(share: Callable[[Composition], float]) -> float:
        return math.fsum(one.mass_g * share(one.composition) for one in found) / _HUNDRED

    hexose = grams(_hexose)
    return {
        "water": grams(lambda c: c.water_g or 0.0),
        "sucrose": grams(lambda c: c.sugars_g or 0.0) - hexose,
        "hexose": hexose,
        "sodium": grams(lambda c: (c.sodium_mg or 0.0) / 1000),
        "ethanol": grams(lambda c: c.alcohol_g or 0.0),
    }


def _hexose(composition: Composition) -> float:
    """Glucose and fructose, never more than all sugars; where they are not told apart, none."""
    told = (composition.glucose_g or 0.0) + (composition.fructose_g or 0.0)
    return min(told, composition.sugars_g or 0.0)


def _activity(solution: dict[str, float], unsaid_g: float, water_g: float) -> float | None:
    if water_g <= 0:
        return None
    sugars = {
        "sucrose": max(solution["sucrose"], 0.0) + unsaid_g,
        "hexose": max(solution["hexose"], 0.0),
    }
    try:
        sweet = norrish_activity(sugars, water_g=water_g)
    except OutOfRangeError:
        return None
    water = water_g / constant("molar-water")
    ions = 2 * solution["sodium"] / constant("molar-sodium")
    alcohol = solution["ethanol"] / constant("molar-ethanol")
    return ross_activity([sweet, water / (water + ions), water / (water + alcohol)])
