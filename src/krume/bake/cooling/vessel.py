"""Custard in a tray, a bowl or cups: hours from one temperature to another, all depths at once."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

import numpy as np

from krume.bake.cooling.body import Body, Face, Stage, Surroundings, body_of, even_stuff
from krume.bake.cooling.falling import cool_down
from krume.bake.cooling.rows import cooling_doubt, cooling_value
from krume.bake.cooling.still_air import Film, still_film
from krume.bake.grid import Array, Cells, Footprint, grid_of
from krume.bake.strata import even_normal
from krume.base import NotFoundError, OutOfRangeError
from krume.evidence import column, load, optional
from krume.properties import constant

VESSEL_COLUMNS = (
    column("key", "key"),
    column("words"),
    column("kind", "one of", "layer", "round", "stirred"),
    optional("diameter_cm", "number"),
    column("air", "one of", "fridge", "fan", "ice"),
    column("depths_cm"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)
_LAYER = Cells(rings=1, rows=8)
_ROUND = Cells(rings=4, rows=6)
_FIRST_HOUR_S = 3600.0
_CHANGE_K, _STEP_S = 5.0, 600.0


@dataclass(frozen=True, slots=True)
class Vessel:
    """What custard cools in: a layer (its side does not count), a round, or a stirred bowl."""

    key: str
    words: str
    kind: str
    diameter_cm: float | None
    air: str
    depths_cm: tuple[float, ...]
    note: str


@cache
def vessels() -> dict[str, Vessel]:
    """The vessels that are compared, by key."""
    return {
        row.text("key"): Vessel(
            row.text("key"), row.text("words"), row.text("kind"), row.maybe("diameter_cm"),
            row.text("air"), tuple(float(d) for d in row.text("depths_cm").split(";")),
            row.text("note"),
        )
        for row in load("vessels.csv", VESSEL_COLUMNS)
    }  # fmt: skip


def vessel(key: str) -> Vessel:
    """Vessel of a key, or NotFoundError naming those known."""
    if key not in vessels():
        known = ", ".join(vessels())
        message = f"No vessel '{key}'. Type one of: {known}."
        raise NotFoundError(message, field="vessel", got=key, want=known)
    return vessels()[key]


@dataclass(frozen=True, slots=True)
class Cold:
    """The places custard goes through: room, fridge, minutes between, how hot it is poured."""

    room_c: float
    fridge_c: float
    stand_min: float
    start_c: float
    fridge_doubt_k: float


def cold(
    *,
    room_c: float | None = None,
    fridge_c: float | None = None,
    stand_min: float | None = None,
    start_c: float | None = None,
) -> Cold:
    """The places as said, or as the rows have them; what cannot be is refused."""
    found = Cold(
        cooling_value("room") if room_c is None else room_c,
        cooling_value("fridge") if fridge_c is None else fridge_c,
        cooling_value("stand") if stand_min is None else stand_min,
        cooling_value("custard-start") if start_c is None else start_c,
        cooling_doubt("fridge") / (1 if fridge_c is None else 2),
    )
    _within("room_c", "A room", "°C", found.room_c, "room-least", "room-most")
    _within("start_c", "Custard out of the pot", "°C", found.start_c, "custard-least",
            "custard-most")  # fmt: skip
    _between("fridge_c", "A fridge", "°C", found.fridge_c, cooling_value("fridge-least"), 15.0)
    _between("stand_min", "The time in the room", "min", found.stand_min, 0.0, 240.0)
    return found


def _within(field: str, what: str, unit: str, amount: float, least: str, most: str) -> None:
    _between(field, what, unit, amount, cooling_value(least), cooling_value(most))


def _between(field: str, what: str, unit: str, amount: float, least: float, most: float) -> None:
    if not least <= amount <= most:
        span = f"{least:g} to {most:g} {unit}"
        text = f"{what} is asked about from {span}; got {amount:g}."
        raise OutOfRangeError(text, field=field, got=f"{amount:g}", want=span)


def vessel_hours(
    where: Vessel,
    depths_cm: Sequence[float],
    places: Cold,
    *,
    from_c: float,
    to_c: Sequence[float],
    count: int = 32,
    seed: int = 7,
) -> Array:
    """Hours from one temperature of the warmest place to others, (goals, depths, draws).

    Infinite is later than the model looks. Draw 0 is the nominal one. A depth is 0.2 to 30 cm.
    """
    for depth in depths_cm:
        _between("depth_cm", "A depth", "cm", depth, 0.2, 30.0)
    draws = _draws(places, count, seed)
    if where.kind == "stirred":
        return _stirred(where, depths_cm, draws, from_c, to_c)
    each = len(draws.film)
    many = _Draws(*(np.tile(values, len(depths_cm)) for values in draws.all))
    depth_m = np.repeat(np.asarray(depths_cm, float), each) / 100 * many.depth
    body = _body(where, depth_m, many)
    zero = constant("celsius-zero")
    start = np.broadcast_to(many.start_k[:, None, None], body.cell_mass.shape)
    course = cool_down(body, start, _stages(where, many, places),
                       goal_k=min(to_c) + zero, change_k=_CHANGE_K,
                       longest_step_s=_STEP_S)  # fmt: skip
    begin = course.reached_s(from_c + zero)
    # A goal that is not reached stays infinite, however late it begins.
    hours = [(course.reached_s(goal + zero) - np.where(np.isfinite(begin), begin, 0.0)) / 3600
             * many.factor for goal in to_c]  # fmt: skip
    return np.stack(hours).reshape(len(to_c), len(depths_cm), each)


@dataclass(frozen=True, slots=True)
class _Draws:
    """What is not known of a vessel's cooling, all (draws,)."""

    film: Array
    ice: Array
    depth: Array
    conduction: Array
    start_k: Array
    room_k: Array
    fridge_k: Array
    rise_k: Array
    ice_k: Array
    factor: Array

    @property
    def all(self) -> tuple[Array, ...]:
        """All of them in their order."""
        return (self.film, self.ice, self.depth, self.conduction, self.start_k, self.room_k,
                self.fridge_k, self.rise_k, self.ice_k, self.factor)  # fmt: skip


def _draws(places: Cold, count: int, seed: int) -> _Draws:
    rng, zero = np.random.default_rng(seed), constant("celsius-zero")

    def normal(spread: float) -> Array:
        return np.concatenate([[0.0], spread * even_normal(count, rng)])

    def ln(key: str) -> Array:
        found: Array = np.exp(normal(cooling_value(key)))
        return found

    rise = cooling_value("fridge-rise")
    return _Draws(
        film=ln("spread-film"),
        ice=ln("spread-ice"),
        depth=ln("spread-depth"),
        conduction=ln("spread-custard"),
        start_k=np.minimum(places.start_c + zero + normal(cooling_doubt("custard-start") / 2),
                           100.0 + zero),
        room_k=places.room_c + zero + normal(cooling_doubt("room") / 2),
        fridge_k=places.fridge_c + zero + normal(places.fridge_doubt_k),
        rise_k=np.maximum(rise + normal(rise / 2), 0.0),
        ice_k=np.maximum(cooling_value("ice") + normal(cooling_doubt("ice") / 2), 0.0) + zero,
        factor=ln("discrepancy"),
    )  # fmt: skip


def _body(where: Vessel, depth_m: Array, draws: _Draws) -> Body:
    radius = 1.0 if where.diameter_cm is None else where.diameter_cm / 200
    area = np.pi * radius**2
    grid = grid_of(Footprint(area, radius), _LAYER if where.kind == "layer" else _ROUND)
    stuff = even_stuff(
        cooling_value("custard-conduction") * draws.conduction, cooling_value("custard-heat")
    )
    return body_of(grid, stuff, mass_kg=cooling_value("custard-density") * area * depth_m,
                   height_m=depth_m)  # fmt: skip


def _stages(where: Vessel, draws: _Draws, places: Cold) -> list[Stage]:
    """In the room, in the fridge while it is warmed, and in the fridge; ice water from the room."""
    room, fridge = draws.room_k, draws.fridge_k
    stand = 60 * places.stand_min
    moments = (
        (stand, room, "room"),
        (stand + _FIRST_HOUR_S, fridge + draws.rise_k, where.air),
        (60 * cooling_value("vessel-longest"), fridge, where.air),
    )
    return [_stage(where, draws, until, air, kind) for until, air, kind in moments]


def _stage(where: Vessel, draws: _Draws, until_s: float, air_k: Array, kind: str) -> Stage:
    shiny, dull = cooling_value("emissivity-tray"), cooling_value("emissivity-crumb")
    plate, high = _plate_m(where), cooling_value("vessel-high") / 100
    forced = Film(cooling_value("fan-film"))
    up, down, wall = (
        forced if kind == "fan" else still_film(way, length)
        for way, length in (("up", plate), ("down", plate), ("wall", high))
    )
    none = np.zeros((len(air_k), 1))
    around = Surroundings(air_k[:, None], none, draws.film[:, None])
    bottom = Face(down, shiny)
    if where.air == "ice":
        # Ice water under the floor, from the pot on and in the fridge as well.
        water = Surroundings(draws.ice_k[:, None], none, draws.ice[:, None])
        bottom = Face(Film(cooling_value("ice-film")), own=water)
    side = None if where.kind == "layer" else Face(wall, shiny)
    return Stage(until_s, around, Face(up, dull, layer=cooling_value("cover")), bottom, side)


def _plate_m(where: Vessel) -> float:
    if where.diameter_cm is not None:
        return where.diameter_cm / 400
    long, wide = cooling_value("tray-long") / 100, cooling_value("tray-wide") / 100
    return long * wide / (2 * (long + wide))


def _stirred(
    where: Vessel, depths_cm: Sequence[float], draws: _Draws, from_c: float, to_c: Sequence[float]
) -> Array:
    """One lump in ice water from the pot on: Newton's law by the wall that is wetted."""
    depth_m = np.asarray(depths_cm, float)[:, None] / 100 * draws.depth
    wetted = 1 / depth_m + 400 / (where.diameter_cm or math.inf)
    store = cooling_value("custard-density") * cooling_value("custard-heat")
    pace_s = store / (cooling_value("stirred-film") * draws.ice * wetted)
    ice_c = draws.ice_k - constant("celsius-zero")
    gaps = [np.log((from_c - ice_c) / np.maximum(goal - ice_c, 1e-9)) for goal in to_c]
    hours = np.stack([np.where(goal > ice_c, gap * pace_s, np.inf) / 3600 * draws.factor
                      for goal, gap in zip(to_c, gaps, strict=True)])  # fmt: skip
    longest = cooling_value("vessel-longest") / 60
    return np.where(hours <= longest, hours, np.inf)
