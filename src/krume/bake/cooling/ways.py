"""How a cake stands while it cools: in its tin, hung, turned out, as a warm sheet, as a roll."""

from dataclasses import dataclass, replace
from functools import cache

import numpy as np

from krume.bake.cooling.body import Face, Stage, Surroundings
from krume.bake.cooling.rows import cooling_value
from krume.bake.cooling.spread import CoolingDraws
from krume.bake.cooling.still_air import Film, crust_resistance_s_m, still_film
from krume.bake.grid import Array
from krume.bake.parameters import Wall, value
from krume.evidence import column, load, optional

WAY_COLUMNS = (
    column("key", "key"),
    column("way", "one of", "rack", "hung", "rolled", "tin"),
    optional("turned_min", "number"),
    column("words"),
    column("status", "status"),
    column("source", "source"),
)


@dataclass(frozen=True, slots=True)
class CoolingWay:
    """How a family is cooled: on a rack after minutes in the tin, hung in it, rolled, or in it."""

    way: str
    turned_min: float | None
    words: str
    status: str


@cache
def cooling_ways() -> dict[str, CoolingWay]:
    """The families that are baked in a tin, and the way each is cooled."""
    return {
        row.text("key"): CoolingWay(
            row.text("way"), row.maybe("turned_min"), row.text("words"), row.text("status")
        )
        for row in load("cooling_ways.csv", WAY_COLUMNS)
    }


@dataclass(frozen=True, slots=True)
class Cake:
    """Sizes of a baked cake [m], crust of its top [m], its tin, and draws of what is not known.

    `water_kg_m3` is what a dry layer has lost, one a draw.
    """

    area_m2: float
    rim_m: float
    height_m: float
    has_hole: bool
    crust_m: float
    water_kg_m3: Array
    wall: Wall
    tin_start_k: Array
    draws: CoolingDraws
    around: Surroundings


def in_tin(cake: Cake, until_s: float, *, hung: bool = False) -> Stage:
    """In its tin on a rack, or upside down: the top is bare, the rest is behind the tin."""
    plate = cake.area_m2 / cake.rim_m
    up, down = still_film("up", plate), still_film("down", plate)
    upright = still_film("wall", cake.height_m)
    narrow = upright.times(cooling_value("chimney"))
    return Stage(
        until_s,
        cake.around,
        top=_bare(cake, down if hung else up, cake.crust_m),
        bottom=_tin(cake, up if hung else down),
        side=_tin(cake, upright),
        inner=_tin(cake, narrow) if cake.has_hole else None,
    )


def on_rack(cake: Cake, until_s: float, *, wrapped: bool = False) -> Stage:
    """Turned out onto a rack: bare all round, or in foil."""
    plate = cake.area_m2 / cake.rim_m
    films = (still_film("up", plate), still_film("down", plate), still_film("wall", cake.height_m))
    if wrapped:
        top, bottom, side = (_wrapped(film) for film in films)
        return Stage(until_s, cake.around, top, bottom, side, side if cake.has_hole else None)
    thin = cooling_value("wall-crust") / 1000
    inner = _bare(cake, films[2].times(cooling_value("chimney")), thin) if cake.has_hole else None
    return Stage(
        until_s,
        cake.around,
        top=_bare(cake, films[0], cake.crust_m),
        bottom=_bare(cake, films[1], thin),
        side=_bare(cake, films[2], thin),
        inner=inner,
    )


def on_cloth(cake: Cake, until_s: float) -> Stage:
    """A sheet turned at once onto a cloth on the bench, its paper off: the former floor is up."""
    plate = cake.area_m2 / cake.rim_m
    fixed = Film(cooling_value("bench-film"))
    return Stage(
        until_s,
        cake.around,
        top=_bare(cake, still_film("up", plate), 0.0),
        bottom=Face(fixed, layer=cloth_layer(), breath=None),
        side=_bare(cake, still_film("wall", cake.height_m), 0.0),
    )


def as_roll(cake: Cake, diameter_m: float, until_s: float) -> Stage:
    """Rolled in its cloth: a lying log, one layer of cloth round it, its ends open."""
    log = still_film("log", diameter_m)
    ends = _bare(cake, still_film("wall", diameter_m), 0.0)
    bare = _bare(cake, log, 0.0)
    cloth = cooling_value("cloth-breath") + np.zeros_like(cake.water_kg_m3[:, None])
    side = replace(bare, layer=cloth_layer(), breath=cloth)
    return Stage(until_s, cake.around, top=ends, bottom=ends, side=side)


def cloth_layer() -> float:
    """What one layer of cloth keeps of the heat [m2K/W]."""
    return cooling_value("cloth") / 1000 / cooling_value("cloth-conduction")


def _bare(cake: Cake, film: Film, crust_m: float) -> Face:
    """A bare face: its crust grows by what leaves; without one, a wet skin dries first."""
    per_m = crust_resistance_s_m(cake.draws.crust)[:, None]
    water = cake.water_kg_m3[:, None]
    return Face(
        film,
        cooling_value("emissivity-crumb"),
        breath=crust_m * per_m,
        drying=per_m / water,
        wet=0.0 if crust_m > 0 else value("wet-skin") * water,
    )


def _wrapped(film: Film) -> Face:
    return Face(film, cooling_value("emissivity-crumb"), layer=cooling_value("wrap-layer"))


def _tin(cake: Cake, film: Film) -> Face:
    gap = (cooling_value("tin-gap") * cake.draws.gap)[:, None]
    return Face(
        film,
        cake.wall.emissivity,
        layer=cake.wall.resistance_m2k_w + gap,
        store=cake.wall.heat_per_area_j_m2k,
        start_k=cake.tin_start_k,
    )


def rolled_up(length_m: float, width_m: float, sheet_m: float) -> tuple[float, float]:
    """Diameter and length [m] of a loose roll from the long side, with its cloth in it.

    >>> tuple(round(m, 3) for m in rolled_up(0.33, 0.229, 0.012))
    (0.067, 0.33)
    """
    turned = min(length_m, width_m) * (sheet_m + cooling_value("cloth") / 1000)
    return float(np.sqrt(4 * turned / np.pi / cooling_value("roll-loose"))), max(length_m, width_m)
