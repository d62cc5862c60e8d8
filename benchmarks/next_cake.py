"""Another cake in an oven that some were timed in: how often its minutes hold, how wide they are.

A kitchen has one oven, one crust and one kind of foam for all its cakes; batter, tin and what the
model leaves out are each cake's own. Its oven heats 0.7 to 1.15 times as much as the usual one.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING

from benchmarks.cakes import cake, prior
from benchmarks.coverage import FINE_CELLS, FINE_STEP_K, Asked, Covered

if TYPE_CHECKING:
    from krume.bake import Draws, Oven, Prediction
    from krume.bake.grid import Array
    from krume.base import Interval
    from krume.learn import OvenLearnt

HEATS = (0.7, 1.15)
OVEN_C = 170.0
COUNT = 128
STEP_LN = 0.02  # a quarter of a per cent of minutes is lost, as much as one draw is worth
SHARED = (
    "heat", "wet_skin", "crust_conduction", "crust_diffusion", "vapour_conduction",
    "gas_retention", "oven_vapour", "set_share", "film",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Next:
    """What another cake's minutes were: kitchens inside them, and their width in ln minutes.

    `before` is the width before any bake, `before_inside` the share of kitchens inside it.
    """

    covered: Covered
    width: float
    before: float
    before_inside: float

    @property
    def narrower(self) -> float:
        """Part of the width that is gone."""
        return 1 - self.width / self.before


@dataclass(frozen=True, slots=True)
class Kitchens:
    """Kitchens with the minutes of each cake in them: (kitchens,) to its core and until done."""

    half_c: float
    asked: dict[str, Asked]
    core: "dict[str, Array]"
    done: "dict[str, Array]"


def kitchens(asked: dict[str, Asked], *, count: int, seed: int, half_c: float) -> Kitchens:
    """So many kitchens; `half_c` is how well the oven's temperature is known [K]."""
    import numpy as np

    from krume.bake import drawn
    from krume.learn import oven_figure

    rng, first, core, done = np.random.default_rng(seed), None, {}, {}
    even = (rng.permutation(count) + 0.5) / count
    low, high = (math.log(heat) for heat in HEATS)
    heat = np.concatenate([[1.0], np.exp(low + (high - low) * even)])
    for at, (name, each) in enumerate(asked.items()):
        oven = replace(each.oven, temp_half_width_c=half_c)
        own = drawn(each.batter, each.tin, oven, count=count, seed=seed + at)
        first = replace(own, heat=heat) if first is None else first
        off = first.oven_k - first.oven_k[0]
        shared = {field: getattr(first, field) for field in SHARED}
        truth = replace(own, oven_k=own.oven_k[0] + off, **shared)
        rules, missed = _rules(each, truth), truth.factor ** _wider(each)
        days = np.exp(oven_figure("repeat") * rng.standard_normal((2, count + 1)))
        core[name] = (rules[:, 0] * missed * days[0])[1:]
        done[name] = (rules.max(axis=1) * missed * days[1])[1:]
    return Kitchens(half_c, asked, core, done)


def _rules(asked: Asked, truth: "Draws") -> "Array":
    from krume.bake import Cells
    from krume.bake.engine import run
    from krume.bake.prediction import case_of

    fine = case_of(asked.batter, asked.tin, asked.oven, truth, Cells(*FINE_CELLS))
    return run(fine, warming_k=FINE_STEP_K).minutes


def _wider(asked: Asked) -> float:
    """How much wider the model's miss is for a cake that rises over its rim."""
    from krume.bake.limits import discrepancy_of

    own = discrepancy_of(asked.batter, asked.tin, asked.oven)
    return _predicted(asked, asked.oven).discrepancy / own


def _predicted(asked: Asked, oven: "Oven") -> "Prediction":
    from krume.bake import Prediction, predict

    found = predict(asked.batter, asked.tin, oven, count=COUNT)
    if not isinstance(found, Prediction):
        raise LookupError("a cake of the kitchens has no minutes")
    return found


def learnt(found: Kitchens, names: Sequence[str], kitchen: int) -> "OvenLearnt":
    """What one kitchen's bakes tell: whole minutes, and the core that was asked."""
    from krume.learn import FinishedBake, learn_oven

    bakes = [
        FinishedBake(
            name, name, found.asked[name].batter, found.asked[name].tin,
            float(round(found.core[name][kitchen])), "probe", oven_c=OVEN_C,
            core_c=found.asked[name].batter.core_c,
        )
        for name in names
    ]  # fmt: skip
    return learn_oven((), bakes, prior())


def next_cake(found: Kitchens, names: Sequence[str], other: str) -> Next:
    """How the other cake's minutes hold after bakes of these."""
    asked = found.asked[other]
    usual = replace(asked.oven, temp_half_width_c=found.half_c)
    # A bake that never ends is written down by nobody.
    ended = [k for k in range(len(found.done[other])) if _ended(found, names, k)]
    plain, done = _predicted(asked, usual).minutes, found.done[other][ended]
    inside = before = after = 0
    width = 0.0
    for kitchen, minutes in zip(ended, done, strict=True):
        span = _in_steps(asked, learnt(found, names, kitchen).oven(usual, prior()))
        before, after = before + int(minutes < span.low), after + int(minutes > span.high)
        inside += int(span.low <= minutes <= span.high)
        width += math.log(span.high / span.low) / len(done)
    held = float(((done >= plain.low) & (done <= plain.high)).mean())
    return Next(
        Covered(len(done), inside, before, after), width, math.log(plain.high / plain.low), held
    )


def _ended(found: Kitchens, names: Sequence[str], kitchen: int) -> bool:
    return all(math.isfinite(found.core[name][kitchen]) for name in names)


@lru_cache(maxsize=1024)
def _predicted_once(asked: Asked, oven: "Oven") -> "Interval":
    return _predicted(asked, oven).minutes


def _in_steps(asked: Asked, oven: "Oven") -> "Interval":
    """Minutes of an oven whose heat is taken in small steps, so that kitchens share their draws."""
    ln_heat = STEP_LN * round(math.log(oven.heat) / STEP_LN)
    own = replace(
        oven,
        heat=math.exp(ln_heat),
        ln_heat_sd=round(oven.ln_heat_sd, 2),
        temp_half_width_c=round(oven.temp_half_width_c, 1),
    )
    return _predicted_once(asked, own)


def cakes() -> dict[str, Asked]:
    """Five cakes: two foams, a sheet, a deep and a wide butter cake."""
    from krume.bake import Oven
    from krume.size import read_tin

    found = {}
    for name in ("hazel", "walnut", "sheet", "butter"):
        batter, tin = cake(name)
        found[name] = Asked(batter, tin, Oven(OVEN_C))
    wide = read_tin("square 20 x 5 cm").value
    if wide is None:
        raise LookupError("a tin of the kitchens is not read")
    found["square"] = Asked(replace(found["butter"].batter, mass_g=800), wide, Oven(OVEN_C))
    return found


ASKED = (
    (("hazel",), "walnut"),
    (("butter",), "hazel"),
    (("hazel", "walnut", "butter"), "sheet"),
    (("walnut", "sheet", "butter"), "hazel"),
    (("hazel", "walnut", "sheet"), "butter"),
    (("hazel", "walnut", "sheet", "butter"), "square"),
)


def told(count: int = 300, seed: int = 1900) -> list[str]:
    """One line for each set of recorded cakes, with a thermometer in the oven and without."""
    lines = []
    for half_c in (2.0, 5.0):
        found = kitchens(cakes(), count=count, seed=seed, half_c=half_c)
        lines.append(f"oven known within {half_c:g} K, {count} kitchens of heat 0.7 to 1.15")
        lines += [_line(next_cake(found, names, other), names, other) for names, other in ASKED]
    return lines


def _line(one: Next, names: Sequence[str], other: str) -> str:
    return (
        f"{', '.join(names)} then {other}: inside {one.covered.share:.0%} "
        f"({one.covered.before} before, {one.covered.after} after; before any bake "
        f"{one.before_inside:.0%}), {one.narrower:.0%} narrower in ln minutes"
    )


if __name__ == "__main__":
    print("\n".join(told()))
