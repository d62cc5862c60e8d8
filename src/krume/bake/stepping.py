"""One step: everything non-linear once at mid-step, then rings and rows solved in turn."""

from dataclasses import dataclass, replace

import numpy as np

from krume.bake.grid import Array, Grid
from krume.bake.material import COUNT, GAS_J_MOLK, nearest
from krume.bake.parameters import value
from krume.bake.state import Setup, State
from krume.bake.surfaces import Air, Skin, TopStep, WallStep, top_step, wall_step
from krume.bake.sweeps import across, along, sweep, turn
from krume.properties import constant

# Slightly more backward than central: damps the light tin, which central steps let swing.
_IMPLICIT = 0.55


@dataclass(frozen=True, slots=True)
class Middle:
    """Everything non-linear, taken once at mid-step."""

    index: np.ndarray[tuple[int, ...], np.dtype[np.int32]]
    temp: Array
    conduction: Array
    store: Array
    row_height: Array
    swell: Array
    side_area: Array
    along: Array
    across: Array


def advance(setup: Setup, state: State) -> Array:
    """One step of every draw; returns the largest change of temperature in each, (draws,)."""
    middle = _middle(setup, state)
    air = _air(setup, state)
    bottom, side, inner = _walls(setup, state, middle, air)
    top = _top(setup, state, middle, air)
    change = _solve(setup, state, middle, (bottom, side, inner), top)
    warmed = state.temp + change
    steam = _clamp(setup, state, middle, warmed)
    _settle_walls(setup, state, middle, air, (bottom, side, inner), steam)
    _settle_top(setup, state, top)
    _react(setup, state, middle, top)
    state.lost = state.lost + steam.sum(axis=(1, 2))
    most: Array = np.abs(change).max(axis=(1, 2))
    return most


def _offset(draws: int) -> np.ndarray[tuple[int, ...], np.dtype[np.int64]]:
    return (np.arange(draws) * COUNT)[:, None, None]


def _middle(setup: Setup, state: State) -> Middle:
    grid, material = setup.grid, setup.material
    step = state.step[:, None, None]
    temp = np.minimum(state.temp + 0.5 * step * state.rate, material.boiling_k)
    index = nearest(temp)
    own = index + _offset(len(state.time))
    loose = np.minimum(state.starch, state.egg) < value("set-frozen")
    grown = np.maximum(state.growth, material.growth.take(own))
    state.growth = np.where(loose, grown, state.growth)
    empty = material.porosity[:, None, None]
    gas = empty * state.growth
    porosity = gas / (gas + 1 - empty)
    ratio = material.pore_ratio.take(own)
    solid = material.conduction.take(index)
    conduction = solid * (1 - 2 * porosity * ratio) / (1 + porosity * ratio)
    swell = ((1 - empty + gas) * grid.ring_area).sum(axis=2) / grid.ring_area.sum()
    height = setup.row_height * swell
    return Middle(
        index=index,
        temp=temp,
        conduction=conduction,
        store=setup.cell_mass * material.heat.take(index),
        row_height=height,
        swell=swell,
        side_area=2 * np.pi * grid.radius * height,
        along=along(grid, height, conduction),
        across=across(grid, height, conduction),
    )


def _air(setup: Setup, state: State) -> Air:
    middle = state.time + 0.5 * state.step
    return Air(
        temp=setup.course.temp_k(middle)[:, None],
        heat=setup.draws.heat[:, None],
        film=setup.film,
        vapour=setup.draws.oven_vapour[:, None],
        pressure=setup.material.pressure_pa,
    )


def _walls(
    setup: Setup, state: State, middle: Middle, air: Air
) -> tuple[WallStep, WallStep, WallStep | None]:
    grid, step = setup.grid, state.step[:, None]
    conduction = middle.conduction
    taken = setup.draws.tin[:, None]
    air = replace(air, heat=air.heat * taken, film=air.film * taken)

    def patch(
        tin: Array, rate: Array, dry: Array,
        area: Array, half: Array | float, k: Array, swell: Array,
    ) -> WallStep:  # fmt: skip
        crust = dry * swell / setup.dry_water
        worse = np.maximum(1 / setup.draws.crust_conduction[:, None] - 1 / k, 0)
        inside = setup.liner + half / k + crust * worse
        mid = tin + 0.5 * step * rate
        return wall_step(setup.wall, air, tin, mid, area=area, inner=inside, step=step)

    floor = np.broadcast_to(grid.ring_area, state.bottom.shape)
    bottom = patch(
        state.bottom, state.bottom_rate, state.dry_bottom, floor,
        middle.row_height[:, :1] / 2, conduction[:, 0], middle.swell[:, :1],
    )  # fmt: skip
    side = patch(
        state.side, state.side_rate, state.dry_side, middle.side_area,
        grid.radius - float(grid.r_centre[-1]), conduction[:, :, -1], middle.swell,
    )  # fmt: skip
    if not setup.hole:
        return bottom, side, None
    inner = patch(
        state.inner, state.inner_rate, state.dry_inner, _inner_area(grid, middle),
        float(grid.r_centre[0]) - grid.hole, conduction[:, :, 0], middle.swell,
    )  # fmt: skip
    return bottom, side, inner


def _inner_area(grid: Grid, middle: Middle) -> Array:
    return 2 * np.pi * grid.hole * middle.row_height


def _top(setup: Setup, state: State, middle: Middle, air: Air) -> TopStep:
    step = state.step[:, None]
    dried = np.maximum(state.dry_top + 0.5 * step * state.flux - setup.wet_water, 0)
    conduction = middle.conduction[:, -1]
    skin = Skin(
        crust=dried * middle.swell[:, -1:] / setup.dry_water,
        conduction=conduction,
        contact=2 * conduction / middle.row_height[:, -1:],
        cell=middle.temp[:, -1],
        guess=state.front + 0.5 * step * state.front_rate,
        outer=state.outer + 0.5 * step * state.outer_rate,
    )
    diffusion = value("diffusion-air") * (373 / 273.15) ** 1.8 * 101325 / air.pressure
    return top_step(
        air,
        skin,
        setup.draws.crust_conduction[:, None],
        setup.draws.crust_diffusion[:, None] * diffusion,
        setup.material.water_activity,
        setup.material.boiling_k,
    )


def _solve(
    setup: Setup,
    state: State,
    middle: Middle,
    walls: tuple[WallStep, WallStep, WallStep | None],
    top: TopStep,
) -> Array:
    """Change of temperature over the step, by splitting into rings and rows."""
    temp, area = state.temp, setup.grid.ring_area
    bottom, side, inner = walls
    flow = np.zeros_like(temp)
    rings, rows = np.zeros_like(temp), np.zeros_like(temp)
    for coupling, axis, total in ((middle.along, 2, rings), (middle.across, 1, rows)):
        heat = coupling * np.diff(temp, axis=axis)
        _add(flow, heat, -heat, axis)
        _add(total, coupling, coupling, axis)
    rows[:, 0] += bottom.diagonal
    flow[:, 0] += bottom.source - bottom.diagonal * temp[:, 0]
    rings[:, :, -1] += side.diagonal
    flow[:, :, -1] += side.source - side.diagonal * temp[:, :, -1]
    if inner is not None:
        rings[:, :, 0] += inner.diagonal
        flow[:, :, 0] += inner.source - inner.diagonal * temp[:, :, 0]
    rows[:, -1] += top.diagonal(area)
    flow[:, -1] += top.source(area, middle.temp[:, -1]) - top.diagonal(area) * temp[:, -1]
    store = middle.store / state.step[:, None, None]
    along = sweep(store + _IMPLICIT * rings, middle.along, flow, implicit=_IMPLICIT)
    turned = turn(store * along)
    across = sweep(turn(store + _IMPLICIT * rows), turn(middle.across), turned, implicit=_IMPLICIT)
    return turn(across)


def _add(target: Array, low: Array, high: Array, axis: int) -> None:
    """Add to both cells of every pair along an axis."""
    if axis == 2:
        target[:, :, :-1] += low
        target[:, :, 1:] += high
    else:
        target[:, :-1] += low
        target[:, 1:] += high


def _clamp(setup: Setup, state: State, middle: Middle, warmed: Array) -> Array:
    """Heat above the boiling point leaves as steam [kg]; the cell stays at it."""
    boiling = setup.material.boiling_k
    steam: Array = middle.store * np.maximum(warmed - boiling, 0) / value("latent-heat")
    warmed = np.minimum(warmed, boiling)
    state.rate = (warmed - state.temp) / state.step[:, None, None]
    state.temp = warmed
    return steam


def _settle_walls(
    setup: Setup,
    state: State,
    middle: Middle,
    air: Air,
    walls: tuple[WallStep, WallStep, WallStep | None],
    steam: Array,
) -> None:
    step, temp = state.step[:, None], state.temp
    bottom, side, inner = walls
    moved = bottom.next_temp(state.bottom, temp[:, 0], air.temp)
    state.bottom, state.bottom_rate = moved, (moved - state.bottom) / step
    moved = side.next_temp(state.side, temp[:, :, -1], air.temp)
    state.side, state.side_rate = moved, (moved - state.side) / step
    floor, flank = setup.grid.ring_area, middle.side_area
    down, out = steam[:, 0].copy(), steam[:, :, -1].copy()
    shared = floor[-1] / (floor[-1] + flank[:, 0])
    down[:, -1], out[:, 0] = steam[:, 0, -1] * shared, steam[:, 0, -1] * (1 - shared)
    state.dry_bottom = state.dry_bottom + down / floor
    state.dry_side = state.dry_side + out / flank
    if inner is not None:
        moved = inner.next_temp(state.inner, temp[:, :, 0], air.temp)
        state.inner, state.inner_rate = moved, (moved - state.inner) / step
        state.dry_inner = state.dry_inner + steam[:, :, 0] / _inner_area(setup.grid, middle)


def _settle_top(setup: Setup, state: State, top: TopStep) -> None:
    step = state.step[:, None]
    state.dry_top = state.dry_top + top.flux * step
    state.lost = state.lost + (top.flux * setup.grid.ring_area).sum(axis=1) * state.step
    state.flux = top.flux
    if state.steps:
        state.front_rate = np.clip((top.front - state.last_front) / step, -5, 5)
        state.outer_rate = np.clip((top.outer - state.last_outer) / step, -5, 5)
    state.last_front, state.last_outer = top.front, top.outer
    ahead = top.front + 0.5 * step * state.front_rate
    state.front = np.minimum(ahead, setup.material.boiling_k)
    state.outer = top.outer + 0.5 * step * state.outer_rate


def _react(setup: Setup, state: State, middle: Middle, top: TopStep) -> None:
    step = state.step[:, None, None]
    state.starch = state.starch + setup.material.starch_rate.take(middle.index) * step
    state.egg = state.egg + setup.material.egg_rate.take(middle.index) * step
    energy = constant("browning-energy") / GAS_J_MOLK
    rate = constant("browning-rate") * np.exp(-energy / top.outer)
    left = constant("browning-limit") - state.colour
    state.colour = state.colour + left * (1 - np.exp(-rate * state.step[:, None]))
