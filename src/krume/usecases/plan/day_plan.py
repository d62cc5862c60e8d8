"""The plan of the book's open orders, worked out when asked, and each day of it."""

from dataclasses import dataclass
from datetime import date, datetime, timedelta

from krume import __version__
from krume.base import KrumeError
from krume.evidence import data_version
from krume.plan import usual
from krume.publish import Fact, Imprint, day_drawing
from krume.store import book_at
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.remembering import Remembered, day_key
from krume.usecases.plan.gathered import gather
from krume.usecases.plan.kitchen import plan_now
from krume.usecases.plan.plan import PlanWish, plan_orders
from krume.usecases.plan.result import PlanResult, PlanTask, nothing_planned
from krume.usecases.plan.sheet import timetable_sheet
from krume.usecases.sold.standing import OrderStanding, orders_of

_WEEK = timedelta(days=7)
_MOST = 8


@dataclass(frozen=True, slots=True)
class LeftOut:
    """An order that could not be planned, and why."""

    name: str
    why: str


@dataclass(frozen=True, slots=True)
class BookPlan:
    """One plan for the open orders of the coming days, with those it leaves out."""

    answer: Answer[PlanResult]
    left_out: tuple[LeftOut, ...]


@dataclass(frozen=True, slots=True)
class PlannedDay:
    """One day of a plan: its drawing, what is said first, its tasks; empty without work."""

    svg: str
    facts: tuple[Fact, ...]
    tasks: tuple[PlanTask, ...]


@dataclass(frozen=True, slots=True)
class DayView:
    """A day with the orders that have work on it; `plan` is None before it was worked out.

    `days` are all days of the plan with work.
    """

    day: date
    today: date
    orders: tuple[OrderStanding, ...]
    plan: BookPlan | None
    planned: PlannedDay | None
    days: tuple[date, ...]


_PLANS: Remembered[BookPlan] = Remembered(_MOST)


def day_view(day: date, asked: Asked, *, is_worked: bool = False) -> DayView:
    """A day; it is worked out when that is asked, else shown as far as it was before."""
    book = book_at(asked.book)
    moment = plan_now(asked, book, None)
    rows = _open(day, asked, moment)
    key = day_key(book, asked, tuple(row.name for row in rows))
    plan = _PLANS.get(book, key)
    if plan is None and is_worked and rows:
        plan = _PLANS.of(book, key, lambda: _plan(rows, asked, moment))
    tasks = () if plan is None else plan.answer.result.tasks
    return DayView(
        day=day,
        today=moment.date(),
        orders=tuple(row for row in rows if _has_work(row, day)),
        plan=plan,
        planned=None if plan is None else _planned(day, plan.answer.result),
        days=tuple(sorted({task.start.date() for task in tasks})),
    )


def plan_day_today(asked: Asked) -> date:
    """The day on the clock of the book."""
    return plan_now(asked, book_at(asked.book), None).date()


def plan_today(asked: Asked) -> BookPlan | None:
    """The plan that holds today, where one was worked out."""
    book = book_at(asked.book)
    moment = plan_now(asked, book, None)
    names = tuple(row.name for row in _open(moment.date(), asked, moment))
    return _PLANS.get(book, day_key(book, asked, names))


def planned_at(name: str, asked: Asked) -> BookPlan | None:
    """The plan that an order is in, where one was worked out."""
    row = next((row for row in orders_of(asked) if row.name == name), None)
    if row is None or row.day is None:
        return None
    book = book_at(asked.book)
    moment = plan_now(asked, book, None)
    names = tuple(each.name for each in _open(row.day, asked, moment))
    return _PLANS.get(book, day_key(book, asked, names))


def _open(day: date, asked: Asked, moment: datetime) -> tuple[OrderStanding, ...]:
    """Orders of the coming week, or as far as a later day has work for; the oven is one."""
    last = max(moment.date() + _WEEK, day + _lead())
    return tuple(
        row for row in orders_of(asked)
        if row.day is not None and row.at is not None and row.day <= last
        and datetime.combine(row.day, row.at) > moment.replace(tzinfo=None)
    )  # fmt: skip


def _lead() -> timedelta:
    """How long before its hand-over an order may have work."""
    days = sum(int(usual(key).value) for key in ("most-days", "bake-most-days"))
    return timedelta(days=days)


def _has_work(row: OrderStanding, day: date) -> bool:
    return row.day is not None and row.day - _lead() <= day <= row.day


def _plan(rows: tuple[OrderStanding, ...], asked: Asked, moment: datetime) -> BookPlan:
    """One plan for all that can be planned; the others are left out by name."""
    names, left = [], []
    for row in rows:
        why = _why_not(row.name, asked, moment)
        if why:
            left.append(LeftOut(row.name, why))
        else:
            names.append(_place(row.name))
    if not names:
        return BookPlan(Answer(nothing_planned(moment)), tuple(left))
    return BookPlan(plan_orders(tuple(names), PlanWish(), asked), tuple(left))


def _place(name: str) -> str:
    return f"orders/{name}.txt"


def _why_not(name: str, asked: Asked, moment: datetime) -> str:
    """The first question that an order has to answer before it can be planned."""
    try:
        found = gather((_place(name),), asked, moment)
    except KrumeError as error:
        return error.message
    return found.problems[0].ask if found.problems else ""


def _planned(day: date, plan: PlanResult) -> PlannedDay:
    days = sorted({task.start.date() for task in plan.tasks})
    if day not in days:
        return PlannedDay("", (), ())
    imprint = Imprint(plan.made_at.date().isoformat(), __version__, data_version(), "eu")
    found = timetable_sheet(plan, imprint).days[days.index(day)]
    tasks = tuple(task for task in plan.tasks if task.start.date() == day)
    return PlannedDay(day_drawing(found, ident="day"), found.facts, tasks)
