"""What is asked about the rows of a book's tables, each question with the line it stands at."""

import csv
import io
import math
from collections.abc import Callable, Mapping, Sequence

from krume.base import Problem
from krume.pantry import read_cleaning, read_lots, read_prices, read_room
from krume.size import read_tin
from krume.store import book_at, studio_of
from krume.usecases.asking.answer import Asked
from krume.usecases.book.rows import TableNow, table_now
from krume.usecases.own_oven.questions import OVEN_TABLES, oven_questions

_MOST_G = 1e9
_UNSAID = frozenset({"lot-date-missing"})


def questions_of_table(place: str, text: str, asked: Asked) -> tuple[Problem, ...]:
    """All questions about a table's text; a table that is not there asks nothing."""
    if not text.strip():
        return ()
    if place == "prices.csv":
        return read_prices(text, eggs_region=studio_of(book_at(asked.book)).eggs_region).problems
    if place in OVEN_TABLES:
        return oven_questions(place, _numbered(text), asked)
    return _ASKS[place](text)


def row_questions(
    place: str, cells: Mapping[str, str], asked: Asked, *, key: int | None, head: Sequence[str]
) -> tuple[Problem, ...]:
    """Questions about one row as it would be kept, among the rows there are.

    What is only not said yet is no question here: the row is kept, and asked about afterwards.
    """
    table = table_now(place, asked)
    names = (*table.head, *(name for name in head if name not in table.head))
    there = [row.cells for row in table.rows if row.key != key]
    own = next((row.cells for row in table.rows if key is not None and row.key == key), {})
    text = _as_text(names, [*there, {**own, **cells}])
    last = f"{place} line {text.count(chr(10))}"
    found = questions_of_table(place, text, asked)
    return tuple(p for p in found if p.where == last and p.code not in _UNSAID)


def _as_text(head: Sequence[str], rows: Sequence[Mapping[str, str]]) -> str:
    """Rows as a table with one line each."""
    out = io.StringIO()
    lines = csv.writer(out, lineterminator="\n")
    lines.writerow(head)
    lines.writerows([[" ".join(row.get(name, "").split()) for name in head] for row in rows])
    return out.getvalue()


def questions_by_line(
    table: TableNow, problems: Sequence[Problem]
) -> tuple[dict[int, tuple[Problem, ...]], tuple[Problem, ...]]:
    """Questions by the line of their row, and those of the table as a whole."""
    lines = {f"{table.place} line {row.line}": row.line for row in table.rows if row.line}
    by_line: dict[int, tuple[Problem, ...]] = {}
    for problem in problems:
        if problem.where in lines:
            line = lines[problem.where]
            by_line[line] = (*by_line.get(line, ()), problem)
    return by_line, tuple(p for p in problems if p.where not in lines)


def _pack_questions(text: str) -> tuple[Problem, ...]:
    found = []
    for number, row in _numbered(text):
        where, read = f"packs.csv line {number}", ",".join(row.values())
        if not row.get("item"):
            ask = "What is bought so? Type its name as your formulas have it."
            found.append(Problem("pack-item-missing", where, read, ask))
        for name, what in (("pack_g", "a pack holds"), ("stock_g", "is in the house")):
            cell = row.get(name, "")
            if cell and not _is_mass(cell):
                ask = f"'{cell}' is no mass. How much {what}? Type grams, such as 1000."
                found.append(Problem(f"pack-{name.partition('_')[0]}-unread", where, read, ask))
    return tuple(found)


def _tin_questions(text: str) -> tuple[Problem, ...]:
    found: list[Problem] = []
    for number, row in _numbered(text):
        where = f"tins.csv line {number}"
        found += read_tin(row.get("tin", ""), where=where).problems
        count = row.get("count", "")
        if not (count.isascii() and count.isdigit() and int(count)):
            ask = f"'{count}' is no count. How many of this tin are there? Type 1, 2, 3."
            found.append(Problem("tin-count-unread", where, ",".join(row.values()), ask))
    return tuple(found)


def _is_mass(cell: str) -> bool:
    try:
        value = float(cell)
    except ValueError:
        return False
    return math.isfinite(value) and 0 <= value < _MOST_G


def _numbered(text: str) -> list[tuple[int, dict[str, str]]]:
    rows = csv.reader(io.StringIO(text.lstrip("\ufeff"), newline=None))
    lines = [(rows.line_num, [cell.strip() for cell in cells]) for cells in rows]
    head = [name.casefold() for name in lines[0][1]] if lines else []
    return [
        (number, dict(zip(head, cells, strict=False))) for number, cells in lines[1:] if any(cells)
    ]


_ASKS: dict[str, Callable[[str], tuple[Problem, ...]]] = {
    "lots.csv": lambda text: read_lots(text).problems,
    "cleaning.csv": lambda text: read_cleaning(text).problems,
    "room.csv": lambda text: read_room(text).problems,
    "packs.csv": _pack_questions,
    "tins.csv": _tin_questions,
}
