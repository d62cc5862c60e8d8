"""`krume eggs`: the fewest eggs to buy for orders, and what becomes of every yolk and white."""

from dataclasses import replace
from typing import TYPE_CHECKING

import click

from krume.cli.figures import number
from krume.cli.options import common
from krume.cli.output import typed_text
from krume.cli.page import Page
from krume.cli.ranges import Whole, Within
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import EggBuy, EggPack, EggRow, EggsResult

_CRUMB_G = 5.0


@click.command("eggs")
@click.argument("names", metavar="ORDER|FILE...", nargs=-1, required=True)
@click.option(
    "--have",
    metavar="EGGS",
    multiple=True,
    help='What is in the house: "10 EU M", "200 g pasteurised yolk", "300 g sugared yolk". '
    "Repeatable.",
)
@click.option(
    "--shop",
    metavar="SIZE",
    multiple=True,
    help='What the shop has: "EU L", "pasteurised white", or none. Repeatable [default: the sizes '
    "the formulas name].",
)
@click.option(
    "--pack",
    "packs",
    metavar="EGGS",
    multiple=True,
    type=Whole(1, 360),
    help="Eggs a pack holds: 6, 10, 12. Repeatable where there are several.",
)
@click.option(
    "--tolerance",
    "tolerance_pct",
    metavar="PCT",
    type=Within(0, 20),
    help="How far whole eggs of another size may weigh from what a bowl wants, in % [default: 5].",
)
@click.option(
    "--sugared",
    "sugared_pct",
    metavar="PCT",
    type=Within(0, 60, min_open=True),
    help="Sugar in the sugared yolk, in % by its pack [default: 10].",
)
@common
def command(
    asked: Asked,
    names: tuple[str, ...],
    have: tuple[str, ...],
    shop: tuple[str, ...],
    packs: tuple[int, ...],
    tolerance_pct: float | None,
    sugared_pct: float | None,
) -> int:
    """The fewest eggs to buy and crack, and which formula takes what is left.

    ORDER or FILE is an order, a torte or a formula: a text, a name of your book (101, T1, F1), or
    - for standard input; F1*12 is twelve of it. Yolks and whites of one egg are shared; eggs of
    other sizes in the house are weighed in.
    """
    from krume.usecases import EggsWish, eggs_of

    if any(name.partition("*")[0].strip() == "-" for name in names):
        asked = replace(asked, typed=typed_text("-"))
    wish = EggsWish(have, shop, packs, tolerance_pct, sugared_pct)
    return tell("eggs", eggs_of(names, wish, asked), _show)


def _show(page: Page, eggs: "EggsResult") -> None:
    page.title(f"Eggs for {'; '.join(eggs.of)}")
    if not eggs.formulas and not eggs.packs:
        if eggs.proven:
            page.line("No egg is wanted.")
        return
    for buy in eggs.buy:
        page.line(f"Buy {number(buy.count)} {buy.label}{_packs(buy)}.", style="bold")
    if not eggs.buy and eggs.crack:
        page.line("Nothing to buy: the eggs in the house do.", style="bold")
    for pack in eggs.packs:
        page.line(_pack(pack))
    within = f", {eggs.within}" if eggs.within else ""
    page.line(
        f"Fewer eggs would not do{within}."
        if eggs.proven
        else "Whether fewer do was not shown in time."
    )
    _show_bowls(page, eggs)
    _show_left(page, eggs)
    if eggs.spread:
        page.head("How sure the grams are")
        for text in (*(spread.text for spread in eggs.spread), eggs.when_weighed):
            page.line(text, indent=1)
    if eggs.cautions:
        page.head("Care")
        for said in eggs.cautions:
            page.line(said, indent=1)


def _packs(buy: "EggBuy") -> str:
    """`, 1 pack of 10 (2 over)`."""
    if not buy.packs:
        return ""
    said = [f"{p.count} pack{'' if p.count == 1 else 's'} of {p.holds}" for p in buy.packs]
    over = f" ({buy.over} over)" if buy.over else ""
    return f": {' and '.join(said)}{over}"


def _pack(pack: "EggPack") -> str:
    """`60 g pasteurised white for C5: buy 60 g, or 60 g of the left-over, heated to 71 °C`."""
    said = []
    if pack.from_house_g > 0:
        said.append(f"{number(pack.from_house_g)} g in the house")
    said.append(f"buy {number(pack.buy_g)} g" if pack.buy_g > 0 else "none to buy")
    if pack.saved_g > 0:
        how = "" if pack.heat_c is None else f", heated to {number(pack.heat_c)} °C"
        said.append(f"or in its place {number(pack.saved_g)} g of the left-over {pack.part}{how}")
    names = ", ".join(pack.formulas)
    return f"{number(pack.mass_g)} g {pack.name} for {names}: {', '.join(said)}."


def _show_bowls(page: Page, eggs: "EggsResult") -> None:
    page.head("Crack")
    for crack in eggs.crack:
        page.line(f"{crack.text}.", indent=1)
    page.head("Into the bowls")
    if page.is_wide:
        page.rows([(_name(row, eggs), row.text, _doubt(row)) for row in eggs.formulas], indent=1)
        return
    for row in eggs.formulas:
        page.line(f"{_name(row, eggs)}: {row.text}", indent=1)
        if _doubt(row):
            page.line(_doubt(row), indent=3)


def _name(row: "EggRow", eggs: "EggsResult") -> str:
    """The formula, with the order's day where there are several."""
    several = len({each.day for each in eggs.formulas}) > 1
    day = "" if row.day is None or not several else f", {row.day:%a} {row.day.day}"
    return f"{row.formula}{day}"


def _doubt(row: "EggRow") -> str:
    if row.likely_half_g is None or row.spread_g is None:
        return ""
    half = f"± {number(row.likely_half_g)} g"
    is_one = len(row.filled) == 1 and row.filled[0].bowls == 1
    return half if is_one else f"{number(row.spread_g.best)} {half} in all"


def _show_left(page: Page, eggs: "EggsResult") -> None:
    shown = [left for left in eggs.left if left.mass_g >= _CRUMB_G]
    if not shown:
        return
    page.head("Left over")
    for left in shown:
        page.line(f"{left.text}: {left.cold_days} days cold from breaking.", indent=1)
    for taker in eggs.takers:
        page.line(f"- {taker.text}", indent=1)
