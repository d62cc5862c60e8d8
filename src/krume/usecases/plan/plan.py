"""A timetable for orders, or what is asked, or which limits clash and the ways out."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime, tzinfo
from pathlib import Path

from krume import __version__
from krume.base import Infeasible, Notice, Option, Problem
from krume.plan import (
    Asking,
    CalendarEvent,
    Load,
    Task,
    Tightest,
    Timetable,
    WayOut,
    calendar_file,
    how_many_fit,
    is_cut_into_layers,
    tightest,
    timetable,
    ways_out,
    why_not,
)
from krume.store import book_at, studio_of, write_whole
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.plan.gathered import Gathered, ReadOrder, gather
from krume.usecases.plan.kitchen import plan_kitchen, plan_now
from krume.usecases.plan.result import (
    PlanFridge,
    PlanLoad,
    PlanOrder,
    PlanResult,
    PlanTask,
    PlanTightest,
    PlanWayOut,
    nothing_planned,
)
from krume.usecases.plan.shopping import list_eggs, list_shopping, list_spares
from krume.usecases.sold.order import order_notices
from krume.usecases.sold.product import sold_of

_USUAL_RULE = "usual days, from the usual hour"


@dataclass(frozen=True, slots=True)
class PlanWish:
    """What is wished of a plan: where it begins, and a calendar file to write."""

    start: datetime | None = None
    ics: Path | None = None


def plan_orders(names: tuple[str, ...], wish: PlanWish, asked: Asked) -> Answer[PlanResult]:
    """Plan one or more orders together; nothing is written while anything is open."""
    book = book_at(asked.book)
    now = plan_now(asked, book, wish.start)
    gathered = gather(names, asked, now)
    bare = replace(nothing_planned(now), orders=_orders(gathered, now))
    if gathered.problems or not gathered.promises:
        return Answer(
            bare,
            _once(gathered.problems),
            _once(gathered.notices),
            is_possible=gathered.is_possible,
        )
    kitchen, assumed = plan_kitchen(book)
    asking = Asking(tuple(gathered.promises), gathered.formulas, kitchen, now)
    stops = (n for name in names for n in order_notices(sold_of(name, asked), asked))
    notices = (*stops, *gathered.notices, *assumed)
    bare = replace(
        bare,
        shopping=list_shopping(gathered, book),
        eggs=list_eggs(gathered),
        spare_eggs=list_spares(gathered, asked),
    )
    found = timetable(asking.promises, asking.formulas, kitchen, now)
    if found is None:
        return _refused(bare, asking, gathered, notices, asked)
    result = _planned(bare, found, asking, asked)
    if wish.ics is not None:
        write_whole(wish.ics, plan_calendar(result), replace=True)
        result = replace(result, ics=str(wish.ics.resolve()))
    said = (*notices, _durations(), *_rule_notice(found), *_rest_notice(found, asking))
    return Answer(result, (), _once(said), ("krume",))


def _once(items: Iterable[Problem] | Iterable[Notice]) -> tuple:  # type: ignore[type-arg]
    return tuple(dict.fromkeys(items))


def _orders(gathered: Gathered, now: datetime) -> tuple[PlanOrder, ...]:
    return tuple(
        PlanOrder(
            found.name,
            found.order.name or found.name,
            found.ready.replace(tzinfo=now.tzinfo),
            ", ".join(f"{line.count} {line.what}" for line in found.order.lines),
        )
        for found in gathered.orders
        if found.ready is not None
    )


def _planned(bare: PlanResult, found: Timetable, asking: Asking, asked: Asked) -> PlanResult:
    """The answer with a timetable in it, its times on the clock of the book."""
    zone = asking.now.tzinfo
    who = studio_of(book_at(asked.book)).person or "you"
    tight = tightest(found)
    tasks = tuple(_task(task, who, zone) for task in found.tasks)
    return replace(
        bare,
        tasks=tasks,
        loads=tuple(_load(load, asking, zone) for load in found.loads),
        first_start=min((task.start for task in tasks), default=None),
        last_out=None if found.last_out is None else found.last_out.replace(tzinfo=zone),
        proven=found.proven,
        rule=found.rule,
        tightest=None if tight is None else _tightest(tight, zone),
        slack_min=None if tight is None else tight.slack_min,
        fridge=PlanFridge(found.places, asking.kitchen.fridge_places),
    )


def _tightest(tight: Tightest, zone: tzinfo | None) -> PlanTightest:
    return PlanTightest(
        tight.limit,
        round(tight.busy_pct, 1),
        tight.task,
        tight.start.replace(tzinfo=zone),
        tight.slack_min,
        tight.foam_waits_min,
        tight.text,
    )


def _task(task: Task, who: str, zone: tzinfo | None) -> PlanTask:
    return PlanTask(
        name=task.name,
        start=task.start.replace(tzinfo=zone),
        end=task.end.replace(tzinfo=zone),
        who=who if task.by_hand else None,
        uses=task.uses,
        step=task.step,
        of=task.of,
        order=task.order or None,
        load=task.load or None,
        cannot_move=task.cannot_move,
        slack_min=task.slack_min,
        status=task.status,
    )


def _load(load: Load, asking: Asking, zone: tzinfo | None) -> PlanLoad:
    kitchen = asking.kitchen
    return PlanLoad(
        number=load.number,
        of=load.of,
        count=load.count,
        start=load.start.replace(tzinfo=zone),
        first_check=load.first_check.replace(tzinfo=zone),
        out=load.out.replace(tzinfo=zone),
        latest_out=load.latest_out.replace(tzinfo=zone),
        oven_free=load.free.replace(tzinfo=zone),
        cycle_min=load.cycle_min,
        load_min=kitchen.load_min,
        bake_min=load.cycle_min - kitchen.load_min - kitchen.recover_min,
        recover_min=kitchen.recover_min,
        foam_waits_min=load.foam_waits_min,
    )


def _durations() -> Notice:
    text = "Minutes of the work are assumed until yours are measured; those of a bake are planned."
    return Notice("durations-assumed", text)


def _rule_notice(found: Timetable) -> tuple[Notice, ...]:
    if found.rule == _USUAL_RULE:
        return ()
    text = f"The usual days and hours do not hold it all. Taken: {found.rule}."
    return (Notice("days-widened", text),)


def _rest_notice(found: Timetable, asking: Asking) -> tuple[Notice, ...]:
    """Cakes that are cut on the day they are baked, where a day between is usual."""
    baked = {load.of: load.out.date() for load in found.loads}
    cut = {task.of: task.start.date() for task in reversed(found.tasks) if task.step == "build"}
    names = {
        name: torte.name
        for promise in asking.promises
        for torte, _ in promise.tortes
        for name, _ in torte.cakes
        if is_cut_into_layers(torte.kind) and cut.get(torte.name) == baked.get(name)
    }
    return tuple(
        Notice("not-rested", f"{name} is cut for {torte} on the day it is baked: no day between.")
        for name, torte in names.items()
    )


def _refused(
    bare: PlanResult,
    asking: Asking,
    gathered: Gathered,
    notices: tuple[Notice, ...],
    asked: Asked,
) -> Answer[PlanResult]:
    """No plan: the smallest set of limits that clash, and the ways out."""
    clash = why_not(asking)
    ways = ways_out(asking, clash)
    result = replace(
        bare,
        ways_out=tuple(
            PlanWayOut(
                way.kind, way.text, way.planned,
                None if way.last_out is None else way.last_out.replace(tzinfo=asking.now.tzinfo),
                way.count,
            )
            for way in ways
        ),
    )  # fmt: skip
    if any(one.name == "fridge" for one in clash.clashes):
        fits, of = how_many_fit(asking)
        result = _as_if(replace(result, fits=f"{fits} of {of}"), asking, ways, asked)
    problems = _clashes(clash, result, gathered)
    return Answer(result, problems, _once(notices), ("krume",), is_possible=False)


def _as_if(
    result: PlanResult, asking: Asking, ways: tuple[WayOut, ...], asked: Asked
) -> PlanResult:
    """The day as it would be with the places that are missing, and that it rests on them."""
    found = next((way.plan for way in ways if way.plan is not None), None)
    if found is None:
        return result
    places = PlanFridge(found.places, asking.kitchen.fridge_places)
    as_if = replace(_planned(result, found, asking, asked), fridge=places)
    return replace(as_if, assumes=f"{found.places:g} places in the fridge")


def _clashes(clash: Infeasible, result: PlanResult, gathered: Gathered) -> tuple[Problem, ...]:
    ways = " ".join(f"{n}. {way.text}" for n, way in enumerate(result.ways_out, start=1))
    head = f"Ways out: {ways}" if ways else "Take less, or hand over later."
    found = []
    for one in clash.clashes:
        where = _where(gathered.orders)
        if one.name == "fridge":
            ask = f"{result.fits} fit in the fridge: it has {one.has} places, {one.needs} are "
            ask += f"needed. {head}"
        else:
            ask = f"{one.name}: {one.has}, and {one.needs} would be needed. {head}"
        read = f"{one.name}: {one.has} of {one.needs}"
        found.append(Problem("limits-clash", where, read, ask, _fewer(result, gathered)))
    return tuple(found)


def _where(orders: list[ReadOrder]) -> str:
    lines = [line for found in orders for line in found.order.lines]
    return f"line {lines[0].number}" if len(lines) == 1 else "ORDER"


def _fewer(result: PlanResult, gathered: Gathered) -> tuple[Option, ...]:
    """The one line of an order with as many as fit."""
    lines = [line for found in gathered.orders for line in found.order.lines]
    fits = 0 if result.fits is None else int(result.fits.partition(" ")[0])
    if len(lines) != 1 or fits < 1:
        return ()
    return (Option(f"take {fits}", f"{fits} {lines[0].what}"),)


def plan_calendar(result: PlanResult) -> bytes:
    """The plan as a calendar file: what hands do and what the oven does."""
    events = [
        CalendarEvent(
            uid=f"{number}-{task.start:%Y%m%dT%H%M}@krume",
            start=task.start,
            end=task.end,
            summary=task.name,
            description=_description(task),
        )
        for number, task in enumerate(result.tasks, start=1)
        if task.who is not None or "oven" in task.uses
    ]
    return calendar_file(events, made_by=f"plan {__version__}", stamp=result.made_at)


def _description(task: PlanTask) -> str:
    moves = "Cannot move." if task.cannot_move else f"May slip {task.slack_min} min."
    return f"{moves} {'' if task.order is None else f'Order {task.order}.'}".strip()
