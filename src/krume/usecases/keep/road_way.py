"""A torte on the road: how warm it gets in its box, and the readings it needs."""

from dataclasses import dataclass

from krume.base import Interval, as_text
from krume.keep import room_rules
from krume.usecases.asking.answer import Asked
from krume.usecases.keep.cold_body import cold_body_of
from krume.usecases.sold.product import Sold

_NOT_SHOWN = "not-shown"


@dataclass(frozen=True, slots=True)
class RoadWish:
    """Minutes on the road, air outside, box, ice packs, how cold it leaves the fridge."""

    minutes: float
    outside_c: float
    box: str = "card"
    packs_g: float = 0.0
    start_c: float = 4.0


@dataclass(frozen=True, slots=True)
class KeepRoad:
    """A predicted road of one thing. `verdict` of the way itself is not-shown until it is read.

    `predicted` is within (nine of ten stay cold), may, over, or unknown; `counts_min` are the
    minutes that count as warm by the named rule, of `limit_min`.
    """

    name: str
    title: str
    minutes: float
    outside_c: float
    box: str
    box_words: str
    packs_g: float
    start_c: float
    warmest_c: Interval | None
    until_warm_min: Interval | None
    ice_left_g: Interval | None
    predicted: str
    verdict: str
    counts_min: float
    limit_min: float
    rule: str
    unknown: str
    lines: tuple[str, ...]


def road_of(sold: Sold, wish: RoadWish, asked: Asked) -> KeepRoad:
    """Predict one thing's road; what its shape does not say is said."""
    from krume.keep import Road, cake_boxes, on_the_road

    road = Road(wish.minutes, wish.outside_c, wish.box, wish.packs_g, wish.start_c)
    body = cold_body_of(sold, asked)
    found = None if isinstance(body, str) else on_the_road(body, road)
    rule = room_rules()[0]
    limit = 60 * rule.number_of("hours")
    predicted = "unknown" if found is None else found.verdict
    counts = 0.0 if predicted == "within" else wish.minutes
    words = cake_boxes()[wish.box].words
    warmest = None if found is None else found.warmest_c
    until = None if found is None else found.until_warm_min
    ice = None if found is None else found.ice_left_g
    unknown = body if isinstance(body, str) else ""
    lines = (
        _way(wish, words),
        *_heat(warmest, until, predicted, unknown),
        *_ice(wish, ice),
        f"{as_text(counts, 0)} of {as_text(limit, 0)} minutes count as warm: "
        f"{rule.text('words')} (FDA Food Code {rule.text('page')}, with its written procedure and "
        "where your law takes it over).",
        *_readings(),
    )
    return KeepRoad(
        sold.name, sold.product.name, wish.minutes, wish.outside_c, wish.box, words, wish.packs_g,
        wish.start_c, _rounded(warmest), _rounded(until), ice, predicted, _NOT_SHOWN, counts,
        limit, rule.text("words"), unknown, lines,
    )  # fmt: skip


def _rounded(span: Interval | None) -> Interval | None:
    if span is None:
        return None
    return Interval(round(span.low, 1), round(span.best, 1), round(span.high, 1))


def _way(wish: RoadWish, words: str) -> str:
    packs = f", {as_text(wish.packs_g)} g of ice packs" if wish.packs_g else ", no ice packs"
    return (
        f"{as_text(wish.minutes)} min, {as_text(wish.outside_c, 1)} °C round it, {words}{packs}, "
        f"out of a fridge of {as_text(wish.start_c, 1)} °C."
    )


def _heat(
    warmest_c: Interval | None, until_min: Interval | None, predicted: str, unknown: str
) -> list[str]:
    if warmest_c is None:
        return [f"How warm it gets is not predicted. {unknown}"]
    low, high = as_text(warmest_c.low, 0), as_text(warmest_c.high, 0)
    span = low if low == high else f"{low} to {high}"
    said = [f"Its warmest place, the rim, is predicted at {span} °C when it arrives."]
    if predicted == "within":
        said.append("It is likely to stay at 5 °C or below. That is no evidence.")
    elif until_min is not None:
        first, last = (as_text(each, 0) for each in (until_min.low, until_min.high))
        span = first if first == last else f"{first} to {last}"
        said.append(f"The rim passes 5 °C after {span} min; the middle stays cold far longer.")
    return said


def _ice(wish: RoadWish, ice_g: Interval | None) -> list[str]:
    if ice_g is None or not wish.packs_g:
        return []
    if ice_g.high <= 0:
        return ["All the ice is melted before it arrives: take more."]
    return [f"About {as_text(ice_g.best, 0)} g of ice is left."]


def _readings() -> tuple[str, str]:
    return (
        "It needs two readings, at the rim and one centimetre in: when it leaves the fridge, 5 °C "
        "or below, and when it is handed over; write both with their times.",
        "A prediction is no evidence: until they are written the verdict is not shown. Your local "
        "law decides.",
    )
