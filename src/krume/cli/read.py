"""`krume read`: what a written formula says, line by line, and what it leaves open."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from krume.cli.figures import number, span
from krume.cli.options import common, explain_option, file_argument
from krume.cli.page import Page
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import ReadLine, ReadOven, ReadResult


@click.command("read")
@file_argument
@click.option(
    "--write",
    metavar="NEW",
    type=click.Path(path_type=Path),
    help="Write the text with your answers in it, once no question is open.",
)
@click.option("--replace", is_flag=True, help="Let --write replace a file that is there.")
@explain_option
@common
def command(
    asked: Asked, file: str, write: Path | None, *, replace: bool, explain: str | None
) -> int:
    """What a written formula says, line by line, and what it leaves open.

    FILE is a text as you write it, a name of your book (F1), or - for standard input. What you
    wrote stands on the left, what it was taken for on the right. Nothing is changed.
    """
    from krume.usecases import read_formula

    answer = read_formula(file, asked, write=write, replace=replace, explain=explain)
    return tell("read", answer, _show)


def _show(page: Page, formula: "ReadResult") -> None:
    page.title(formula.name or "No name on the first line")
    for label, said in _facts(formula):
        page.line(f"{label}: {said}")
    section = None
    if formula.lines:
        page.head("Lines")
    for line in formula.lines:
        if line.section != section:
            section = line.section
            page.line(f"{section}:", indent=2)
        _show_line(page, line)
    if formula.steps:
        page.head("Steps")
    for index, step in enumerate(formula.steps, start=1):
        page.line(f"{index}. {step}", indent=2)
    if formula.written:
        page.line()
        page.line("Written with your answers:")
        page.whole(formula.written)


def _facts(formula: "ReadResult") -> list[tuple[str, str]]:
    facts = [("Family", formula.family or "not known")]
    if formula.tin is not None:
        volume = formula.tin.volume_ml
        room = "its depth is not known" if volume is None else f"{number(volume, 0)} ml to the rim"
        facts.append(("Tin", f"{formula.tin.text}, {room}"))
    if formula.oven is not None:
        facts.append(("Oven", _oven(formula.oven)))
    if formula.core_c is not None:
        facts.append(("Core", f"{number(formula.core_c)} °C"))
    if formula.bake_min is not None:
        facts.append(("Bake", f"{span(formula.bake_min.low, formula.bake_min.high)} min"))
    if formula.eggs.shelled_g is not None:
        size = f", {formula.eggs.size}" if formula.eggs.size else ""
        facts.append(("Eggs", f"{number(formula.eggs.shelled_g)} g shelled{size}"))
    return facts


def _oven(oven: "ReadOven") -> str:
    if oven.temp_c is None:
        return f"{oven.read} (temperature not known)"
    fan = {True: ", fan", False: ", no fan", None: ""}[oven.fan]
    doubt = oven.temp_interval_c
    shown = number(oven.temp_c) if doubt is None else span(doubt.low, doubt.high, 1)
    later = "".join(
        f", then {number(stage.temp_c)} °C"
        + ("" if stage.from_min is None else f" after {number(stage.from_min)} min")
        for stage in oven.stages
    )
    return f"{shown} °C{fan}{later}"


def _show_line(page: Page, line: "ReadLine") -> None:
    taken = f"{_mass(line)}  {line.taken_as or 'not in the pantry'}"
    if line.part and line.part != "whole":
        taken += f", {line.part}"
    if page.is_wide:
        half = (page.width - 4) // 2
        page.columns(line.read, taken, half, indent=2)
    else:
        page.line(line.read, indent=2)
        page.line(taken, indent=6)


def _mass(line: "ReadLine") -> str:
    if line.mass_g is None:
        return "unknown mass"
    if line.basis in ("weighed", "ratio") and line.mass_interval_g is None:
        return f"{number(line.mass_g, 2)} g"
    doubt = line.mass_interval_g
    half = f" ± {number(doubt.half_width)}" if doubt is not None else ""
    return f"{number(line.mass_g, 1)} g{half} ({line.basis}, {line.status})"
