"""What a usual slip of each line does to the minutes, the depth and the loss of a bake."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, fields, replace

import numpy as np

from krume.bake.batter import Batter, Oven
from krume.bake.draws import Draws, nominal
from krume.bake.grid import Array
from krume.bake.mixture import batter_of
from krume.bake.parameters import value
from krume.bake.prediction import Bake, simulate, simulate_many
from krume.design import Doubt, Formula, with_masses
from krume.size import Tin

# The nominal bake is run again with a little more and less of everything; what is left over from a
# smooth curve is the model's own step in time.
_NEAR = 0.02
_NEAR_RUNS = 17
_CURVE = 2
# All lines are off at once in so many bakes, to see how far the sum of single effects misses.
_WITNESSES = 8
_DRAWS = 4096
_SMALLEST_SHARE = 0.1


@dataclass(frozen=True, slots=True)
class LineBake:
    """What one line does: minutes, millimetres of batter and points of loss for a usual slip.

    Each is half the difference of two bakes, with the slip more and with it less; `step_min` is
    the same slope over one step of the scale, None where eggs are counted. `shows` says whether
    the minutes move by more than the model's own steps do.
    """

    line: int
    slip_g: float
    slip_min: float
    step_min: float | None
    slip_depth_mm: float
    slip_loss_pct: float
    bend_min: float
    share: float
    shows: bool


@dataclass(frozen=True, slots=True)
class Rival:
    """What else moves the minutes: the oven off by its doubt, the batter's density by its own."""

    key: str
    half_width: float
    unit: str
    minutes: float


@dataclass(frozen=True, slots=True)
class LinesBake:
    """All lines, those that move the minutes most first, beside oven and density.

    `noise_min` is how far the model's minutes jump for no reason. `share` of a line is its part of
    the scatter `sd_min` with all lines off at once, by the sum of the single effects; `miss_min` is
    how far that sum misses (root mean square over `runs` bakes).
    """

    minutes: float
    depth_mm: float
    noise_min: float
    lines: tuple[LineBake, ...]
    rivals: tuple[Rival, ...]
    sd_min: float
    miss_min: float
    runs: int


@dataclass(frozen=True, slots=True)
class _Case:
    """A formula in its tin and oven, baked with any masses of its lines."""

    formula: Formula
    tin: Tin
    oven: Oven
    batter: Callable[[Formula], Batter | None]

    def bake(self, masses_g: dict[int, float]) -> Bake | None:
        """The nominal bake with other masses of some lines; None where there is no batter."""
        batter = self.batter(with_masses(self.formula, masses_g))
        return None if batter is None else simulate(batter, self.tin, self.oven)


def lines_bake(
    formula: Formula,
    doubts: Sequence[Doubt],
    tin: Tin,
    oven: Oven,
    *,
    family: str | None,
    density_g_ml: float,
    density_measured: bool,
    seed: int,
) -> LinesBake | None:
    """Effect of each line's usual slip on the nominal bake; None where that bake never ends.

    The density of the batter stays what it is: more of a line is more batter and so a deeper one,
    not another foam.
    """

    def batter(made: Formula) -> Batter | None:
        return batter_of(
            made,
            family=family,
            density_g_ml=density_g_ml,
            density_measured=density_measured,
        ).value

    case = _Case(formula, tin, oven, batter)
    base, whole = case.bake({}), batter(formula)
    if base is None or whole is None or not np.isfinite(base.minutes):
        return None
    noise, rivals = _around(whole, tin, oven)
    found = [_line(case, base, doubt, noise) for doubt in doubts]
    sampled = _together(case, base, list(doubts), found, np.random.default_rng(seed))
    shares, sd_min, miss_min = sampled
    lines = [replace(each, share=share) for each, share in zip(found, shares, strict=True)]
    lines.sort(key=lambda each: (-round(abs(each.slip_min), 6), each.line))
    return LinesBake(
        base.minutes, base.depth_cm * 10, noise, tuple(lines), rivals, sd_min, miss_min, _WITNESSES
    )


def _line(case: _Case, base: Bake, doubt: Doubt, noise: float) -> LineBake:
    """Central difference; a slip as large as the line itself leaves a tenth of it."""
    reach = min(doubt.slip_g, (1 - _SMALLEST_SHARE) * doubt.mass_g)
    up = case.bake({doubt.line: doubt.mass_g + reach}) or base
    down = case.bake({doubt.line: doubt.mass_g - reach}) or base
    scale = doubt.slip_g / reach
    slope = (up.minutes - down.minutes) / 2
    return LineBake(
        line=doubt.line,
        slip_g=doubt.slip_g,
        slip_min=slope * scale,
        step_min=None if doubt.step_g is None else slope / reach * doubt.step_g,
        slip_depth_mm=(up.depth_cm - down.depth_cm) / 2 * 10 * scale,
        slip_loss_pct=(up.loss_pct - down.loss_pct) / 2 * scale,
        bend_min=(up.minutes + down.minutes - 2 * base.minutes) / 2 * scale**2,
        share=0.0,
        shows=bool(abs(slope) > np.sqrt(2) * noise),
    )


def _around(batter: Batter, tin: Tin, oven: Oven) -> tuple[float, tuple[Rival, ...]]:
    """The model's own jumps, and what oven and density do, all in one batch."""
    kind = "spread-density" if batter.density_measured else "spread-density-unmeasured"
    density, temp = value(kind), oven.temp_half_width_c
    near = np.linspace(-_NEAR, _NEAR, _NEAR_RUNS)
    draws = _repeated(nominal(batter, oven), _NEAR_RUNS + 4)
    draws.mass[:_NEAR_RUNS] *= 1 + near
    draws.oven_k[_NEAR_RUNS : _NEAR_RUNS + 2] += np.array([temp, -temp])
    draws.density[_NEAR_RUNS + 2 :] *= np.array([1 + density, 1 - density])
    minutes = simulate_many(batter, tin, oven, draws).minutes
    smooth, rest = minutes[:_NEAR_RUNS], minutes[_NEAR_RUNS:]
    left = smooth - np.polyval(np.polyfit(near, smooth, _CURVE), near)
    noise = float(np.sqrt((left**2).sum() / (_NEAR_RUNS - _CURVE - 1)))
    return noise, (
        Rival("oven", temp, "°C", float(rest[1] - rest[0]) / 2),
        Rival("density", 100 * density, "%", float(rest[2] - rest[3]) / 2),
    )


def _repeated(one: Draws, times: int) -> Draws:
    return Draws(**{each.name: np.repeat(getattr(one, each.name), times) for each in fields(one)})


def _together(
    case: _Case,
    base: Bake,
    doubts: list[Doubt],
    found: list[LineBake],
    rng: np.random.Generator,
) -> tuple[list[float], float, float]:
    """Shares of the scatter by the sum of single effects, that scatter, and how far it misses."""
    off = _off_g(doubts, rng.random((_DRAWS, len(doubts), 2)))
    slip = np.array([each.slip_g for each in found])
    part = off / slip
    moved = part * [each.slip_min for each in found] + part**2 * [each.bend_min for each in found]
    variance = moved.var(axis=0)
    total = float(variance.sum())
    misses = [
        _miss(case, base, doubts, off[at], float(moved[at].sum())) for at in range(_WITNESSES)
    ]
    shares = [float(each) / total if total > 0 else 0.0 for each in variance]
    return shares, float(np.sqrt(total)), float(np.sqrt(np.mean(np.square(misses))))


def _off_g(doubts: list[Doubt], points: Array) -> Array:
    """Grams too much (n, lines): a uniform part of one step and of a usual slip."""
    reach = np.array([(each.step_g or 0.0, each.wide_g) for each in doubts])
    least = np.array([-(1 - _SMALLEST_SHARE) * each.mass_g for each in doubts])
    off: Array = np.maximum(((2 * points - 1) * reach).sum(axis=2), least)
    return off


def _miss(case: _Case, base: Bake, doubts: list[Doubt], off_g: Array, expected_min: float) -> float:
    masses = {each.line: each.mass_g + float(g) for each, g in zip(doubts, off_g, strict=True)}
    bake = case.bake(masses)
    return 0.0 if bake is None else bake.minutes - base.minutes - expected_min
