"""What the model says of finished bakes, for ovens from weak to strong: ln minutes at each."""

from collections.abc import Sequence
from dataclasses import dataclass, fields, replace
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from krume.bake import Batter, Draws, Oven, nominal, simulate_many
from krume.learn.own_oven.records import FinishedBake, figure
from krume.size import Tin

Array = NDArray[np.float64]

_NODES = 15
_NEVER_MIN = 800.0
"""Where the model is not done within its 200 minutes: long past them, so that no bake fits it."""

_ANY_COLOUR = 1e-6
"""A colour that is reached at once: these bakes end by core and set."""


@dataclass(frozen=True, slots=True)
class Timed:
    """A bake with the span in which it was done, and the model's ln minutes at `nodes`.

    `least_min` equals `most_min` where one moment is known, and is 0 where only the latest is.
    `ln_cake_sd` is how far cakes such as this lie from their model.
    """

    bake: FinishedBake
    oven_c: float
    least_min: float
    most_min: float
    ln_min: tuple[float, ...]
    ln_cake_sd: float


def nodes(ln_heat: float) -> Array:
    """Ln heats at which the model is run."""
    span = figure("heat-span")
    found: Array = ln_heat + np.linspace(-span, span, _NODES)
    return found


@dataclass(frozen=True, slots=True)
class Case:
    """What one bake asks of the model: a core in the batter is the core that was read."""

    batter: Batter
    tin: Tin
    oven: Oven


def ln_minutes(cases: Sequence[Case], ln_heat: float) -> tuple[tuple[float, ...], ...]:
    """Ln minutes of every case at every node; cases of one cake are one batch."""
    kinds: dict[Case, list[int]] = {}
    for k, case in enumerate(cases):
        kinds.setdefault(_kind(case), []).append(k)
    found: list[tuple[float, ...]] = [()] * len(cases)
    for places in kinds.values():
        group = tuple(cases[k] for k in places)
        for k, row in zip(places, _one_batch(group, ln_heat), strict=True):
            found[k] = row
    return tuple(found)


def _kind(case: Case) -> Case:
    """A case without what may differ within a batch: mass, density, start, oven, core."""
    core = None if case.batter.core_c is None else 0.0
    batter = replace(case.batter, mass_g=0.0, density_g_ml=1.0, core_c=core, temp_c=0.0)
    tin = replace(case.tin, read="")
    return Case(batter, tin, replace(case.oven, temp_c=0.0))


@lru_cache(maxsize=128)
def _one_batch(cases: tuple[Case, ...], ln_heat: float) -> tuple[tuple[float, ...], ...]:
    first, at = cases[0], nodes(ln_heat)
    each = [_draws(case, at, first.batter.core_c) for case in cases]
    draws = Draws(
        **{f.name: np.concatenate([getattr(one, f.name) for one in each]) for f in fields(Draws)}
    )
    batter = replace(first.batter, core_altitude_m=first.oven.altitude_m)
    rules = simulate_many(batter, first.tin, first.oven, draws).rule_minutes
    minutes = rules[:, 0] if first.batter.core_c is not None else rules[:, :2].max(axis=1)
    ln = np.log(np.where(np.isfinite(minutes), minutes, _NEVER_MIN))
    return tuple(tuple(row) for row in ln.reshape(len(cases), _NODES).tolist())


def _draws(case: Case, at: Array, core_c: float | None) -> Draws:
    """The nominal bake at every node; a core that was read is the first case's, shifted."""
    one = nominal(case.batter, case.oven)
    many = Draws(**{f.name: np.repeat(getattr(one, f.name), len(at)) for f in fields(Draws)})
    shift = 0.0 if core_c is None else (case.batter.core_c or 0.0) - core_c
    return replace(
        many,
        heat=case.oven.heat * np.exp(at),
        colour=np.full(len(at), _ANY_COLOUR),
        core_shift=np.full(len(at), shift),
    )
