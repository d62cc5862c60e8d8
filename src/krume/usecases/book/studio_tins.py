"""The tins a studio begins with, typed one a line, beside those it has already."""

import re

from krume.base import InputError
from krume.size import read_tin
from krume.usecases.asking.answer import Asked
from krume.usecases.book.rows import add_row, table_now

_PLACE = "tins.csv"
_HEAD = ("count", "tin", "status")
_COUNT = re.compile(
    r"(?P<count>\d{1,3})\s*[x\N{MULTIPLICATION SIGN}]\s+(?=[^\W\d_])", re.IGNORECASE
)

Tins = tuple[tuple[int, str], ...]
"""How many of which tin."""


def tins_typed(text: str) -> Tins:
    r"""Tins of a text, one a line; raises InputError for a line that is none.

    >>> tins_typed("4 x round 20 x 7 cm\n\nsheet 13x9x1 in")
    ((4, 'round 20 x 7 cm'), (1, 'sheet 13x9x1 in'))
    """
    lines = (" ".join(line.split()) for line in text.splitlines())
    return tuple(_tin(line) for line in lines if line)


def _tin(line: str) -> tuple[int, str]:
    counted = _COUNT.match(line)
    count = 1 if counted is None else int(counted["count"])
    tin = line if counted is None else line[counted.end() :]
    found = read_tin(tin)
    if found.problems or found.value is None or not count:
        ask = found.problems[0].ask if found.problems else "It is no tin."
        message = f"“{line}”: {ask} Type one such as: round 20 x 7 cm"
        raise InputError(message, field="tins", got=line)
    return count, tin


def keep_tins(tins: Tins, asked: Asked) -> None:
    """Add the tins that the book has not; what is there stays as it is."""
    there = {_plain(row.cells.get("tin", "")) for row in table_now(_PLACE, asked).rows}
    for count, tin in tins:
        if _plain(tin) not in there:
            cells = {"count": str(count), "tin": tin, "status": "declared"}
            add_row(_PLACE, cells, asked, head=_HEAD)


def _plain(tin: str) -> str:
    return " ".join(tin.casefold().split())
