"""What is weighed at the bench: the rows in the order of work, and what a slip needs of them."""

from dataclasses import dataclass

from krume.base import InputError
from krume.design import BOWLS, Formula, Line, slip_figure, weigh_out
from krume.design import Row as WeighRow
from krume.store import book_at, kept_versions
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.read import read_text
from krume.usecases.asking.remembering import Remembered
from krume.usecases.asking.text import Text
from krume.usecases.book.texts import text_now
from krume.usecases.formula.size import scale_step_g


@dataclass(frozen=True, slots=True)
class BenchRow:
    """One row as planned; `group` is the position of the tare it is weighed from.

    `add_g` is None where no mass is known. Past `add_g` by more than `tolerance_g` it is a slip.
    """

    position: int
    kind: str
    bowl: str
    label: str
    take: str
    name: str
    group: int
    line: int | None
    add_g: float | None
    step_g: float
    tolerance_g: float
    mark: str


BenchRows = tuple[BenchRow, ...]
"""All rows of a weighing."""


@dataclass(frozen=True, slots=True)
class BenchPlan:
    """A formula's version as it is weighed; `asks` is what is still open in its text."""

    name: str
    title: str
    revision: int
    formula: Formula
    rows: tuple[BenchRow, ...]
    step_g: float
    asks: tuple[str, ...] = ()


_READ: Remembered[tuple[Formula, BenchRows, tuple[str, ...]]] = Remembered(64)


def plan_of(name: str, asked: Asked, *, revision: int | None = None) -> BenchPlan:
    """The rows of a formula of the book, of its version now or of an older one."""
    now = text_now("formula", name, asked)
    if now.revision is None:
        raise InputError(
            f"{name} is a plain file, and a plain file keeps no weighings. "
            "`krume book import` takes the folder into a book.",
            field="name",
            got=name,
        )
    text, title, seen = now.text, now.title, now.revision
    if revision is not None and revision != seen:
        text, title, seen = _old(now.name, revision, asked)
    step = scale_step_g(asked)
    key = (text, now.name, asked.answers, asked.on, step)
    formula, rows, asks = _READ.of(
        book_at(asked.book), key, lambda: _read(text, now.name, asked, step)
    )
    return BenchPlan(now.name, title, seen, formula, rows, step, asks)


def _old(name: str, revision: int, asked: Asked) -> tuple[str, str, int]:
    versions = kept_versions(book_at(asked.book), f"formulas/{name}.txt")
    for each in versions:
        if each.revision == revision:
            return each.body.decode("utf-8-sig", errors="replace"), each.title, revision
    raise InputError(f"{name} has no version {revision}.", field="name", got=str(revision))


def _read(
    text: str, name: str, asked: Asked, step_g: float
) -> tuple[Formula, BenchRows, tuple[str, ...]]:
    """A text as it is weighed: its formula, its rows, and what is asked of it."""
    found = read_text(Text(text, name), asked)
    asks = tuple(dict.fromkeys(problem.ask for problem in found.problems))
    return found.formula, rows_of(found.formula, step_g), asks


def rows_of(formula: Formula, step_g: float) -> tuple[BenchRow, ...]:
    """The weighing order as rows of the bench."""
    rows, group = [], 0
    for position, row in enumerate(weigh_out(formula, scale_g=step_g).rows):
        group = position if row.kind == "tare" else group
        line = None if row.line is None else formula.lines[row.line]
        rows.append(_row(position, group, row, line))
    return tuple(rows)


def _row(position: int, group: int, row: WeighRow, line: Line | None) -> BenchRow:
    is_egg = row.kind == "egg"
    off = (row.add_g or 0.0) * slip_figure("egg-off") if is_egg else 0.0
    label = BOWLS[row.bowl]
    return BenchRow(
        position=position,
        kind=row.kind,
        bowl=row.bowl,
        label=f"{label[:1].lower()}{label[1:]}",
        take=row.take,
        name="" if line is None else line.name,
        group=group,
        line=row.line,
        add_g=row.add_g,
        step_g=row.step_g,
        tolerance_g=max(off, row.step_g * slip_figure("slip-from")),
        mark=row.mark,
    )
