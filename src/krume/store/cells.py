"""Cells of tables that leave: none is a formula to a spreadsheet, and each comes back as it was.

A cell a spreadsheet would work out gets an apostrophe in front, which it takes as "this is text";
the same table taken in again loses it. A plain number such as -12 is left alone.
"""

import re

from krume.base import StoreError
from krume.store.sheets import as_csv, from_csv

_WORKED_OUT = re.compile(
    r"(?![-+]?\d+(?:[.,]\d+)?\Z)(?:[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20])", re.DOTALL
)
_MARK = "'"


def safe_cell(cell: str) -> str:
    """A cell as text, whatever it begins with.

    >>> safe_cell("=1+1"), safe_cell("-12"), safe_cell("teff flour")
    ("'=1+1", '-12', 'teff flour')
    """
    return f"{_MARK}{cell}" if _WORKED_OUT.match(cell.lstrip(_MARK)) else cell


def own_cell(cell: str) -> str:
    """The cell that `safe_cell` was given.

    >>> own_cell("'=1+1"), own_cell("'tis the season")
    ('=1+1', "'tis the season")
    """
    is_marked = cell.startswith(_MARK) and _WORKED_OUT.match(cell.lstrip(_MARK))
    return cell[1:] if is_marked else cell


def safe_table(data: bytes, place: str) -> bytes:
    """A table on its way out; one that holds nothing of the kind stays byte for byte."""
    head, rows = from_csv(data, place)
    if all(safe_cell(cell) == cell for cells in (head, *rows) for cell in cells):
        return data
    return as_csv([safe_cell(cell) for cell in head], [[*map(safe_cell, row)] for row in rows])


def own_table(data: bytes, place: str) -> bytes:
    """A table that comes in, as it was before it went out; what is no table stays as it is."""
    if _MARK.encode() not in data:
        return data
    try:
        head, rows = from_csv(data, place)
    except StoreError:
        return data
    if all(own_cell(cell) == cell for cells in (head, *rows) for cell in cells):
        return data
    return as_csv([own_cell(cell) for cell in head], [[*map(own_cell, row)] for row in rows])
