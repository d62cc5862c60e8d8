"""Today: the next thing with a clock on it, what is held, what must be bought."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from krume.base import KrumeError
from krume.store import (
    KeptClock,
    KeptWeighing,
    book_at,
    count_texts,
    is_book,
    open_weighings,
    running_clocks,
    studio_of,
    weighing_at,
)
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.clock import moment
from krume.usecases.pantry.to_buy import ToBuy, to_buy
from krume.usecases.plan.day_plan import plan_today
from krume.usecases.plan.kitchen import plan_now
from krume.usecases.plan.result import PlanTask
from krume.usecases.sold.standing import OrderStanding, orders_of, standings_of

MOST_JUDGED = 20
"""Orders that Today judges, the nearest first; the list of orders has all of them."""

_CLOCKS = ("foam", "batter", "oven")


@dataclass(frozen=True, slots=True)
class NextThing:
    """What has a clock on it. `kind` is foam, batter, oven, weighing, start, hand-over or nothing.

    `figure` with `unit` is its time so far or to go; `name` is the formula or the order it is of.
    `tasks` are the day's work where a plan is known.
    """

    kind: str
    figure: str
    unit: str
    what: str
    text: str
    name: str = ""
    tasks: tuple[PlanTask, ...] = ()


@dataclass(frozen=True, slots=True)
class Today:
    """The day of a book; `is_empty` where it holds no text yet.

    `later` counts orders that are not judged here. `trouble` is why nothing can be said of what
    to buy, where a table is damaged.
    """

    now: datetime
    is_empty: bool
    studio: str
    orders: int
    next: NextThing
    held: tuple[OrderStanding, ...]
    ready: tuple[OrderStanding, ...]
    later: int
    buy: tuple[ToBuy, ...]
    trouble: str = ""


def today_of(asked: Asked) -> Today:
    """Today as the book knows it."""
    book = book_at(asked.book)
    at = plan_now(asked, book, None)
    rows = tuple(row for row in orders_of(asked) if row.state != "past")
    near = standings_of(rows[:MOST_JUDGED], asked)
    buy, trouble = _buy(near, asked)
    return Today(
        now=at,
        is_empty=not is_book(book) or not any(count_texts(book).values()),
        studio=studio_of(book).name or "",
        orders=len(rows),
        next=_next(near, at, asked),
        held=tuple(row for row in near if row.state != "ready"),
        ready=tuple(row for row in near if row.state == "ready"),
        later=max(0, len(rows) - MOST_JUDGED),
        buy=buy,
        trouble=trouble,
    )


def _buy(rows: tuple[OrderStanding, ...], asked: Asked) -> tuple[tuple[ToBuy, ...], str]:
    """What to buy; a damaged table is told, and takes nothing else of the day away."""
    try:
        return to_buy(rows, asked), ""
    except KrumeError as error:
        return (), error.message


def _next(rows: tuple[OrderStanding, ...], at: datetime, asked: Asked) -> NextThing:
    """A running clock first, then the next start of a plan, then the next hand-over."""
    found = _running(asked) or _start(at, asked) or _hand_over(rows, at)
    return found or NextThing("nothing", "", "", "No clock runs, and no order is open", "")


def _running(asked: Asked) -> NextThing | None:
    book = book_at(asked.book)
    for kind in _CLOCKS:
        for clock in running_clocks(book, kind):
            return _clock(clock, _of(clock, asked))
    found = open_weighings(book)
    return None if not found else _weighing(found[0])


def _of(clock: KeptClock, asked: Asked) -> str:
    """The formula that a clock is of; empty for an oven that runs for none."""
    kept = None if clock.weighing is None else weighing_at(book_at(asked.book), clock.weighing)
    return "" if kept is None else _name(kept)


def _name(kept: KeptWeighing) -> str:
    return kept.place.partition("/")[2].removesuffix(".txt")


_SAYS = {
    "foam": ("since the last whisk stroke", "The foam stands"),
    "batter": ("since the flour went in", "The batter stands"),
    "oven": ("since the door was shut", "The oven bakes"),
}


def _clock(clock: KeptClock, name: str) -> NextThing:
    began = datetime.fromisoformat(clock.started_at)
    passed = (datetime.fromisoformat(moment()) - began).total_seconds() / 60
    since, what = _SAYS[clock.kind]
    of = f": {name}" if name else ""
    return NextThing(clock.kind, str(max(0, int(passed))), "min", f"{what}{of}", since, name)


def _weighing(kept: KeptWeighing) -> NextThing:
    name = _name(kept)
    text = "Its weighing is open at the bench: go on where you were."
    return NextThing("weighing", "", "", f"Go on weighing {name}", text, name)


def _start(at: datetime, asked: Asked) -> NextThing | None:
    """The next piece of today's work by hand, where a plan was worked out."""
    plan = plan_today(asked)
    if plan is None or not plan.answer.is_answered:
        return None
    today = tuple(t for t in plan.answer.result.tasks if t.start.date() == at.date())
    coming = [task for task in today if task.who is not None and task.start >= at]
    if not coming:
        return None
    task = min(coming, key=lambda each: each.start)
    figure, unit = _span(task.start - at)
    text = "It cannot move." if task.cannot_move else f"It may slip {_words(task.slack_min)}."
    what = f"{task.name[:1].upper()}{task.name[1:]}, at {task.start.hour}:{task.start:%M}"
    return NextThing("start", figure, unit, what, text, task.order or "", today)


def _words(minutes: int) -> str:
    hours, rest = divmod(minutes, 60)
    return f"{hours} h {rest} min" if hours else f"{rest} min"


def _span(left: timedelta) -> tuple[str, str]:
    minutes = max(0, int(left.total_seconds() // 60))
    if not minutes:
        return "now", ""
    if minutes < 120:
        return str(minutes), "min"
    return str(minutes // 60), "h"


def _hand_over(rows: tuple[OrderStanding, ...], at: datetime) -> NextThing | None:
    row = next((row for row in rows if row.day is not None), None)
    if row is None or row.day is None:
        return None
    days = (row.day - at.date()).days
    hour = "" if row.at is None else f", {row.at.hour}:{row.at:%M}"
    who = f" {row.customer}" if row.customer else ""
    what = f"{row.title}{who}, {row.day:%A}{hour}"
    way = f", {row.way}" if row.way else ""
    return NextThing(
        "hand-over", "today" if not days else str(days), "" if not days else _days(days),
        what, f"{row.what}{way}.", row.name,
    )  # fmt: skip


def _days(days: int) -> str:
    return "day" if days == 1 else "days"
