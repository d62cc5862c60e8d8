"""The book's papers: lots, the room's cleaning records, suppliers' sheets."""

from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from krume.base import Notice, Problem
from krume.pantry import (
    CleaningRecord,
    Ingredient,
    Lot,
    find,
    read_cleaning,
    read_lots,
    read_supplier_sheet,
)
from krume.store import book_at, is_file, is_folder, studio_of, table_text
from krume.usecases.answer import Asked
from krume.usecases.clock import now

_LOTS = "lots.csv"
_CLEANING = "cleaning.csv"
_SUPPLIERS = "suppliers"


@dataclass(frozen=True, slots=True)
class Papers:
    """All papers of a book; `sheets` are suppliers' sheets by the pantry's key of the goods.

    `today` is the day they are read on. `lot_problems` are those of the table of lots, by the
    line they stand in.
    """

    lots: tuple[Lot, ...]
    cleaning: tuple[CleaningRecord, ...]
    sheets: dict[str, Ingredient]
    today: date
    lot_problems: tuple[Problem, ...] = ()
    other_problems: tuple[Problem, ...] = ()

    def problems_of(self, keys: frozenset[str]) -> tuple[Problem, ...]:
        """Problems of these lots, of the tables as a whole, and of the other papers."""
        lines = {f"{_LOTS} line {lot.line}" for lot in self.lots if lot.key in keys}
        heads = {f"{_LOTS} line 1"}
        mine = (p for p in self.lot_problems if p.where in lines | heads)
        return (*mine, *self.other_problems)

    def notices_beside(self, keys: frozenset[str]) -> tuple[Notice, ...]:
        """The other problems of the lots, told but not asked here."""
        told = set(self.problems_of(keys))
        return tuple(
            Notice("other-lot", f"{p.read}: {p.ask}", p.where)
            for p in self.lot_problems
            if p not in told
        )


def papers_of(asked: Asked) -> Papers:
    """Papers of the book of a request; what is not there is empty and closes what needs it."""
    book = book_at(asked.book)
    path = book.path
    lots = read_lots(table_text(path / _LOTS))
    cleaning = read_cleaning(table_text(path / _CLEANING))
    sheets, asked_of_sheets = _sheets(path / _SUPPLIERS)
    return Papers(
        lots.value,
        cleaning.value,
        sheets,
        now(studio_of(book), on=asked.on).date(),
        lots.problems if is_file(path / _LOTS) else (),
        (*(cleaning.problems if is_file(path / _CLEANING) else ()), *asked_of_sheets),
    )


def _sheets(folder: Path) -> tuple[dict[str, Ingredient], tuple[Problem, ...]]:
    """Suppliers' sheets of a book, by the key of what their name means."""
    found: dict[str, Ingredient] = {}
    problems: list[Problem] = []
    paths = sorted(folder.glob("*.txt")) if is_folder(folder) else []
    for path in paths:
        read = read_supplier_sheet(table_text(path))
        problems += [replace(p, where=f"{_SUPPLIERS}/{path.name} {p.where}") for p in read.problems]
        if read.value is not None and not read.problems:
            key = find(read.value.name).key
            found[key or read.value.key] = read.value
    return found, tuple(problems)
