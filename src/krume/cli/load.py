"""`krume load`: several tins in one oven, at once or one after another."""

from typing import TYPE_CHECKING

import click

from krume.cli.figures import number, span
from krume.cli.options import common
from krume.cli.page import Page
from krume.cli.ranges import Within
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import TogetherLoad, TogetherResult


@click.command("load")
@click.argument("loads", metavar="LOAD...", nargs=-1, required=True)
@click.option(
    "--oven", metavar="OVEN", help='"160 C", "fan 150 C" [default: that of the first load].'
)
@click.option("--fan", is_flag=True, help="Bake with the fan on.")
@click.option(
    "--oven-name", metavar="NAME", help="Which of the studio's ovens [default: the only one]."
)
@click.option(
    "--power",
    "power_w",
    metavar="W",
    type=Within(200, 20000),
    help="What the oven's plate says, in watts [default: a domestic oven's].",
)
@click.option(
    "--gap",
    "gap_cm",
    metavar="CM",
    type=Within(0, 50),
    help="Room between the tins, in cm [default: 2].",
)
@common
def command(
    asked: Asked,
    loads: tuple[str, ...],
    oven: str | None,
    fan: bool,  # noqa: FBT001
    oven_name: str | None,
    power_w: float | None,
    gap_cm: float | None,
) -> int:
    """Several tins in one oven: how much later each is done, who is last.

    LOAD is how many, what, its tin, its shelf and when: F1, "2 F1", "F3 @10" (in ten minutes
    later), "2 F1 in round 18 x 7 cm on low @10". The oven stands as the first load has it.
    """
    from krume.usecases import TogetherWish, bakes_together, read_load

    wishes = tuple(read_load(text) for text in loads)
    wish = TogetherWish(wishes, oven, fan, oven_name, power_w, gap_cm)
    return tell("load", bakes_together(wish, asked), _show)


def _show(page: Page, found: "TogetherResult") -> None:
    page.title(found.text or "Several loads in one oven")
    if found.oven_c is not None:
        page.line(f"Oven {number(found.oven_c, 0)} °C, {'fan' if found.fan else 'no fan'}.")
    for place, load in enumerate(found.loads, start=1):
        page.line()
        _show_load(page, place, load)
    if found.oven_kwh is not None:
        page.line()
        warm = found.warming_kwh
        before = "" if warm is None else f", after {number(warm, 2)} to heat it up"
        page.line(f"The heaters give about {number(found.oven_kwh, 2)} kWh{before}.")


def _show_load(page: Page, place: int, load: "TogetherLoad") -> None:
    many = "" if load.tins == 1 else f"{load.tins} x "
    tin = "" if load.tin is None else f", {load.tin}"
    tin += "" if load.rack == "middle" else f", {load.rack} shelf"
    when = "" if load.in_min == 0 else f", in at {number(load.in_min, 0)} min"
    page.line(f"{place}. {many}{load.formula}{tin}{when}", style="bold")
    if load.wants_c is not None:
        page.line(f"It wants {number(load.wants_c, 0)} °C of its own.", indent=3)
    own = load.alone_min
    alone = "" if own is None else f"alone {span(own.low, own.high, 0)} min"
    if load.minutes is None:
        page.line(f"{alone[:1].upper()}{alone[1:]}." if alone else "No minutes.", indent=3)
        return
    minutes = span(load.minutes.low, load.minutes.high, 0)
    first = number(load.check_from_min, 0)
    page.line(f"Start checking at {first} min. Range {minutes} min; {alone}.", indent=3)
    if load.text:
        page.line(f"{load.text[:1].upper()}{load.text[1:]}.", indent=3)
