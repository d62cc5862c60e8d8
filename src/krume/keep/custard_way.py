"""Which depth of custard cools in time, and in what: a prediction, never evidence."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from krume.bake import Cold, Vessel, cold, vessel, vessel_hours, vessels
from krume.base import Interval, OutOfRangeError
from krume.properties import constants

WITHIN, MAY, OVER = "within", "may", "over"
_SHARES = (0.1, 0.5, 0.9)


@dataclass(frozen=True, slots=True)
class CustardDepth:
    """One depth in one vessel: hours of both stages, None is later than the model looks.

    `verdict` of the prediction: `within` (nine of ten draws keep both limits), `over` (nine of ten
    break one), else `may`. It is never a verdict on a batch.
    """

    depth_cm: float
    first_h: Interval | None
    total_h: Interval | None
    verdict: str


@dataclass(frozen=True, slots=True)
class CustardVessel:
    """All depths of one vessel; the deepest that is within, and the shallowest that is over."""

    key: str
    words: str
    note: str
    depths: tuple[CustardDepth, ...]

    @property
    def within_cm(self) -> float | None:
        """Deepest of the depths that keeps both limits with room to spare; None is none of them."""
        return max((d.depth_cm for d in self.depths if d.verdict == WITHIN), default=None)

    @property
    def over_cm(self) -> float | None:
        """Shallowest of the depths that does not make it; None is none of them."""
        return min((d.depth_cm for d in self.depths if d.verdict == OVER), default=None)


@dataclass(frozen=True, slots=True)
class CustardCooling:
    """The vessels under the same places: room, fridge, minutes between, heat of the pot."""

    vessels: tuple[CustardVessel, ...]
    room_c: float
    fridge_c: float
    stand_min: float
    start_c: float


def custard_cooling(
    *,
    room_c: float | None = None,
    fridge_c: float | None = None,
    stand_min: float | None = None,
    start_c: float | None = None,
) -> CustardCooling:
    """Predict both stages for every vessel and depth of the table."""
    places = custard_places(room_c=room_c, fridge_c=fridge_c, stand_min=stand_min, start_c=start_c)
    found = tuple(_vessel(each, places) for each in vessels().values())
    return CustardCooling(found, places.room_c, places.fridge_c, places.stand_min, places.start_c)


def custard_depth(
    where: str,
    depth_cm: float,
    *,
    room_c: float | None = None,
    fridge_c: float | None = None,
    stand_min: float | None = None,
    start_c: float | None = None,
) -> CustardDepth:
    """Predict both stages for one depth in one vessel."""
    places = custard_places(room_c=room_c, fridge_c=fridge_c, stand_min=stand_min, start_c=start_c)
    return _depths(vessel(where), (depth_cm,), places)[0]


def custard_places(
    *, room_c: float | None, fridge_c: float | None, stand_min: float | None, start_c: float | None
) -> Cold:
    """The places as said or as the rows have them; a fridge that never gets it cold is refused."""
    places = cold(room_c=room_c, fridge_c=fridge_c, stand_min=stand_min, start_c=start_c)
    end = constants("keeping.csv")["cooling-end"]
    if places.fridge_c >= end:
        text = (
            f"A fridge of {places.fridge_c:g} °C never brings custard to {end:g} °C. Set it colder "
            "and measure its air."
        )
        raise OutOfRangeError(
            text, field="fridge_c", got=f"{places.fridge_c:g}", want=f"below {end:g} °C"
        )
    return places


def _vessel(where: Vessel, places: Cold) -> CustardVessel:
    return CustardVessel(
        where.key, where.words, where.note, _depths(where, where.depths_cm, places)
    )


@lru_cache(maxsize=64)
def _depths(where: Vessel, depths_cm: tuple[float, ...], places: Cold) -> tuple[CustardDepth, ...]:
    limit = constants("keeping.csv")
    hours = vessel_hours(
        where, depths_cm, places, from_c=limit["cooling-start"],
        to_c=(limit["cooling-middle"], limit["cooling-end"]),
    )  # fmt: skip
    most = (limit["cooling-first-h"], limit["cooling-total-h"])
    return tuple(
        _depth(depth, tuple(_span(hours[stage, i, 1:]) for stage in (0, 1)), most)
        for i, depth in enumerate(depths_cm)
    )


Hours = tuple[float, float, float]


def _span(hours: np.ndarray[tuple[int, ...], np.dtype[np.float64]]) -> Hours:
    ordered = np.sort(hours)
    low, best, high = (float(ordered[round(share * (len(ordered) - 1))]) for share in _SHARES)
    return low, best, high


def _depth(depth_cm: float, stages: tuple[Hours, ...], most_h: tuple[float, float]) -> CustardDepth:
    both = list(zip(stages, most_h, strict=True))
    verdict = MAY
    if all(high <= limit for (_, _, high), limit in both):
        verdict = WITHIN
    elif any(low > limit for (low, _, _), limit in both):
        verdict = OVER
    return CustardDepth(depth_cm, _hours(stages[0]), _hours(stages[1]), verdict)


def _hours(span: Hours) -> Interval | None:
    return Interval(*span) if np.isfinite(span).all() else None
