"""`krume build`: how a torte stands, from the top down."""

from typing import TYPE_CHECKING

import click

from krume.cli.figures import fixed, number
from krume.cli.in_time import show_in_time
from krume.cli.options import common, file_argument
from krume.cli.page import Page
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.build import Batch
    from krume.usecases import BuildLayer, BuildResult

_MARKS = {
    "sponge": "o . ", "nut-sponge": "o * ", "tart": "-- -", "cream": "~~~~", "set-cream": "~'~'",
    "jelly": "////", "ganache": "#:#:", "syrup": "''''", "coat": "    ", "fruit": "@ @ ",
    "cover": "- - ", "decoration": " ^ ^",
}  # fmt: skip
_BAND = 16
_BAND_NARROW = 4


@click.command("build")
@file_argument
@click.option("--standing", is_flag=True, help="Each cream: what lies on it, what it carries.")
@click.option("--moisture", is_flag=True, help="What water moves between the layers in 3 days.")
@common
def command(asked: Asked, file: str, *, standing: bool, moisture: bool) -> int:
    """How a torte stands: heights, grams, slices, what to make of each cream.

    FILE is a torte: a text, a name of your book (T1), or - for standard input. Its formulas are
    those of the book, or texts beside FILE. A piece of sponge weighs its share of the planned
    baked cake; creams go by height and density, syrup by area, a bare mass is that mass.
    """
    from krume.usecases import build_in_time

    def show(page: Page, built: "BuildResult") -> None:
        _show(page, built)
        show_in_time(page, built, standing=standing)

    return tell("build", build_in_time(file, asked, moves=moisture), show)


def _show(page: Page, built: "BuildResult") -> None:
    page.title(built.name or "No name on the first line")
    if not built.layers:
        return
    page.line(_sizes(built))
    page.line()
    page.rows(_stack(built, _BAND if page.is_wide else _BAND_NARROW), right=(1, 2))
    if built.ring is not None:
        page.line()
        page.line(_ring(built))
    _show_slices(page, built)
    _show_batches(page, built)
    _show_said(page, built)
    for finding in built.findings:
        page.line()
        page.line(finding.text, style="bold")
        page.line(f"({finding.status})", indent=2)


def _sizes(built: "BuildResult") -> str:
    said = [f"{number(built.height_mm)} mm high"]
    if built.kind == "roll":
        said = [f"a roll, Ø {number(built.height_mm)} mm, {number(built.turns, 2)} turns"]
    elif built.diameter_cm is not None:
        said.insert(0, f"Ø {number(built.diameter_cm, 2)} cm")
    elif built.length_cm is not None:
        said.insert(0, f"{number(built.length_cm, 2)} × {number(built.width_cm, 2)} cm")
    return ", ".join([*said, f"{number(built.mass_g)} g ({built.status})"])


def _stack(built: "BuildResult", band: int) -> list[tuple[str, str, str, str]]:
    """Layers from the top down, each with its mark, its mm and its g."""
    rows = [(_band(x, band), _mm(x), fixed(x.mass_g), x.name) for x in reversed(built.layers)]
    head = ("", "mm", "g", "")
    return [head, *rows, ("", number(built.height_mm), fixed(built.mass_g), "in all")]


def _band(layer: "BuildLayer", wide: int) -> str:
    mark = _MARKS.get(layer.material, "    ")
    return f"|{(mark * wide)[:wide]}|"


def _mm(layer: "BuildLayer") -> str:
    if layer.role == "decoration":
        return "on it"
    return "in it" if layer.role == "syrup" else number(layer.height_mm)


def _ring(built: "BuildResult") -> str:
    ring = built.ring
    if ring is None:
        return ""
    spare = "not known" if ring.spare_mm is None else f"{number(ring.spare_mm)} mm"
    if ring.diameter_cm is None:
        sides = f"{number(ring.length_cm, 2)} × {number(ring.width_cm, 2)}"
        return f"Frame {sides} cm, to spare: {spare}"
    return f"Ring Ø {number(ring.diameter_cm, 2)} cm, to spare: {spare}"


def _show_slices(page: Page, built: "BuildResult") -> None:
    if not built.slices:
        return
    page.head("Slices")
    for each in built.slices:
        cut = ""
        if each.width_mm is not None:
            cut = f", {number(each.width_mm)} mm wide"
        elif each.arc_cm is not None:
            cut = f", {number(each.arc_cm, 2)} cm outside, {number(each.angle_deg)}°"
        page.line(f"{each.count} × {fixed(each.mass_g)} g{cut}", indent=2)


def _show_batches(page: Page, built: "BuildResult") -> None:
    page.head("In the order needed")
    for each in built.batches:
        of = f"{each.name}, {each.title}: {fixed(each.needed_g)} of {fixed(each.batch_g)} g"
        page.line(f"{of}; {_made(each)}", indent=2)
    for size, count in built.eggs.cracked.items():
        page.line(f"eggs: {count} {_size(size)}", indent=2)
    for left in built.eggs.left:
        parts = f"{number(left.count)} {left.part}{'' if left.count == 1 else 's'}"
        page.line(f"left over: {parts}, {fixed(left.mass_g)} g", indent=2)


def _show_said(page: Page, built: "BuildResult") -> None:
    """Cakes, covers, small pieces and gels, in the sentences of the plan."""
    said = built.said
    if said is None:
        return
    heads = (
        ("In which order", () if built.order is None else built.order.lines),
        ("Cut from the cakes", said.cakes),
        ("Rolled out", said.covers),
        ("Made, and not in the torte", said.waste),
        ("What sets it, by both rules in use: they disagree, say which you took", said.gels),
        ("For many guests, in place of slices", said.cuts),
    )
    for head, lines in heads:
        if lines:
            page.head(head)
            for line in lines:
                page.line(line, indent=2)
    for line in (said.surface, said.plate):
        if line:
            page.line()
            page.line(line)


def _made(batch: "Batch") -> str:
    """What is made of it, and what is over."""
    if batch.kind == "goods":
        return "weigh it out"
    count = batch.batches
    if count is None:
        return "how much to make is not known"
    over = "cut away" if batch.kind == "cake" else "over"
    plural = "" if count == 1 else "es"
    words = "half a batch" if count == 0.5 else f"{number(count)} batch{plural}"
    return f"{words}, {fixed(batch.over_g)} g {over}"


def _size(key: str) -> str:
    region, _, size = key.partition("-")
    return f"{region.upper()} {size.upper() if len(size) == 1 else size.title()}"
