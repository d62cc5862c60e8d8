"""How often the minutes of another cake hold in an oven that one bake was timed in.

A kitchen has one oven, one crust and one kind of foam for all its cakes; what the model leaves out
is drawn for each cake anew. It times one cake with a probe, and another cake is predicted.
"""

import sys
from dataclasses import replace
from typing import TYPE_CHECKING

from benchmarks.coverage import FINE_CELLS, FINE_STEP_K, Asked, Covered, asked_cases

if TYPE_CHECKING:
    from krume.bake import Draws, Oven
    from krume.bake.grid import Array

CLOCK = 0.05  # scatter of ln minutes of one cake from day to day
SHARED = (
    "heat", "wet_skin", "crust_conduction", "crust_diffusion", "vapour_conduction",
    "gas_retention", "oven_vapour", "set_share", "film",
)  # fmt: skip


def timed_and_next(
    timed: Asked, other: Asked, *, kitchens: int, seed: int
) -> "tuple[Array, Array]":
    """Minutes of the timed cake to its core, and of the other one until done, in each kitchen."""
    import numpy as np

    from krume.bake import drawn

    first = drawn(timed.batter, timed.tin, timed.oven, count=kitchens, seed=seed)
    free = drawn(other.batter, other.tin, other.oven, count=kitchens, seed=seed + 1)
    off = first.oven_k - first.oven_k[0]
    second = replace(
        free,
        oven_k=free.oven_k[0] + off,
        **{name: getattr(first, name) for name in SHARED},
    )
    clock = np.exp(CLOCK * np.random.default_rng(seed).standard_normal(kitchens))
    core = _rules(timed, first)[1:, 0] * first.factor[1:] * clock
    return core, (_rules(other, second).max(axis=1) * second.factor)[1:]


def _rules(asked: Asked, truth: "Draws") -> "Array":
    from krume.bake import Cells
    from krume.bake.engine import run
    from krume.bake.prediction import case_of

    fine = case_of(asked.batter, asked.tin, asked.oven, truth, Cells(*FINE_CELLS))
    return run(fine, warming_k=FINE_STEP_K).minutes


def learnt(timed: Asked, core_min: float) -> "Oven":
    """The oven as one timed bake has told of it; the probe read the core that was asked."""
    import math

    from krume.learn import FinishedBake, Prior, learn_oven

    prior = Prior(ln_heat=0.0, ln_heat_sd=0.25, offset_sd_c=5.0, thermometer_sd_c=2.0)
    bake = FinishedBake(
        "first", "timed", timed.batter, timed.tin, core_min, "probe",
        oven_c=timed.oven.temp_c, core_c=timed.batter.core_c,
    )  # fmt: skip
    found = learn_oven((), [bake], prior)
    return replace(timed.oven, heat=math.exp(found.ln_heat), ln_heat_sd=found.ln_heat_sd)


def coverage_after_one(timed: Asked, other: Asked, *, kitchens: int, seed: int) -> Covered:
    """How many kitchens bake the other cake inside what is printed after one timed bake."""
    from krume.bake import Prediction, predict

    core, baked = timed_and_next(timed, other, kitchens=kitchens, seed=seed)
    inside = before = after = 0
    for core_min, minutes in zip(core, baked, strict=True):
        oven = learnt(timed, float(core_min))
        own = replace(other.oven, heat=oven.heat, ln_heat_sd=oven.ln_heat_sd)
        found = predict(other.batter, other.tin, own, count=128)
        if not isinstance(found, Prediction):
            raise LookupError("a case of the coverage has no minutes")
        before += int(minutes < found.minutes.low)
        after += int(minutes > found.minutes.high)
        inside += int(found.minutes.low <= minutes <= found.minutes.high)
    return Covered(kitchens, inside, before, after)


def main(kitchens: int = 150, seed: int = 700) -> None:
    """Print it for a butter cake timed and a sponge, a sheet and a loaf baked next."""
    cases = asked_cases()
    timed = replace(cases[4], batter=replace(cases[4].batter, core_c=97.0))
    for name, at in (("sponge", 0), ("sheet", 5), ("loaf", 7)):
        found = coverage_after_one(timed, cases[at], kitchens=kitchens, seed=seed)
        sys.stdout.write(
            f"{name}: {kitchens} kitchens, {100 * found.share:.0f} % inside, "
            f"{found.before} before, {found.after} after\n"
        )


if __name__ == "__main__":
    main()
