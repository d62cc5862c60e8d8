"""`krume fill`: how much of a cream fills a ring, in grams and whole cartons."""

from typing import TYPE_CHECKING

import click

from krume.cli.figures import fixed, number
from krume.cli.options import common, file_argument
from krume.cli.page import Page
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import FillResult


@click.command("fill")
@file_argument
@click.option("--ring", metavar="RING", required=True, help='Ring by its inside: "24 x 6 cm".')
@click.option(
    "--disc",
    "discs",
    metavar="DISC",
    multiple=True,
    help='Discs that lie in it: "2 x 21 cm x 12 mm". Repeatable.',
)
@click.option("--high", "high_mm", metavar="MM", type=float, help="Fill it so high, in mm.")
@click.option(
    "--carton", "carton_ml", metavar="ML", type=float, help="What a carton holds [default: 200]."
)
@click.option(
    "--waste",
    "waste_pct",
    metavar="PCT",
    type=float,
    default=0.0,
    help="Share of what is made that stays in bowl and bag [default: 0].",
)
@common
def command(
    asked: Asked,
    file: str,
    ring: str,
    discs: tuple[str, ...],
    high_mm: float | None,
    carton_ml: float | None,
    waste_pct: float,
) -> int:
    """How much of a cream fills a ring, in grams and whole cartons.

    FILE is a cream: a text, a name of your book (C2), or - for standard input. Volume becomes
    grams by the density written in the formula.
    """
    from krume.usecases import FillWish, fill_ring

    wish = FillWish(ring, discs, high_mm, carton_ml, waste_pct)
    return tell("fill", fill_ring(file, wish, asked), _show)


def _show(page: Page, found: "FillResult") -> None:
    page.title(f"{found.title} for {found.ring}")
    if found.cream_ml is None:
        return
    page.line(
        f"{number(found.cream_l, 2)} l of cream, {fixed(found.needed_g)} g "
        f"({number(found.density_g_ml, 3)} g/ml, {found.status})"
    )
    rows = [
        ("ring", f"{fixed(found.ring_ml)} ml"),
        ("discs in it", f"{fixed(found.discs_ml)} ml"),
        ("cream", f"{fixed(found.cream_ml)} ml"),
    ]
    page.rows(rows, indent=2, right=(1,))
    page.head(f"Make {fixed(found.made_g)} g, {number(found.factor, 2)} of a batch")
    if found.waste_g:
        page.line(f"{fixed(found.waste_g)} g of it stay in bowl and bag", indent=2)
    page.rows([(x.name, f"{fixed(x.mass_g)} g") for x in found.lines], indent=2, right=(1,))
    if found.cartons:
        page.head("Cartons")
        for each in found.cartons:
            page.line(
                f"{each.name}: {number(each.needed_ml, 0)} ml, {each.cartons} of "
                f"{number(each.carton_ml)} ml; {number(each.left_ml, 0)} ml left",
                indent=2,
            )
    for use in found.gels:
        page.head(f"What sets it: {number(use.mass_g, 2)} g {use.label}")
        page.line(use.steps, indent=2)
        for swap in use.leaves:
            leaf = swap.leaf
            page.line(
                f"{leaf.label}, {number(leaf.strength_bloom)} bloom, {number(leaf.leaf_g)} g: "
                f"{number(swap.by_root_count, 1)} leaves by the root rule, "
                f"{number(swap.by_ratio_count, 1)} by the ratio rule",
                indent=2,
            )
