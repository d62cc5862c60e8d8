"""The book's papers: lots, the room's cleaning records and its list, suppliers' sheets."""

from dataclasses import dataclass, replace
from datetime import date

from krume.base import Notice, Problem
from krume.pantry import (
    CleaningRecord,
    Ingredient,
    Lot,
    RoomRecord,
    find,
    read_cleaning,
    read_lots,
    read_room,
    read_supplier_sheet,
)
from krume.store import Book, book_at, places_in, studio_of, table_text
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.clock import today
from krume.usecases.asking.remembering import Remembered

_LOTS = "lots.csv"
_CLEANING = "cleaning.csv"
_ROOM = "room.csv"
_SUPPLIERS = "suppliers"


@dataclass(frozen=True, slots=True)
class Papers:
    """All papers of a book; `sheets` are suppliers' sheets by the pantry's key of the goods.

    `today` is the day they are read on, `market` the book's own. `lot_problems` are those of the
    table of lots, by the line they stand in.
    """

    lots: tuple[Lot, ...]
    cleaning: tuple[CleaningRecord, ...]
    sheets: dict[str, Ingredient]
    today: date
    lot_problems: tuple[Problem, ...] = ()
    other_problems: tuple[Problem, ...] = ()
    market: str = "eu"
    room: tuple[RoomRecord, ...] = ()

    def problems_of(self, keys: frozenset[str]) -> tuple[Problem, ...]:
        """Problems of these lots, of the tables as a whole, and of the other papers."""
        mine = (lot for lot in self.lots if lot.key in keys)
        lines = {f"{_LOTS} line {number}" for lot in mine for number in lot.lines}
        heads = {f"{_LOTS} line 1"}
        asked = (p for p in self.lot_problems if p.where in lines | heads)
        return (*asked, *self.other_problems)

    def notices_beside(self, keys: frozenset[str]) -> tuple[Notice, ...]:
        """The other problems of the lots, told but not asked here."""
        told = set(self.problems_of(keys))
        return tuple(
            Notice("other-lot", f"{p.read}: {p.ask}", p.where)
            for p in self.lot_problems
            if p not in told
        )


_PAPERS: Remembered[Papers] = Remembered(16)


def papers_of(asked: Asked) -> Papers:
    """Papers of the book of a request; what is not there is empty and closes what needs it."""
    book = book_at(asked.book)
    return _PAPERS.of(book, asked.on, lambda: _papers(book, asked))


def _papers(book: Book, asked: Asked) -> Papers:
    tables = {name: table_text(book, name) for name in (_LOTS, _CLEANING, _ROOM)}
    lots, cleaning = read_lots(tables[_LOTS]), read_cleaning(tables[_CLEANING])
    room = read_room(tables[_ROOM])
    asked_of_room = (
        *(cleaning.problems if tables[_CLEANING] else ()),
        *(room.problems if tables[_ROOM] else ()),
    )
    sheets, asked_of_sheets = _sheets(book)
    return Papers(
        lots.value,
        cleaning.value,
        sheets,
        today(book, on=asked.on),
        lots.problems if tables[_LOTS] else (),
        (*asked_of_room, *asked_of_sheets),
        studio_of(book).market or "eu",
        room.value,
    )


def _sheets(book: Book) -> tuple[dict[str, Ingredient], tuple[Problem, ...]]:
    """Suppliers' sheets of a book, by the key of what their name means."""
    found: dict[str, Ingredient] = {}
    problems: list[Problem] = []
    for place in places_in(book, _SUPPLIERS):
        if not place.endswith(".txt"):
            continue
        read = read_supplier_sheet(table_text(book, place))
        problems += [replace(p, where=f"{place} {p.where}") for p in read.problems]
        if read.value is not None and not read.problems:
            key = find(read.value.name).key
            found[key or read.value.key] = read.value
    return found, tuple(problems)
