"""Heat in a round body that may freeze: cells marched in time, heat content kept to round-off."""

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol

import numpy as np

from krume.keep.frozen.matter import Array, Matter

ROWS, RINGS = 4, 3
_STEP_SHARE = 0.9


@dataclass(frozen=True, slots=True)
class Round:
    """A round body: radius and height [m]; what its faces hold back besides the film [m2K/W]."""

    radius_m: float
    height_m: float
    top_m2k_w: Array
    side_m2k_w: Array
    bottom_m2k_w: Array


class Air(Protocol):
    """What is round the body: its temperature by what the body gives and takes."""

    def temp_c(self, conductance_w_k: Array, warmth_w: Array, step_s: float) -> Array:
        """Air of every draw, for a step: conductance to the body and conductance times cells."""


@dataclass(frozen=True, slots=True)
class SteadyAir:
    """Air that nothing warms."""

    air_c: Array

    def temp_c(self, conductance_w_k: Array, warmth_w: Array, step_s: float) -> Array:  # noqa: ARG002
        """The same at all times."""
        return self.air_c


@dataclass(frozen=True, slots=True)
class March:
    """Course of all draws: warmest, coldest and mean place [degC], (steps, draws).

    `taken_j` is the heat that came in through the faces; `gained_j` what the body holds more.
    """

    time_s: Array
    warmest_c: Array
    coldest_c: Array
    mean_c: Array
    taken_j: Array
    gained_j: Array

    def when_s(self, which: str, goal_c: float, *, rising: bool) -> Array:
        """First time at which a course reaches a goal, straight between steps; inf is never."""
        values: Array = getattr(self, which)
        hit = values >= goal_c if rising else values <= goal_c
        found = np.full(values.shape[1], math.inf)
        for draw in range(values.shape[1]):
            first = int(np.argmax(hit[:, draw]))
            if not hit[first, draw]:
                continue
            if first == 0:
                found[draw] = 0.0
                continue
            before, after = values[first - 1, draw], values[first, draw]
            part = (goal_c - before) / (after - before)
            found[draw] = self.time_s[first - 1] + part * (
                self.time_s[first] - self.time_s[first - 1]
            )
        return found


def march(
    matter: Matter,
    body: Round,
    air: Air,
    *,
    start_c: float,
    film_w_m2k: Array,
    scale: Array,
    until_s: float,
    enough: Callable[[Array], bool],
    cells: tuple[int, int] = (ROWS, RINGS),
) -> March:
    """March a body (draws, rows, rings) until enough is reached or the time is over.

    `scale` multiplies conductivity; `enough` looks at all cells (draws, rows, rings).
    """
    grid = _Grid(body, film_w_m2k, cells)
    mass = matter.density_kg_m3 * grid.volume
    heat = np.full((len(film_w_m2k), *grid.volume.shape), matter.heat_at(start_c))
    first = heat.copy()
    step = _step_s(matter, grid, mass, scale)
    taken = np.zeros(len(film_w_m2k))
    rows: list[tuple[float, Array, Array, Array]] = []
    time = 0.0
    while True:
        temp = matter.temp_c(heat)
        share = mass / mass.sum()
        rows.append((time, temp.max((1, 2)), temp.min((1, 2)), (temp * share).sum((1, 2))))
        if time >= until_s or enough(temp):
            break
        conduction = matter.conduction(temp) * scale[:, None, None]
        flow, came = grid.flow(temp, conduction, air, step)
        heat = heat + step * flow / mass
        taken = taken + step * came
        time += step
    times, warmest, coldest, mean = (np.array(each) for each in zip(*rows, strict=True))
    return March(times, warmest, coldest, mean, taken, ((heat - first) * mass).sum((1, 2)))


class _Grid:
    """Equal rows and rings of a cylinder, and what flows between them; never leaves this module."""

    def __init__(self, body: Round, film_w_m2k: Array, cells: tuple[int, int]) -> None:
        rows, rings = cells
        self.deep = body.height_m / rows
        self.wide = body.radius_m / rings
        edges = self.wide * np.arange(rings + 1)
        self.floor = math.pi * (edges[1:] ** 2 - edges[:-1] ** 2)
        self.volume = np.broadcast_to(self.floor * self.deep, (rows, rings)).copy()
        self.between = 2 * math.pi * edges[1:-1] * self.deep
        self.wall = 2 * math.pi * body.radius_m * self.deep
        film = 1 / film_w_m2k
        self.top, self.side, self.bottom = (
            (film + held)[:, None] for held in (body.top_m2k_w, body.side_m2k_w, body.bottom_m2k_w)
        )

    def flow(self, temp: Array, k: Array, air: Air, step_s: float) -> tuple[Array, Array]:
        """Heat into every cell [W], and what came in from outside."""
        flow = np.zeros_like(temp)
        up = self.floor / (self.deep / 2 * (1 / k[:, :-1] + 1 / k[:, 1:]))
        passed = up * (temp[:, 1:] - temp[:, :-1])
        flow[:, :-1] += passed
        flow[:, 1:] -= passed
        out = self.between / (self.wide / 2 * (1 / k[:, :, :-1] + 1 / k[:, :, 1:]))
        passed = out * (temp[:, :, 1:] - temp[:, :, :-1])
        flow[:, :, :-1] += passed
        flow[:, :, 1:] -= passed
        faces = (
            (temp[:, -1], self.floor / (self.top + self.deep / 2 / k[:, -1])),
            (temp[:, 0], self.floor / (self.bottom + self.deep / 2 / k[:, 0])),
            (temp[:, :, -1], self.wall / (self.side + self.wide / 2 / k[:, :, -1])),
        )
        conductance = np.sum([g.sum(1) for _, g in faces], axis=0)
        warmth = np.sum([(g * cells).sum(1) for cells, g in faces], axis=0)
        around = air.temp_c(conductance, warmth, step_s)
        for place, (cells, g) in zip(((slice(None), -1), (slice(None), 0)), faces, strict=False):
            flow[place] += g * (around[:, None] - cells)
        cells, g = faces[2]
        flow[:, :, -1] += g * (around[:, None] - cells)
        return flow, conductance * around - warmth


def _step_s(matter: Matter, grid: _Grid, mass: Array, scale: Array) -> float:
    """Longest step at which no cell gives more than it holds against its neighbours."""
    most_k = float(matter.conduction_w_mk.max() * scale.max())
    links = most_k * (
        2 * grid.floor / grid.deep + 2 * math.pi * grid.deep * (2 * np.arange(len(grid.floor)) + 1)
    )
    films = grid.floor / float(grid.top.min()) + grid.floor / float(grid.bottom.min())
    rim = np.zeros_like(grid.floor)
    rim[-1] = grid.wall / float(grid.side.min())
    slowest = mass[0] * matter.least_heat_j_kgk / (links + films + rim)
    return float(_STEP_SHARE * slowest.min())
