"""One step: everything non-linear once at mid-step, then rings and rows solved in turn."""

from dataclasses import dataclass

import numpy as np

from krume.bake.grid import Array
from krume.bake.jacket import LayerStep, layer_step
from krume.bake.material import GAS_J_MOLK, nearest
from krume.bake.parameters import value
from krume.bake.state import Setup, State
from krume.bake.surfaces import Skin, TopStep, WallStep, outside, top_step, wall_step
from krume.bake.sweeps import added, passed, ring_links, row_links, solved, turn
from krume.properties import constant

# Slightly more backward than central: damps the light tin, which central steps let swing.
IMPLICIT = 0.55
_LATENT_J_KG = value("latent-heat")
_SET = value("set-frozen")
_BROWNING_K = constant("browning-energy") / GAS_J_MOLK
_BROWNING_S = constant("browning-rate")


@dataclass(frozen=True, slots=True)
class Middle:
    """Everything non-linear of the cells, taken once at mid-step."""

    temp: Array
    resistivity: Array
    half: Array
    store: Array
    height: Array
    rates: Array
    along: Array
    above: Array


@dataclass(frozen=True, slots=True)
class Sides:
    """Everything of the faces, taken once at mid-step; all but the top's for the whole face."""

    air_k: Array
    area: Array
    walls: WallStep
    top: TopStep
    layers: LayerStep | None


@dataclass(frozen=True, slots=True)
class Change:
    """Change of the cells' temperatures after the rings' sweep and after the rows'.

    `beside` is the temperature that the faces meet in this step.
    """

    first: Array
    whole: Array
    beside: Array


def advance(setup: Setup, state: State) -> Array:
    """One step of every draw; returns the largest change of temperature in each, (draws,)."""
    middle = middle_of(setup, state)
    sides = sides_of(setup, state, middle)
    change = solve(setup, state, middle, sides)
    most: Array = np.abs(change.whole).max(axis=(1, 2))
    settle(setup, state, middle, sides, change)
    return most


def middle_of(setup: Setup, state: State) -> Middle:
    """Tables, foam and conductances at mid-step; what has not set grows."""
    grid, own = setup.grid, setup.own
    ahead = (0.5 * state.step)[:, None, None] * state.rate
    temp = np.minimum(state.temp + ahead, setup.material.boiling_k)
    taken = setup.material.cell.take(nearest(temp), axis=1)
    solid, air, pores, cap, heat, _, _, law = taken
    free = law * own.lift
    if setup.has_leavening:
        free *= 1 + np.minimum((temp - own.start_k) * own.leaven, own.leaven_most)
    grown = 1 + own.retention * (free - 1)
    state.growth = np.maximum(state.growth, grown, out=state.growth, where=state.least < _SET)
    gas = own.empty * state.growth
    whole = gas + own.solid
    ratio = gas * (3 / np.minimum(air + own.pores * pores, cap) - 1)
    resistivity = solid * (whole + ratio) / (whole - 2 * ratio)
    height = own.row_height * (whole @ grid.ring_share)
    half = 0.5 * height[:, :, None] * resistivity
    return Middle(
        temp=temp,
        resistivity=resistivity,
        half=half,
        store=own.cell_mass * heat / state.step[:, None, None],
        height=height,
        rates=taken[5:7],
        along=ring_links(grid, height, resistivity),
        above=row_links(grid, half),
    )


def sides_of(setup: Setup, state: State, middle: Middle) -> Sides:
    """Walls and top at mid-step."""
    own, faces, half_step = setup.own, setup.faces, (0.5 * state.step)[:, None]
    rings = middle.temp.shape[2]
    air = setup.course.temp_k(state.time + 0.5 * state.step)[:, None]
    skin = state.skin + half_step * state.skin_rate
    if setup.layers is not None:
        skin[:, rings:][:, setup.layers.at] = state.layer
    film = outside(own.film, own.glow, air, skin)
    height = middle.height.take(faces.skin_row, axis=1)
    crumb = _flat(middle.resistivity).take(faces.skin_cell, axis=1)
    dried = np.maximum(state.dry + half_step * state.flux - own.wet, 0.0)
    crust = dried * height * own.per_dry
    worse = crust * np.maximum(own.crust - crumb, 0.0)
    tall = height[:, rings:]
    area = faces.area_flat + faces.area_tall * tall
    outward = film[:, rings:]
    pull, layers = outward * air, None
    if setup.layers is not None:
        outward, pull, layers = _layered(setup, state, outward, pull, air)
    half = crumb[:, rings:] * (faces.half_flat + faces.half_tall * tall)
    walls = wall_step(
        state.skin[:, rings:],
        inward=area / (setup.wall_m2k_w + half + worse[:, rings:]),
        outward=area * outward,
        pull=area * pull,
        store=area * (setup.wall_heat / state.step)[:, None],
    )
    top = top_step(
        film[:, :rings],
        air,
        Skin(
            contact=1 / middle.half[:, -1],
            cell=middle.temp[:, -1],
            guess=state.front + half_step * state.front_rate,
            crust_m2k_w=worse[:, :rings],
            vapour_s_m=own.film_top + crust[:, :rings] * own.crust_vapour,
        ),
        setup.material.front,
        own.oven_vapour,
        setup.material.boiling_k,
    )
    return Sides(air, area, walls, top, layers)


def _layered(
    setup: Setup, state: State, outward: Array, pull: Array, air: Array
) -> tuple[Array, Array, LayerStep]:
    """The walls' way out where a layer stands before it."""
    layers = setup.layers
    if layers is None:
        raise LookupError("no layer")
    found = layer_step(
        layers, state.layer, state.layer_water,
        outside=outward[:, layers.at], air_k=air, step=state.step[:, None],
    )  # fmt: skip
    outward, pull = outward.copy(), pull.copy()
    outward[:, layers.at], pull[:, layers.at] = found.outward, found.pull
    return outward, pull, found


def _flat(cells: Array) -> Array:
    flat: Array = cells.reshape(len(cells), -1)
    return flat


def solve(setup: Setup, state: State, middle: Middle, sides: Sides) -> Change:
    """Change of temperature over the step, by splitting into rings and rows."""
    temp, walls, top = state.temp, sides.walls, sides.top
    rows, rings = temp.shape[1:]
    last, area = rings + rows, setup.grid.ring_area[None]
    beside = _flat(temp).take(setup.faces.cell, axis=1)
    bring = walls.source - walls.diagonal * beside
    ring_sum, row_sum, flow = np.zeros((3, *temp.shape))
    along, above = middle.along, middle.above.reshape(-1)[:-rings]
    added(ring_sum, along, 1)
    added(row_sum, above, rings)
    passed(flow, along, temp, 1)
    passed(flow, above, temp, rings)
    ring_sum[:, :, -1] += walls.diagonal[:, rings:last]
    flow[:, :, -1] += bring[:, rings:last]
    if len(setup.faces.cell) > last:
        ring_sum[:, :, 0] += walls.diagonal[:, last:]
        flow[:, :, 0] += bring[:, last:]
    row_sum[:, 0] += walls.diagonal[:, :rings]
    flow[:, 0] += bring[:, :rings]
    row_sum[:, -1] += top.diagonal * area
    flow[:, -1] += (top.source - top.diagonal * temp[:, -1]) * area
    ring_sum = middle.store + IMPLICIT * ring_sum
    row_sum = middle.store + IMPLICIT * row_sum
    first = solved(ring_sum, along, flow, implicit=IMPLICIT)
    right, up = turn(middle.store * first), turn(middle.above).reshape(-1)[:-1]
    whole = turn(solved(turn(row_sum), up, right, implicit=IMPLICIT))
    beside[:, :rings] += IMPLICIT * whole[:, 0]
    beside[:, rings:] += IMPLICIT * _flat(first).take(setup.faces.cell[rings:], axis=1)
    return Change(first, whole, beside)


def settle(setup: Setup, state: State, middle: Middle, sides: Sides, change: Change) -> None:
    """The state after the step."""
    _settle_walls(setup, state, sides, change)
    _settle_top(setup, state, sides)
    warmed = state.temp + change.whole
    excess = warmed - setup.material.boiling_k
    if excess.max() > 0:
        warmed = _boil(setup, state, middle, sides, warmed, excess)
    state.rate = (warmed - state.temp) / state.step[:, None, None]
    state.temp = warmed
    state.react += middle.rates.transpose(1, 0, 2, 3) * state.step[:, None, None, None]
    state.least = np.minimum(state.react[:, 0], state.react[:, 1])
    browning = (_BROWNING_S * state.step)[:, None] * np.exp(-_BROWNING_K / sides.top.outer)
    state.left *= np.exp(-browning)


def _settle_walls(setup: Setup, state: State, sides: Sides, change: Change) -> None:
    rings = change.whole.shape[2]
    tin, step = sides.walls.next_temp(change.beside), state.step[:, None]
    if setup.layers is not None and sides.layers is not None:
        behind = tin[:, setup.layers.at]
        state.layer, lost = sides.layers.settle(behind, setup.layers.boiling_k, step)
        state.layer_water = state.layer_water - lost
    state.skin_rate[:, rings:] = (tin - state.skin[:, rings:]) / step
    state.skin[:, rings:] = tin


def _settle_top(setup: Setup, state: State, sides: Sides) -> None:
    top, step = sides.top, state.step[:, None]
    rings = top.flux.shape[1]
    state.dry[:, :rings] += top.flux * step
    state.lost = state.lost + (top.flux @ setup.grid.ring_area) * state.step
    state.flux[:, :rings] = top.flux
    outer_rate = state.skin_rate[:, :rings]
    if state.time[0] > 0:
        state.front_rate = (top.front - state.last_front) / step
        np.divide(top.outer - state.last_outer, step, out=outer_rate)
    state.last_front, state.last_outer = top.front, top.outer
    half = 0.5 * step
    state.front = np.minimum(top.front + half * state.front_rate, setup.material.boiling_k)
    state.skin[:, :rings] = top.outer + half * outer_rate


def _boil(
    setup: Setup, state: State, middle: Middle, sides: Sides, warmed: Array, excess: Array
) -> Array:
    """Heat above the boiling point leaves as steam and dries the faces beside; cells stay at it."""
    rings = warmed.shape[2]
    over = middle.store * np.maximum(excess, 0.0)
    steam = over * (state.step / _LATENT_J_KG)[:, None, None]
    touched = sides.area.copy()
    for one, other in setup.faces.shared:
        touched[:, one] = touched[:, other] = sides.area[:, one] + sides.area[:, other]
    state.dry[:, rings:] += _flat(steam).take(setup.faces.cell, axis=1) / touched
    state.lost = state.lost + steam.sum(axis=(1, 2))
    kept: Array = np.minimum(warmed, setup.material.boiling_k)
    return kept


def tin_heat_j(setup: Setup, state: State) -> Array:
    """Heat in the tin above 0 K [J], (draws,), its walls as high as the batter was at the door."""
    faces, rings = setup.faces, setup.grid.ring_area.size
    height = setup.own.row_height.take(faces.row, axis=1)
    area = faces.area_flat + faces.area_tall * height
    heat: Array = (area * state.skin[:, rings:]).sum(axis=1) * setup.wall_heat
    return heat
