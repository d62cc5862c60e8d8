"""How long this batter takes in this tin in this oven: when to start looking, and the doubt."""

import math
from dataclasses import dataclass, replace

import numpy as np

from krume.bake.batter import Batter, Oven
from krume.bake.draws import Draws, draw, nominal
from krume.bake.engine import run
from krume.bake.footing import depth_cm, footprint_of
from krume.bake.grid import Array, Cells
from krume.bake.limits import HOLES, RULES, core_notices, discrepancy_of, never, notices_of, outside
from krume.bake.material import boiling_k
from krume.bake.parameters import value, wall
from krume.bake.sanity import check, check_cells, check_depth
from krume.bake.setting_up import prepare
from krume.bake.state import Outcome, Setup, Track
from krume.base import Infeasible, Interval, Notice
from krume.properties import constant, pressure_at_altitude_pa
from krume.size import Tin

_COARSE = Cells()


@dataclass(frozen=True, slots=True)
class Bake:
    """One bake: minutes to the last of core, set and colour, and what happened on the way."""

    minutes: float
    rule_minutes: tuple[float, float, float]
    done_by: str
    core_c: float
    boiling_c: float
    depth_cm: float
    loss_pct: float
    curve: Track


@dataclass(frozen=True, slots=True)
class Bakes:
    """Many bakes at once: (draws,) minutes and loss, (draws, 3) minutes of each rule."""

    minutes: Array
    rule_minutes: Array
    loss_pct: Array


@dataclass(frozen=True, slots=True)
class Prediction:
    """What a person gets: an interval, when to check from, the rule that came last, and notices."""

    minutes: Interval
    check_from_min: int
    done_by: str
    core_c: float
    depth_cm: float
    loss_pct: Interval
    bake: Bake
    discrepancy: float
    draws: int
    stalled: int
    notices: tuple[Notice, ...]


def simulate(batter: Batter, tin: Tin, oven: Oven, *, cells: tuple[int, int] | None = None) -> Bake:
    """One bake with every parameter at its row's value; `cells` is (rings, rows)."""
    check(batter, tin, oven)
    if cells is not None:
        check_cells(cells)
    grid = _COARSE if cells is None else Cells(cells[0], cells[1])
    outcome = _run(batter, tin, oven, nominal(batter, oven), grid)
    return _bake(outcome, depth_cm(batter, tin))


def likeliest(batter: Batter, tin: Tin, oven: Oven) -> Bake | Infeasible:
    """The one likeliest bake without its doubt, or what forbids it: a tenth of a prediction."""
    if stop := outside(batter, tin, oven):
        return Infeasible((stop,))
    outcome = _run(batter, tin, oven, nominal(batter, oven), _COARSE)
    bake = _bake(outcome, depth_cm(batter, tin))
    return bake if math.isfinite(bake.minutes) else Infeasible((never(outcome, oven),))


def minutes_to_core(batter: Batter, tin: Tin, oven: Oven, draws: Draws, core_c: Array) -> Array:
    """Minutes until each draw's core is at its own `core_c`; infinite where it never is."""
    core_k = core_c + constant("celsius-zero")
    return _run(batter, tin, oven, draws, _COARSE, core_k).minutes[:, 0]


def simulate_many(batter: Batter, tin: Tin, oven: Oven, draws: Draws) -> Bakes:
    """All draws as one batch; a draw that never finishes has infinite minutes."""
    outcome = _run(batter, tin, oven, draws, _COARSE)
    minutes, _ = _with_discrepancy(batter, tin, oven, draws, outcome)
    return Bakes(minutes, outcome.minutes, 100 * outcome.loss)


def _with_discrepancy(
    batter: Batter, tin: Tin, oven: Oven, draws: Draws, outcome: Outcome
) -> tuple[Array, float]:
    """Minutes of every draw with what the model leaves out, and how much that is.

    How high a cake rises is known only after its bake, and whether that widens it.
    """
    discrepancy = discrepancy_of(batter, tin, oven, risen_cm=100 * outcome.height_m)
    wider = discrepancy / discrepancy_of(batter, tin, oven)
    slowest = outcome.minutes.max(axis=1) * draws.factor**wider
    return np.where(np.isnan(slowest), np.inf, slowest), discrepancy


def predict(
    batter: Batter, tin: Tin, oven: Oven, *, count: int = 256, seed: int = 7
) -> Prediction | Infeasible:
    """Minutes as an interval (tenth, middle, ninetieth of the draws), or what forbids them."""
    if stop := outside(batter, tin, oven):
        return Infeasible((stop,))
    draws = drawn(batter, tin, oven, count=count, seed=seed)
    outcome = _run(batter, tin, oven, draws, _COARSE)
    bake, risen = _bake(outcome, depth_cm(batter, tin)), 100 * outcome.height_m
    minutes, discrepancy = _with_discrepancy(batter, tin, oven, draws, outcome)
    low, middle, high = (_quantile(minutes[1:], q) for q in (0.10, 0.50, 0.90))
    if not math.isfinite(high) or not math.isfinite(bake.minutes):
        return Infeasible((never(outcome, oven),))
    loss = outcome.loss[np.isfinite(minutes) & np.isfinite(outcome.loss)] * 100
    # More than all its water no batter can lose, whatever the guess is widened to.
    span = Interval(
        *(
            min(100 * batter.water, wide * _quantile(loss, q))
            for wide, q in ((value("loss-low"), 0.1), (1.0, 0.5), (value("loss-high"), 0.9))
        )
    )
    return Prediction(
        minutes=Interval(math.floor(low), middle, math.ceil(high)),
        check_from_min=math.floor(low),
        done_by=bake.done_by,
        core_c=bake.core_c,
        depth_cm=bake.depth_cm,
        loss_pct=span,
        bake=bake,
        discrepancy=discrepancy,
        draws=count,
        stalled=int(np.isinf(minutes[1:]).sum()),
        notices=(
            *core_notices(batter, oven, core_c=bake.core_c, boiling_c=bake.boiling_c),
            *notices_of(batter, tin, oven, risen_cm=risen),
        ),
    )


def drawn(batter: Batter, tin: Tin, oven: Oven, *, count: int, seed: int = 7) -> Draws:
    """The nominal bake and the joint draws that a prediction is made of."""
    return draw(
        batter,
        oven,
        count=count,
        discrepancy=discrepancy_of(batter, tin, oven),
        late_discrepancy=value("discrepancy-tube-late") if tin.shape in HOLES else None,
        material=tin.material,
        seed=seed,
    )


def core_target_k(batter: Batter, pressure_pa: float, draws: Draws) -> Array:
    """Core to reach, (draws,): the formula's own moved with the boiling point, else below it."""
    boiling = boiling_k(batter.sugar_share, pressure_pa)
    highest = boiling - value("core-margin-least")
    if batter.core_c is None:
        return np.minimum(boiling - draws.core_margin, highest)
    there = boiling_k(batter.sugar_share, pressure_at_altitude_pa(batter.core_altitude_m))
    stated = batter.core_c + constant("celsius-zero") + draws.core_shift - (there - boiling)
    return np.minimum(stated, highest)


def _run(
    batter: Batter,
    tin: Tin,
    oven: Oven,
    draws: Draws,
    cells: Cells,
    core_k: Array | None = None,
) -> Outcome:
    return run(case_of(batter, tin, oven, draws, cells, core_k))


def case_of(
    batter: Batter,
    tin: Tin,
    oven: Oven,
    draws: Draws,
    cells: Cells,
    core_k: Array | None = None,
) -> Setup:
    """The case of a batter in a tin (one cup of a tray) in an oven, for all draws."""
    check(batter, tin, oven)
    check_depth(batter, tin)
    pressure = pressure_at_altitude_pa(oven.altitude_m)
    return prepare(
        batter,
        footprint_of(tin),
        wall(tin.material),
        oven,
        replace(draws, mass=draws.mass / tin.count),
        pressure_pa=pressure,
        core_k=core_target_k(batter, pressure, draws) if core_k is None else core_k,
        cells=cells,
    )


def _bake(outcome: Outcome, depth: float) -> Bake:
    core, set_, colour = (float(m) for m in outcome.minutes[0])
    last = int(np.argmax(outcome.minutes[0]))
    return Bake(
        minutes=max(core, set_, colour),
        rule_minutes=(core, set_, colour),
        done_by=RULES[last],
        core_c=outcome.core_c,
        boiling_c=outcome.boiling_c,
        depth_cm=depth,
        loss_pct=100 * float(outcome.loss[0]),
        curve=outcome.track,
    )


def _quantile(values: Array, share: float) -> float:
    """Quantile that lets infinite draws count as later than everything."""
    ordered = np.sort(values)
    place = share * (len(ordered) - 1)
    low, high = ordered[math.floor(place)], ordered[math.ceil(place)]
    if not math.isfinite(high):
        return math.inf if place > math.floor(place) or not math.isfinite(low) else float(low)
    return float(low + (high - low) * (place - math.floor(place)))
