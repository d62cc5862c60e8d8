"""Strict reading of packed tables: what does not fit its column stops the load."""

import csv
import hashlib
import io
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from importlib.resources.abc import Traversable

from krume.base import DataError, InputError
from krume.evidence.columns import Cell, Column, cell_reader, column, optional

_SOURCE_COLUMNS = (
    column("key", "key"),
    column("title"),
    column("publisher"),
    column("year"),
    column("licence"),
    optional("attribution"),
    optional("url"),
    optional("note"),
)


@dataclass(frozen=True, slots=True)
class Row:
    """One row of a packed table; `number` counts from 2, the line after the header."""

    file: str
    number: int
    cells: dict[str, Cell]

    def text(self, name: str) -> str:
        """Text of a cell; a blank is the empty text."""
        value = self.cells[name]
        return value if isinstance(value, str) else ""

    def number_of(self, name: str) -> float:
        """Number that must be there."""
        value = self.maybe(name)
        if value is None:
            raise _broken(self.file, self.number, name, "", "a number")
        return value

    def maybe(self, name: str) -> float | None:
        """Number of a cell, or None where it is blank; a printed number is converted."""
        value = self.cells[name]
        if isinstance(value, str):
            return float(value) if value else None
        return None if isinstance(value, bool) else value

    def flag(self, name: str) -> bool:
        """Whether a flag cell says yes."""
        return self.cells[name] is True


def read_table(
    text: str,
    *,
    file: str,
    columns: tuple[Column, ...],
    unique: tuple[str, ...] = ("key",),
    known_sources: frozenset[str] = frozenset(),
) -> tuple[Row, ...]:
    """Read the text of a table against its declared columns.

    The header must hold exactly the declared columns; `unique` names the columns that together
    may not repeat. The first thing that does not fit raises DataError with file, row, column,
    what was wanted and what was there.
    """
    lines = csv.reader(io.StringIO(text), strict=True)
    header = next(lines, [])
    _check_header(file, header, columns)
    declared = {c.name: c for c in columns}
    ordered = [declared[name] for name in header]
    rows = tuple(_rows(file, lines, ordered, known_sources))
    _check_unique(file, rows, unique)
    return rows


def _check_header(file: str, header: list[str], columns: tuple[Column, ...]) -> None:
    names = [c.name for c in columns]
    for name in header:
        if name not in names or header.count(name) > 1:
            raise _broken(file, 1, name, name, "the columns " + ", ".join(names))
    for name in names:
        if name not in header:
            raise _broken(file, 1, name, ", ".join(header), f"a column {name}")


def _rows(
    file: str, lines: Iterator[list[str]], columns: list[Column], known: frozenset[str]
) -> Iterator[Row]:
    readers = [(c.name, cell_reader(c, known)) for c in columns]
    for number, cells in enumerate(lines, start=2):
        if len(cells) != len(columns):
            want = f"{len(columns)} cells"
            raise _broken(file, number, columns[0].name, f"{len(cells)} cells", want)
        try:
            row = {name: read(text) for (name, read), text in zip(readers, cells, strict=True)}
        except InputError as error:
            raise _broken(file, number, error.field, error.got, error.want) from error
        yield Row(file, number, row)


def _check_unique(file: str, rows: tuple[Row, ...], unique: tuple[str, ...]) -> None:
    seen: dict[tuple[Cell, ...], int] = {}
    for row in rows:
        key = tuple(row.cells[name] for name in unique)
        if unique and key in seen:
            got = ", ".join(str(part) for part in key)
            want = f"a {' and '.join(unique)} that row {seen[key]} does not have already"
            raise _broken(file, row.number, unique[0], got, want)
        seen[key] = row.number


def _broken(file: str, row: int, name: str, got: str, want: str) -> DataError:
    where = f"{file}, row {row}, column {name}"
    shown = f"'{got}'" if got else "nothing"
    message = f"{where}: found {shown}, want {want}. Correct the cell and start again."
    return DataError(message, field=name, got=got, want=want, where=where)


def _packed() -> Traversable:
    return files("krume").joinpath("data")


@cache
def packed_text(file: str) -> str:
    """Text of a packed file of the data folder."""
    return _packed().joinpath(file).read_text(encoding="utf-8")


@cache
def load(
    file: str, columns: tuple[Column, ...], unique: tuple[str, ...] = ("key",)
) -> tuple[Row, ...]:
    """Rows of a packed table, read once and checked against its columns and `sources.csv`."""
    known = frozenset(row.text("key") for row in source_rows())
    return read_table(
        packed_text(file), file=file, columns=columns, unique=unique, known_sources=known
    )


@cache
def source_rows() -> tuple[Row, ...]:
    """Rows of `sources.csv`."""
    text = packed_text("sources.csv")
    return read_table(text, file="sources.csv", columns=_SOURCE_COLUMNS)


@cache
def packed_files() -> tuple[str, ...]:
    """Names of the packed tables, in order."""
    return tuple(sorted(f.name for f in _packed().iterdir() if f.name.endswith(".csv")))


@cache
def data_version() -> str:
    """Short digest over all packed tables: it changes when any cell does."""
    digest = hashlib.sha256()
    for file in packed_files():
        digest.update(f"{file}\0{packed_text(file)}\0".encode())
    return digest.hexdigest()[:12]
