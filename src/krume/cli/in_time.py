"""What becomes of a torte, in words: how it stands, and what water moves in it."""

from typing import TYPE_CHECKING

from krume.base import Interval, as_text
from krume.cli.page import Page

if TYPE_CHECKING:
    from krume.usecases import BuildResult, MoisturePart, MoistureResult, StandingResult


def show_standing(page: Page, held: "StandingResult", *, whole: bool) -> None:
    """How it stands: its words, and with `whole` each cream with its numbers."""
    if not held.parts:
        return
    page.head("How it stands")
    for line in held.lines:
        page.line(line, indent=2)
    if not whole:
        page.line("Each cream with its numbers: --standing", indent=2)
        return
    for part in held.parts:
        page.line()
        page.line(part.text, indent=2)
    page.line()
    page.line(held.caution, indent=2)


def show_moisture(page: Page, moved: "MoistureResult") -> None:
    """What water moves: a row for each kind of layer, then what follows from it."""
    page.head("Water between the layers")
    if moved.why_not is not None:
        page.line(moved.lines[0], indent=2)
        return
    told = 1 + len(moved.parts)
    page.line(moved.lines[0], indent=2)
    if page.is_wide:
        page.rows([_HEAD, *(_row(part) for part in moved.parts)], right=(1, 2, 3))
    else:
        for line in moved.lines[1:told]:
            page.line(line, indent=2)
    page.line()
    for line in moved.lines[told:]:
        page.line(line, indent=2)
    page.line()
    page.line(moved.caution, indent=2)


_HEAD = ("", "1 day, g", "3 days, g", "water, %")


def _row(part: "MoisturePart") -> tuple[str, str, str, str]:
    share = f"{as_text(part.water_pct, 0)} → {as_text(part.end_pct, 0)}"
    return f"  {part.name}", _span(part.day_1_g), _span(part.day_3_g), share


def _span(grams: Interval) -> str:
    """Grams with their doubt, the smaller amount first.

    >>> _span(Interval(-111.0, -56.0, -24.0))
    '-56 (24 to 111)'
    """
    ends = sorted(abs(end) for end in (grams.low, grams.high))
    sign = "+" if grams.best >= 0.5 else ""
    return f"{sign}{as_text(grams.best, 0)} ({as_text(ends[0], 0)} to {as_text(ends[1], 0)})"


def show_in_time(page: Page, built: "BuildResult", *, standing: bool) -> None:
    """What becomes of a torte, as far as it was asked for."""
    if built.standing is not None:
        show_standing(page, built.standing, whole=standing)
    if built.moisture is not None:
        show_moisture(page, built.moisture)
