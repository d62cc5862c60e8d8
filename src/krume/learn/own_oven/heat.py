"""How strong an oven is, from finished bakes: one factor on all its heat, by Bayes on a grid."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from scipy.special import ndtr

from krume.learn.own_oven.apart import put_aside
from krume.learn.own_oven.model_times import Array, Timed, nodes
from krume.learn.own_oven.records import Prior, figure

_GRID = 241
_CAKE_NODES, _CAKE_SPAN = 41, 3.5
_LEAST_CHANCE = 1e-300
_DRAWN = 4
"""Of the grid every fourth point is handed out, to be drawn."""


@dataclass(frozen=True, slots=True)
class CakeLearnt:
    """How one cake stands to its model in this oven, jointly with the heat (ln, mean and moments).

    `ln_offset` is ln minutes baked less ln minutes of the model; `ln_slope` is how ln minutes go
    with ln heat. `batter_g` and `oven_c` are those of its bakes.
    """

    cake: str
    bakes: int
    ln_slope: float
    ln_offset: float
    ln_offset_var: float
    ln_heat_var: float
    ln_covariance: float
    batter_g: tuple[float, ...]
    oven_c: tuple[float, ...]

    def ln_sd(self) -> float:
        """Doubt about ln minutes of the next bake of it."""
        both = self.ln_slope**2 * self.ln_heat_var + 2 * self.ln_slope * self.ln_covariance
        return math.sqrt(max(both + self.ln_offset_var, 0.0) + figure("repeat") ** 2)


@dataclass(frozen=True, slots=True)
class HeatLearnt:
    """The oven's heat over a usual oven's: ln mean and sd, the bakes it stands on, the curves.

    `density` and `prior_density` are per unit of ln heat at `ln_heats`. `odd` is how far each
    bake that does not count is from what the others say.
    """

    ln_heat: float
    ln_heat_sd: float
    counted: tuple[str, ...]
    odd: Mapping[str, float]
    residuals: Mapping[str, float]
    cakes: tuple[CakeLearnt, ...]
    ln_heats: tuple[float, ...]
    density: tuple[float, ...]
    prior_density: tuple[float, ...]

    @property
    def heat(self) -> float:
        """Factor on all surface coefficients."""
        return math.exp(self.ln_heat)


@dataclass(frozen=True, slots=True)
class _Grid:
    """ln heat, offset of a cake in its own sd, and what bakes say: (bakes, heats, offsets)."""

    u: Array
    z: Array
    prior_u: Array
    prior_z: Array
    model: Array
    said: Array
    sds: tuple[float, ...]


def learn_heat(bakes: Sequence[Timed], prior: Prior) -> HeatLearnt:
    r"""Posterior of ln heat from bakes that were timed, with odd ones put aside.

    ln t_k = m_k(u) + v_cake + e_k,  u ~ N(u0, s0^2),  v ~ N(0, s_cake^2),  e ~ N(0, s_repeat^2);
    p(u) = N(u) prod_cakes sum_v N(v) prod_k p(t_k | u, v)

    `v` is common to all bakes of one cake, so that the same cake three times tells of this cake
    more than of the oven. A span of minutes counts by the chance that the end fell into it.
    """
    grid = _grid(bakes, prior)
    sure = {k for k, each in enumerate(bakes) if each.bake.is_sure}
    left, odd = put_aside(
        len(bakes),
        lambda at: _residuals(grid, bakes, at),
        limit=figure("odd"),
        sure=sure,
    )
    post = _heats(grid, bakes, left)
    mean, var = _moments(grid.u, post)
    drawn = slice(None, None, _DRAWN)
    step = float(grid.u[1] - grid.u[0])
    off = _residuals(grid, bakes, left, without=False)
    return HeatLearnt(
        ln_heat=mean,
        ln_heat_sd=math.sqrt(var),
        counted=tuple(bakes[k].bake.key for k in left),
        odd={bakes[k].bake.key: r for k, r in odd.items()},
        residuals={bakes[k].bake.key: r for k, r in zip(left, off, strict=True)},
        cakes=tuple(_cake(grid, bakes, left, name) for name in _cakes(bakes, left)),
        ln_heats=tuple(float(x) for x in grid.u[drawn]),
        density=tuple(float(x) for x in post[drawn] / step),
        prior_density=tuple(float(x) for x in np.exp(grid.prior_u[drawn]) / step),
    )


def _normal(at: Array, mean: float, sd: float) -> Array:
    """Ln of a normal chance on a grid, summing to one."""
    ln = -0.5 * ((at - mean) / sd) ** 2
    chance: Array = ln - np.log(np.exp(ln).sum())
    return chance


def _grid(bakes: Sequence[Timed], prior: Prior) -> _Grid:
    at = nodes(prior.ln_heat)
    u = np.linspace(at[0], at[-1], _GRID)
    z = np.linspace(-_CAKE_SPAN, _CAKE_SPAN, _CAKE_NODES)
    model = np.array([_smooth(u, at, np.array(t.ln_min)) for t in bakes]).reshape(-1, _GRID)
    sds = _sds(bakes)
    parts = zip(bakes, model, sds, strict=True)
    said = np.array([_said(each, row, sd * z) for each, row, sd in parts])
    prior_u = _normal(u, prior.ln_heat, prior.ln_heat_sd)
    return _Grid(u, z, prior_u, _normal(z, 0.0, 1.0), model, said, sds)


def _smooth(u: Array, at: Array, ln_min: Array) -> Array:
    """Cubic through even nodes with the slopes of their neighbours: a hill without corners."""
    step = at[1] - at[0]
    k = np.clip(((u - at[0]) / step).astype(int), 0, len(at) - 2)
    s, slope = (u - at[k]) / step, np.gradient(ln_min)
    here, there = ln_min[k], ln_min[k + 1]
    rest = slope[k] * s * (1 - s) ** 2 - slope[k + 1] * s**2 * (1 - s)
    line: Array = here + (there - here) * s**2 * (3 - 2 * s) + rest
    return line


def _sds(bakes: Sequence[Timed]) -> tuple[float, ...]:
    """Scatter of each bake's cake about its model: one for all bakes of a cake, the widest."""
    widest: dict[str, float] = {}
    for each in bakes:
        widest[each.bake.cake] = max(widest.get(each.bake.cake, 0.0), each.ln_cake_sd)
    return tuple(widest[each.bake.cake] for each in bakes)


def _said(each: Timed, model: Array, v: Array) -> Array:
    """Ln chance of what was seen, (heats, offsets)."""
    sd = figure("repeat")
    at = model[:, None] + v
    if each.least_min == each.most_min:
        ln: Array = -0.5 * ((math.log(each.most_min) - at) / sd) ** 2
        return ln
    over = ndtr((math.log(each.most_min) - at) / sd)
    under = 0.0 if each.least_min <= 0 else ndtr((math.log(each.least_min) - at) / sd)
    chance: Array = np.log(np.maximum(over - under, _LEAST_CHANCE))
    return chance


def _joint(grid: _Grid, rows: Sequence[int]) -> Array:
    """Ln of heat-free chance of one cake's bakes with its offset's prior, (heats, offsets)."""
    seen: Array = grid.said[list(rows)].sum(axis=0) + grid.prior_z
    return seen


def _over_v(joint: Array) -> Array:
    top = joint.max(axis=1, keepdims=True)
    summed: Array = top[:, 0] + np.log(np.exp(joint - top).sum(axis=1))
    return summed


def _cakes(bakes: Sequence[Timed], left: Sequence[int]) -> dict[str, list[int]]:
    found: dict[str, list[int]] = {}
    for k in left:
        found.setdefault(bakes[k].bake.cake, []).append(k)
    return found


def _heats(grid: _Grid, bakes: Sequence[Timed], left: Sequence[int]) -> Array:
    """Chance of every heat on the grid, summing to one."""
    ln = grid.prior_u.copy()
    for rows in _cakes(bakes, left).values():
        ln = ln + _over_v(_joint(grid, rows))
    return _even(ln)


def _even(ln: Array) -> Array:
    chance = np.exp(ln - ln.max())
    even: Array = chance / chance.sum()
    return even


def _moments(at: Array, chance: Array) -> tuple[float, float]:
    mean = float((at * chance).sum())
    return mean, float(((at - mean) ** 2 * chance).sum())


def _both(grid: _Grid, bakes: Sequence[Timed], left: Sequence[int], name: str) -> Array:
    """Joint chance of heat and one cake's offset, (heats, offsets)."""
    ln = grid.prior_u.copy()
    own = np.broadcast_to(grid.prior_z, (len(grid.u), len(grid.z)))
    for cake, rows in _cakes(bakes, left).items():
        if cake == name:
            own = _joint(grid, rows)
        else:
            ln = ln + _over_v(_joint(grid, rows))
    return _even(ln[:, None] + own)


def _residuals(
    grid: _Grid, bakes: Sequence[Timed], left: Sequence[int], *, without: bool = True
) -> list[float]:
    """Ln minutes of each bake less what the others say (or all of them); 0 inside its span.

    A lone bake is held against the heat it says itself: the prior alone does not speak against it.
    """
    found = []
    for k in left:
        others = [j for j in left if j != k] if without and len(left) > 1 else left
        both = _both(grid, bakes, others, bakes[k].bake.cake)
        offset = 0.0 if len(left) == 1 else grid.sds[k] * float((both.sum(axis=0) * grid.z).sum())
        says = float((both.sum(axis=1) * grid.model[k]).sum()) + offset
        found.append(_beside(bakes[k], says))
    return found


def _beside(each: Timed, says: float) -> float:
    low = -math.inf if each.least_min <= 0 else math.log(each.least_min)
    high = math.log(each.most_min)
    return high - says if says > high else low - says if says < low else 0.0


def _cake(grid: _Grid, bakes: Sequence[Timed], left: Sequence[int], name: str) -> CakeLearnt:
    rows = [k for k in left if bakes[k].bake.cake == name]
    both = _both(grid, bakes, left, name)
    heat, heat_var = _moments(grid.u, both.sum(axis=1))
    v = grid.sds[rows[0]] * grid.z
    offset, offset_var = _moments(v, both.sum(axis=0))
    together = float((both * np.outer(grid.u - heat, v - offset)).sum())
    model = grid.model[rows].mean(axis=0)
    step = 0.1
    ends = np.interp([heat - step, heat + step], grid.u, model)
    return CakeLearnt(
        cake=name,
        bakes=len(rows),
        ln_slope=float(ends[1] - ends[0]) / (2 * step),
        ln_offset=offset,
        ln_offset_var=offset_var,
        ln_heat_var=heat_var,
        ln_covariance=together,
        batter_g=tuple(bakes[k].bake.batter.mass_g for k in rows),
        oven_c=tuple(bakes[k].oven_c for k in rows),
    )
