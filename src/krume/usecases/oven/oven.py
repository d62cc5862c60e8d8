"""The oven at the counter: which load to touch next and in how many minutes, all on one line."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta, tzinfo

from krume.bake import door_back_min
from krume.base import as_text
from krume.publish import OvenBar, oven_drawing
from krume.store import KitchenSettings, book_at, kitchen_of, running_clocks, weighing_at
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.clock import moment
from krume.usecases.book.texts import texts_of
from krume.usecases.oven.load import Load
from krume.usecases.oven.loads import loads_now

_READY = 3


@dataclass(frozen=True, slots=True)
class OvenNext:
    """What is touched next. `kind` is check, latest, over, core, probe, since or empty.

    `minutes` are whole, from now; those of `over` and `since` have passed. `until` is UTC.
    """

    kind: str
    minutes: int
    until: str
    load: Load | None


@dataclass(frozen=True, slots=True)
class OvenReady:
    """A formula that may go in by one tap, and its tin; an empty tin is the formula's own."""

    formula: str
    title: str
    tin: str
    why: str


@dataclass(frozen=True, slots=True)
class OvenMoved:
    """A load the others in the oven move: its first check and latest out on the clock, and why."""

    number: int
    check_was: str
    check: str
    latest_was: str
    latest: str
    why: str


@dataclass(frozen=True, slots=True)
class OvenView:
    """The oven now. `inside` are the loads that are in, the next to touch first.

    `door` says when the air is back after the last door, and is empty once it is.
    """

    next: OvenNext
    inside: tuple[Load, ...]
    last_out: Load | None
    moved: tuple[OvenMoved, ...]
    door: str
    ready: tuple[OvenReady, ...]
    svg: str
    now_utc: str


def oven_view(asked: Asked, *, at: str = "") -> OvenView:
    """The loads of the oven, what is touched next, and what may go in."""
    when = at or moment()
    loads = loads_now(asked, at=when)
    nexts = sorted((_next(x, when) for x in loads if x.out_at is None), key=_urgency)
    inside = tuple(each.load for each in nexts if each.load is not None)
    out = [load for load in loads if load.out_at is not None]
    kitchen = kitchen_of(book_at(asked.book))
    return OvenView(
        next=nexts[0] if nexts else OvenNext("empty", 0, when, None),
        inside=inside,
        last_out=max(out, key=lambda load: load.out_at or "", default=None),
        moved=moved_loads(inside, kitchen.zone),
        door=_door(loads, when, kitchen),
        ready=_ready(asked, loads),
        svg=_drawn(loads, when, kitchen.zone),
        now_utc=when,
    )


def moved_loads(loads: Iterable[Load], zone: tzinfo | None) -> tuple[OvenMoved, ...]:
    """The loads whose minutes the others move, in their order, by the clock of the room."""
    moved = (x for x in loads if x.core_c is None and x.is_moved and x.check_min is not None)
    return tuple(_moved(load, zone) for load in sorted(moved, key=lambda load: load.number))


def _moved(load: Load, zone: tzinfo | None) -> OvenMoved:
    return OvenMoved(
        number=load.number,
        check_was=clock_at(load.in_at, load.alone_check_min, zone),
        check=clock_at(load.in_at, load.check_min, zone),
        latest_was=clock_at(load.in_at, load.alone_latest_min, zone),
        latest=clock_at(load.in_at, load.latest_min, zone),
        why=load.why,
    )


def clock_at(start: str, minutes: float | None, zone: tzinfo | None) -> str:
    """The clock of the room some minutes after a moment; empty where they are not known."""
    if minutes is None:
        return ""
    at = _after(start, minutes).astimezone(zone)
    return f"{at.hour}:{at.minute:02d}"


def _door(loads: tuple[Load, ...], at: str, kitchen: KitchenSettings) -> str:
    """When the air is back after the last door, in the studio's own minutes or the model's."""
    doors = [moment for load in loads for moment in (load.in_at, load.out_at) if moment]
    if not doors:
        return ""
    own = kitchen.recover_min
    minutes = door_back_min() if own is None else own
    if _after(max(doors), minutes) <= datetime.fromisoformat(at):
        return ""
    clock = clock_at(max(doors), minutes, kitchen.zone)
    if own is None:
        return f"Air back at {clock}, by the model’s {as_text(door_back_min(), 0)} min."
    return f"Air back at {clock}, by your own {as_text(own, 0)} min."


def _after(start: str, minutes: float) -> datetime:
    return datetime.fromisoformat(start) + timedelta(minutes=minutes)


def _next(load: Load, at: str) -> OvenNext:
    """The next touch of one load that is in."""
    now = datetime.fromisoformat(at)
    if load.left_best_min is not None and load.core_at:
        until = _after(load.core_at, load.left_best_min)
        return _to("core" if now < until else "probe", until, now, load)
    if load.check_min is None or load.latest_min is None:
        return _to("since", datetime.fromisoformat(load.in_at), now, load)
    check, latest = _after(load.in_at, load.check_min), _after(load.in_at, load.latest_min)
    if now < check:
        return _to("check", check, now, load)
    return _to("latest" if now < latest else "over", latest, now, load)


def _to(kind: str, until: datetime, now: datetime, load: Load) -> OvenNext:
    minutes = abs((until - now).total_seconds()) / 60
    whole = int(minutes) if kind in ("over", "since", "probe") else -int(-minutes // 1)
    return OvenNext(kind, whole, until.isoformat(timespec="milliseconds"), load)


def _urgency(each: OvenNext) -> tuple[bool, str]:
    """What is over comes first, then what comes soonest; a load without minutes comes last."""
    return each.kind == "since", each.until


def _ready(asked: Asked, loads: tuple[Load, ...]) -> tuple[OvenReady, ...]:
    """Batters that stand ready, then what was baked last: by one tap into the oven."""
    book = book_at(asked.book)
    titles = {row.name: row.title for row in texts_of("formula", asked)}
    found: dict[tuple[str, str], str] = {}
    for kind in ("batter", "foam"):
        for clock in running_clocks(book, kind):
            kept = None if clock.weighing is None else weighing_at(book, clock.weighing)
            if kept is not None:
                name = kept.place.partition("/")[2].removesuffix(".txt")
                found.setdefault((name, ""), f"its {kind} stands ready")
    for load in reversed(loads):
        found.setdefault((load.formula, load.tin), "once more")
    known = [(key, why) for key, why in found.items() if key[0] in titles]
    return tuple(OvenReady(n, titles[n] or n, tin, why) for (n, tin), why in known[:_READY])


def _drawn(loads: tuple[Load, ...], at: str, zone: tzinfo | None) -> str:
    bars = [_bar(load, zone) for load in loads]
    return oven_drawing(bars, datetime.fromisoformat(at).astimezone(zone), ident="oven")


def _words(load: Load) -> str:
    if not load.formula:
        return "no formula"
    return load.formula if load.tins == 1 else f"{load.tins} × {load.formula}"


def _bar(load: Load, zone: tzinfo | None) -> OvenBar:
    def local(start: str, minutes: float | None) -> datetime | None:
        return None if minutes is None else _after(start, minutes).astimezone(zone)

    ends = ((load.in_at, load.check_min), (load.in_at, load.latest_min))
    if load.left_best_min is not None:
        # The probe knows more than the model did at the door.
        ends = ((load.core_at, load.left_low_min), (load.core_at, load.left_high_min))
    out = None if load.out_at is None else datetime.fromisoformat(load.out_at).astimezone(zone)
    return OvenBar(
        number=load.number,
        words=_words(load),
        in_at=datetime.fromisoformat(load.in_at).astimezone(zone),
        out_at=out,
        check_at=local(*ends[0]),
        latest_at=local(*ends[1]),
        note="" if load.core_c is None else f"core {as_text(load.core_c, 0)}",
    )
