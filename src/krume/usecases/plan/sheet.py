"""The timetable sheet of a plan: its days in lanes, and the shopping list beside the first."""

import json
from collections.abc import Iterable, Iterator
from datetime import date, datetime, time
from itertools import groupby

from krume.base import as_text
from krume.publish import (
    Day,
    DayMark,
    DayTask,
    Fact,
    Hold,
    Imprint,
    Places,
    ShopGroup,
    ShopRow,
    TimetableSheet,
    timetable_dict,
    timetable_html,
    timetable_pdf,
)
from krume.usecases.asking.as_json import plain
from krume.usecases.plan.result import PlanLoad, PlanResult, PlanTask


def timetable_sheet(
    plan: PlanResult, imprint: Imprint, *, hold: Hold | None = None
) -> TimetableSheet:
    """Timetable of a plan, ready to print."""
    days = sorted({task.start.date() for task in plan.tasks})
    what = "; ".join(
        f"{o.title}: {o.what}, ready {_when(o.ready)}"
        if len(plan.orders) > 1
        else f"{o.what}, ready {_when(o.ready)}"
        for o in plan.orders
    )
    return TimetableSheet(
        title=", ".join(order.title for order in plan.orders) or "Timetable",
        what=f"{what}.",
        tightest="" if plan.tightest is None else plan.tightest.text,
        days=tuple(_day(day, plan) for day in days),
        groups=_groups(plan),
        spares=tuple(spare.text for spare in plan.spare_eggs),
        warnings=_warnings(plan),
        hold=hold,
        imprint=imprint,
    )


def timetable_files(sheet: TimetableSheet, stem: str, paper: str) -> dict[str, bytes]:
    """The files of a timetable: PDF on A4 or Letter, a page, and JSON."""
    data = json.dumps(plain(timetable_dict(sheet)), ensure_ascii=False, indent=1)
    return {
        f"{stem}-timetable.pdf": timetable_pdf(sheet, "letter" if paper == "letter" else "a4"),
        f"{stem}-timetable.html": timetable_html(sheet).encode(),
        f"{stem}-timetable.json": f"{data}\n".encode(),
    }


def _when(moment: datetime) -> str:
    return f"{moment:%A} {moment.day} {moment:%B}, {moment.hour}:{moment.minute:02d}"


def _warnings(plan: PlanResult) -> tuple[str, ...]:
    if plan.assumes is None:
        return ()
    ways = " ".join(f"{n}. {way.text}" for n, way in enumerate(plan.ways_out, start=1))
    return (f"{plan.fits} fit in the fridge. This is no plan before {plan.assumes}. {ways}",)


def _day(day: date, plan: PlanResult) -> Day:
    tasks = [task for task in plan.tasks if task.start.date() == day]
    loads = [load for load in plan.loads if load.start.date() == day]
    shown = [*_hands(tasks), *_oven(loads, tasks), *_rack(tasks, plan, day)]
    marks = [mark for load in loads for mark in _marks(load)]
    return Day(
        f"{day:%A} {day.day} {day:%B}",
        tuple(_facts(tasks, loads)),
        tuple(shown),
        tuple(marks),
        _places(day, plan),
    )


def _facts(tasks: list[PlanTask], loads: list[PlanLoad]) -> Iterator[Fact]:
    work = [task for task in tasks if task.who is not None]
    if work:
        yield Fact("first start", _clock(min(task.start for task in work)))
    if loads:
        yield Fact("last cake out", _clock(max(load.out for load in loads)))
    waits = [load.foam_waits_min for load in loads if load.foam_waits_min is not None]
    if waits:
        yield Fact("a foam waits at most", str(max(waits)), "min")
    slack = [task.slack_min for task in work if task.step != "box"]
    if slack:
        hours, minutes = divmod(min(slack), 60)
        yield Fact("tightest gap", f"{hours} h {minutes}" if hours else str(minutes), "min")


def _clock(moment: datetime) -> str:
    return f"{moment.hour}:{moment.minute:02d}"


def _hands(tasks: Iterable[PlanTask]) -> Iterator[DayTask]:
    for task in tasks:
        if task.who is not None:
            look = "solid" if task.cannot_move else "hatched"
            yield DayTask("hands", look, task.start, task.end, task.name)


def _oven(loads: Iterable[PlanLoad], tasks: Iterable[PlanTask]) -> Iterator[DayTask]:
    for load in loads:
        words = f"{_clock(load.start)}–{_clock(load.out)}, look {_clock(load.first_check)}"
        name = f"{load.count} {load.of}, load {load.number}"
        yield DayTask("oven", "open", load.start, load.out, words, bold=name)
    for task in tasks:
        if task.step == "recover":
            yield DayTask("oven", "hatched", task.start, task.end, "")


def _marks(load: PlanLoad) -> Iterator[DayMark]:
    yield DayMark("oven", load.first_check, "")
    yield DayMark("oven", load.latest_out, "")


def _rack(tasks: list[PlanTask], plan: PlanResult, day: date) -> Iterator[DayTask]:
    """What cools and what stands in the fridge, each in a column that is free."""
    spans = [
        (task.start, task.end, _short(task.name), "hatched")
        for task in tasks
        if task.step == "cool" and task.end.date() == day
    ]
    spans += list(_cold(plan, day))
    free: list[datetime] = []
    for start, end, words, look in sorted(spans):
        place = next((n for n, until in enumerate(free) if until <= start), len(free))
        if place == len(free):
            free.append(end)
        free[place] = end
        yield DayTask("rack", look, start, end, words, place=place)


def _short(name: str) -> str:
    return name.rpartition(": ")[2]


def _cold(plan: PlanResult, day: date) -> Iterator[tuple[datetime, datetime, str, str]]:
    """Each torte's time in the fridge on a day, from its first step to its box."""
    for name, (start, end) in _stays(plan).items():
        opens = max(start, datetime.combine(day, time(0), tzinfo=start.tzinfo))
        work = [t.end for t in plan.tasks if t.end.date() == day and t.start.date() == day]
        closes = min(end, max(work, default=end))
        if start.date() == day and opens < closes:
            yield opens, closes, name, "open"


def _stays(plan: PlanResult) -> dict[str, tuple[datetime, datetime]]:
    """When each torte goes into the fridge, and when it is boxed."""
    found: dict[str, tuple[datetime, datetime]] = {}
    alone = len(plan.orders) == 1
    for order, tasks in groupby(
        sorted(plan.tasks, key=lambda task: (task.order or "", task.start)),
        key=lambda task: task.order,
    ):
        if order is None:
            continue
        into: dict[str, datetime] = {}
        for task in tasks:
            name = _short(task.name)
            if task.step == "build":
                into.setdefault(name, task.end)
            elif task.step == "box" and name in into:
                found[name if alone else f"{order} {name}"] = (into[name], task.start)
    return found


def _places(day: date, plan: PlanResult) -> Places | None:
    """Tortes that stay cold over the night of a day, and the places there are."""
    if plan.fridge is None or plan.fridge.places is None:
        return None
    stays = [start for start, end in _stays(plan).values() if start.date() <= day < end.date()]
    if not stays:
        return None
    return Places(len(stays), round(plan.fridge.places))


def _groups(plan: PlanResult) -> tuple[ShopGroup, ...]:
    eggs = [
        ShopRow(str(each.count), f"eggs {each.label}", ", ".join(each.formulas))
        for each in plan.eggs
    ]
    groups = [
        ShopGroup(
            where or "",
            tuple(
                ShopRow(
                    _amount(row.packs, row.pack_g, row.buy_g), row.name, ", ".join(row.formulas)
                )
                for row in rows
            ),
        )
        for where, rows in groupby(plan.shopping, key=lambda row: row.where)
    ]
    if not eggs:
        return tuple(groups)
    last = groups.pop() if groups and groups[-1].where == "" else ShopGroup("", ())
    return (*groups, ShopGroup(last.where, (*eggs, *last.rows)))


def _amount(packs: int | None, pack_g: float | None, buy_g: float | None) -> str:
    if buy_g is None:
        return "not known"
    if packs is not None and pack_g is not None:
        return f"{packs} × {as_text(pack_g, 1)} g"
    return f"{as_text(buy_g, 1)} g"
