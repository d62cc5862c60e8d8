"""`krume fridge`: the fridge was off; what is kept, which orders stop, what is made anew."""

from typing import TYPE_CHECKING

import click

from krume.cli.figures import number
from krume.cli.options import common
from krume.cli.page import Page
from krume.cli.ranges import Celsius
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import FridgeOrder, FridgePart, FridgeResult

_WORDS = {"keep": "KEEP", "discard": "DISCARD", "not-shown": "NOT SHOWN: as discarded"}


@click.command("fridge")
@click.argument("names", nargs=-1, metavar="[NAME]...")
@click.option("--since", default="", metavar="MOMENT", help="When it stopped: 22:30.")
@click.option("--until", default="", metavar="MOMENT", help="When it was cold again [still off].")
@click.option(
    "--door",
    type=click.Choice(["shut", "opened", "unknown"]),
    default="unknown",
    help="Whether it stayed shut.",
)
@click.option("--food", type=Celsius(), metavar="C", help="Highest reading in the food, in °C.")
@click.option("--air", type=Celsius(), metavar="C", help="Highest reading of its air, in °C.")
@click.option(
    "--before", type=Celsius(), metavar="C", help="Last reading before it stopped, in °C."
)
@click.option(
    "--reading", "readings", multiple=True, metavar="NAME=C",
    help="Highest reading in one thing: C1=9.5. Repeatable.",
)  # fmt: skip
@common
def command(
    asked: Asked,
    names: tuple[str, ...],
    since: str,
    until: str,
    door: str,
    food: float | None,
    air: float | None,
    before: float | None,
    readings: tuple[str, ...],
) -> int:
    """The fridge was off: what is kept, what stops, what is made anew.

    NAME is what stood in it: a torte, a cream, a cake or an order; without a name every order
    that is near is judged. A reading proves cold only if it was taken before the fridge was cold
    again. What is not shown is not kept. Local law decides.
    """
    from krume.usecases import FridgeWish, fridge_off

    wish = FridgeWish(names, since, until, door, food, air, before, readings)
    return tell("fridge", fridge_off(wish, asked), _show)


def _show(page: Page, found: "FridgeResult") -> None:
    page.title(_title(found))
    if not found.components:
        page.line("Nothing stood in it, and no order is near. Name what stood there: T1, or C1.")
    for thing in found.things:
        page.line(f"{_WORDS[thing.verdict]}  {_named(thing.name, thing.title)}", style="bold")
    groups: dict[tuple[str, str], list[FridgePart]] = {}
    for part in found.components:
        groups.setdefault((part.verdict, part.text), []).append(part)
    for (verdict, text), parts in groups.items():
        _parts(page, verdict, text, parts)
    if found.orders:
        page.head("Orders")
    for order in found.orders:
        _order(page, order)
    _list(page, "What would settle it", found.missing)
    page.head("Whose rule")
    for rule in found.rules:
        where = f" ({rule.page}, {rule.status})" if rule.page else f" ({rule.status})"
        page.line(f"{rule.whose}: {rule.words}{where}.", indent=2)
    _list(page, "To be said with it", found.cautions)


def _list(page: Page, head: str, said: tuple[str, ...]) -> None:
    if said:
        page.head(head)
    for text in said:
        page.line(text, indent=2)


def _title(found: "FridgeResult") -> str:
    if found.hours is None:
        return "The fridge was off; for how long is not known"
    return f"The fridge was off for {number(found.hours, 2)} h"


def _named(name: str, title: str) -> str:
    return name if name == title else f"{name} {title}"


def _parts(page: Page, verdict: str, text: str, parts: "list[FridgePart]") -> None:
    """Components of one verdict for one reason, and why each needs the cold or not."""
    page.head(f"{_WORDS[verdict]}: {', '.join(_named(p.name, p.title) for p in parts)}")
    page.line(text, indent=2)
    whys: dict[str, list[str]] = {}
    for part in parts:
        whys.setdefault(f"{part.why} ({part.why_status})", []).append(part.name)
    for why, names in whys.items():
        page.line(f"{', '.join(names)}: {why}.", indent=2)
    inside = [part for part in parts if part.stands_in and verdict == "keep"]
    if inside:
        apart = ", ".join(part.name for part in inside)
        page.line(f"{apart}: only where it stands apart; in a torte it goes with it.", indent=2)


def _order(page: Page, order: "FridgeOrder") -> None:
    ready = "hour not said" if order.ready is None else f"{order.ready:%A %Y-%m-%d %H:%M}"
    word = "STOPS. " if order.stops else ""
    page.line(f"{order.title}, {ready}: {word}{order.text}", indent=2)
    for each in order.remake:
        grams = ", ".join(
            f"{use.name} {number(use.mass_g, 0)} g"
            if use.mass_g is not None
            else f"{use.name}, grams not known"
            for use in each.formulas
        )
        page.line(f"{each.count} {each.name}: {grams}", indent=4)
