"""A whole table sent as a file: what it would change is shown first, then it is kept."""

import csv
import io
from collections.abc import Sequence
from dataclasses import dataclass

from krume.base import InputError
from krume.store import book_at, own_table, put_table, table_text
from krume.usecases.asking.answer import Asked
from krume.usecases.book.rows import table_now
from krume.usecases.book.texts import LineChange, differences

ROWS_LIMIT = 5_000
"""Rows a table may have; a studio's is a hundredth of it."""

_SIGNS = {
    "PK": "a spreadsheet or an archive",
    "%PDF": "a PDF",
    "\x89PNG": "a picture",
    "\ufffdPNG": "a picture",
    "{": "JSON",
    "<": "a web page",
}


@dataclass(frozen=True, slots=True)
class TableChange:
    """What a sent table would change: only the rows that differ, line against line.

    `text` is the table as it was sent, in one shape; `seen` the version it is held against.
    """

    place: str
    text: str
    seen: str
    changes: tuple[LineChange, ...]
    rows: int

    def count(self, kind: str) -> int:
        """How many rows come in, go out or change."""
        return sum(change.kind == kind for change in self.changes)


def table_change(place: str, sent: str, asked: Asked, *, required: Sequence[str]) -> TableChange:
    """Hold a sent table against the one in the book; what is no table is refused."""
    text, rows = _as_table(sent, required)
    now = table_text(book_at(asked.book), place)
    own = own_table(text.encode(), place).decode()
    lines = (line for line in differences(now, own) if line.kind != "same")
    return TableChange(place, text, table_now(place, asked).seen, tuple(lines), rows)


def keep_table(place: str, sent: str, asked: Asked, *, seen: str, required: Sequence[str]) -> None:
    """Keep a sent table; the rows it replaces stay in the history. Sent twice it is kept once."""
    text, _ = _as_table(sent, required)
    put_table(book_at(asked.book), place, own_table(text.encode(), place), seen=seen)


def _as_table(sent: str, required: Sequence[str]) -> tuple[str, int]:
    """The table as it is kept: commas between the cells, names of columns in small letters."""
    _refuse_foreign(sent)
    lines = _lines(sent)
    head = [name.strip().casefold() for name in lines[0]]
    missing = [name for name in required if name not in head]
    if missing:
        raise _refused(
            f"Its first line has no column {' and no column '.join(missing)}. It wants at least: "
            f"{','.join(required)}"
        )
    if len(lines) - 1 > ROWS_LIMIT:
        raise _refused(f"It has {len(lines) - 1} rows; {ROWS_LIMIT} are the most.")
    long = next((n for n, cells in enumerate(lines, 1) if len(cells) > len(head)), None)
    if long is not None:
        raise _refused(f"Row {long} has more cells than the first line. A comma needs quotes.")
    out = io.StringIO()
    csv.writer(out, lineterminator="\n").writerows(
        [" ".join(cell.split()) for cell in (*cells, *[""] * (len(head) - len(cells)))]
        for cells in [head, *lines[1:]]
    )
    return out.getvalue(), len(lines) - 1


def _lines(sent: str) -> list[list[str]]:
    first = next((line for line in sent.splitlines() if line.strip()), "")
    mark = next((mark for mark in (",", ";", "\t") if mark in first), ",")
    text = io.StringIO(sent.lstrip("\ufeff"), newline=None)
    try:
        lines = list(csv.reader(text, delimiter=mark, strict=True))
    except csv.Error as error:
        raise _refused(f"It is no table ({error}).") from error
    filled = [cells for cells in lines if any(cell.strip() for cell in cells)]
    if not filled:
        raise _refused("There is nothing in it.")
    return filled


def _refuse_foreign(sent: str) -> None:
    """A file that only calls itself a table: its first signs, or bytes that are no text."""
    start = sent.lstrip()
    kind = next((what for sign, what in _SIGNS.items() if start.startswith(sign)), "")
    if kind or any(sign in sent for sign in "\ufffd\0"):
        raise _refused(f"That file is {kind or 'no plain text'}, whatever its name says.")


def _refused(why: str) -> InputError:
    message = f"{why} Save the table as CSV in UTF-8 and send that. Nothing was changed."
    return InputError(message, field="file", want="a table in UTF-8")
