"""The rows of a price list as typed: each cell read strictly, each fault asked with its line."""

import csv
import io
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from krume.base import STATUSES, Money, Option, Problem, currency_named, read_money

FILE = "prices.csv"
"""The table's name, and the place where its questions stand: `prices.csv line 5`."""

REQUIRED = ("item", "price", "per")
COLUMNS = (*REQUIRED, "status", "currency", "date")
UNITS_OF_SALE = ("kg", "each", "kWh")
_SPELLED = {unit.casefold(): unit for unit in UNITS_OF_SALE}
_MARKS = {",": "comma", ";": "semicolon", "\t": "tab"}
_EXAMPLE_CELLS = {"item": "whipping cream, 35 % fat", "price": "5.60", "per": "kg"}
_EXAMPLE = "whole milk,1.20,kg,declared"
_MOST_LINES = 5000


@dataclass(frozen=True, slots=True)
class PriceRow:
    """One row whose cells are all good; `cells` are by column, `mark` stands between them."""

    line: int
    read: str
    cells: dict[str, str]
    money: Money
    day: date | None
    mark: str = ","

    @property
    def item(self) -> str:
        """The name that is priced."""
        return self.cells["item"]

    @property
    def amount(self) -> Decimal:
        """The price of one unit of sale."""
        return self.money.amount

    @property
    def per(self) -> str:
        """The unit of sale: kg, each or kWh."""
        return self.cells["per"]

    @property
    def status(self) -> str:
        """How the price is known; what a person typed is declared."""
        return self.cells.get("status") or "declared"

    @property
    def currency(self) -> str:
        """The currency beside the price or in its own column; empty where none is said."""
        return self.money.currency or currency_named(self.cells.get("currency", ""))

    @property
    def where(self) -> str:
        """Place of the row."""
        return f"{FILE} line {self.line}"

    def option(self, label: str, **changed: str) -> Option:
        """The row with some cells changed, as a line to type."""
        return Option(label, as_line({**self.cells, **changed}, self.mark))


@dataclass(frozen=True, slots=True)
class PriceRows:
    """The good rows with what is asked about the others."""

    rows: tuple[PriceRow, ...]
    lines: int
    columns: tuple[str, ...]
    problems: tuple[Problem, ...]
    mark: str = ","


def as_line(cells: dict[str, str], mark: str = ",") -> str:
    """Cells as one line of the list.

    >>> as_line({"item": "eggs, EU M", "price": "0.32"})
    '"eggs, EU M",0.32'
    """
    out = io.StringIO()
    csv.writer(out, delimiter=mark, lineterminator="").writerow(cells.values())
    return out.getvalue()


def price_rows(text: str) -> PriceRows:
    """Rows of a list; an empty text is a list without prices."""
    lines = text.removeprefix("\ufeff").splitlines()
    filled = [(number, line) for number, line in enumerate(lines, 1) if line.strip()]
    if not filled:
        return PriceRows((), 1, (*REQUIRED, "status"), ())
    if len(lines) > _MOST_LINES:
        ask = f"The list has {len(lines)} lines; at most {_MOST_LINES} are read."
        asked = Problem("prices-too-long", f"{FILE} line {_MOST_LINES}", "", ask)
        return PriceRows((), len(lines), (*REQUIRED, "status"), (asked,))
    mark = _mark(filled[0][1])
    columns = tuple(name.casefold() for name in _cells(filled[0][1], mark) or ())
    wrong = _head_problems(columns, *filled[0])
    if wrong:
        return PriceRows((), len(lines), (*REQUIRED, "status"), wrong)
    read = [_row(number, line, columns, mark) for number, line in filled[1:]]
    return PriceRows(
        rows=tuple(row for row in read if isinstance(row, PriceRow)),
        lines=len(lines),
        columns=columns,
        problems=tuple(row for row in read if isinstance(row, Problem)),
        mark=mark,
    )


def _mark(head: str) -> str:
    """What stands between the cells, by the first line: some spreadsheets write ; or a tab."""
    return next((mark for mark in (",", ";", "\t") if mark in head), ",")


def _cells(line: str, mark: str) -> list[str] | None:
    """Cells of one line, or None where its quotes do not close."""
    try:
        return [cell.strip() for cell in next(csv.reader([line], delimiter=mark, strict=True))]
    except csv.Error:
        return None


def _head_problems(columns: tuple[str, ...], number: int, line: str) -> tuple[Problem, ...]:
    known = set(columns) <= set(COLUMNS) and len(set(columns)) == len(columns)
    if known and set(REQUIRED) <= set(columns):
        return ()
    ask = (
        f"The first line names the columns: {', '.join(REQUIRED)}, and if you like "
        f"{', '.join(COLUMNS[len(REQUIRED) :])}; each once and no others."
    )
    options = (Option("The usual columns", "item,price,per,status"),)
    return (Problem("price-columns", f"{FILE} line {number}", line, ask, options),)


def _row(number: int, line: str, columns: tuple[str, ...], mark: str) -> PriceRow | Problem:
    cells = _cells(line, mark)
    where = f"{FILE} line {number}"
    if cells is None or len(cells) != len(columns):
        ask = (
            f"This line has not the {len(columns)} cells {', '.join(columns)}. A name with a "
            f"{_MARKS[mark]} stands in quotes. Type it such as: {as_line(_EXAMPLE_CELLS, mark)}"
        )
        return Problem("price-row-unread", where, line, ask)
    named = dict(zip(columns, cells, strict=True))
    money = read_money(named["price"])
    named["per"] = _SPELLED.get(named["per"].casefold(), named["per"])
    fault = next(_faults(named, where, line, mark), None)
    if fault is not None or money is None:
        return fault or _price_asked(named, where, line)
    return PriceRow(number, line, named, money, _day(named.get("date", "")), mark)


def _faults(named: dict[str, str], where: str, line: str, mark: str) -> Iterator[Problem]:
    if not named["item"]:
        ask = f"What is priced here? Type its name first, such as: {_EXAMPLE}"
        yield Problem("price-item-missing", where, line, ask)
    if read_money(named["price"]) is None:
        yield _price_asked(named, where, line)
    if named["per"] not in UNITS_OF_SALE:
        ask = f"Price per what? Type one of {', '.join(UNITS_OF_SALE)}."
        options = tuple(Option(u, as_line({**named, "per": u}, mark)) for u in UNITS_OF_SALE)
        yield Problem("price-unit", where, line, ask, options)
    if named.get("status", "") not in ("", *STATUSES):
        ask = f"How is this price known? Type one of {', '.join(STATUSES)}, or nothing."
        options = (Option("As you typed it", as_line({**named, "status": "declared"}, mark)),)
        yield Problem("price-status", where, line, ask, options)
    if named.get("date", "") and _day(named["date"]) is None:
        ask = "Of which day is this price? Type year, month and day, such as 2027-06-10."
        yield Problem("price-date", where, line, ask)


def _price_asked(named: dict[str, str], where: str, line: str) -> Problem:
    read = named["price"]
    if read.startswith("-"):
        why = f"A price below zero ({read}) cannot be added up."
    elif not read:
        why = f"{named['item']} has no price here."
    else:
        why = f"“{read}” is not read as one amount."
    ask = f"{why} Type one amount with at most four digits after the point, such as: {_EXAMPLE}"
    return Problem("price-unread", where, line, ask)


def _day(text: str) -> date | None:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None
