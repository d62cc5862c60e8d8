"""The same cake once more in an oven that has baked it: minutes from its own bakes."""

import math
from dataclasses import dataclass

from krume.base import Interval
from krume.learn.own_oven.learnt import OvenLearnt
from krume.learn.own_oven.records import figure

_TENTH = 1.2815515655446004
"""Standard deviations of a normal chance that leave a tenth on each side."""


@dataclass(frozen=True, slots=True)
class Again:
    """Minutes of a cake that was baked before in this oven, and from how many bakes of it."""

    minutes: Interval
    bakes: int


def same_cake(
    learnt: OvenLearnt, cake: str, *, batter_g: float, oven_c: float, model_min: float
) -> Again | None:
    r"""Minutes of the next bake of a cake this oven knows; None where it is another cake.

    ln t = m(u) + v + e: the model's minutes in this oven, what this cake's own bakes were off
    them, and what one cake scatters from day to day. `model_min` is the model's likeliest bake
    at the heat that was learnt. A cake is the same within a tenth of its mass and some degrees.
    """
    heat = learnt.heat
    own = None if heat is None else next((c for c in heat.cakes if c.cake == cake), None)
    if own is None or learnt.carried:
        return None
    near_g, near_c = figure("same-mass"), figure("same-temp")
    is_same = any(
        abs(math.log(batter_g / mass)) <= near_g and abs(oven_c - temp) <= near_c
        for mass, temp in zip(own.batter_g, own.oven_c, strict=True)
    )
    if not is_same:
        return None
    middle, half = math.log(model_min) + own.ln_offset, _TENTH * own.ln_sd()
    low, high = math.exp(middle - half), math.exp(middle + half)
    return Again(Interval(math.floor(low), math.exp(middle), math.ceil(high)), own.bakes)
