"""`krume vary`: one thing for another, what it changes, and the child linked to its parent."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from krume.base import as_text
from krume.cli.figures import amount, fixed, number, span
from krume.cli.options import common, file_argument
from krume.cli.page import Page
from krume.cli.ranges import Within
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import VaryChange, VaryResult

_NOTHING = "nothing"


@click.command("vary")
@file_argument
@click.option(
    "--swap",
    "swaps",
    metavar="A=B",
    multiple=True,
    help='A line of the formula for another thing: "hazelnut=pistachio", "10 g rice flour=cocoa". '
    "Repeatable.",
)
@click.option(
    "--cut",
    "cuts",
    metavar="LESS",
    multiple=True,
    help='Less of a line: "sugar 20 %", "sugar -25 g". Repeatable.',
)
@click.option(
    "--add",
    "added",
    metavar="MORE",
    multiple=True,
    help='A thing that was not in it: "60 g apple puree". Repeatable.',
)
@click.option(
    "--for",
    "wishes",
    metavar="WISH",
    multiple=True,
    help="For whom: vegan, vegetarian, dairy-free, egg-free, without nuts. Repeatable.",
)
@click.option(
    "--fat",
    metavar="FAT",
    help="What makes up missing fat: oil, butter, none, or its name [default: a fat the formula "
    "has, else plain oil].",
)
@click.option(
    "--scale",
    "step_g",
    metavar="G",
    type=Within(min=0, min_open=True, max=100),
    help="Smallest step your scale shows, in g [default: the book's finest scale, else 0.1].",
)
@click.option(
    "--eggs",
    type=click.Choice(["whole"]),
    default="whole",
    show_default=True,
    help="Eggs stay whole: no egg line is moved.",
)
@click.option(
    "--market",
    type=click.Choice(["us", "eu", "uk", "ca", "au-nz"]),
    help="In whose words allergens are told [default: the book's market, else eu].",
)
@click.option("--children", is_flag=True, help="The children of FILE: which follow it.")
@click.option(
    "--child",
    "files",
    metavar="CHILD",
    multiple=True,
    help="With --children: only this text, a file or a name of your book. Repeatable.",
)
@click.option(
    "--write",
    metavar="NEW",
    type=click.Path(path_type=Path),
    help="Write the child, once nothing about it is open.",
)
@click.option("--replace", is_flag=True, help="Let --write replace a file that is there.")
@common
def command(
    asked: Asked,
    file: str,
    swaps: tuple[str, ...],
    cuts: tuple[str, ...],
    added: tuple[str, ...],
    wishes: tuple[str, ...],
    fat: str | None,
    step_g: float | None,
    eggs: str,
    market: str | None,
    files: tuple[str, ...],
    write: Path | None,
    *,
    children: bool,
    replace: bool,
) -> int:
    """One thing for another: the grams that follow, allergens first, and what nobody knows.

    FILE is a formula: a text, a name of your book (F1), or - for standard input. A swap is weight
    for weight; then the fat, the water and the sugar are brought back near the parent's, in
    steps of your scale. Eggs, salt and flavours are not moved. Nothing is changed in FILE.
    """
    from krume.usecases import FamilyWish, VaryWish, vary_children, vary_formula

    del eggs
    if children or files:
        family = FamilyWish(files, step_g, write, replace)
        return tell("vary", vary_children(file, family, asked), _show_children)
    wish = VaryWish(swaps, cuts, added, wishes, fat, step_g, market, write, replace)
    if wish.is_empty:
        raise click.UsageError('Say what to vary: --swap "A=B", --cut, --add, --for or --children.')
    return tell("vary", vary_formula(file, wish, asked), _show)


def _show(page: Page, child: "VaryResult") -> None:
    page.title(child.name or "No name on the first line")
    page.line(f"Parent: {child.parent}")
    if child.allergens is None:
        return
    if not child.changes:
        page.line("No line changes.")
        return
    _show_allergens(page, child)
    _show_grams(page, child)
    _show_ways(page, child)
    _show_balance(page, child)
    _show_rest(page, child)


def _show_allergens(page: Page, child: "VaryResult") -> None:
    found = child.allergens
    if found is None:
        return
    page.head("Allergens")
    silent = f"what {' and '.join(found.open)} brings is not known" if found.open else ""
    gone = ", ".join(found.lost) or (f"not known, {silent}" if silent else _NOTHING)
    brings = "; ".join(text for text in (", ".join(found.gained), silent) if text)
    page.line(f"Lost: {gone}", indent=2, style="bold")
    page.line(f"Gained: {brings or _NOTHING}", indent=2, style="bold")
    if found.traces_gained or found.traces_lost:
        gained, lost = found.traces_gained, found.traces_lost
        told = [
            f"gained {', '.join(gained)}" if gained else "",
            *([f"lost {', '.join(lost)}"] if lost else []),
        ]
        page.line(f"Traces, by the lots: {'; '.join(t for t in told if t)}", indent=2)
    if child.kitchen:
        page.line(child.kitchen, indent=2)
    if child.claims is not None:
        for word, facts in (("Now", child.claims.gained), ("No longer", child.claims.lost)):
            if facts:
                page.line(f"{word}: {', '.join(facts)}.", indent=2)
    if child.gluten is not None:
        page.line(child.gluten.text, indent=2)


def _show_grams(page: Page, child: "VaryResult") -> None:
    page.head("Grams")
    if page.is_wide:
        rows = [("before", "after", "", "why"), *map(_cells, child.changes)]
        page.rows(rows, right=(0, 1), indent=2)
    else:
        for change in child.changes:
            page.line(change.name, indent=2, style="bold")
            page.line(f"{_grams(change.before_g)} → {_grams(change.after_g)} g", indent=4)
            page.line(change.why, indent=4)
    same = len(child.lines) - sum(1 for c in child.changes if c.after_g)
    total = f"{amount(child.total_before_g)} → {amount(child.total_g)} g in all"
    page.line(f"{same} lines stay as they are; {total}.", indent=2)
    if child.price is not None:
        page.line(_price(child), indent=2)


def _cells(change: "VaryChange") -> tuple[str, str, str, str]:
    return (_grams(change.before_g), _grams(change.after_g), f"g {change.name}", change.why)


def _grams(value: float | None) -> str:
    return "–" if value == 0 else number(value, 2)


def _price(child: "VaryResult") -> str:
    price = child.price
    if price is None:
        return ""
    if price.missing:
        return f"Price of the change: not known, no price for {', '.join(price.missing)}."
    currency = f" {price.currency}" if price.currency else ""
    return (
        f"Price of what changes: {fixed(price.before, 2)} → {fixed(price.after, 2)}{currency} "
        f"({price.difference:+.2f})."
    )


def _show_ways(page: Page, child: "VaryResult") -> None:
    """Rules in use that differ, side by side."""
    if not child.ways:
        return
    page.head("Two rules are in use")
    for way in child.ways:
        page.line(f"{way.label} ({way.status}): {way.note}", indent=2)
        changed = [line for line in way.lines if line.mass_g != line.before_g]
        page.line(", ".join(f"{number(x.mass_g, 2)} g {x.name}" for x in changed), indent=4)


def _show_balance(page: Page, child: "VaryResult") -> None:
    found = child.balance
    if found is None:
        return
    moved = [f for f in found.figures if amount(f.before) != amount(f.after)]
    page.head("Balance")
    if not moved:
        page.line("No figure with a band moves.", indent=2)
    for figure in moved:
        unit = "" if figure.unit == "ratio" else f" {figure.unit}"
        digits = 3 if figure.unit in ("ratio", "g/cm2", "g/ml") else 1
        usual = span(figure.low, figure.high)
        page.line(
            f"{figure.label}: {amount(figure.before, digits)} → {amount(figure.after, digits)}"
            f"{unit} (usual {usual})",
            indent=2,
        )
    for text in found.findings_gained:
        page.line(f"New: {text}", indent=2)
    for text in found.findings_lost:
        page.line(f"No longer: {text}", indent=2)


def _show_rest(page: Page, child: "VaryResult") -> None:
    if child.gaps is not None:
        page.head("Against the parent, before and after the make-up")
        rows = [
            (word, _signed(getattr(child.gaps, key)), _signed(getattr(child.left, key)))
            for key, word in _QUANTITIES
        ]
        page.rows([("", "bare swap", "made up"), *rows], right=(1, 2), indent=2)
    if child.unknown:
        page.head("Not known")
        for text in child.unknown:
            page.line(f"- {text}", indent=2)
    if child.written:
        page.line()
        page.line("Written:")
        page.whole(child.written)


_QUANTITIES = (
    ("fat_g", "fat"),
    ("water_g", "water"),
    ("sugar_g", "sugar"),
    ("starch_g", "starch"),
    ("protein_g", "protein"),
    ("fibre_g", "fibre"),
)


def _signed(gap_g: float | None) -> str:
    """What is off, the way a person says it: below 0 is missing."""
    if gap_g is None:
        return "not known"
    text = as_text(abs(gap_g), 1)
    if text == "0":
        return "same"
    return f"{text} g {'less' if gap_g > 0 else 'more'}"


def _show_children(page: Page, family: "VaryResult") -> None:
    page.title(f"Children of {family.parent}")
    for child in family.children:
        page.line()
        page.line(f"{child.name}: {child.title or ''}".rstrip(": "), style="bold")
        page.line(child.text, indent=2)
        for change in child.changes:
            grams = f"{_grams(change.before_g)} → {_grams(change.after_g)}"
            page.line(f"{grams} g {change.name}", indent=4)
    if family.written:
        page.line()
        page.line("Written:")
        page.whole(family.written)
