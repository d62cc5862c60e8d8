"""One step after another for all draws at once: heat out of the body, water out of its faces."""

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np

from krume.bake.cooling.body import Body, Course, Face, Stage, Surroundings
from krume.bake.cooling.still_air import film_resistance_s_m, radiation, vapour_from
from krume.bake.grid import Array
from krume.bake.parameters import value
from krume.bake.sweeps import added, passed, ring_links, row_links, solved, turn

# As in the oven: slightly more backward than central. A step changes no cell by more than about
# 3 K and lasts 1 s to 5 min.
_IMPLICIT = 0.55
_FIRST_STEP_S, _LEAST_STEP_S, _MOST_STEP_S = 2.0, 1.0, 300.0
_CHANGE_K = 3.0
_NAMES = ("bottom", "top", "side", "inner")


@dataclass(slots=True)
class _Now:
    """What changes from step to step; it never leaves this module."""

    temp: Array
    rate: Array
    time: float = 0.0
    step: float = _FIRST_STEP_S
    water: Array | float = 0.0
    lost: Array | float = 0.0
    given: Array | float = 0.0
    nodes: dict[str, Array] = field(default_factory=dict)
    dried: dict[str, Array] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class _Side:
    """A face linearised for one step: what its cells see, and how to go back to its node."""

    area: Array
    inward: Array
    outward: Array
    store: Array
    diagonal: Array
    source: Array
    carried: Array
    steep: Array
    latent: Array
    guess: Array
    total: Array
    rest: Array


def cool_down(
    body: Body,
    start_k: Array,
    stages: Sequence[Stage],
    *,
    goal_k: float | Array,
    enough: float = 1.0,
    change_k: float = _CHANGE_K,
    longest_step_s: float = _MOST_STEP_S,
) -> Course:
    """Cool a body (draws, rows, rings) through its stages until enough draws are at the goal."""
    now = _Now(start_k.copy(), np.zeros_like(start_k))
    track = [_glance(body, now)]
    for stage in stages:
        _enter(now, stage)
        while now.time < stage.until_s - 1e-9 and _above(now, goal_k) > 1 - enough:
            now.step = min(now.step, stage.until_s - now.time)
            most = _advance(body, now, stage)
            track.append(_glance(body, now))
            pace = float(np.clip(change_k / max(most, 1e-9), 0.5, 1.4))
            now.step = float(np.clip(now.step * pace, _LEAST_STEP_S, longest_step_s))
    return Course(*(np.array(column) for column in zip(*track, strict=True)))


def _above(now: _Now, goal_k: float | Array) -> float:
    """Share of the draws whose hottest cell is still above the goal."""
    return float((now.temp.max(axis=(1, 2)) > goal_k).mean())


def _glance(body: Body, now: _Now) -> tuple[float | Array, ...]:
    weight = body.cell_mass / body.cell_mass.sum(axis=(1, 2), keepdims=True)
    none = np.zeros(body.draws)
    return (
        now.time,
        now.temp.max(axis=(1, 2)),
        (now.temp * weight).sum(axis=(1, 2)),
        now.temp.min(axis=(1, 2)),
        none + now.water,
        none + now.lost,
        none + now.given,
    )


def _enter(now: _Now, stage: Stage) -> None:
    """New faces: every node begins at its own temperature, or at that of the crumb at it."""
    edges = _edges(now.temp)
    now.nodes = {
        name: edges[name].copy()
        if face.start_k is None
        else np.broadcast_to(face.start_k, edges[name].shape).copy()
        for name, face in _faces(stage)
    }
    now.dried = {name: now.dried.get(name, np.zeros_like(node)) for name, node in now.nodes.items()}
    now.step = min(now.step, _FIRST_STEP_S)
    now.rate = np.zeros_like(now.temp)


def _faces(stage: Stage) -> list[tuple[str, Face]]:
    all_four = {name: getattr(stage, name) for name in _NAMES}
    return [(name, face) for name, face in all_four.items() if face is not None]


def _edges(cells: Array) -> dict[str, Array]:
    """Cells at each face: (draws, rings) of bottom and top, (draws, rows) of side and inner."""
    return {
        "bottom": cells[:, 0], "top": cells[:, -1],
        "side": cells[:, :, -1], "inner": cells[:, :, 0],
    }  # fmt: skip


def _advance(body: Body, now: _Now, stage: Stage) -> float:
    """One step of every draw; returns the largest change of temperature."""
    middle = now.temp + 0.5 * now.step * now.rate
    conduction, heat = body.stuff.at(middle)
    store = body.cell_mass * heat / now.step
    sides = _sides(body, now, stage, middle, conduction)
    first, change = _solved(body, now.temp, conduction, store, sides)
    for name, side in sides.items():
        seen = first if name in ("side", "inner") else change
        _settle(now, name, side, _edges(now.temp)[name] + _IMPLICIT * _edges(seen)[name])
    change = change - _steamed(now, store, np.maximum(now.temp + change - body.boiling_k, 0))
    now.given = now.given - (store * change).sum(axis=(1, 2)) * now.step
    now.rate = change / now.step
    now.temp = now.temp + change
    now.time += now.step
    return float(np.abs(change).max())


def _steamed(now: _Now, store: Array, excess: Array) -> Array:
    """Heat above the boiling point, where a hot tin still brings some, leaves as steam."""
    heat = (store * excess).sum(axis=(1, 2)) * now.step
    now.lost = now.lost + heat
    now.water = now.water + heat / value("latent-heat")
    return excess


def _sides(
    body: Body, now: _Now, stage: Stage, middle: Array, conduction: Array
) -> dict[str, _Side]:
    cells, inside = _edges(middle), _edges(conduction)
    areas, halves = _areas(body), _halves(body)
    return {
        name: _side(
            face, face.own or stage.around, now.step, areas[name],
            1 / (face.layer + halves[name] / inside[name]), cells[name], now.nodes[name],
            _breath(face, now.dried[name]),
        )
        for name, face in _faces(stage)
    }  # fmt: skip


def _areas(body: Body) -> dict[str, Array]:
    floor = np.broadcast_to(body.grid.ring_area, (body.draws, len(body.grid.ring_area)))
    wall = 2 * np.pi * body.row_height
    grid = body.grid
    return {"bottom": floor, "top": floor, "side": grid.radius * wall, "inner": grid.hole * wall}


def _halves(body: Body) -> dict[str, Array]:
    """Way from the middle of a cell to its face [m]."""
    grid, height = body.grid, body.row_height
    even = np.ones_like(height)
    return {
        "bottom": height[:, :1] / 2,
        "top": height[:, -1:] / 2,
        "side": even * (grid.radius - float(grid.r_centre[-1])),
        "inner": even * (float(grid.r_centre[0]) - grid.hole),
    }


def _side(
    face: Face, around: Surroundings, step: float, area: Array,
    inward: Array, cell: Array, node: Array, breath: Array | None,
) -> _Side:  # fmt: skip
    """Balance of the node: what comes through, what leaves by film, glow and vapour.

    Vapour is taken no closer to boiling than the surroundings say: from there a line goes on.
    """
    store = np.full_like(node, face.store / step)
    guess = node
    for _ in range(2):
        at = guess if breath is None else np.minimum(guess, around.wettest_k)
        outward, flux, steep, latent = _leaving(face, around, at, breath)
        total = inward + outward + store + latent * steep
        rest = outward * around.air_k + store * node - latent * (flux - steep * at)
        guess = (inward * cell + rest) / total
    through = area * inward
    return _Side(
        area, inward, outward, store, through * (1 - inward / total), through * rest / total,
        flux, steep, latent, at, total, rest,
    )  # fmt: skip


def _breath(face: Face, dried: Array) -> Array | None:
    """What holds vapour back now: what did at first, and what has dried since."""
    if face.breath is None:
        return None
    resistance: Array = face.breath + face.drying * np.maximum(dried - face.wet, 0.0)
    return resistance


def _leaving(
    face: Face, around: Surroundings, node: Array, breath: Array | None
) -> tuple[Array, Array, Array, Array]:
    film = around.brisk * face.film.at(node - around.air_k)
    outward = film + radiation(face.emissivity, node, around.air_k)
    if breath is None:
        none = np.zeros_like(node)
        return outward, none, none, none
    resistance = breath + film_resistance_s_m(np.maximum(film, 0.1))
    found = vapour_from(node, resistance, around.activity, around.vapour_pa, around.pressure_pa)
    return outward, found.flux, found.slope, found.latent


def _settle(now: _Now, name: str, side: _Side, cell: Array) -> None:
    """The node after the step, and what left by it."""
    before = now.nodes[name]
    node = (side.inward * cell + side.rest) / side.total
    leaving = side.carried + side.steep * (node - side.guess)
    # All that enters the node and does not stay in it leaves: by film and glow, and with vapour.
    out = side.inward * (cell - node) - side.store * (node - before)
    now.nodes[name] = node
    now.dried[name] = now.dried[name] + leaving * now.step
    now.water = now.water + (side.area * leaving).sum(axis=1) * now.step
    now.lost = now.lost + (side.area * out).sum(axis=1) * now.step
    now.given = now.given - (side.area * side.store * (node - before)).sum(axis=1) * now.step


def _solved(
    body: Body, temp: Array, conduction: Array, store: Array, sides: dict[str, _Side]
) -> tuple[Array, Array]:
    """Change after the rings alone and after both, by splitting."""
    resistivity, apart = 1 / conduction, temp.shape[2]
    along = ring_links(body.grid, body.row_height, resistivity)
    above = row_links(body.grid, body.row_height[:, :, None] / 2 * resistivity)
    up = above.reshape(-1)[:-apart]
    flow, rings, rows = np.zeros((3, *temp.shape))
    for links, total, step in ((along, rings, 1), (up, rows, apart)):
        added(total, links, step)
        passed(flow, links, temp, step)
    for name, side in sides.items():
        edge = _edges(rings if name in ("side", "inner") else rows)[name]
        edge += side.diagonal
        leaving = _edges(flow)[name]
        leaving += side.source - side.diagonal * _edges(temp)[name]
    first = solved(store + _IMPLICIT * rings, along, flow, implicit=_IMPLICIT)
    right, turned = turn(store * first), turn(above).reshape(-1)[:-1]
    whole = solved(turn(store + _IMPLICIT * rows), turned, right, implicit=_IMPLICIT)
    return first, turn(whole)
