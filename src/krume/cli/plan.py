"""`krume plan`: a timetable for one or more orders, day by day, and what to buy."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date, datetime
from itertools import groupby
from pathlib import Path
from typing import TYPE_CHECKING

import click

from krume.cli.figures import number
from krume.cli.options import common
from krume.cli.output import typed_text
from krume.cli.page import Page
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import PlanResult, PlanTask

_LEFT_OUT = ("recover",)


def _moment(ctx: click.Context, param: click.Parameter, value: str | None) -> datetime | None:
    if value is None:
        return None
    try:
        return datetime.fromisoformat(value)
    except ValueError:
        message = f"'{value}' is no time. Type day and hour, such as 2027-06-10T07:30."
        raise click.BadParameter(message, ctx=ctx, param=param) from None


@click.command("plan")
@click.argument("orders", metavar="ORDER...", nargs=-1, required=True)
@click.option(
    "--start",
    metavar="TIME",
    callback=_moment,
    help="Begin no earlier than this, 2027-06-10T07:30 [default: the book's clock].",
)
@click.option(
    "--ics",
    metavar="FILE",
    type=click.Path(path_type=Path, dir_okay=False),
    help="Write the plan as a calendar file too; an old one is replaced.",
)
@common
def command(asked: Asked, orders: tuple[str, ...], start: datetime | None, ics: Path | None) -> int:
    """A timetable for one or more orders, and what to buy.

    ORDER is an order: a text, a name of your book (101), or - for standard input. One pair of
    hands, one oven, one mixer, the fridge's places and the clocks of foams all hold; where they
    cannot, the smallest set of limits that clash is named, with whole ways out.
    """
    from krume.usecases import PlanWish, plan_orders

    if "-" in orders:
        asked = replace(asked, typed=typed_text("-"))
    return tell("plan", plan_orders(orders, PlanWish(start, ics), asked), _show)


def _show(page: Page, plan: "PlanResult") -> None:
    for order in plan.orders:
        page.title(f"{order.title}: {order.what}, ready {_when(order.ready)}")
    if plan.assumes is not None:
        page.line(f"This would be the plan with {plan.assumes}.", style="bold")
    if plan.first_start is not None:
        page.line(f"First start {_when(plan.first_start)}.")
    if plan.last_out is not None:
        page.line(f"Last cake out {_when(plan.last_out)}.")
    if plan.tightest is not None:
        page.line(plan.tightest.text)
    if plan.tasks:
        page.line("No plan on these days has shorter days." if plan.proven else _unproven())
    _show_tasks(page, plan.tasks)
    _show_list(page, plan)
    if plan.ics is not None:
        page.line()
        page.whole(plan.ics)


def _unproven() -> str:
    return "Every limit holds; whether shorter days exist was not shown in the time there was."


def _when(moment: datetime) -> str:
    return f"{moment:%a %Y-%m-%d %H:%M}"


def _show_tasks(page: Page, tasks: "Iterable[PlanTask]") -> None:
    shown = [task for task in tasks if task.step not in _LEFT_OUT]
    for day, found in groupby(shown, key=lambda task: task.start.date()):
        _show_day(page, day, list(found))


def _show_day(page: Page, day: date, tasks: "list[PlanTask]") -> None:
    page.head(f"{day:%A} {day.isoformat()}")
    rows = []
    for task in tasks:
        mark = " " if task.who is None else "*" if task.cannot_move else "-"
        times = f"{task.start:%H:%M}–{task.end:%H:%M}" if page.is_wide else f"{task.start:%H:%M}"
        rows.append((mark, times, _words(task)))
    page.rows(rows, indent=1)
    page.line("* by hand, cannot move   - by hand, may move", indent=1)


def _words(task: "PlanTask") -> str:
    minutes = round((task.end - task.start).total_seconds() / 60)
    return f"{task.name}, {number(minutes)} min"


def _show_list(page: Page, plan: "PlanResult") -> None:
    if not plan.shopping and not plan.eggs:
        return
    page.head("To buy")
    rows = [(f"{each.count}", f"eggs {each.label}") for each in plan.eggs]
    for row in plan.shopping:
        amount = f"{number(row.buy_g)} g"
        if row.packs is not None:
            amount = f"{row.packs} × {number(row.pack_g)} g"
        rows.append((amount, row.name + ("" if row.where is None else f" ({row.where})")))
    page.rows(rows, right=(0,), indent=1)
    for spare in plan.spare_eggs:
        page.line(spare.text, indent=1)
