"""One step after another for all draws at once: heat through the batter, water out of it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from krume.bake.grid import Array
from krume.bake.setting_up import start
from krume.bake.state import Outcome, Place, Setup, State, Track, Which
from krume.bake.stepping import advance
from krume.properties import constant

# Solver settings, tuned once against the fine grid: a step lasts as long as it will warm no cell by
# more than about so much.
_LEAST_STEP_S, _MOST_STEP_S = 2.0, 75.0
_WARMING_K = 5.0
_LONGEST_S = 200 * 60.0
# More draws at once fall out of the cache; fewer left than this share of them close ranks.
_CELLS_AT_ONCE = 20_000
_CLOSE_RANKS = 0.75
_COLDEST_K = 250.0


def run(setup: Setup, *, warming_k: float = _WARMING_K) -> Outcome:
    """Bake all draws until each has met core, set and colour, or 200 minutes have passed."""
    draws = len(setup.own.target)
    at_once = max(1, _CELLS_AT_ONCE // setup.own.cell_mass[0].size)
    parts = [_bake(setup.only(_between(draws, begin, begin + at_once)), warming_k)
             for begin in range(0, draws, at_once)]  # fmt: skip
    zero = constant("celsius-zero")
    return Outcome(
        minutes=np.concatenate([part.done for part in parts]) / 60,
        loss=np.concatenate([part.loss for part in parts]),
        boiling_c=setup.material.boiling_k - zero,
        core_c=float(setup.own.target[0, 0]) - zero,
        track=parts[0].track(setup),
        height_m=parts[0].height_m,
        steps=parts[0].steps,
    )


def _between(draws: int, begin: int, end: int) -> Which:
    place = np.arange(draws)
    which: Which = (place >= begin) & (place < end)
    return which


@dataclass(slots=True)
class _Run:
    """What is known of all draws of a run: seconds of each rule, loss at done, draw 0's way."""

    done: Array
    loss: Array
    way: list[tuple[float, Array, Array, float]]
    height_m: float = 0.0
    steps: int = 0

    def keep(self, place: Place, setup: Setup, state: State) -> None:
        """What the draws still baking have reached; loss as it stands where none is done yet."""
        self.done[place] = state.done
        loss = state.lost / setup.own.cell_mass.sum(axis=(1, 2))
        self.loss[place] = np.where(np.isnan(state.loss), loss, state.loss)
        if place[0] == 0:
            self.height_m = float(_row_height(setup, state).sum())

    def track(self, setup: Setup) -> Track:
        """Draw 0's way, as it is handed out."""
        time_s, standing, skin, lost = zip(*self.way, strict=True)
        zero, rows = constant("celsius-zero"), np.stack(standing)
        top = np.stack(skin)[:, : setup.grid.ring_share.size] @ setup.grid.ring_share - zero
        loss = np.array(lost) / float(setup.own.cell_mass[0].sum())
        return Track(
            time_min=tuple((np.array(time_s) / 60).tolist()),
            core_c=tuple((rows[:, 0] - zero).tolist()),
            top_c=tuple(top.tolist()),
            colour=tuple(rows[:, 2].tolist()),
            loss=tuple(loss.tolist()),
        )


def _bake(setup: Setup, warming_k: float) -> _Run:
    draws = len(setup.own.target)
    found = _Run(np.full((draws, 3), np.inf), np.full(draws, np.nan), [])
    state, place = start(setup), np.arange(draws)
    while len(place):
        is_calm = _step(setup, state, warming_k)
        found.steps += 1
        if place[0] == 0:
            skin, lost = state.skin[0].copy(), float(state.lost[0])
            found.way.append((float(state.time[0]), state.before[0], skin, lost))
        # No clock can have run out before so many of the longest steps.
        if is_calm and 1 < found.steps < _LONGEST_S / _MOST_STEP_S:
            continue
        found.keep(place, setup, state)
        going = _going(state)
        if going.sum() <= _CLOSE_RANKS * len(place) or not _is_sane(state):
            setup, state, place = setup.only(going), state.only(going), place[going]
    return found


def _step(setup: Setup, state: State, warming_k: float) -> bool:
    """One step with its events and the length of the next; whether nothing is to be looked at."""
    state.most = advance(setup, state)
    now = standing(setup, state)
    events = (now >= setup.own.target) & (state.before < setup.own.target)
    if is_event := bool(events.any()):
        _note(setup, state, now, events)
    state.before = now
    state.time = state.time + state.step
    pace = np.fmin(np.fmax(warming_k / np.maximum(state.most, 1e-9), 0.5), 1.5)
    state.step = np.fmin(np.fmax(state.step * pace, _LEAST_STEP_S), _MOST_STEP_S)
    wait = setup.course.until_door_s(state.time)
    if wait is not None:
        state.step = np.minimum(state.step, np.maximum(wait, _LEAST_STEP_S))
    return not is_event and _is_sane(state)


def _note(setup: Setup, state: State, now: Array, events: Which) -> None:
    """When each rule was met for the first time, straight between the steps; loss at the last."""
    rise = np.where(now > state.before, now - state.before, 1.0)
    part = np.clip((setup.own.target - state.before) / rise, 0, 1)
    when = state.time[:, None] + part * state.step[:, None]
    state.done = np.where(events & np.isinf(state.done), when, state.done)
    last = np.isfinite(state.done).all(axis=1) & np.isnan(state.loss)
    loss = state.lost / setup.own.cell_mass.sum(axis=(1, 2))
    state.loss = np.where(last, loss, state.loss)


def _is_sane(state: State) -> bool:
    """Whether no draw has left what can be, nor become no number; such a one is let go at once."""
    return bool(state.before[:, 0].min() > _COLDEST_K)


def _going(state: State) -> Which:
    """Draws that have something left to reach, have time, and have not left what can be."""
    waiting = np.isinf(state.done).any(axis=1) & (state.time < _LONGEST_S)
    going: Which = waiting & np.isfinite(state.most) & (state.before[:, 0] > _COLDEST_K)
    return going


def standing(setup: Setup, state: State) -> Array:
    """Coldest core cell, least set share, mean colour, (draws, 3)."""
    draws = len(state.time)
    now = np.empty((draws, 3))
    state.temp.reshape(draws, -1)[:, setup.core].min(axis=1, out=now[:, 0])
    now[:, 1] = 1 - np.exp(-state.least.reshape(draws, -1)[:, setup.set].min(axis=1))
    now[:, 2] = constant("browning-limit") - state.left @ setup.grid.ring_share
    return now


def march(setup: Setup) -> Iterator[State]:
    """The state after every step, up to 200 minutes; it is one and the same object throughout."""
    states = follow(setup, until_s=_LONGEST_S)
    next(states)
    return states


def follow(setup: Setup, *, until_s: float) -> Iterator[State]:
    """The state at the door and after every step, until a moment has passed."""
    state = start(setup)
    yield state
    while state.time[0] < until_s:
        _step(setup, state, _WARMING_K)
        yield state


@dataclass(frozen=True, slots=True)
class Cut:
    """Fields of draw 0 at one moment: (rows, rings) [K], (rows,) [m], mean colour and crust [m]."""

    time_s: float
    temp: Array
    row_height: Array
    colour: float
    crust: float

    def towards(self, later: "Cut", time_s: float) -> "Cut":
        """Straight between this cut and a later one."""
        span = later.time_s - self.time_s
        part = (time_s - self.time_s) / span if span > 0 else 1.0
        return Cut(
            time_s,
            self.temp + part * (later.temp - self.temp),
            self.row_height + part * (later.row_height - self.row_height),
            self.colour + part * (later.colour - self.colour),
            self.crust + part * (later.crust - self.crust),
        )


def cuts(setup: Setup, at_s: Sequence[float]) -> list[Cut]:
    """Draw 0 at rising moments, straight between the steps on both sides of each."""
    found: list[Cut] = []
    last: Cut | None = None
    for state in follow(setup, until_s=max(at_s, default=0.0)):
        now = _cut(setup, state)
        while len(found) < len(at_s) and at_s[len(found)] <= now.time_s:
            found.append((last or now).towards(now, at_s[len(found)]))
        last = now
    return found


def _row_height(setup: Setup, state: State) -> Array:
    """Height of every row of draw 0 [m]."""
    own = setup.own
    swell = (own.empty[0] * state.growth[0] + own.solid[0]) @ setup.grid.ring_share
    height: Array = own.row_height[0] * swell
    return height


def _cut(setup: Setup, state: State) -> Cut:
    own, share = setup.own, setup.grid.ring_share
    rings, row_height = share.size, _row_height(setup, state)
    dried = np.maximum(state.dry[0, :rings] - own.wet[0, :rings], 0.0) * own.per_dry[0, :rings]
    colour = float(constant("browning-limit") - state.left[0] @ share)
    crust = float(dried @ share * row_height[-1])
    return Cut(float(state.time[0]), state.temp[0].copy(), row_height, colour, crust)
