"""The pantry as a page shows it: lots with the state of their records, the room, and its tables."""

from dataclasses import dataclass
from datetime import date
from functools import cache

from krume.base import Problem
from krume.pantry import Lot, evidence_kinds, record_state
from krume.properties import constants
from krume.store import Book, book_at, database_of, is_book, studio_of, table_text
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.remembering import Remembered, day_key
from krume.usecases.book.rows import RowNow, TableNow, table_now
from krume.usecases.pantry.stops import Stops, stops_of
from krume.usecases.sold.gluten_words import RECORD_STATES
from krume.usecases.sold.papers import papers_of
from krume.usecases.tables.questions import questions_by_line, questions_of_table

LOTS, CLEANING = "lots.csv", "cleaning.csv"


@dataclass(frozen=True, slots=True)
class LotRow:
    """One lot: its row, how its record stands today, what is asked, and whether it ends soon.

    `days_left` is None where its last day is not known or the state is not good.
    """

    row: RowNow
    state: str
    word: str
    days_left: int | None
    ends_soon: bool
    questions: tuple[Problem, ...]

    def said(self, name: str) -> str:
        """A cell, or the word for not known."""
        return self.row.get(name) or "not known"


@dataclass(frozen=True, slots=True)
class RoomNow:
    """The room today: cleaned (yes or no) or None, with the row that says so."""

    today: date
    is_cleaned: bool | None
    row: RowNow | None


@dataclass(frozen=True, slots=True)
class PantryNow:
    """Everything the first page of the pantry shows."""

    today: date
    has_book: bool
    can_edit: bool
    stops: Stops
    ending: tuple[LotRow, ...]
    lots: tuple[LotRow, ...]
    room: RoomNow
    questions: tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class AskedTable:
    """A table with what is asked about its rows, by their line, and about the whole of it."""

    table: TableNow
    by_line: dict[int, tuple[Problem, ...]]
    whole: tuple[Problem, ...]
    can_edit: bool


_PANTRIES: Remembered[PantryNow] = Remembered(4)


def pantry_now(asked: Asked) -> PantryNow:
    """The pantry on the book's day: what stops an order first, then every lot."""
    book = book_at(asked.book)
    return _PANTRIES.of(book, day_key(book, asked), lambda: _pantry(asked))


def _pantry(asked: Asked) -> PantryNow:
    book, papers = book_at(asked.book), papers_of(asked)
    table = table_now(LOTS, asked)
    by_line, whole = questions_by_line(table, papers.lot_problems)
    market = studio_of(book).market or "eu"
    by_number = {number: lot for lot in papers.lots for number in lot.lines}
    lots = tuple(
        _lot(row, by_number.get(row.line), papers.today, market, by_line.get(row.line, ()))
        for row in table.rows
    )
    lots = tuple(sorted(lots, key=lambda each: each.row.get("ingredient").casefold()))
    return PantryNow(
        today=papers.today,
        has_book=is_book(book),
        can_edit=can_edit(book),
        stops=stops_of(asked),
        ending=tuple(each for each in lots if each.ends_soon),
        lots=lots,
        room=room_now(asked),
        questions=(*whole, *papers.other_problems),
    )


def can_edit(book: Book) -> bool:
    """Whether rows of a book can be edited: it is a database, no folder of plain texts."""
    return database_of(book) is not None


def _lot(
    row: RowNow, lot: Lot | None, today: date, market: str, questions: tuple[Problem, ...]
) -> LotRow:
    """A lot on a day; one whose row cannot be read has no record."""
    state = "missing" if lot is None else record_state(lot, on=today, market=market)
    paper = None if lot is None else next((r for r in lot.records if r.line == row.line), None)
    last = None if paper is None or state != "good" else paper.valid_to
    left = None if last is None else (last - today).days
    soon = constants("pantry_page.csv")["record-ends-soon"]
    is_soon = left is not None and left <= soon
    return LotRow(row, state, RECORD_STATES[state], left, is_soon, questions)


def room_now(asked: Asked) -> RoomNow:
    """The room's cleaning record of the book's day; a no stands before a yes."""
    papers = papers_of(asked)
    mine = [record for record in papers.cleaning if record.day == papers.today]
    lines = {row.line: row for row in table_now(CLEANING, asked).rows}
    if not mine:
        return RoomNow(papers.today, None, None)
    worst = min(mine, key=lambda record: record.is_cleaned)
    return RoomNow(papers.today, worst.is_cleaned, lines.get(worst.line))


def asked_table(place: str, asked: Asked) -> AskedTable:
    """A table of the book with all its questions."""
    book, table = book_at(asked.book), table_now(place, asked)
    problems = questions_of_table(place, table_text(book, place), asked)
    by_line, whole = questions_by_line(table, problems)
    return AskedTable(table, by_line, whole, can_edit(book))


@cache
def evidence_words() -> tuple[str, ...]:
    """One word for each kind of evidence, as a table of lots has them.

    >>> evidence_words()[0]
    'lab test'
    """
    return tuple(kind.name for kind in evidence_kinds().values())
