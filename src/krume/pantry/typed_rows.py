"""Rows of a table that a person typed: every row is kept, and what is wrong in it is asked."""

import csv
import io
import re
import unicodedata
from collections.abc import Iterator
from datetime import date

from krume.base import Problem


def typed_rows(
    text: str, file: str, wanted: tuple[str, ...], problems: list[Problem]
) -> Iterator[tuple[int, dict[str, str]]]:
    """Rows by column; a column that is missing is asked once and is empty in every row."""
    try:
        rows = _numbered(text)
    except csv.Error as error:
        ask = f"{file} is no table ({error}). Save it as CSV in UTF-8, or put a copy back."
        problems.append(Problem("table-unread", f"{file} line 1", "", ask))
        return
    head = [name.strip().casefold() for name in rows.pop(0)[1]] if rows else []
    for name in wanted:
        if name not in head:
            ask = f"{file} has no column {name}. Its first line wants: {','.join(wanted)}"
            problems.append(Problem("column-missing", f"{file} line 1", ",".join(head), ask))
    for number, cells in rows:
        if not any(cell.strip() for cell in cells):
            continue
        if len(cells) > len(head):
            ask = f"This row has {len(cells)} cells and the first line {len(head)}. Quote commas."
            where = f"{file} line {number}"
            problems.append(Problem("row-too-long", where, ",".join(cells), ask))
        found = dict(zip(head, (cell.strip() for cell in cells), strict=False))
        yield number, {name: found.get(name, "") for name in {*wanted, *head}}


def _numbered(text: str) -> list[tuple[int, list[str]]]:
    lines = csv.reader(io.StringIO(text.lstrip("\ufeff"), newline=None))
    return [(lines.line_num, cells) for cells in lines]


def row_is_cut(where: str, problems: list[Problem]) -> bool:
    """Whether a row has more cells than its table, so that what stands in them is not known."""
    return any(p.code == "row-too-long" and p.where == where for p in problems)


def typed_day(text: str) -> date | None:
    """A day as year-month-day; None for anything else.

    >>> typed_day("2027-06-12"), typed_day("12/06/2027")
    (datetime.date(2027, 6, 12), None)
    """
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None


def plain_word(text: str) -> str:
    """Small letters and single blanks, so that a word is known however it was typed.

    Signs that are not seen (a soft hyphen, a blank of no width) are no part of a word.
    """
    return " ".join((text if text.isascii() else _seen(text)).casefold().split())


def _seen(text: str) -> str:
    return "".join(
        sign for sign in unicodedata.normalize("NFC", text) if unicodedata.category(sign) != "Cf"
    )


_BRACKET = {"(": 1, "[": 1, ")": -1, "]": -1}


def split_outside(words: str, between: re.Pattern[str]) -> list[str]:
    """Pieces of words at a pattern, wherever no bracket is open.

    >>> split_outside("sugar,chocolate (sugar,cocoa)", re.compile(","))
    ['sugar', 'chocolate (sugar,cocoa)']
    """
    pieces, begin = [], 0
    for match in between.finditer(words):
        if _depth(words[: match.start()]) == 0:
            pieces.append(words[begin : match.start()])
            begin = match.end()
    return [*pieces, words[begin:]]


def _depth(words: str) -> int:
    """How many brackets are open at the end of words."""
    return max(0, sum(_BRACKET.get(sign, 0) for sign in words))
