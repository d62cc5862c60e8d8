"""What makes the doubt of a bake, and the minutes one reading or one more bake would leave."""

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from krume.bake import Batter, Oven, figures, predict, unknowns_of
from krume.base import Infeasible, Interval
from krume.usecases.bake.beside import own_draws
from krume.usecases.bake.result import BakeUnknown

if TYPE_CHECKING:
    from krume.usecases.bake.bake import BakeGround


def narrowed(
    ground: "BakeGround", minutes: Sequence[float], now: Interval
) -> tuple[BakeUnknown, ...]:
    """What is not known, most of the doubt first; `minutes` are those of the draws.

    `now` are the minutes as they are told.
    """
    import numpy as np

    batter, tin, oven = ground.batter, ground.tin, ground.oven
    if batter is None or tin is None or oven is None:
        return ()
    found = unknowns_of(batter, own_draws(batter, tin, oven), np.asarray(minutes))
    then: dict[str, Interval] = {}
    for key, changed, at in _steps(batter, oven):
        answer = predict(changed, tin, at)
        if not isinstance(answer, Infeasible):
            span = answer.minutes
            then[key] = Interval(span.low, round(span.best, 1), span.high)
    return tuple(_told(each.key, each.text, each.share, then.get(each.key), now) for each in found)


def _told(key: str, text: str, share: float, then: Interval | None, now: Interval) -> BakeUnknown:
    narrows = then is not None and then.high - then.low < now.high - now.low
    return BakeUnknown(key, text, round(share, 3), then, narrows)


def _steps(batter: Batter, oven: Oven) -> list[tuple[str, Batter, Oven]]:
    """One bake timed in this oven, a thermometer in it, a level cup of the batter weighed."""
    half = figures()["spread-oven-thermometer"].value
    spread = figures()["spread-heat-one-bake"].value
    steps = []
    if oven.ln_heat_sd > spread:
        steps.append(("oven-heat", batter, replace(oven, ln_heat_sd=spread)))
    if oven.temp_half_width_c > half:
        steps.append(("oven-temperature", batter, replace(oven, temp_half_width_c=half)))
    if not batter.density_measured:
        steps.append(("density", replace(batter, density_measured=True), oven))
    return steps
