"""How long a torte or a cream keeps, why, and what must be said with it."""

from dataclasses import dataclass, replace

from krume.base import Interval, Notice, as_text
from krume.build import HandOver
from krume.keep import Keeping, assess, keep_rule, out_of_cold, place_rules, use_by
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.sources import source_keys
from krume.usecases.keep.custard_way import KeepCooling, custard_way
from krume.usecases.keep.frozen_way import KeepFreezing
from krume.usecases.keep.heated import KeepHeat
from krume.usecases.keep.road_way import KeepRoad
from krume.usecases.sold.order import order_notices
from krume.usecases.sold.product import Sold, SoldRead, families_of, sold_of


@dataclass(frozen=True, slots=True)
class KeepWhy:
    """One reason with its papers; `of` is the component, or nothing."""

    key: str
    of: str
    text: str
    status: str
    source: str


@dataclass(frozen=True, slots=True)
class KeepPart:
    """One component: its own hours in the cold, by which rule, and its need of cold."""

    name: str
    title: str
    rule: str | None
    cold_hours: Interval | None
    verdict: str
    water_activity: Interval | None


@dataclass(frozen=True, slots=True)
class KeepPlace:
    """What the rule of a place says of keeping cold, and whose rule it is."""

    place: str
    whose: str
    text: str
    status: str
    source: str
    page: str


@dataclass(frozen=True, slots=True)
class KeepResult:
    """How long it keeps. None is not known, and then nothing may be promised.

    `reasons` and `cautions` are sentences; `why` holds the reasons with their papers. `limits`
    are the ends of the whole: days by the day of making as day 1. `cooling` is how its custard
    cools in time, None where there is none or it was not asked for; `freezing`, `road` and `heat`
    are there when they were asked for. `places` are the rules of other places.
    """

    name: str
    kind: str
    on: str
    cold_hours: Interval | None
    cold_most_c: float
    room_hours: Interval | None
    days: int | None
    use_by: str | None
    reasons: tuple[str, ...]
    cautions: tuple[str, ...]
    why: tuple[KeepWhy, ...]
    components: tuple[KeepPart, ...]
    limits: tuple[str, ...]
    cooling: KeepCooling | None = None
    freezing: tuple[KeepFreezing, ...] = ()
    road: tuple[KeepRoad, ...] = ()
    heat: KeepHeat | None = None
    places: tuple[KeepPlace, ...] = ()


def keep_of(name: str, asked: Asked) -> Answer[KeepResult]:
    """Judge how long a formula, a torte or the things of an order keep; the hardest limit wins."""
    return keep_of_read(sold_of(name, asked), asked)


def keep_and_cool(
    name: str, asked: Asked, *, fridge_c: float | None = None, room_c: float | None = None
) -> Answer[KeepResult]:
    """The same, with the predicted way of its custards out of the warm."""
    read = sold_of(name, asked)
    answer = keep_of_read(read, asked)
    formulas = {key: formula for each in read.sold for key, formula in each.formulas.items()}
    families = {key: kind for each in read.sold for key, kind in families_of(each).items()}
    way = custard_way(formulas, families, fridge_c=fridge_c, room_c=room_c)
    sources = answer.sources if way is None else _cited(answer.sources)
    return replace(answer, result=replace(answer.result, cooling=way), sources=sources)


def _cited(sources: tuple[str, ...]) -> tuple[str, ...]:
    from krume.usecases.bake.cooling_sources import cooling_sources

    return source_keys(sources, cooling_sources())


def keep_of_read(read: SoldRead, asked: Asked) -> Answer[KeepResult]:
    """Keeping of things that were read already."""
    keeping = keeping_of(*read.sold)
    hand_over = read.order.hand_over if read.order is not None else None
    result = _result(read, keeping, hand_over)
    sources = (reason.source for reason in keeping.reasons)
    notices = (*order_notices(read, asked), *read.notices, *_habit(keeping), _deferral())
    cited = source_keys(read.sources, sources)
    return Answer(result, read.problems, notices, cited, is_possible=read.is_possible)


def _habit(keeping: Keeping) -> tuple[Notice, ...]:
    """Notice that the hours are the trade's habit, where they are."""
    soft = ("common practice", "from memory", "assumed")
    said = {r.status for r in keeping.reasons if r.of and r.key != "activity-estimate"}
    words = " and ".join(status for status in soft if status in said)
    if not words:
        return ()
    return (
        Notice("common-practice", f"The days are {words}: a habit of the trade, no shown fact."),
    )


def _deferral() -> Notice:
    text = "No legal or medical advice: your local law and your licensing authority decide."
    return Notice("local-law", text)


def keeping_of(*sold: Sold) -> Keeping:
    """Keeping of one thing or of several together, by the names of their formulas."""
    formulas = {name: formula for each in sold for name, formula in each.formulas.items()}
    families = {name: kind for each in sold for name, kind in families_of(each).items()}
    lost = {
        name: _evaporated_g(each)
        for each in sold
        if each.product.kind == "formula"
        for name in each.formulas
    }
    return assess(formulas, families, evaporated_g=lost)


def _evaporated_g(sold: Sold) -> float:
    mixed, finished = sold.product.mixed_g, sold.product.finished_g
    return 0.0 if mixed is None or finished is None else max(0.0, mixed - finished)


def cold_most_c() -> float:
    """Highest temperature at which a cold cake is kept."""
    from krume.properties import constants

    return constants("keep_limits.csv")["cold-most-c"]


def _result(read: SoldRead, keeping: Keeping, hand_over: HandOver | None) -> KeepResult:
    days = keeping.least_days
    cautions = [each.text for each in keeping.cautions]
    return KeepResult(
        name=read.title,
        kind=read.kind,
        on=read.on.isoformat(),
        cold_hours=keeping.cold_h,
        cold_most_c=cold_most_c(),
        room_hours=keeping.room_h,
        days=days,
        use_by=_use_by(read, days),
        reasons=tuple(reason.text for reason in keeping.reasons),
        cautions=(*_warm_way(hand_over), *cautions),
        why=tuple(
            KeepWhy(r.key, r.of, r.text, r.status, r.source) for r in keeping.reasons
        ),
        components=tuple(
            KeepPart(
                part.name, part.title, None if part.rule is None else part.rule.key,
                part.cold_h, part.verdict, part.activity,
            )
            for part in keeping.components
        ),
        limits=_limits(keeping),
        places=keep_places(),
    )  # fmt: skip


_PLACES = ("uk-cold", "uk-served", "eu-cold")


def keep_places() -> tuple[KeepPlace, ...]:
    """Rules of the places that are not those the keeping goes by."""
    return tuple(
        KeepPlace(rule.place, rule.whose, rule.words, rule.status, rule.source, rule.page)
        for rule in place_rules()
        if rule.key in _PLACES
    )


def _use_by(read: SoldRead, days: int | None) -> str | None:
    """Last day, counted from the day it is made; an order does not say when its parts are."""
    if not days or read.order is not None:
        return None
    return use_by(read.on, days=days).isoformat()


def _limits(keeping: Keeping) -> tuple[str, ...]:
    if keeping.cold_h is None:
        return ("Nothing is promised: a component is not known.",)
    low, high = (as_text(hours / 24, 1) for hours in (keeping.cold_h.low, keeping.cold_h.high))
    mark = keep_rule("date-mark")
    return (
        f"{low} to {high} days at {as_text(cold_most_c())} °C or below; count on {low}.",
        "The day of making is day 1, that of the oldest part; frozen time does not count, "
        "thawed time does.",
        f"Never beyond {as_text(mark.cold_h.high / 24)} days ({mark.note}).",
    )


def _warm_way(hand_over: HandOver | None) -> tuple[str, ...]:
    """Hours without cooling that an order's own words come to."""
    if hand_over is None:
        return ()
    found = out_of_cold(hand_over.read, hand_over=hand_over.time, drive_min=hand_over.drive_min)
    return (found.text,) if found.text else ()
