"""`krume check`: percentages against the usual bands."""

from typing import TYPE_CHECKING

import click

from krume.base import Interval
from krume.cli.figures import amount, number, span, strip
from krume.cli.options import common, explain_option, file_argument
from krume.cli.page import Page
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import CheckBand, CheckResult

_STRIP = 24
_STRIP_NARROW = 32


@click.command("check")
@file_argument
@explain_option
@common
def command(asked: Asked, file: str, explain: str | None) -> int:
    """Percentages against the usual bands.

    FILE is a formula: a text, a name of your book (F1), or - for standard input. A band is what
    is usual, not what is right; each finding names the basis it is judged on and the grams that
    lead back inside.
    """
    from krume.usecases import check_formula

    return tell("check", check_formula(file, asked, explain=explain), _show)


def _show(page: Page, check: "CheckResult") -> None:
    page.title(check.name or "No name on the first line")
    page.line(f"{check.family_label or 'family not known'}, {_total(check.total_g)}")
    if check.basis_g is not None:
        page.line(f"100 is {amount(check.basis_g)} g of {check.basis}")
    for finding in check.findings:
        page.line()
        page.line(f"Outside: {finding.text}", style="bold")
        page.line(f"({finding.status})", indent=2)
    if not check.findings and check.bands:
        page.line()
        page.line("Everything that has a band lies inside it.")
    for band in check.bands:
        _show_band(page, band)
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


def _total(total_g: float | Interval | None) -> str:
    return "total not known" if total_g is None else f"{amount(total_g)} g in all"


def _show_band(page: Page, band: "CheckBand") -> None:
    unit = "" if band.unit == "ratio" else f" {band.unit}"
    value = f"{amount(band.value, 3 if band.unit == 'ratio' else 1)}{unit}"
    usual = f"usual {span(band.low, band.high)}{unit}"
    if page.is_wide:
        label = f"{band.label:<18.18}"
        page.whole(f"{label} {value:>14}  {_strip(band, _STRIP)}  {usual}".rstrip())
        return
    page.line(f"{band.label}: {value}")
    page.line(usual, indent=2)
    page.whole(_strip(band, min(_STRIP_NARROW, page.width - 2)).rstrip(), indent=2)


def _strip(band: "CheckBand", width: int) -> str:
    best = band.value.best if isinstance(band.value, Interval) else band.value
    return " " * width if best is None else strip(best, band.low, band.high, width)
