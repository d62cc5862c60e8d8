"""What somebody keeps between two pages: each moves something that a page may rest on."""

import re
from collections.abc import Callable
from pathlib import Path

from krume.store import KeptTrial, book_at, keep_row, keep_text, keep_trial, kept_rows, kept_text
from krume.usecases import Asked, BenchSaid, say_at_bench

Edit = Callable[[Path, int], object]
"""Keeps something in a book; the number is another each time, so that something changes."""


def _text(place: str, pattern: str, made: str) -> Edit:
    """An edit of a text: the first match becomes another each time."""

    def edit(book: Path, number: int) -> object:
        now = kept_text(book_at(book), place)
        if now is None:
            message = f"the book has no {place}"
            raise LookupError(message)
        changed = re.sub(pattern, made.format(20 + number % 9), now.body.decode(), count=1)
        # A text that stays the same is kept as another version all the same.
        return keep_text(book_at(book), place, changed.encode(), seen=now.revision)

    return edit


def _cell(place: str, column: str, made: str) -> Edit:
    """An edit of the last row of a table."""

    def edit(book: Path, number: int) -> object:
        head, rows = kept_rows(book_at(book), place)
        cells = list(rows[-1].cells)
        cells[head.index(column)] = made.format(30 + number % 9)
        row = rows[-1]
        return keep_row(book_at(book), place, cells, key=row.key, seen=row.revision)

    return edit


def _step(book: Path, number: int) -> object:
    said = BenchSaid(f"step {number}", "got", 2, 20.0 + number % 9)
    return say_at_bench("F2", "k", (said,), Asked(book=book))


def _trial(book: Path, number: int) -> object:
    kept = KeptTrial(
        key=f"trial {number}", place=f"formulas/N{number % 9}.txt", weighing=None, sg=0.48,
        core_c=95.0, centre_mm=49.0, edge_mm=48.0, minutes=35.0, baked_g=462.0, word="good",
        note="", at="2027-06-10",
    )  # fmt: skip
    return keep_trial(book_at(book), kept, seen=None)


_GRAMS = r"(?m)^\d+ g"
EDITS: dict[str, Edit] = {
    "another formula": _text("formulas/N0.txt", _GRAMS, "{} g"),
    "this formula": _text("formulas/F2.txt", _GRAMS, "{} g"),
    "a formula of the torte": _text("formulas/F1.txt", _GRAMS, "1{} g"),
    "an order": _text("orders/101.txt", r"For: \d+", "For: {}"),
    "a lot": _cell("lots.csv", "text", "lab test {}"),
    "a row of trials": _cell("trials.csv", "bake_min", "{}"),
    "the studio": _text("studio.toml", r'person = "[^"]*"', 'person = "Oda {}"'),
    "a weighing": _step,
    "a trial": _trial,
}
"""One of each kind of thing that is kept."""
