"""How long this batter takes in this tin in this oven: when to start looking, and the doubt."""

import math
from dataclasses import dataclass, replace

import numpy as np

from krume.bake.batter import Batter, Oven
from krume.bake.draws import Draws, draw, nominal
from krume.bake.engine import run
from krume.bake.grid import Array, Cells, Footprint, equivalent_radius_m
from krume.bake.material import boiling_k
from krume.bake.parameters import value, wall
from krume.bake.setting_up import prepare
from krume.bake.state import Outcome, Setup, Track
from krume.base import Clash, Infeasible, InputError, Interval, Notice
from krume.properties import constant, pressure_at_altitude_pa
from krume.size import Tin, area_cm2

RULES = ("core", "set", "colour")
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


def footprint_of(tin: Tin) -> Footprint:
    """Floor of one tin (one cup of a tray): its real area, and the cylinder that stands for it."""
    area = _floor_cm2(tin) / tin.count / 1e4
    if tin.length_cm is not None and tin.width_cm is not None:
        return Footprint(area, equivalent_radius_m(tin.length_cm / 100, tin.width_cm / 100))
    if tin.shape == "square" and tin.length_cm is not None:
        return Footprint(area, equivalent_radius_m(tin.length_cm / 100, tin.length_cm / 100))
    radius = (tin.diameter_cm or 0.0) / 200
    hole = (tin.hole_cm or 0.0) / 200 if tin.shape == "tube" else 0.0
    return Footprint(area, radius, hole)


def _floor_cm2(tin: Tin) -> float:
    area = area_cm2(tin)
    if area is None:
        message = f"The tin '{tin.read}' has no floor area. Type its inside size, in cm."
        raise InputError(message, field="tin", got=tin.read, want="inside size in cm")
    return area


def simulate(batter: Batter, tin: Tin, oven: Oven, *, cells: tuple[int, int] | None = None) -> Bake:
    """One bake with every parameter at its row's value; `cells` is (rings, rows)."""
    grid = _COARSE if cells is None else Cells(cells[0], cells[1])
    outcome = _run(batter, tin, oven, nominal(batter, oven), grid)
    return _bake(outcome, depth_cm(batter, tin))


def likeliest(batter: Batter, tin: Tin, oven: Oven) -> Bake | Infeasible:
    """The one likeliest bake without its doubt, or what forbids it: a tenth of a prediction."""
    if stop := _outside(batter, tin, oven):
        return Infeasible((stop,))
    outcome = _run(batter, tin, oven, nominal(batter, oven), _COARSE)
    bake = _bake(outcome, depth_cm(batter, tin))
    return bake if math.isfinite(bake.minutes) else Infeasible((_never(outcome),))


def minutes_to_core(batter: Batter, tin: Tin, oven: Oven, draws: Draws, core_c: Array) -> Array:
    """Minutes until each draw's core is at its own `core_c`; infinite where it never is."""
    core_k = core_c + constant("celsius-zero")
    return _run(batter, tin, oven, draws, _COARSE, core_k).minutes[:, 0]


def simulate_many(batter: Batter, tin: Tin, oven: Oven, draws: Draws) -> Bakes:
    """All draws as one batch; a draw that never finishes has infinite minutes."""
    outcome = _run(batter, tin, oven, draws, _COARSE)
    slowest = outcome.minutes.max(axis=1) * draws.factor
    return Bakes(np.where(np.isnan(slowest), np.inf, slowest), outcome.minutes, 100 * outcome.loss)


def depth_cm(batter: Batter, tin: Tin) -> float:
    """Depth of the batter over the tin's real area, per cup of a tray."""
    volume_ml = batter.mass_g / tin.count / batter.density_g_ml
    return volume_ml / (_floor_cm2(tin) / tin.count)


def predict(
    batter: Batter, tin: Tin, oven: Oven, *, count: int = 256, seed: int = 7
) -> Prediction | Infeasible:
    """Minutes as an interval (tenth, middle, ninetieth of the draws), or what forbids them."""
    if stop := _outside(batter, tin, oven):
        return Infeasible((stop,))
    notices = _notices(batter, tin, oven)
    discrepancy = discrepancy_of(batter, tin, oven)
    draws = drawn(batter, tin, oven, count=count, seed=seed)
    outcome = _run(batter, tin, oven, draws, _COARSE)
    bake = _bake(outcome, depth_cm(batter, tin))
    slowest = outcome.minutes.max(axis=1) * draws.factor
    minutes = np.where(np.isnan(slowest), np.inf, slowest)
    low, middle, high = (_quantile(minutes[1:], q) for q in (0.10, 0.50, 0.90))
    if not math.isfinite(high) or not math.isfinite(bake.minutes):
        return Infeasible((_never(outcome),))
    loss = outcome.loss[np.isfinite(outcome.loss)] * 100
    span = Interval(
        value("loss-low") * _quantile(loss, 0.1),
        _quantile(loss, 0.5),
        value("loss-high") * _quantile(loss, 0.9),
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
        notices=notices,
    )


def drawn(batter: Batter, tin: Tin, oven: Oven, *, count: int, seed: int = 7) -> Draws:
    """The nominal bake and the joint draws that a prediction is made of."""
    return draw(
        batter,
        oven,
        count=count,
        discrepancy=discrepancy_of(batter, tin, oven),
        discrepancy_late=value("discrepancy-tube-late") if tin.shape == "tube" else None,
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


def _outside(batter: Batter, tin: Tin, oven: Oven) -> Clash | None:
    if not 100 <= oven.temp_c <= 300:
        has = f"{oven.temp_c:.0f} °C"
        return Clash("oven", "what the model knows", "an oven of 100 to 300 °C", has)
    depth = depth_cm(batter, tin)
    if tin.height_cm is not None and depth > tin.height_cm:
        fits = batter.mass_g * tin.height_cm / depth
        needs = f"{depth:.1f} cm for {batter.mass_g:.0f} g"
        return Clash(
            "tin height",
            f"{tin.height_cm:g} cm, holds {fits:.0f} g to the rim",
            needs,
            f"{tin.height_cm:g} cm",
        )
    return None


def _never(outcome: Outcome) -> Clash:
    missed = [RULES[i] for i in range(3) if not math.isfinite(float(outcome.minutes[0, i]))]
    rule = missed[0] if missed else RULES[int(np.isinf(outcome.minutes).sum(axis=0).argmax())]
    reached = outcome.track.core_c[-1]
    has = f"200 minutes, core {reached:.0f} °C by then"
    return Clash("time", "the model ends there", f"longer, for the {rule} rule to be met", has)


def discrepancy_of(batter: Batter, tin: Tin, oven: Oven) -> float:
    """How far ln minutes of a cake lie from its model, as one standard deviation."""
    depth = depth_cm(batter, tin)
    wide = (
        tin.shape == "tube"
        or not 140 <= oven.temp_c <= 210
        or not 0.8 <= depth <= 7.0
        or oven.altitude_m > 2500
    )
    return value("discrepancy-wide") if wide else value("discrepancy")


_PROMISE = (
    "Start checking at the first figure. If it is not done by the last, check oven and tin. "
    "The skewer, the probe and the eye decide; this is no food-safety instrument."
)


def _density_note(density_g_ml: float) -> str:
    return (
        f"Batter density {density_g_ml:.2f} g/ml is the family's, not measured. "
        "Weigh a level cup of it to narrow the minutes."
    )


def _notices(batter: Batter, tin: Tin, oven: Oven) -> tuple[Notice, ...]:
    depth = depth_cm(batter, tin)
    checks = (
        (True, "minutes-are-a-range", _PROMISE),
        (tin.shape == "tube", "tube-unproven",
         "Tube tins: trade practice is about a quarter longer than the model. Wide doubt."),
        (not 140 <= oven.temp_c <= 210, "oven-unproven",
         "Ovens below 140 or above 210 °C were never compared. Wide doubt."),
        (not 0.8 <= depth <= 7.0, "depth-unproven",
         f"Batter {depth:.1f} cm deep: the model was made for 0.8 to 7 cm. Wide doubt."),
        (oven.altitude_m > 2500, "altitude-unproven", "Above 2500 m nothing was compared."),
        (not batter.density_measured, "density-assumed",
         _density_note(batter.density_g_ml)),
        (tin.height_cm is None, "rim-unknown",
         "The tin's height is not given: whether the batter stays under the rim is not known."),
        (tin.material == "silicone", "silicone-unproven",
         "Silicone tins are often reported slower than the model says."),
    )  # fmt: skip
    return tuple(Notice(code, text) for true, code, text in checks if true)
