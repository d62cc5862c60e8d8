"""`krume bake`: how long in this tin and oven, and how sure."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from krume.cli.figures import number, span
from krume.cli.options import common, file_argument
from krume.cli.page import Page
from krume.cli.ranges import Number
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import BakeBeside, BakeLine, BakeLines, BakeResult

_LEAST_SHARE = 0.005
_LEAST_TOLD = 0.01
_LEGEND = (
    "So many grams more than written, the rest as it is, and the density of the batter as it is; "
    "less does about the opposite. Baked height by the formula's own plan."
)


@click.command("bake")
@file_argument
@click.option("--tin", metavar="TIN", help="The tin [default: the formula's own].")
@click.option(
    "--oven", metavar="OVEN", help='"160 C", "325 F", "fan 150 C" [default: the formula\'s own].'
)
@click.option("--fan", is_flag=True, help="Bake with the fan on.")
@click.option(
    "--altitude",
    "altitude_m",
    metavar="M",
    type=Number(),
    default=0.0,
    show_default=True,
    help="Height above the sea, in metres.",
)
@click.option(
    "--oven-name", metavar="NAME", help="Which of the studio's ovens [default: the only one]."
)
@click.option(
    "--beside",
    metavar="WHAT",
    help="Compare with a second tin, another oven (160 C), or one word: dark, glass, fan, "
    "wrapped, water, tray, insulated, stone, low, high.",
)
@click.option(
    "--jacket",
    metavar="WORD",
    default="none",
    show_default=True,
    help="wrapped (a wet strip round the wall) or water (the tin stands in water).",
)
@click.option(
    "--under",
    metavar="WORD",
    default="rack",
    show_default=True,
    help="What the tin stands on: rack, tray, insulated (a double tray), stone.",
)
@click.option(
    "--rack",
    metavar="WORD",
    default="middle",
    show_default=True,
    help="Where in the oven: low, middle, high.",
)
@click.option(
    "--cold-start",
    "cold_start_c",
    metavar="C",
    type=Number(),
    help="Air at the door of an oven that still warms, in °C.",
)
@click.option(
    "--door",
    "door_min",
    metavar="MIN",
    type=Number(),
    multiple=True,
    help="A minute at which the door is opened; more than one may be named.",
)
@click.option("--doubt", is_flag=True, help="What makes the doubt, and what would narrow it.")
@click.option("--cooling", is_flag=True, help="When it may be cut, filled, wrapped or rolled.")
@click.option(
    "--picture",
    metavar="FILE",
    type=click.Path(path_type=Path, dir_okay=False),
    help="Write curve, cuts and top as a drawing, FILE.svg.",
)
@click.option(
    "--lines", is_flag=True, help="What a usual slip of every line does to minutes and height."
)
@common
def command(
    asked: Asked,
    file: str,
    tin: str | None,
    oven: str | None,
    fan: bool,  # noqa: FBT001
    altitude_m: float,
    oven_name: str | None,
    lines: bool,  # noqa: FBT001
    beside: str | None,
    jacket: str,
    under: str,
    rack: str,
    cold_start_c: float | None,
    door_min: tuple[float, ...],
    doubt: bool,  # noqa: FBT001
    cooling: bool,  # noqa: FBT001
    picture: Path | None,
) -> int:
    """How long in this tin and oven: when to start looking, and the doubt.

    FILE is a formula: a text, a name of your book (F1), or - for standard input. Minutes are an
    interval; the rule that came last is core, set or colour. The skewer, the probe and the eye
    decide.
    """
    from krume.usecases import BakeWish, bake_with_more, draw_bake

    wish = BakeWish(
        tin, oven, fan, altitude_m, oven_name, lines,
        jacket=jacket.strip().casefold(), under=under.strip().casefold(),
        rack=rack.strip().casefold(),
        cold_start_c=cold_start_c, door_min=door_min, beside=beside,
        doubt=doubt, cooling=cooling,
    )  # fmt: skip
    if picture is None:
        return tell("bake", bake_with_more(file, wish, asked), _show)
    return tell("bake", draw_bake(file, wish, asked, to=picture), _show)


def _show(page: Page, bake: "BakeResult") -> None:
    page.title(bake.name or "No name on the first line")
    if bake.tin is not None:
        depth = "" if bake.depth_cm is None else f", batter {number(bake.depth_cm)} cm deep"
        page.line(f"{bake.tin}{depth}")
    if bake.oven_c is not None:
        page.line(_oven(bake))
    if bake.around is not None and bake.around.text:
        page.line(bake.around.text)
    if bake.minutes is None or bake.rules is None:
        return
    page.line()
    minutes = span(bake.minutes.low, bake.minutes.high, 0)
    page.line(f"Start checking at {bake.check_from_min} min. Range {minutes} min.", style="bold")
    page.line(f"Middle of the draws {number(bake.minutes.best, 0)} min; {bake.done_by} comes last.")
    page.line(_core(bake))
    if bake.own_minutes is not None:
        own = span(bake.own_minutes.low, bake.own_minutes.high, 0)
        page.line(f"The formula's own minutes: {own}.")
    page.line()
    page.line("The likeliest bake by itself, every figure at its usual value:")
    page.rows(
        [
            (number(bake.rules.core_min), "min to the core"),
            (number(bake.rules.set_min), "min to set"),
            (number(bake.rules.colour_min), "min to colour"),
        ],
        right=(0,),
    )
    page.line()
    page.line(_loss(bake))
    if bake.tops:
        page.line(_tops(bake))
    if bake.beside is not None:
        _show_beside(page, bake.beside)
    if bake.unknowns:
        _show_unknowns(page, bake)
    if bake.cooling is not None:
        page.head("After the oven")
        for line in bake.cooling.lines:
            page.line(line)
    if bake.lines is not None:
        _show_lines(page, bake.lines)
    if bake.picture is not None:
        page.line()
        page.line("Drawn into:")
        page.whole(bake.picture)


def _tops(bake: "BakeResult") -> str:
    """The top's words at the minutes it may come out."""
    said = ", ".join(f"{top.word} at {number(top.minute)} min" for top in bake.tops)
    return f"The top of the likeliest bake, if it comes out then: {said} (a guess)."


def _show_unknowns(page: Page, bake: "BakeResult") -> None:
    """What makes the doubt, largest first, with the minutes each would leave."""
    page.head("What makes the doubt")
    for each in bake.unknowns:
        if each.share < _LEAST_TOLD:
            continue
        page.line(f"{_share(each.share)}: {each.text}")
        if each.then_min is not None:
            then = f"then {span(each.then_min.low, each.then_min.high, 0)} min"
            page.line(then if each.narrows else "no narrower by that", indent=2)
    page.line("Shares of the scatter of 256 bakes with everything that is not known drawn anew.")


def _show_beside(page: Page, other: "BakeBeside") -> None:
    page.head(f"Beside it: {_beside(other)}")
    page.line(other.text, style="bold")
    if other.minutes is not None:
        minutes = span(other.minutes.low, other.minutes.high, 0)
        page.line(
            f"Start checking at {other.check_from_min} min. Range {minutes} min, middle of the "
            f"draws {number(other.minutes.best, 0)}; {other.done_by} comes last. Batter "
            f"{number(other.depth_cm)} cm deep."
        )
    page.line("Difference of the same draws in both, eight of ten lie in it.")


def _beside(other: "BakeBeside") -> str:
    fan = " with the fan" if other.fan else ""
    around = "" if other.around is None or not other.around.text else f". {other.around.text}"
    return f"{other.tin}, {number(other.oven_c, 0)} °C{fan}{around}".rstrip(".")


def _show_lines(page: Page, found: "BakeLines") -> None:
    page.head("Every line")
    page.line(found.text)
    page.line(_LEGEND)
    page.line()
    if page.is_wide:
        page.whole(
            f"{'line':<22} {'slip':>8} {'min':>7} {'baked, mm':>10} {'loss':>6} {'share':>6}"
        )
    for line in found.lines:
        _show_line(page, line)
    page.line()
    page.line(
        f"With every line off at once the minutes scatter by {number(found.sd_min, 2)} min; taken "
        f"as a sum of the lines that misses by {number(found.miss_min, 2)} min "
        f"({found.runs} bakes). The model itself jumps by {number(found.noise_min, 2)} min."
    )


def _show_line(page: Page, line: "BakeLine") -> None:
    off = f"{number(line.slip_g, 2)} g"
    height = "unknown" if line.baked_mm is None else _signed(line.baked_mm)
    loss, share = _signed(line.loss_pct), _share(line.share)
    if page.is_wide:
        minutes = _signed(line.slip_min) if line.shows else "none"
        page.whole(f"{line.name:<22.22} {off:>8} {minutes:>7} {height:>10} {loss:>6} {share:>6}")
        return
    minutes = f"{_signed(line.slip_min)} min" if line.shows else "minutes as before"
    page.line(f"{line.name}: {off} more, {minutes}")
    page.line(f"baked {height} mm, loss {loss}, share {share}", indent=2)


def _share(share: float) -> str:
    return (
        "<1\N{NO-BREAK SPACE}%" if share < _LEAST_SHARE else f"{100 * share:.0f}\N{NO-BREAK SPACE}%"
    )


def _signed(value: float) -> str:
    text = f"{value:+.2f}".replace("-", "\N{MINUS SIGN}")
    return "0" if float(f"{value:.2f}") == 0 else text


def _oven(bake: "BakeResult") -> str:
    # Beside a limit of the oven its temperature is not rounded to that limit.
    digits = 1 if bake.minutes is None else 0
    said = f"Oven {number(bake.oven_c, digits)} °C, {'fan' if bake.fan else 'no fan'}"
    if bake.altitude_m:
        said += f", {number(bake.altitude_m, 0)} m above the sea"
    if bake.dial is None:
        return said + "."
    return f"{said}. Turn the dial to {number(bake.dial.set_c, 0)} °C."


def _core(bake: "BakeResult") -> str:
    family = bake.family_core_c
    usual = "" if family is None else f"; usual for the family {span(family.low, family.high, 0)}"
    boils = f"Boils at {number(bake.boiling_c)} °C."
    return f"Core {number(bake.core_c)} °C, {bake.core_from}{usual}. {boils}"


def _loss(bake: "BakeResult") -> str:
    loss = bake.loss_pct
    said = "" if loss is None else f"Loss by the model {span(loss.low, loss.high)} %, a wide guess"
    if bake.planned_loss_pct is None:
        return said + "."
    return f"{said}; the formula plans {number(bake.planned_loss_pct)} %, and that is what counts."
