"""`krume check`: percentages against the usual bands."""

from typing import TYPE_CHECKING

import click

from krume.base import Interval
from krume.cli.figures import amount, number, span, strip
from krume.cli.options import common, explain_option, file_argument
from krume.cli.own_range import is_fine, show_own, show_own_promise
from krume.cli.page import Page
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import CheckBand, CheckLine, CheckRanking, CheckResult

_STRIP = 24
_OFTEN_PCT = 1.0
_LEGEND = (
    "What a usual slip of each line does to the figure it moves most, in half-widths of its band "
    "(1 is the way from the middle to the edge); what one step of the scale does; its share of "
    "the scatter when every line is off at once."
)
_STRIP_NARROW = 32


@click.command("check")
@file_argument
@explain_option
@click.option(
    "--lines",
    is_flag=True,
    help="What a step of the scale and a usual slip of every line do, all lines ranked.",
)
@common
def command(asked: Asked, file: str, explain: str | None, lines: bool) -> int:  # noqa: FBT001
    """Percentages against the usual bands.

    FILE is a formula: a text, a name of your book (F1), or - for standard input. A band is what
    is usual, not what is right; each finding names the basis it is judged on and the grams that
    lead back inside.
    """
    from krume.usecases import check_formula

    return tell("check", check_formula(file, asked, explain=explain, lines=lines), _show)


def _show(page: Page, check: "CheckResult") -> None:
    page.title(check.name or "No name on the first line")
    page.line(f"{check.family_label or 'family not known'}, {_total(check.total_g)}")
    if check.basis_g is not None:
        page.line(f"100 is {amount(check.basis_g)} g of {_basis(check.basis)}")
    for finding in check.findings:
        page.line()
        page.line(f"Outside: {finding.text}", style="bold")
        page.line(f"({finding.status})", indent=2)
    if not check.findings and check.bands:
        page.line()
        page.line("Everything that has a band lies inside it.")
    for band in check.bands:
        _show_band(page, band)
    show_own_promise(page, check)
    if check.near_edge:
        page.head("Near an edge")
    for finding in check.near_edge:
        page.line(finding.text, indent=2)
    if check.per_egg is not None:
        per = check.per_egg
        page.head("For one egg")
        page.line(
            f"{number(per.egg_g)} g shelled: {amount(per.flour_g)} g flour, "
            f"{amount(per.sugar_g)} g sugar",
            indent=2,
        )
    _show_twice(page, check)
    if check.lines:
        _show_lines(page, check, check.lines)


def _show_twice(page: Page, check: "CheckResult") -> None:
    page.line()
    page.line(check.weigh_twice_text, style="bold")
    if check.weigh_twice:
        page.line(check.weigh_twice[0].text)


def _show_lines(page: Page, check: "CheckResult", lines: "tuple[CheckLine, ...]") -> None:
    page.head("Every line")
    page.line(_LEGEND)
    labels = {band.key: band.label.lower() for band in check.bands}
    page.line()
    if page.is_wide:
        page.whole(f"{'line':<22} {'slip':>8}  {'does':>5}  {'one step':>8}  {'share':>5}  to")
    for line in lines:
        if line.figure is not None:
            _show_line(page, line, labels[line.figure])
    still = [line.name for line in lines if line.figure is None]
    if still:
        page.line(f"Move no figure with a band: {', '.join(still)}.")
    if check.ranking is not None:
        page.line()
        page.line(_sampled(check.ranking))


def _show_line(page: Page, line: "CheckLine", figure: str) -> None:
    off = f"{number(line.slip_g, 2)} g"
    does = _least(line.slip_effect, 2)
    step = "no step" if line.step_g is None else _least(line.step_effect, 2)
    share = "" if line.total_share is None else f"{_least(100 * line.total_share, 0)} %"
    if page.is_wide:
        page.whole(f"{line.name:<22.22} {off:>8}  {does:>5}  {step:>8}  {share:>5}  {figure}")
        return
    page.line(f"{line.name}: {off} does {does} to {figure}")
    page.line(f"one step {step}; share {share}", indent=2)


def _least(value: float, digits: int) -> str:
    """A number with its digits; what would print as nothing is said to be less than one of them."""
    least = 10.0**-digits
    return f"<{least:.{digits}f}" if 0 < value < least / 2 else f"{value:.{digits}f}"


def _sampled(ranking: "CheckRanking") -> str:
    outside = [
        f"{scatter.label.lower()} {number(scatter.outside_pct)} %"
        for scatter in ranking.figures
        if scatter.outside_pct >= _OFTEN_PCT
    ]
    said = f"With every line off at once, {number(ranking.runs, 0)} draws"
    return f"{said}: outside its band {', '.join(outside)}." if outside else f"{said}: all inside."


def _basis(name: str) -> str:
    return "flour; the egg is judged by its parts" if name == "parts" else name


def _total(total_g: float | Interval | None) -> str:
    return "total not known" if total_g is None else f"{amount(total_g)} g in all"


def _show_band(page: Page, band: "CheckBand") -> None:
    unit = "" if band.unit == "ratio" else f" {band.unit}"
    digits = 3 if band.unit == "ratio" else 2 if is_fine(band) else 1
    value = f"{amount(band.value, digits)}{unit}"
    usual = f"usual {span(band.low, band.high)}{unit}"
    if page.is_wide:
        label = f"{band.label:<19.19}"
        page.whole(f"{label} {value:>13}  {_strip(band, _STRIP)}  {usual}".rstrip())
        show_own(page, band, _STRIP)
        return
    page.line(f"{band.label}: {value}")
    page.line(usual, indent=2)
    width = min(_STRIP_NARROW, page.width - 2)
    page.whole(_strip(band, width).rstrip(), indent=2)
    show_own(page, band, width)


def _strip(band: "CheckBand", width: int) -> str:
    best = band.value.best if isinstance(band.value, Interval) else band.value
    return " " * width if best is None else strip(best, band.low, band.high, width)
