"""How long a torte freezes and thaws: an interval by its shape and its matter, no evidence."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from krume.base import Interval, OutOfRangeError, as_text
from krume.keep.frozen.marching import Round, SteadyAir, march
from krume.keep.frozen.matter import Array, Matter, freezing_point_c, matter_of
from krume.keep.frozen.rows import frozen_figures, frozen_value

_DRAWS, _SEED = 10, 7
_SHARES = (0.1, 0.9)
_HOUR_S = 3600.0
_ENOUGH = 0.95


@dataclass(frozen=True, slots=True)
class ColdBody:
    """A round torte or cake by its outside and what it is made of; a mapping as pairs.

    `activity` is its water activity, of which the freezing point follows.
    """

    radius_cm: float
    height_cm: float
    mass_g: float
    fractions: tuple[tuple[str, float], ...]
    activity: float

    @property
    def matter(self) -> Matter:
        """Its heat content and conductivity."""
        volume_m3 = np.pi * self.radius_cm**2 * self.height_cm / 1e6
        return matter_of(
            dict(self.fractions),
            density_kg_m3=self.mass_g / 1000 / float(volume_m3),
            freezing_c=freezing_point_c(self.activity),
        )


@dataclass(frozen=True, slots=True)
class FreezeThaw:
    """Hours to freeze and to thaw, between tenth and ninetieth of the draws; None is never."""

    freeze_h: Interval | None
    thaw_h: Interval | None
    freezer_c: float
    fridge_c: float
    freezing_point_c: float


def freeze_and_thaw(
    body: ColdBody, *, freezer_c: float | None = None, fridge_c: float | None = None
) -> FreezeThaw:
    """Hours in a freezer from the fridge on, and hours in a fridge from the freezer on."""
    freezer = frozen_value("freezer") if freezer_c is None else freezer_c
    fridge = frozen_value("fridge") if fridge_c is None else fridge_c
    _within(freezer, "freezer", "coldest-freezer", "warmest-freezer")
    warmest = frozen_value("warmest-fridge")
    if not 0 < fridge <= warmest:
        text = (
            f"What needs the cold thaws in a fridge above 0 and up to {as_text(warmest)} °C; "
            f"{as_text(fridge, 1)} °C is none."
        )
        want = f"above 0 to {as_text(warmest)} °C"
        raise OutOfRangeError(text, field="fridge_c", got=f"{fridge:g}", want=want)
    return _hours(body, freezer, fridge)


def _within(amount: float, what: str, low: str, high: str) -> None:
    least, most = frozen_value(low), frozen_value(high)
    if not least <= amount <= most:
        span = f"{as_text(least)} to {as_text(most)} °C"
        text = f"A {what} is asked about from {span}; got {as_text(amount, 1)}."
        raise OutOfRangeError(text, field=f"{what}_c", got=f"{amount:g}", want=span)


@lru_cache(maxsize=64)
def _hours(body: ColdBody, freezer_c: float, fridge_c: float) -> FreezeThaw:
    draws, matter = draws_of(_DRAWS, _SEED), body.matter
    goal, thawed = frozen_value("frozen-at"), frozen_value("thawed-at")
    longest = _HOUR_S * frozen_value("longest")
    bare = _round(body, draws, wrapped=0.0)
    frozen = march(
        matter, bare, SteadyAir(draws.near(freezer_c, "freezer")),
        start_c=frozen_value("start"), film_w_m2k=draws.film, scale=draws.matter,
        until_s=longest, enough=lambda t: _most(t <= goal),
    )  # fmt: skip
    wrapped = _round(body, draws, wrapped=1.0)
    warm = march(
        matter, wrapped, SteadyAir(np.maximum(draws.near(fridge_c, "fridge"), 0.5)),
        start_c=freezer_c, film_w_m2k=draws.film, scale=draws.matter,
        until_s=longest, enough=lambda t: _most(t >= thawed),
    )  # fmt: skip
    return FreezeThaw(
        _span(frozen.when_s("warmest_c", goal, rising=False) * draws.factor),
        _span(warm.when_s("coldest_c", thawed, rising=True) * draws.factor),
        freezer_c,
        fridge_c,
        matter.freezing_c,
    )


@dataclass(frozen=True, slots=True)
class ColdDraws:
    """What is not known of a cold body, all (draws,); draw 0 is the nominal one."""

    film: Array
    matter: Array
    board: Array
    wrap: Array
    factor: Array
    unit: Array

    def near(self, temp_c: float, key: str) -> Array:
        """An air with the doubt of its row."""
        found: Array = temp_c + self.unit * (frozen_figures()[key].half_width or 0.0) / 2
        return found


def draws_of(count: int, seed: int) -> ColdDraws:
    """Joint draws of film, matter, board, wrapping and what the model leaves out."""
    rng = np.random.default_rng(seed)

    def normal() -> Array:
        even = (np.arange(count) + 0.5) / count
        drawn = rng.permutation(_normal_at(even))
        return np.concatenate([[0.0], drawn])

    return ColdDraws(
        film=frozen_value("film") * np.exp(frozen_value("spread-film") * normal()),
        matter=np.exp(frozen_value("spread-matter") * normal()),
        board=_doubtful("board", normal()),
        wrap=_doubtful("wrap", normal()),
        factor=np.exp(frozen_value("discrepancy") * normal()),
        unit=normal(),
    )


def _normal_at(share: Array) -> Array:
    from statistics import NormalDist

    bell = NormalDist()
    return np.array([bell.inv_cdf(float(each)) for each in share])


def _doubtful(key: str, drawn: Array) -> Array:
    row = frozen_figures()[key]
    found: Array = np.maximum(row.value + (row.half_width or 0.0) / 2 * drawn, row.value / 5)
    return found


def _most(done: NDArray[np.bool_]) -> bool:
    """Whether what is left to come is later than the ninetieth that is told."""
    return float(done.all(axis=(1, 2)).mean()) >= _ENOUGH


def _round(body: ColdBody, draws: ColdDraws, *, wrapped: float) -> Round:
    held = wrapped * draws.wrap
    return Round(body.radius_cm / 100, body.height_cm / 100, held, held, held + draws.board)


def _span(seconds: Array) -> Interval | None:
    """Nominal hours between tenth and ninetieth of the draws; None where most never come."""
    ordered = np.sort(seconds[1:]) / _HOUR_S
    low, high = (float(ordered[round(s * (len(ordered) - 1))]) for s in _SHARES)
    nominal = float(seconds[0]) / _HOUR_S
    return Interval(low, min(max(nominal, low), high), high) if np.isfinite(high) else None
