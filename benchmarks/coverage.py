"""How often a printed interval of minutes holds: synthetic kitchens, and kitchens of other worlds.

A kitchen draws its own truth (its oven, batter, crust and what the model leaves out) and bakes it
on a finer grid with finer steps; the prediction knows only what the person types.
"""

import math
import sys
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from krume.bake import Batter, Draws, Oven
    from krume.bake.grid import Array
    from krume.size import Tin

FINE_CELLS, FINE_STEP_K = (12, 14), 3.0
TAIL_FREEDOM = 3


@dataclass(frozen=True, slots=True)
class Asked:
    """What a person types: a batter, a tin and an oven."""

    batter: "Batter"
    tin: "Tin"
    oven: "Oven"


@dataclass(frozen=True, slots=True)
class Covered:
    """Kitchens asked, and how many baked inside, before and after the printed interval."""

    kitchens: int
    inside: int
    before: int
    after: int

    @property
    def share(self) -> float:
        """Part of the kitchens inside (0 to 1)."""
        return self.inside / self.kitchens


World = Callable[["Draws"], "Draws"]


def as_drawn(truth: "Draws") -> "Draws":
    """The world the model draws from."""
    return truth


def heavy_tails(truth: "Draws") -> "Draws":
    """Heat, density and discrepancy with the same spread but Student's tails."""
    return replace(
        truth,
        heat=truth.heat[0] * _tailed(truth.heat / truth.heat[0]),
        density=truth.density[0] * _tailed(truth.density / truth.density[0]),
        factor=_tailed(truth.factor),
    )


def _tailed(ratio: "Array") -> "Array":
    import numpy as np
    from scipy.stats import norm, t

    off = np.log(ratio)
    spread = off[1:].std()
    even = norm.cdf(off / spread)
    scale = spread * np.sqrt((TAIL_FREEDOM - 2) / TAIL_FREEDOM)
    tailed: Array = np.exp(scale * t.ppf(even, TAIL_FREEDOM))
    return tailed


def dial_off(by_k: float) -> World:
    """Ovens that are all hotter than their dials by so much (or cooler)."""
    return lambda truth: replace(truth, oven_k=truth.oven_k + by_k)


def heat_off(by_ln: float) -> World:
    """Ovens that all heat by so much more than the model's middle (in ln; less where negative)."""
    return lambda truth: replace(truth, heat=truth.heat * math.exp(by_ln))


def worlds() -> dict[str, World]:
    """The worlds that are counted, by name."""
    from krume.bake import heat_evidence, published_bakes

    hands = tuple(bake for bake in published_bakes() if bake.tin.shape != "tube")
    return {
        "as drawn": as_drawn,
        "heavier tails": heavy_tails,
        "dials 10 K too low": dial_off(10.0),
        "dials 10 K too high": dial_off(-10.0),
        "ovens of the published hands": heat_off(heat_evidence(hands).ln_mean),
    }


def baked_min(
    asked: Asked, world: World, *, count: int, seed: int, discrepancy: float | None = None
) -> "Array":
    """Minutes that so many kitchens of a world take for what was asked.

    `discrepancy` is that of the prediction, where the cake rises over its rim.
    """
    from krume.bake import Cells, drawn
    from krume.bake.engine import run
    from krume.bake.limits import discrepancy_of
    from krume.bake.prediction import case_of

    truth = world(drawn(asked.batter, asked.tin, asked.oven, count=count, seed=seed))
    fine = case_of(asked.batter, asked.tin, asked.oven, truth, Cells(*FINE_CELLS))
    own = discrepancy_of(asked.batter, asked.tin, asked.oven)
    factor = truth.factor ** (1.0 if discrepancy is None else discrepancy / own)
    minutes: Array = run(fine, warming_k=FINE_STEP_K).minutes.max(axis=1) * factor
    return minutes[1:]


def coverage(
    cases: "list[Asked]", world: World, *, kitchens: int, seed: int, count: int = 256
) -> Covered:
    """How many kitchens of each case bake inside what is printed for it."""
    from krume.bake import Prediction, predict

    inside = before = after = 0
    for at, asked in enumerate(cases):
        found = predict(asked.batter, asked.tin, asked.oven, count=count)
        if not isinstance(found, Prediction):
            raise LookupError("a case of the coverage has no minutes")
        baked = baked_min(
            asked, world, count=kitchens, seed=seed + at, discrepancy=found.discrepancy
        )
        before += int((baked < found.minutes.low).sum())
        after += int((baked > found.minutes.high).sum())
        inside += int(((baked >= found.minutes.low) & (baked <= found.minutes.high)).sum())
    return Covered(kitchens * len(cases), inside, before, after)


def asked_cases() -> list[Asked]:
    """Twelve cakes: foams and butter cakes, thin and deep, cups and a tube, dark, glass, fan."""
    from krume.bake import Batter, Oven
    from krume.size import read_tin

    sponge = Batter(540, 0.48, 0.395, 0.084, 0.094, 0.399, 0.017, 0.011, 0.257, core_c=95.0)
    sponge = replace(sponge, density_measured=True)
    butter = Batter(
        640, 0.85, 0.297, 0.045, 0.216, 0.423, 0.007, 0.012, 0.237, 1.0, density_measured=True
    )
    chiffon = replace(sponge, density_g_ml=0.50, water=0.46, carbohydrate=0.345, sugar=0.209)
    rows = (
        (sponge, 540, "round 20 x 7 cm", Oven(170)),
        (sponge, 400, "sheet 33x22.9x2.5 cm", Oven(190)),
        (sponge, 900, "dark round 26 x 7 cm", Oven(160)),
        (replace(sponge, core_c=None), 540, "springform 22 x 7 cm", Oven(170, fan=True)),
        (butter, 640, "round 18 x 7 cm", Oven(165)),
        (butter, 1000, "sheet 33x22.9x2.5 cm", Oven(175)),
        (butter, 55, "round 6.3 x 4 cm", Oven(175)),
        (butter, 930, "loaf 21.5x11.5x7 cm", Oven(165)),
        (replace(butter, density_measured=False), 800, "square 20 x 5 cm", Oven(175)),
        (butter, 930, "glass loaf 21.5x11.5x7 cm", Oven(160)),
        (replace(butter, core_c=97.0), 700, "round 20 x 7 cm", Oven(160, fan=True)),
        (chiffon, 550, "tube 20 x 10 cm hole 6 cm", Oven(165)),
    )
    made = []
    for batter, mass_g, text, oven in rows:
        tin = read_tin(text).value
        if tin is None:
            raise LookupError(text)
        made.append(Asked(replace(batter, mass_g=float(mass_g)), tin, oven))
    return made


def main(kitchens: int = 300, seed: int = 5000) -> None:
    """Print the share of each world, and that of ovens already timed."""
    cases = asked_cases()
    for name, world in worlds().items():
        _say(name, coverage(cases, world, kitchens=kitchens, seed=seed))
    timed = [
        replace(c, oven=replace(c.oven, ln_heat_sd=0.07, temp_half_width_c=2.0)) for c in cases
    ]
    _say("as drawn, timed ovens", coverage(timed, as_drawn, kitchens=kitchens, seed=seed))


def _say(name: str, found: Covered) -> None:
    parts = (f"{100 * n / found.kitchens:.0f} %" for n in (found.inside, found.before, found.after))
    inside, before, after = parts
    sys.stdout.write(
        f"{name}: {found.kitchens} kitchens, {inside} inside, {before} before, {after} after\n"
    )


if __name__ == "__main__":
    main()
