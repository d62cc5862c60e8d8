"""Ways out where no plan can be made, each planned again, or summed, before it is told."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from krume.base import Infeasible, as_text
from krume.plan.clashes import Asking
from krume.plan.draft import HALVES
from krume.plan.timetable import Timetable, can_be_planned, timetable
from krume.plan.tortes import places
from krume.plan.usual import usual, usual_min
from krume.plan.work import PlannedTorte, Promise

_SEARCH_S = 5.0
_QUARTER_MIN = 30
_LATER_H = (1, 2, 3, 4, 6, 8, 12, 24, 36, 48, 72)


@dataclass(frozen=True, slots=True)
class WayOut:
    """One way out: what to do, what it takes, and whether a whole plan was made with it.

    `planned` is false where it rests on something that must be looked at first, named in `text`.
    """

    kind: str
    text: str
    last_out: datetime | None = None
    count: int | None = None
    planned: bool = True
    plan: Timetable | None = None


def ways_out(asking: Asking, clash: Infeasible) -> tuple[WayOut, ...]:
    """Ways out of a clash, in a fixed order."""
    names = {one.name for one in clash.clashes}
    if names == {"fridge"}:
        return tuple(_past_the_fridge(asking, float(clash.clashes[0].needs)))
    return tuple(_later(asking))


def how_many_fit(asking: Asking) -> tuple[int, int]:
    """Tortes that the fridge holds, of how many there are."""
    room = round((asking.kitchen.fridge_places or 0.0) * HALVES)
    each = [size for size, _ in _each(asking)]
    fits, taken = 0, 0
    for size in sorted(each):
        taken += size
        fits += taken <= room
    return fits, len(each)


def _each(asking: Asking) -> Iterator[tuple[int, PlannedTorte]]:
    for promise in asking.promises:
        for torte, count in promise.tortes:
            if torte.kind != "plain":
                yield from ((places(torte), torte) for _ in range(count))


def _past_the_fridge(asking: Asking, need: float) -> Iterator[WayOut]:
    has = asking.kitchen.fridge_places or 0.0
    wider = replace(asking, kitchen=replace(asking.kitchen, fridge_places=need))
    found = _plan(wider)
    if found is not None:
        more = as_text(need - has, 1)
        words = f"Borrow {more} more place{'' if more == '1' else 's'} in a fridge."
        yield WayOut("borrow", words, found.last_out, math.ceil(need - has), plan=found)
    fits, of = how_many_fit(asking)
    if len(asking.promises) == 1 and len(asking.promises[0].tortes) == 1:
        yield from _evening(asking, of - fits)
        yield from _morning(asking, of - fits)


def _evening(asking: Asking, count: int) -> Iterator[WayOut]:
    """Some of the tortes handed over on the evening before."""
    promise = asking.promises[0]
    torte, all_of_them = promise.tortes[0]
    day = promise.ready - timedelta(days=1)
    hour = day.replace(hour=0, minute=0) + timedelta(minutes=usual_min("evening"))
    early = Promise(f"{promise.order}, evening before", hour, ((torte, count),))
    rest = replace(promise, tortes=((torte, all_of_them - count),))
    split = replace(asking, promises=(early, rest))
    if hour > asking.now.replace(tzinfo=None) and _can(split):
        words = f"Deliver {count} on {hour:%A} at {hour:%H:%M}, to be kept cold there."
        yield WayOut("evening", words, count=count)


def _morning(asking: Asking, count: int) -> Iterator[WayOut]:
    """Some of the tortes finished on the morning itself, from filled cores."""
    promise = asking.promises[0]
    torte, _ = promise.tortes[0]
    if torte.kind != "stacked":
        return
    each = usual_min("finish-core") + usual_min("box")
    cold = usual_min("last-cold")
    start = promise.ready - timedelta(minutes=cold + count * each)
    start -= timedelta(minutes=start.minute % _QUARTER_MIN, seconds=start.second)
    opens = start.replace(hour=0, minute=0) + timedelta(minutes=asking.kitchen.opens_min)
    if start < opens:
        return
    done = start + timedelta(minutes=count * each)
    free = round((promise.ready - done).total_seconds() / 60) - cold
    high = int(usual("core-stack").value)
    yield WayOut(
        "morning",
        f"Finish {count} on {start:%A} from {start:%H:%M}: {count} × {each} min, "
        f"done {done:%H:%M}, {cold} min cold, {free} min free. "
        f"Their filled cores stand {high} high with a board between: look first whether "
        f"{math.ceil(count / high)} small places beside the others are there for the night.",
        planned=False,
        count=count,
    )


def _later(asking: Asking) -> Iterator[WayOut]:
    """The first later hand-over with which everything can be made."""
    for hours in _LATER_H:
        moved = tuple(
            replace(promise, ready=promise.ready + timedelta(hours=hours))
            for promise in asking.promises
        )
        if _can(replace(asking, promises=moved)):
            last = max(promise.ready for promise in moved)
            yield WayOut("later", f"Hand over {hours} h later, {last:%A %Y-%m-%d %H:%M}.")
            return


def _can(asking: Asking) -> bool:
    return can_be_planned(asking.promises, asking.formulas, asking.kitchen, asking.now)


def _plan(asking: Asking) -> Timetable | None:
    return timetable(
        asking.promises, asking.formulas, asking.kitchen, asking.now, time_limit_s=_SEARCH_S
    )
