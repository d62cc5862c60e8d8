"""`krume keep`: how long it keeps, and why; freezing, the road, a heating when asked for."""

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
    from krume.usecases import KeepCooling, KeepFreezing, KeepResult

_TAKES = {
    "well": "takes freezing",
    "some-loss": "takes freezing with some loss",
    "no": "does not take freezing",
    "unknown": "is not known to take freezing",
}


@click.command("keep")
@file_argument
@click.option("--fridge", "fridge_c", type=Number(), metavar="C", help="Air of your fridge, in °C.")
@click.option("--room", "room_c", type=Number(), metavar="C", help="Air of your room, in °C.")
@click.option("--freeze", is_flag=True, help="Whether it takes freezing, and for how long.")
@click.option("--freezer", "freezer_c", type=Number(), metavar="C", help="Air of your freezer.")
@click.option("--ready", default="", metavar="MOMENT", help="When it must stand thawed: 14:00.")
@click.option("--road", "road_min", type=Number(), metavar="MIN", help="Minutes on the road.")
@click.option("--outside", "outside_c", type=Number(), metavar="C", help="Air round it there.")
@click.option(
    "--box",
    type=click.Choice(["none", "card", "bag", "foam"]),
    default="card",
    help="What it travels in.",
)
@click.option("--packs", "packs_g", type=Number(), default=0.0, metavar="G", help="Ice packs, g.")
@click.option(
    "--heat", default="", metavar="READINGS", help="Readings while egg was heated: 0=20, 6=70, 8=85"
)
@common
def command(
    asked: Asked,
    file: str,
    fridge_c: float | None,
    room_c: float | None,
    freeze: bool,  # noqa: FBT001
    freezer_c: float | None,
    ready: str,
    road_min: float | None,
    outside_c: float | None,
    box: str,
    packs_g: float,
    heat: str,
) -> int:
    """How long it keeps, and what must be said with it.

    FILE is a torte, a cream or an order: a text, a name of your book (T1), or - for standard
    input. The hardest limit wins and is named with its component. Lines such as pH: 4.2 and
    Water activity: 0.93 are measured values; without them it is treated as needing the cold.
    Of a custard it says which depth cools in time and in what; of freezing and the road how
    long and how warm: predictions, no evidence. Local law decides.
    """
    from krume.usecases import KeepWish, keep_wished

    wish = KeepWish(
        fridge_c, room_c, freeze, freezer_c, ready, road_min, outside_c, box, packs_g, heat
    )
    return tell("keep", keep_wished(file, wish, asked), _show)


def _show(page: Page, kept: "KeepResult") -> None:
    page.title(kept.name or "No name on the first line")
    page.line(_cold(kept))
    page.line(_room(kept.room_hours))
    if kept.use_by is not None:
        page.line(f"Made on {kept.on}, the day of making as day 1: {kept.use_by} is the last day.")
    _list(page, "Why", kept.reasons)
    _list(page, "To be said with it", kept.cautions)
    _list(page, "Limits", kept.limits)
    _list(page, "Elsewhere", tuple(f"{p.whose}: {p.text} ({p.page})." for p in kept.places))
    if kept.cooling is not None:
        _cooling(page, kept.cooling)
    for freezing in kept.freezing:
        _freezing(page, freezing)
    for road in kept.road:
        _list(page, f"{road.title} on the road: predicted", road.lines)
    if kept.heat is not None:
        _list(page, "Heated by these readings", (kept.heat.text,))


def _list(page: Page, head: str, said: tuple[str, ...]) -> None:
    page.head(head)
    for text in said:
        page.line(text, indent=2)


def _cooling(page: Page, cooling: "KeepCooling") -> None:
    _list(page, f"How {', '.join(cooling.of)} cools: predicted", cooling.lines)
    _list(page, "What its log must show", cooling.log)


def _freezing(page: Page, freezing: "KeepFreezing") -> None:
    page.head(f"{freezing.title} {_TAKES[freezing.takes]}")
    for part in freezing.parts:
        days = "" if part.frozen_days is None else f", {_days(part.frozen_days)}"
        page.line(
            f"{part.name} {_TAKES[part.takes]}{days}: {part.words} ({part.status}).", indent=2
        )
    for text in freezing.lines:
        page.line(text, indent=2)


def _days(span: Interval) -> str:
    return f"{number(span.low)} to {number(span.high)} days"


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
