"""A core that was measured: about how long to the core that is wanted, and how sure."""

from dataclasses import dataclass

from krume.bake import to_core
from krume.base import Infeasible, InputError, Interval, as_text
from krume.usecases.asking.answer import Answer, Asked, clash_problems
from krume.usecases.bake.bake import bake_ground
from krume.usecases.bake.wish import BakeWish

_LEAST_C, _MOST_C = -20.0, 130.0


@dataclass(frozen=True, slots=True)
class CoreNow:
    """Minutes left from a measured core; `left_min` is None where the model cannot say.

    `pace_factor` is the minutes so far over the model's own: above 1 this oven is the slower.
    """

    core_c: float
    wanted_c: float | None
    left_min: Interval | None
    pace_factor: float | None
    text: str


def core_left(
    name: str, wish: BakeWish, core_c: float, asked: Asked, *, after_min: float | None = None
) -> Answer[CoreNow]:
    """About how long a load still wants, from the core by the probe and the minutes so far."""
    if not _LEAST_C <= core_c <= _MOST_C:
        message = (
            f"A core is between {_LEAST_C:.0f} and {_MOST_C:.0f} °C. Type what the probe says."
        )
        raise InputError(message, field="core", got=as_text(core_c, 1), want="degrees Celsius")
    ground = bake_ground(name, wish, asked)
    if ground.batter is None or ground.tin is None or ground.oven is None:
        result = CoreNow(core_c, None, None, None, "The model has no minutes for it.")
        return Answer(result, ground.bare.problems, ground.bare.notices)
    found = to_core(ground.batter, ground.tin, ground.oven, core_c=core_c, after_min=after_min)
    if isinstance(found, Infeasible):
        clash = found.clashes[0]
        text = f"{clash.name} {clash.has}: {clash.limit}. Look where the probe stands."
        result = CoreNow(core_c, None, None, None, text[:1].upper() + text[1:])
        problems = clash_problems(found, "--core")
        return Answer(result, problems, ground.bare.notices, is_possible=False)
    wanted = round(found.wanted_c, 1)
    result = CoreNow(core_c, wanted, found.minutes, found.pace_factor, _said(found.minutes, wanted))
    return Answer(result, (), found.notices, ground.bare.sources)


def _said(left: Interval, wanted_c: float) -> str:
    wanted = as_text(wanted_c, 0)
    if left.high <= 0:
        return f"The core is at {wanted}. Press the top, look at it, take it out."
    best = max(1.0, round(left.best))
    return (
        f"to {wanted}: about {as_text(best, 0)} min "
        f"({as_text(left.low, 0)}–{as_text(left.high, 0)})"
    )
