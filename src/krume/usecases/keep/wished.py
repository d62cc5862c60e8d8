"""How long it keeps with what was asked for beside: cooling, freezing, the road, a heating."""

from dataclasses import dataclass, replace
from datetime import datetime

from krume.base import InputError
from krume.keep import frozen_value
from krume.store import book_at, studio_of
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.clock import now
from krume.usecases.asking.sources import source_keys
from krume.usecases.keep.frozen_way import FreezeWish, KeepFreezing, freezing_of
from krume.usecases.keep.heated import heat_of
from krume.usecases.keep.keep import KeepResult, keep_and_cool, keeping_of
from krume.usecases.keep.moments import next_moment
from krume.usecases.keep.road_way import KeepRoad, RoadWish, road_of
from krume.usecases.sold.product import SoldRead, families_of, sold_of

_FREEZING = ("chen-1985", "choi-okos-1986", "lopez-leiva-2003")


@dataclass(frozen=True, slots=True)
class KeepWish:
    """What a person asks beside how long it keeps; None and empty is not asked.

    `ready` is when it must stand thawed, an order's own hand-over where it is not said. A road is
    predicted where its minutes or the air outside are said; an order's own drive counts else.
    """

    fridge_c: float | None = None
    room_c: float | None = None
    freeze: bool = False
    freezer_c: float | None = None
    ready: str = ""
    road_min: float | None = None
    outside_c: float | None = None
    box: str = "card"
    packs_g: float = 0.0
    heat: str = ""


def keep_wished(name: str, wish: KeepWish, asked: Asked) -> Answer[KeepResult]:
    """Judge how long it keeps, and answer what was asked beside it."""
    answer = keep_and_cool(name, asked, fridge_c=wish.fridge_c, room_c=wish.room_c)
    read = sold_of(name, asked)
    freezing = _freezing(read, wish, asked)
    road = _road(read, wish, asked)
    heat = None
    if wish.heat.strip():
        formulas = {name: f for each in read.sold for name, f in each.formulas.items()}
        kinds = {name: kind for each in read.sold for name, kind in families_of(each).items()}
        heat = heat_of(wish.heat, formulas, kinds)
    result = replace(answer.result, freezing=freezing, road=road, heat=heat)
    sources = source_keys(
        answer.sources,
        (place.source for place in result.places),
        _FREEZING if freezing or road else (),
        ("food-microbiology-2011",) if heat else (),
    )
    return replace(answer, result=result, sources=sources)


def _freezing(read: SoldRead, wish: KeepWish, asked: Asked) -> tuple[KeepFreezing, ...]:
    if not (wish.freeze or wish.freezer_c is not None or wish.ready.strip()):
        return ()
    own = FreezeWish(wish.freezer_c, wish.fridge_c, wish.room_c, _ready(read, wish, asked))
    keeping = keeping_of(*read.sold)
    return tuple(freezing_of(each, keeping, own, asked) for each in read.sold)


def _ready(read: SoldRead, wish: KeepWish, asked: Asked) -> datetime | None:
    moment = now(studio_of(book_at(asked.book)), on=asked.on)
    if wish.ready.strip():
        return next_moment(wish.ready, moment, field="ready")
    order = read.order
    if order is None or order.date is None or order.hand_over is None:
        return None
    time = order.hand_over.time
    return None if time is None else datetime.combine(order.date, time, moment.tzinfo)


def _road(read: SoldRead, wish: KeepWish, asked: Asked) -> tuple[KeepRoad, ...]:
    if wish.road_min is None and wish.outside_c is None:
        return ()
    hand = read.order.hand_over if read.order is not None else None
    minutes = wish.road_min
    if minutes is None:
        minutes = None if hand is None else hand.drive_min
    if minutes is None:
        text = "How many minutes is it on the road, from the fridge to the table? Type them: 35"
        raise InputError(text, field="road", got="", want="minutes, such as 35")
    outside = frozen_value("room") if wish.outside_c is None else wish.outside_c
    start = frozen_value("fridge") if wish.fridge_c is None else wish.fridge_c
    way = RoadWish(minutes, outside, wish.box, wish.packs_g, start)
    return tuple(road_of(each, way, asked) for each in read.sold)
