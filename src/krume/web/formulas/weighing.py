"""Which weighing matters, as a table: what a usual slip of each line does, and one step."""

from dataclasses import dataclass

from krume.usecases import CheckLine, CheckResult
from krume.web.frame.figures import amount

_FROM = {
    "step": "a step of the scale",
    "share": "a share of the line",
    "spread": "its mass is not settled",
    "eggs": "eggs by count",
}
_MARKS = {"twice": "twice", "weigh": "weigh them"}

Marks = dict[tuple[int, str], str]
"""Words of what to do, by line and name."""


@dataclass(frozen=True, slots=True)
class WeighRow:
    """One line: how far off is usual, what that does to which figure, what one step does.

    `mark` is what to do about it: weigh twice, or weigh and not count; empty is nothing.
    """

    name: str
    slip: str
    slip_from: str
    does: str
    step: str
    share: str
    figure: str
    mark: str


@dataclass(frozen=True, slots=True)
class WeighTable:
    """All lines that move a figure, those that move none, and how the shares were drawn."""

    rows: tuple[WeighRow, ...]
    still: tuple[str, ...]
    drawn: str


def weigh_table(check: CheckResult) -> WeighTable | None:
    """The table of a balance that was asked with its lines; None where it was not."""
    if check.lines is None:
        return None
    labels = {band.key: band.label.lower() for band in check.bands}
    marks = {(each.line, each.name): _MARKS[each.mark] for each in check.weigh_twice}
    moving = [line for line in check.lines if line.figure is not None]
    return WeighTable(
        rows=tuple(_row(line, labels, marks) for line in moving),
        still=tuple(line.name for line in check.lines if line.figure is None),
        drawn=_drawn(check),
    )


def _row(line: CheckLine, labels: dict[str, str], marks: Marks) -> WeighRow:
    share = "" if line.total_share is None else f"{_least(100 * line.total_share, 0)} %"
    return WeighRow(
        name=f"{line.name}, {line.part}" if line.part else line.name,
        slip=amount(line.slip_g, 2),
        slip_from=_FROM.get(line.slip_from, line.slip_from),
        does=_least(line.slip_effect, 2),
        step="no step" if line.step_g is None else _least(line.step_effect, 2),
        share=share,
        figure=labels.get(line.figure or "", line.figure or ""),
        mark=marks.get((line.line, line.name), ""),
    )


def _least(value: float, digits: int) -> str:
    """A number with its digits; what would print as nothing is less than one of them."""
    least = 10.0**-digits
    return f"<{least:.{digits}f}" if 0 < value < least / 2 else f"{value:.{digits}f}"


def _drawn(check: CheckResult) -> str:
    ranking = check.ranking
    if ranking is None:
        return ""
    outside = [
        f"{each.label.lower()} {amount(each.outside_pct)} %"
        for each in ranking.figures
        if each.outside_pct > 0
    ]
    said = f"With every line off at once, {amount(float(ranking.runs), 0)} draws"
    return f"{said}: outside its band {', '.join(outside)}." if outside else f"{said}: all inside."
