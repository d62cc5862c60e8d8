"""`krume keep`: how long it keeps, and why."""

from typing import TYPE_CHECKING

import click

from krume.base import Interval
from krume.cli.figures import number
from krume.cli.options import common, file_argument
from krume.cli.page import Page
from krume.cli.ranges import Number
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import KeepCooling, KeepResult


@click.command("keep")
@file_argument
@click.option("--fridge", "fridge_c", type=Number(), metavar="C", help="Air of your fridge, in °C.")
@click.option("--room", "room_c", type=Number(), metavar="C", help="Air of your room, in °C.")
@common
def command(asked: Asked, file: str, fridge_c: float | None, room_c: float | None) -> int:
    """How long it keeps, and what must be said with it.

    FILE is a torte, a cream or an order: a text, a name of your book (T1), or - for standard
    input. The hardest limit wins and is named with its component. Lines such as pH: 4.2 and
    Water activity: 0.93 are measured values; without them it is treated as needing the cold.
    Of a custard it says which depth cools in time and in what: a prediction, no evidence.
    Local law decides.
    """
    from krume.usecases import keep_and_cool

    return tell("keep", keep_and_cool(file, asked, fridge_c=fridge_c, room_c=room_c), _show)


def _show(page: Page, kept: "KeepResult") -> None:
    page.title(kept.name or "No name on the first line")
    page.line(_cold(kept))
    page.line(_room(kept.room_hours))
    if kept.use_by is not None:
        page.line(f"Made on {kept.on}, the day of making as day 1: {kept.use_by} is the last day.")
    page.head("Why")
    for reason in kept.reasons:
        page.line(reason, indent=2)
    page.head("To be said with it")
    for said in kept.cautions:
        page.line(said, indent=2)
    page.head("Limits")
    for said in kept.limits:
        page.line(said, indent=2)
    if kept.cooling is not None:
        _cooling(page, kept.cooling)


def _cooling(page: Page, cooling: "KeepCooling") -> None:
    page.head(f"How {', '.join(cooling.of)} cools: predicted")
    for said in cooling.lines:
        page.line(said, indent=2)
    page.head("What its log must show")
    for said in cooling.log:
        page.line(said, indent=2)


def _cold(kept: "KeepResult") -> str:
    hours = kept.cold_hours
    at = f"at {number(kept.cold_most_c)} °C or below"
    if hours is None:
        return f"Cold, {at}: how long is not known."
    days = f"{number(hours.low / 24)} to {number(hours.high / 24)} days"
    return f"Cold, {at}: {days} ({number(hours.low)} to {number(hours.high)} h)."


def _room(hours: Interval | None) -> str:
    if hours is None:
        return "Without cooling: no time is named."
    span = f"{number(hours.low)} h, or {number(hours.high)} h if never above 21 °C"
    return f"Without cooling: only under the rule named below, {span}; then thrown away."
