"""What water moves in a torte, as an answer."""

from dataclasses import dataclass

from krume.base import Interval


@dataclass(frozen=True, slots=True)
class MoisturePart:
    """All layers of one formula in one place: what water they take (above 0) or give.

    `water_g` and `water_pct` are at the start; `change_g` goes by the hours of the result at the
    likely pace. `verdict` is takes, gives or stays, after three days.
    """

    name: str
    of: str
    word: str
    count: int
    verdict: str
    water_g: float
    water_pct: float
    end_pct: float
    activity: float
    end_activity: float
    change_g: tuple[float, ...]
    day_1_g: Interval
    day_3_g: Interval


@dataclass(frozen=True, slots=True)
class MoistureUntil:
    """Hours until something: at the fast, the likely and the slow pace; None is later."""

    low: float | None
    best: float | None
    high: float | None


@dataclass(frozen=True, slots=True)
class MoistureBase:
    """A base that is meant to be crisp: until it is soft as planned, baked crisp, behind a film.

    `crisp_mass_g` is what it would weigh crisp. Hours beyond `looked_h` are None.
    """

    name: str
    activity: float
    water_pct: float
    planned_h: MoistureUntil
    bite_h: MoistureUntil
    crisp_h: MoistureUntil
    film_h: MoistureUntil
    closed_film_h: MoistureUntil
    film_mm: float
    has_film: bool
    crisp_mass_g: float | None
    looked_h: float


@dataclass(frozen=True, slots=True)
class MoistureResult:
    """Water of a torte over three days; where something is not known, `why_not` says what.

    `best_from_h` is when half of what moves has moved; `best_until_h` when the base is soft, None
    where nothing in it ends it. `svg` is the picture over the hours, wide and for a phone.
    """

    temp_c: float | None
    area_cm2: float | None
    hours: tuple[float, ...]
    parts: tuple[MoisturePart, ...]
    set_h: float | None
    best_from_h: Interval | None
    best_until_h: MoistureUntil | None
    base: MoistureBase | None
    lines: tuple[str, ...]
    why_not: str | None
    caution: str
    svg: str | None
    svg_narrow: str | None
