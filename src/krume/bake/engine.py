"""One step after another for all draws at once: heat through the batter, water out of it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from krume.bake.batter import Batter, Oven
from krume.bake.course import course_of
from krume.bake.draws import Draws
from krume.bake.grid import Array, Cells, Footprint, grid_of
from krume.bake.material import material_of
from krume.bake.parameters import Wall, value
from krume.bake.state import Outcome, Setup, State, Track
from krume.bake.stepping import advance
from krume.properties import constant

# Solver settings, tuned once against the fine grid: a step may warm no cell by more than about
# 4 K and lasts 2 to 60 s.
_FIRST_STEP_S, _LEAST_STEP_S, _MOST_STEP_S = 4.0, 2.0, 60.0
_WARMING_K = 4.0
_LONGEST_S = 200 * 60.0
_FIELDS = (
    "temp", "rate", "growth", "starch", "egg", "bottom", "side", "inner", "bottom_rate",
    "side_rate", "inner_rate", "dry_bottom", "dry_side", "dry_inner", "dry_top", "flux", "front",
    "front_rate", "outer", "outer_rate", "last_front", "last_outer", "colour", "lost", "before",
)  # fmt: skip


def run(setup: Setup, *, warming_k: float = _WARMING_K) -> Outcome:
    """Bake all draws until each has met core, set and colour, or 200 minutes have passed."""
    state = start(setup)
    track: list[tuple[float, ...]] = []
    while _unfinished(state).any():
        _pace(state, _advance_and_note(setup, state), warming_k)
        track.append(_glance(setup, state))
    zero = constant("celsius-zero")
    return Outcome(
        minutes=state.done / 60,
        loss=state.loss_at_done,
        boiling_c=setup.material.boiling_k - zero,
        core_c=float(setup.target[0, 0]) - zero,
        track=Track(*zip(*track, strict=True)),
        steps=state.steps,
    )


def march(setup: Setup) -> Iterator[State]:
    """The state after every step, up to 200 minutes; it is one and the same object throughout."""
    state = start(setup)
    while (state.time < _LONGEST_S).any():
        _pace(state, _advance_and_note(setup, state), _WARMING_K)
        yield state


@dataclass(frozen=True, slots=True)
class Cut:
    """Fields of draw 0 at one moment: (rows, rings) [K], (rows,) [m], mean colour and crust [m]."""

    temp: Array
    row_height: Array
    colour: float
    crust: float


def cuts(setup: Setup, at_s: Sequence[float]) -> list[Cut]:
    """Draw 0 at rising moments, straight between the steps on both sides of each."""
    state = start(setup)
    found: list[Cut] = []
    now = last = _cut(setup, state)
    before = 0.0
    for moment in at_s:
        while state.time[0] < moment:
            before, last = float(state.time[0]), now
            _pace(state, _advance_and_note(setup, state), _WARMING_K)
            now = _cut(setup, state)
        span = float(state.time[0]) - before
        found.append(_between(last, now, (moment - before) / span if span else 1.0))
    return found


def _cut(setup: Setup, state: State) -> Cut:
    area = setup.grid.ring_area / setup.grid.ring_area.sum()
    swell = 1 + setup.material.porosity[0] * (state.growth[0] - 1)
    row_height = setup.row_height[0] * (swell * area).sum(axis=1)
    dried = np.maximum(state.dry_top[0] - setup.wet_water[0], 0) / setup.dry_water[0]
    grown = float((swell[-1] * area).sum())
    colour = float((state.colour[0] * area).sum())
    return Cut(state.temp[0], row_height, colour, float((dried * area).sum()) * grown)


def _between(low: Cut, high: Cut, part: float) -> Cut:
    return Cut(
        low.temp + part * (high.temp - low.temp),
        low.row_height + part * (high.row_height - low.row_height),
        low.colour + part * (high.colour - low.colour),
        low.crust + part * (high.crust - low.crust),
    )


def _advance_and_note(setup: Setup, state: State) -> Array:
    most = advance(setup, state)
    _set_aside_failed(setup, state)
    _note_done(setup, state)
    return most


def _set_aside_failed(setup: Setup, state: State) -> None:
    """A draw that leaves what can be is held at its start and counts as never done."""
    coldest = setup.draws.start_k - 1
    hottest = setup.material.boiling_k + 1
    low, high = state.temp.min(axis=(1, 2)), state.temp.max(axis=(1, 2))
    sane = np.isfinite(low) & np.isfinite(high) & (low >= coldest) & (high <= hottest)
    bad = ~sane | ~np.isfinite(state.front).all(axis=1)
    if not bad.any():
        return
    fresh = start(setup)
    for name in _FIELDS:
        getattr(state, name)[bad] = getattr(fresh, name)[bad]
    state.failed = state.failed | bad
    state.done[state.failed] = np.inf


def _pace(state: State, most: Array, warming_k: float) -> None:
    """Clock on; the next step longer where little happened, shorter where much did."""
    pace = np.clip(warming_k / np.maximum(most, 1e-9), 0.5, 1.5)
    state.time = state.time + state.step
    state.step = np.clip(state.step * pace, _LEAST_STEP_S, _MOST_STEP_S)
    state.steps += 1


def prepare(
    batter: Batter,
    footprint: Footprint,
    wall: Wall,
    oven: Oven,
    draws: Draws,
    *,
    pressure_pa: float,
    core_k: Array,
    cells: Cells,
    liner_m2k_w: float = 0.0,
) -> Setup:
    """Grid, tables and films of a case, for all draws."""
    grid = grid_of(footprint, cells)
    depth = draws.mass / (draws.density * footprint.area_m2)
    row_height = grid.z_share * depth[:, None]
    water = draws.density * batter.parts[0]
    still = value("heat-static") * (value("heat-static-size") / footprint.width_m) ** 0.25
    target = np.stack([core_k, draws.set_share, draws.colour], axis=1)
    return Setup(
        grid=grid,
        material=material_of(batter, pressure_pa, draws),
        draws=draws,
        course=course_of(oven, draws.oven_k),
        wall=wall,
        liner=liner_m2k_w,
        hole=footprint.hole_radius_m > 0,
        cell_mass=draws.density[:, None, None] * grid.ring_area * row_height[:, :, None],
        row_height=row_height,
        wet_water=(draws.wet_skin * water)[:, None],
        dry_water=water[:, None],
        film=(draws.heat * draws.film * (value("heat-fan") if oven.fan else still))[:, None],
        fan=oven.fan,
        target=target,
    )


def start(setup: Setup) -> State:
    """State at the door: everything at the batter's temperature."""
    draws, rows, rings = setup.cell_mass.shape
    begin = setup.draws.start_k

    def at_start(*shape: int) -> Array:
        return np.broadcast_to(begin.reshape(-1, *[1] * len(shape)), (draws, *shape)).copy()

    def none(*shape: int) -> Array:
        return np.zeros((draws, *shape))

    return State(
        temp=at_start(rows, rings), rate=none(rows, rings), growth=1 + none(rows, rings),
        starch=none(rows, rings), egg=none(rows, rings),
        bottom=at_start(rings), side=at_start(rows), inner=at_start(rows),
        bottom_rate=none(rings), side_rate=none(rows), inner_rate=none(rows),
        dry_bottom=none(rings), dry_side=none(rows), dry_inner=none(rows), dry_top=none(rings),
        flux=none(rings), front=at_start(rings), front_rate=none(rings), outer=at_start(rings),
        outer_rate=none(rings), last_front=at_start(rings), last_outer=at_start(rings),
        colour=none(rings), time=none(), step=np.full(draws, _FIRST_STEP_S), lost=none(),
        failed=np.zeros(draws, dtype=np.bool_),
        done=np.full((draws, 3), np.inf), loss_at_done=np.full(draws, np.nan),
        before=np.stack([begin, none(), none()], axis=1),
    )  # fmt: skip


def _unfinished(state: State) -> np.ndarray[tuple[int, ...], np.dtype[np.bool_]]:
    waiting = ~np.isfinite(state.done).all(axis=1) & ~state.failed
    return waiting & (state.time < _LONGEST_S)


def _standing(setup: Setup, state: State) -> Array:
    """Coldest core cell, least set share, mean colour, (draws, 3)."""
    low = setup.grid.z_centre <= value("core-rows")
    core = state.temp[:, low].min(axis=(1, 2))
    least = np.minimum(state.starch, state.egg).min(axis=(1, 2))
    area = setup.grid.ring_area
    colour = (state.colour * area).sum(axis=1) / area.sum()
    return np.stack([core, 1 - np.exp(-least), colour], axis=1)


def _note_done(setup: Setup, state: State) -> None:
    now = _standing(setup, state)
    reached = (now >= setup.target) & ~np.isfinite(state.done)
    rise = np.where(now > state.before, now - state.before, 1.0)
    part = np.clip((setup.target - state.before) / rise, 0, 1)
    when = state.time[:, None] + part * state.step[:, None]
    state.done = np.where(reached & ~state.failed[:, None], when, state.done)
    state.before = now
    finished = np.isfinite(state.done).all(axis=1) & np.isnan(state.loss_at_done)
    mass = setup.cell_mass.sum(axis=(1, 2))
    state.loss_at_done = np.where(finished, state.lost / mass, state.loss_at_done)


def _glance(setup: Setup, state: State) -> tuple[float, ...]:
    mass = float(setup.cell_mass[0].sum())
    area = setup.grid.ring_area
    return (
        float(state.time[0]) / 60,
        float(state.before[0, 0]) - constant("celsius-zero"),
        float((state.outer[0] * area).sum() / area.sum()) - constant("celsius-zero"),
        float(state.before[0, 2]),
        float(state.lost[0]) / mass,
    )
