"""`krume slip`: too much in the bowl, and every exact way out."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from krume.cli.figures import fixed, number
from krume.cli.folders import Folder
from krume.cli.options import common, file_argument
from krume.cli.page import Page
from krume.cli.ranges import Within
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import SlipOption, SlipResult

_LONG = 6
"""From this many lines to add on they stand in rows and not in the sentence alone."""


_DECLINED = {
    "jar": "No jar",
    "hold": "The total cannot be held",
    "second": "No second cake",
    "scale": "No larger cake with whole eggs",
    "scale-exact": "No larger cake",
    "down": "No smaller cake",
    "fresh": "No fresh whites",
}


@click.command("slip")
@file_argument
@click.option(
    "--weighed",
    metavar="NAME=G",
    multiple=True,
    help='Grams of a line that are in the bowl: "teff=26". Repeatable.',
)
@click.option(
    "--no-more", metavar="NAME", multiple=True, help="Nothing more of this line can be added."
)
@click.option(
    "--same-bowl",
    metavar="NAME",
    multiple=True,
    help="This line lies in the bowl of the slip too; `nothing` where nothing else does.",
)
@click.option("--spoilt", metavar="WHITES", help='Whites with yolk in them: "whites of 2 eggs".')
@click.option("--total", is_flag=True, help="Only ways in which this cake's total stays.")
@click.option(
    "--scale",
    "step_g",
    metavar="G",
    type=Within(min=0, min_open=True, max=100),
    help="Smallest step your scale shows, in g [default: the book's finest scale, else 0.1].",
)
@click.option("--all", "show_all", is_flag=True, help="All ways, not the first three alone.")
@click.option("--choose", metavar="N", type=int, help="Keep way N: write its corrected sheets.")
@click.option("--out", metavar="DIR", type=Folder(), help="Folder for the sheets of --choose.")
@click.option(
    "--paper",
    type=click.Choice(["a5", "a4", "letter"]),
    default="a5",
    show_default=True,
    help="Paper of the PDF.",
)
@common
def command(
    asked: Asked,
    file: str,
    weighed: tuple[str, ...],
    no_more: tuple[str, ...],
    same_bowl: tuple[str, ...],
    spoilt: str | None,
    total: bool,  # noqa: FBT001
    step_g: float | None,
    show_all: bool,  # noqa: FBT001
    choose: int | None,
    out: Path | None,
    paper: str,
) -> int:
    """Too much in the bowl: every exact way out, least change first.

    FILE is a formula: a text, a name of your book (F1), or - for standard input. Say what is in
    the bowl: krume slip F2 --weighed "white rice=40" --weighed "teff=26". A line that is not named
    counts as not weighed yet. Nothing is ever taken back out of a mixed bowl.

    --choose N --out DIR writes the corrected formula, its bench card, a blend card for what goes
    into a jar, and a record with the way back. The formula itself stays as it is.
    """
    if not (weighed or no_more or spoilt):
        message = 'Say what is in the bowl: krume slip F2 --weighed "teff=26"'
        raise click.UsageError(message)
    if out is not None and choose is None:
        message = "Say which way to keep: --choose 1 --out DIR"
        raise click.UsageError(message)
    from krume.usecases import SlipWish, rescue_slip

    wish = SlipWish(
        weighed=weighed,
        no_more=no_more,
        same_bowl=same_bowl,
        spoilt=spoilt,
        total=total,
        step_g=step_g,
        choose=choose,
        out=out,
        paper=paper,
    )
    answer = rescue_slip(file, wish, asked)
    return tell("slip", answer, lambda page, found: _show(page, found, show_all=show_all))


def _show(page: Page, slip: "SlipResult", *, show_all: bool) -> None:
    page.title(slip.name or "No name on the first line")
    _show_bowl(page, slip)
    for back in slip.take_back:
        page.line(
            f"If nothing else lies with it, spoon {number(back.mass_g, 2)} g of {back.name} back: "
            "nothing is lost."
        )
    if slip.chosen is not None:
        _show_kept(page, slip)
        return
    ways = slip.ways if show_all else slip.options
    for index, way in enumerate(ways, start=1):
        page.line()
        page.line(f"{index}. {way.title}", style="bold" if index == 1 else "")
        _show_way(page, way)
        if way.kind == "fresh" and slip.spoilt is not None:
            page.line(slip.spoilt.text, indent=3)
    if slip.more and not show_all:
        page.line()
        more = "1 more way" if len(slip.more) == 1 else f"{len(slip.more)} more ways"
        page.line(f"{more}: --all")
    if show_all:
        for each in slip.declined:
            page.line()
            page.line(f"{_DECLINED.get(each.kind, each.kind)}: {each.why}.")


def _show_bowl(page: Page, slip: "SlipResult") -> None:
    """What lies in the bowl, so that one sees it was understood."""
    rows = []
    for held in slip.in_bowl:
        over = held.over_g
        said = f"of {number(held.planned_g, 2)} planned"
        if over is not None and over > 0:
            said = f"{number(over, 2)} OVER {number(held.planned_g, 2)} planned"
        elif over == 0:
            said = "as planned"
        if held.is_closed:
            said += ", no more of it"
        name = _named(held.name, held.part)
        rows.append((fixed(held.weighed_g or 0.0, _digits(held.weighed_g)), f"g {name}: {said}"))
    if rows:
        page.line("In the bowl:")
        page.rows(rows, right=(0,), indent=2)
    if slip.not_yet:
        page.line(f"Not said to be in it yet: {', '.join(slip.not_yet)} (--weighed NAME=G).")


def _digits(value: float | None) -> int:
    return max(1, len(number(value, 3).partition(".")[2]))


def _show_way(page: Page, way: "SlipOption") -> None:
    adding = [line for line in way.lines if line.add_g > 0]
    if len(adding) < _LONG:
        page.line(way.text, indent=3)
        return
    rest = way.text.partition(". ")[2] if way.text.startswith("Add ") else way.text
    page.line("Add:" if rest != way.text else rest, indent=3)
    if rest == way.text:
        return
    digits = max(_digits(line.add_g) for line in adding)
    rows = [(fixed(line.add_g, digits), f"g {_named(line.name, line.part)}") for line in adding]
    page.rows(rows, right=(0,), indent=3)
    page.line(rest, indent=3)


def _named(name: str, part: str | None) -> str:
    return f"{name}, {part}" if part and part not in name else name


def _show_kept(page: Page, slip: "SlipResult") -> None:
    way = next(way for way in slip.ways if way.kind == slip.chosen)
    page.line()
    page.line(way.title, style="bold")
    page.line(way.text)
    page.line("The formula itself was not changed.")
    page.line()
    for file in slip.files:
        page.whole(file.path)
