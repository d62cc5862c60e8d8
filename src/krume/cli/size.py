"""`krume size`: the formula in other tins, with whole eggs."""

from typing import TYPE_CHECKING

import click

from krume.cli.figures import fixed, number
from krume.cli.lengths import LengthCm
from krume.cli.options import common, explain_option, file_argument
from krume.cli.page import Page
from krume.cli.ranges import Within
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import SizeOption, SizeResult


@click.command("size")
@file_argument
@click.option(
    "--tin",
    "tins",
    metavar="TIN",
    multiple=True,
    required=True,
    help='The tin wanted: "round 20 x 5 cm", "sheet 13x9 in". Repeatable: filled to one depth.',
)
@click.option(
    "--depth",
    "depth_cm",
    metavar="CM",
    type=LengthCm(),
    help="Batter depth wanted, in cm or with its unit, 11mm [default: as in the formula's own "
    "tin].",
)
@click.option(
    "--eggs",
    type=click.Choice(["whole", "any"]),
    default="whole",
    show_default=True,
    help="Whole eggs only, or any grams of egg.",
)
@click.option(
    "--scale",
    "step_g",
    metavar="G",
    type=Within(min=0, min_open=True, max=100),
    help="Smallest step your scale shows, in g [default: the book's finest scale, else 0.1].",
)
@explain_option
@common
def command(
    asked: Asked,
    file: str,
    tins: tuple[str, ...],
    depth_cm: float | None,
    eggs: str,
    step_g: float | None,
    explain: str | None,
) -> int:
    """The formula in other tins, with whole eggs.

    FILE is a formula: a text, a name of your book (F1), or - for standard input. Options come
    best first, depth before grams. A batter above the rim is no option.
    """
    from krume.usecases import SizeWish, size_formula

    wish = SizeWish(tins, depth_cm, eggs, step_g, explain)
    return tell("size", size_formula(file, wish, asked), _show)


def _show(page: Page, size: "SizeResult") -> None:
    page.title(size.name or "No name on the first line")
    if size.own_tin is not None:
        depth = "" if size.own_depth_cm is None else f", {fixed(size.own_depth_cm)} cm deep"
        page.line(f"From: {size.own_tin.text}{depth}")
    for tin in size.tins:
        page.line(f"To: {tin.text}")
    if size.factor.by_area is not None or size.factor.by_volume is not None:
        area, volume = fixed(size.factor.by_area, 4), fixed(size.factor.by_volume, 4)
        page.line(f"Factor: by area {area}, by volume {volume}")
    for index, option in enumerate(size.options, start=1):
        page.line()
        page.line(f"{index}. {option.text}", style="bold" if index == 1 else "")
        for notice in option.notices if index > 1 else ():
            page.line(notice.text, indent=3)
        if option.kind != "as-is":
            page.rows(_grams(option), right=(0,), indent=3)


def _grams(option: "SizeOption") -> list[tuple[str, str]]:
    masses = [*(line.mass_g for line in option.lines), option.total_g]
    digits = max(len(number(mass, 2).partition(".")[2]) for mass in masses)
    names = [line.name + (f", {line.part}" if line.part else "") for line in option.lines]
    return [
        (fixed(mass, digits), f"g {name}")
        for mass, name in zip(masses, [*names, "in all"], strict=True)
    ]
