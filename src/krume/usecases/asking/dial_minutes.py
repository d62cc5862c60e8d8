"""An oven temperature that is not settled, in minutes: what each reading would make of the bake."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING

from krume.base import Infeasible, Notice, Problem, as_text
from krume.design import Formula, balance, family, read_oven
from krume.properties import constants
from krume.size import Tin, area_cm2, tin_text

if TYPE_CHECKING:
    from krume.bake import Batter, Oven

_CODES = ("oven-temp-conflict", "oven-conflict", "oven-unit", "oven-word")
_SAME_MIN = 1.0
_KEPT = 256


@dataclass(frozen=True, slots=True)
class ConflictMinutes:
    """Likely minutes of one reading of the oven; None is a bake that never ends or cannot be."""

    temp_c: float
    fan: bool
    minutes: float | None


def conflict_minutes(
    formula: Formula, tin: Tin | None, readings: Sequence[tuple[float, bool]]
) -> tuple[ConflictMinutes, ...]:
    """The likely bake at each reading (°C, fan); empty where batter or tin are not known.

    A usual oven is taken: which one stands here is not asked before the temperature is settled.
    """
    from krume.bake import batter_of

    place = tin or formula.tin
    known = balance(formula).family
    planned = None if known is None else family(known)
    density = formula.density_g_ml or (None if planned is None else planned.sg_plan)
    if place is None or area_cm2(place) is None or density is None or planned is None:
        return ()
    if not planned.has_batter_in_tin:
        return ()
    batter = batter_of(formula, family=known, density_g_ml=density, density_measured=False).value
    if batter is None:
        return ()
    return tuple(
        ConflictMinutes(temp_c, fan, _likely(batter, place, temp_c, fan))
        for temp_c, fan in readings
    )


@lru_cache(maxsize=_KEPT)
def _likely(batter: "Batter", tin: Tin, temp_c: float, fan: bool) -> float | None:  # noqa: FBT001
    from krume.bake import Oven, likeliest

    bake = likeliest(batter, tin, Oven(temp_c, fan=fan))
    return None if isinstance(bake, Infeasible) else bake.minutes


def with_minutes(problems: tuple[Problem, ...], formula: Formula) -> tuple[Problem, ...]:
    """Questions about the oven's temperature with the minutes of each answer behind the question.

    Options stay as they are.
    """
    if not any(problem.code in _CODES for problem in problems):
        return problems
    return tuple(_told(problem, formula) for problem in problems)


def beside_asked(problems: tuple[Problem, ...], asked: tuple[Problem, ...]) -> tuple[Problem, ...]:
    """Problems of a place without a tin or oven that is missing only as its line is asked about."""
    codes = {problem.code for problem in asked}
    missing = {"oven-missing"} if codes & set(_CODES) else set()
    if any(code.startswith("tin-") for code in codes):
        missing.add("tin-missing")
    return tuple(problem for problem in problems if problem.code not in missing)


def _told(problem: Problem, formula: Formula) -> Problem:
    if problem.code not in _CODES:
        return problem
    readings = [pair for option in problem.options if (pair := _reading(option.line))]
    found = conflict_minutes(formula, None, readings)
    if len(found) < 2 or formula.tin is None:
        return problem
    said = conflict_words(found, formula.tin)
    return replace(problem, ask=f"{problem.ask} {said}")


def _reading(line: str) -> tuple[float, bool] | None:
    """The one temperature an option would write; a range is no answer to bake by."""
    oven = read_oven(line).value
    if oven is None or oven.temp_c is None or oven.temp_interval_c is not None:
        return None
    return oven.temp_c, bool(oven.fan)


def conflict_words(found: Sequence[ConflictMinutes], tin: Tin) -> str:
    """What the readings would make of the bake, in words."""
    place = f"In {tin_text(tin)}"
    minutes = [each.minutes for each in found if each.minutes is not None]
    if len(minutes) == len(found) and max(minutes) - min(minutes) < _SAME_MIN:
        return f"{place} that makes no minute of difference."
    said = [f"{_bake(each)} at {as_text(each.temp_c, 0)} °C" for each in found]
    last = said.pop()
    return f"{place} the model bakes it {', '.join(said)} or {last}."


def _bake(each: ConflictMinutes) -> str:
    if each.minutes is None:
        return "never"
    return f"{as_text(max(1.0, round(each.minutes)), 0)} min"


def fan_notices(batter: "Batter", tin: Tin, oven: "Oven") -> tuple[Notice, ...]:
    """What the fan does by the model, beside the rule of thumb for setting it lower."""
    from krume.bake import likeliest

    rows = constants("ovens.csv")
    less, more = rows["fan-less-low"], rows["fan-less-high"]
    cases = [(oven.temp_c, False), (oven.temp_c, True), (oven.temp_c - less, True),
             (oven.temp_c - more, True)]  # fmt: skip
    minutes = []
    for temp_c, fan in cases:
        bake = likeliest(batter, tin, replace(oven, temp_c=temp_c, fan=fan))
        if isinstance(bake, Infeasible) or not math.isfinite(bake.minutes):
            return ()
        minutes.append(as_text(round(bake.minutes), 0))
    at = [as_text(temp_c, 0) for temp_c, _ in cases]
    text = (
        f"Likely minutes by the model: {minutes[0]} at {at[0]} °C without the fan, {minutes[1]} "
        f"with it; {minutes[2]} at {at[2]} and {minutes[3]} at {at[3]} °C with the fan. Setting "
        f"the fan {as_text(less, 0)} to {as_text(more, 0)} °C lower is common practice."
    )
    return (Notice("fan-rule", text),)
