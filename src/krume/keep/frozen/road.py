"""A torte on the road: how warm its warmest place gets in its box. A prediction, no evidence."""

import math
from dataclasses import dataclass
from functools import cache, lru_cache

import numpy as np

from krume.base import Interval, NotFoundError, OutOfRangeError, as_text
from krume.evidence import column, load, optional
from krume.keep.frozen.marching import Air, Round, SteadyAir, march
from krume.keep.frozen.matter import Array
from krume.keep.frozen.rows import frozen_value
from krume.keep.frozen.times import ColdBody, ColdDraws, draws_of
from krume.properties import constants

BOX_COLUMNS = (
    column("key", "key"),
    column("words"),
    optional("wall_m2k_w", "number"),
    optional("half_width", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)
WITHIN, MAY, OVER = "within", "may", "over"
_DRAWS, _SEED, _CELLS = 16, 11, (8, 6)
_SHARES = (0.1, 0.5, 0.9)


@dataclass(frozen=True, slots=True)
class CakeBox:
    """What a torte travels in; `wall_m2k_w` None is nothing between it and the air outside."""

    key: str
    words: str
    wall_m2k_w: float | None
    half_width_m2k_w: float


@cache
def cake_boxes() -> dict[str, CakeBox]:
    """The boxes that are known, by key."""
    return {
        row.text("key"): CakeBox(
            row.text("key"), row.text("words"), row.maybe("wall_m2k_w"),
            row.maybe("half_width") or 0.0,
        )
        for row in load("keep_boxes.csv", BOX_COLUMNS)
    }  # fmt: skip


@dataclass(frozen=True, slots=True)
class Road:
    """Minutes outside the fridge in a box, air outside, ice packs, how cold it leaves."""

    minutes: float
    outside_c: float
    box: str = "card"
    packs_g: float = 0.0
    start_c: float = 4.0

    def __post_init__(self) -> None:
        """Refuse what is no road."""
        if self.box not in cake_boxes():
            known = ", ".join(cake_boxes())
            text = f"No box '{self.box}'. Type one of: {known}."
            raise NotFoundError(text, field="box", got=self.box, want=known)
        limit = constants("keep_road.csv")
        outside = (limit["coldest-outside"], limit["warmest-outside"])
        _check("minutes", "The road", self.minutes, 0.0, limit["longest"], "min")
        _check("outside_c", "The air outside", self.outside_c, *outside, "°C")
        _check("packs_g", "Ice packs", self.packs_g, 0.0, limit["most-packs"], "g")
        _check("start_c", "A torte from the fridge", self.start_c, -2.0, 15.0, "°C")


def _check(field: str, what: str, amount: float, low: float, high: float, unit: str) -> None:
    if math.isfinite(amount) and low <= amount <= high:
        return
    want = f"{as_text(low)} to {as_text(high)} {unit}"
    got = as_text(amount, 1) if math.isfinite(amount) else str(amount)
    text = f"{what} is asked about from {want}; got {got}."
    raise OutOfRangeError(text, field=field, got=got, want=want)


@dataclass(frozen=True, slots=True)
class OnTheRoad:
    """Warmest place at the end, minutes until it passes the cold limit, ice left.

    `until_warm_min` is None where nine of ten draws stay cold; `verdict` of the prediction is
    within (nine of ten stay cold), over (nine of ten do not), else may.
    """

    warmest_c: Interval
    mean_c: Interval
    until_warm_min: Interval | None
    ice_left_g: Interval
    verdict: str
    limit_c: float


def on_the_road(body: ColdBody, road: Road) -> OnTheRoad:
    """Predict how warm a torte gets on its road."""
    return _predicted(body, road)


@lru_cache(maxsize=64)
def _predicted(body: ColdBody, road: Road) -> OnTheRoad:
    draws = draws_of(_DRAWS, _SEED)
    air = _air(body, road, draws)
    none = np.zeros_like(draws.film)
    shape = Round(body.radius_cm / 100, body.height_cm / 100, none, none, draws.board)
    until = 60 * road.minutes
    course = march(
        body.matter, shape, air, start_c=road.start_c, film_w_m2k=draws.film,
        scale=draws.matter, until_s=until, enough=lambda _: False, cells=_CELLS,
    )  # fmt: skip
    limit = constants("keep_limits.csv")["cold-most-c"]
    factor = draws.factor
    warmest = _at(course.time_s, course.warmest_c, until * factor)
    warm = course.when_s("warmest_c", limit + 1e-9, rising=True) / 60
    ice = air.left_g if isinstance(air, _BoxAir) else none
    return OnTheRoad(
        _span(warmest), _span(_at(course.time_s, course.mean_c, until * factor)),
        _minutes(warm), _span(ice), _verdict(warmest[1:], limit), limit,
    )  # fmt: skip


def _at(time_s: Array, course: Array, when_s: Array) -> Array:
    """A course of every draw at a moment of its own; none later than the course goes."""
    return np.array([np.interp(when, time_s, course[:, draw]) for draw, when in enumerate(when_s)])


def _verdict(warmest_c: Array, limit_c: float) -> str:
    warm = float((warmest_c > limit_c).mean())
    return WITHIN if warm <= 0.1 else OVER if warm >= 0.9 else MAY


def _span(values: Array) -> Interval:
    ordered = np.sort(values[1:])
    low, best, high = (float(ordered[round(s * (len(ordered) - 1))]) for s in _SHARES)
    return Interval(low, best, high)


def _minutes(values_min: Array) -> Interval | None:
    """Minutes until warm; None where most stay cold; those that never are count as the last."""
    found = _span(values_min)
    if not math.isfinite(found.low):
        return None
    last = float(values_min[np.isfinite(values_min)].max())
    return Interval(found.low, min(found.best, last), min(found.high, last))


def _air(body: ColdBody, road: Road, draws: ColdDraws) -> Air:
    limit = constants("keep_road.csv")
    outside = road.outside_c + draws.unit * limit["outside-doubt"] / 2
    box = cake_boxes()[road.box]
    if box.wall_m2k_w is None:
        return SteadyAir(outside)
    wall = np.maximum(
        box.wall_m2k_w + draws.unit[::-1] * box.half_width_m2k_w / 2, box.wall_m2k_w / 5
    )
    held = wall + 1 / limit["inside-film"] + 1 / limit["outside-film"]
    return _BoxAir(outside, _wall_m2(body, limit["gap"]) / held, road.packs_g)


def _wall_m2(body: ColdBody, gap_cm: float) -> float:
    """Walls of a box with room on every side, square from above."""
    side = 2 * (body.radius_cm + gap_cm) / 100
    high = (body.height_cm + 2 * gap_cm) / 100
    return 2 * side**2 + 4 * side * high


class _BoxAir:
    """Air in a box between its walls, its ice and the cake; the ice melts as it takes heat."""

    def __init__(self, outside_c: Array, wall_w_k: Array, packs_g: float) -> None:
        limit = constants("keep_road.csv")
        self._outside, self._wall = outside_c, wall_w_k
        self._melt_j_g = frozen_value("latent") / 1000
        self._packs_w_k = limit["pack-film"] * limit["pack-area"] * packs_g / 1000
        self.left_g = np.full_like(outside_c, packs_g * limit["pack-ice"])

    def temp_c(self, conductance_w_k: Array, warmth_w: Array, step_s: float) -> Array:
        """Air that gives as much as it takes; ice of 0 degC pulls while there is some."""
        pull = np.where(self.left_g > 0, self._packs_w_k, 0.0)
        around = (self._wall * self._outside + warmth_w) / (self._wall + pull + conductance_w_k)
        taken = np.maximum(pull * around, 0.0) * step_s / self._melt_j_g
        self.left_g = np.maximum(self.left_g - taken, 0.0)
        found: Array = around
        return found
