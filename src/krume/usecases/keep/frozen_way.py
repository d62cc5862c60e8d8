"""Freezing and thawing a torte or a cake: whether it takes it, how long, when to take it out."""

import math
from dataclasses import dataclass
from datetime import datetime, time, timedelta

from krume.base import Interval, as_text
from krume.keep import (
    Keeping,
    dew_point_c,
    frozen_value,
    hardest_to_freeze,
    takes_freezing,
)
from krume.store import book_at
from krume.usecases.asking.answer import Asked
from krume.usecases.keep.cold_body import cold_body_of
from krume.usecases.plan.kitchen import plan_kitchen
from krume.usecases.sold.product import Sold, families_of

_STEP_MIN = 5


@dataclass(frozen=True, slots=True)
class KeepFreezePart:
    """One component: takes freezing well, with some-loss, not (no), or unknown; for how many days.

    `frozen_days` is None where it does not, or where nothing is known.
    """

    name: str
    title: str
    takes: str
    frozen_days: Interval | None
    words: str
    status: str
    source: str


@dataclass(frozen=True, slots=True)
class KeepFreezing:
    """Freezing of one thing: its hardest component, predicted hours, and when it is taken out.

    `unknown` says what is missing where no hours are predicted. `take_out` is the latest moment to
    move it from the freezer to the fridge, None where no hour of need is known. `dew_c` is the dew
    point of the room: colder, its surface sweats. A prediction shows nothing.
    """

    name: str
    title: str
    takes: str
    parts: tuple[KeepFreezePart, ...]
    freeze_h: Interval | None
    thaw_h: Interval | None
    freezer_c: float
    fridge_c: float
    unknown: str
    ready: datetime | None
    take_out: datetime | None
    dew_c: float
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class FreezeWish:
    """Air of freezer, fridge and room, None as the rows have it; when it must stand ready."""

    freezer_c: float | None = None
    fridge_c: float | None = None
    room_c: float | None = None
    ready: datetime | None = None


def freezing_of(sold: Sold, keeping: Keeping, wish: FreezeWish, asked: Asked) -> KeepFreezing:
    """Freezing of one thing to sell, by its components and its shape."""
    from krume.keep import freeze_and_thaw

    parts = _parts(sold, keeping)
    takes = hardest_to_freeze(part.takes for part in parts)
    body = cold_body_of(sold, asked)
    room = frozen_value("room") if wish.room_c is None else wish.room_c
    dew = dew_point_c(room, humidity_pct=frozen_value("humidity"))
    found = None
    if not isinstance(body, str):
        found = freeze_and_thaw(body, freezer_c=wish.freezer_c, fridge_c=wish.fridge_c)
    thaw = None if found is None else found.thaw_h
    take_out = _take_out(wish.ready, thaw, asked)
    freezing = KeepFreezing(
        name=sold.name,
        title=sold.product.name,
        takes=takes,
        parts=parts,
        freeze_h=None if found is None else _rounded(found.freeze_h),
        thaw_h=_rounded(thaw),
        freezer_c=frozen_value("freezer") if found is None else found.freezer_c,
        fridge_c=frozen_value("fridge") if found is None else found.fridge_c,
        unknown=body if isinstance(body, str) else "",
        ready=wish.ready,
        take_out=take_out,
        dew_c=round(dew, 1),
        lines=(),
    )
    return _told(freezing, room)


def _parts(sold: Sold, keeping: Keeping) -> tuple[KeepFreezePart, ...]:
    kinds = families_of(sold)
    found = []
    for part in keeping.components:
        if part.name not in sold.formulas:
            continue
        how = takes_freezing(kinds.get(part.name), part.traits)
        found.append(
            KeepFreezePart(
                part.name, part.title, how.takes, how.frozen_days, how.words, how.status, how.source
            )
        )
    return tuple(found)


def _rounded(hours: Interval | None) -> Interval | None:
    """Whole hours, the ends outwards, so that an hour is never promised too short."""
    if hours is None:
        return None
    return Interval(math.floor(hours.low), round(hours.best), math.ceil(hours.high))


def _take_out(ready: datetime | None, thaw_h: Interval | None, asked: Asked) -> datetime | None:
    """Latest moment into the fridge; one in the night is moved to the evening before."""
    if ready is None or thaw_h is None:
        return None
    moment = ready - timedelta(hours=math.ceil(thaw_h.high))
    moment -= timedelta(minutes=moment.minute % _STEP_MIN)
    kitchen, _ = plan_kitchen(book_at(asked.book))
    midnight = datetime.combine(moment.date(), time(), moment.tzinfo)
    opens, closes = (
        midnight + timedelta(minutes=m) for m in (kitchen.begins_min, kitchen.closes_min)
    )
    if moment < opens:
        return closes - timedelta(days=1)
    return min(moment, closes)


def _told(freezing: KeepFreezing, room_c: float) -> KeepFreezing:
    from dataclasses import replace

    return replace(freezing, lines=(*_hours(freezing), *_always(freezing, room_c)))


def _hours(freezing: KeepFreezing) -> list[str]:
    said = []
    if freezing.unknown:
        said.append(f"Hours are not predicted. {freezing.unknown}")
    elif freezing.freeze_h is None or freezing.thaw_h is None:
        longest = as_text(frozen_value("longest"))
        said.append(f"It takes longer than {longest} h: cut it into smaller pieces first.")
    else:
        said.append(
            f"Frozen through after {_span(freezing.freeze_h)} h at "
            f"{as_text(freezing.freezer_c, 1)} °C bare, thawed after {_span(freezing.thaw_h)} h "
            f"wrapped in a fridge of {as_text(freezing.fridge_c, 1)} °C. Predicted, no evidence: "
            "a probe in its middle decides."
        )
    if freezing.take_out is not None and freezing.ready is not None:
        said.append(
            f"For {freezing.ready:%A %Y-%m-%d %H:%M}: out of the freezer into the fridge by "
            f"{freezing.take_out:%A %Y-%m-%d %H:%M}."
        )
    return said


def _span(hours: Interval) -> str:
    low, high = as_text(hours.low), as_text(hours.high)
    return low if low == high else f"{low} to {high}"


def _always(freezing: KeepFreezing, room_c: float) -> tuple[str, ...]:
    most = as_text(frozen_value("warmest-fridge"))
    return (
        f"What needs the cold thaws in the fridge, at {most} °C or below (FDA Food Code 3-501.13, "
        "where it is adopted); once thawed it is not frozen again.",
        f"It stays wrapped until its surface is above {as_text(freezing.dew_c, 1)} °C, the dew "
        f"point of a room of {as_text(room_c, 1)} °C at "
        f"{as_text(frozen_value('humidity'))} %: colder it sweats.",
        "Frozen days do not count; the days before and after do. Freezing kills no germs.",
    )
