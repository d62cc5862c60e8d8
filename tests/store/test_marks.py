"""Each mark changes with every edit of the thing it is of, and with none of another."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from krume.store import (
    Book,
    KeptTrial,
    KeptWeighing,
    add_texts,
    begin_weighing,
    book_at,
    drop_row,
    drop_text,
    keep_row,
    keep_text,
    keep_trial,
    kept_rows,
    start_clock,
    stop_clock,
)
from krume.store.database import DATABASE, looked
from krume.store.marks import CLOCKS, SHEETS, TITLES, TRIALS, WHOLE, of_folder, of_sheet, of_text

_KINDS = {
    "whole": WHOLE,
    "titles": TITLES,
    "sheets": SHEETS,
    "trials": TRIALS,
    "clocks": CLOCKS,
    "F1": of_text("formulas/F1.txt"),
    "F2": of_text("formulas/F2.txt"),
    "formulas": of_folder("formulas"),
    "orders": of_folder("orders"),
    "lots": of_sheet("lots.csv"),
    "prices": of_sheet("prices.csv"),
}


def _trial(key: str) -> KeptTrial:
    return KeptTrial(
        key, "formulas/F1.txt", None, None, None, None, None, None, None, "good", "", "2027-06-10"
    )


def _edit_row(book: Book) -> object:
    row = kept_rows(book, "lots.csv")[1][0]
    return keep_row(book, "lots.csv", ("L-8",), key=row.key, seen=row.revision)


def _drop_row(book: Book) -> None:
    row = kept_rows(book, "lots.csv")[1][0]
    drop_row(book, row.key, seen=row.revision)


def _start(book: Book) -> None:
    start_clock(book, "c2", kind="oven", weighing="w0")


def _stop(book: Book) -> None:
    stop_clock(book, "c1")


_WEIGHING = KeptWeighing("w", "formulas/F1.txt", 1, "2027-06-10", 1.0, "open")
_EDITS: dict[str, tuple[Callable[[Book], object], set[str]]] = {
    "words of a text": (
        lambda book: keep_text(book, "formulas/F1.txt", b"F1\n\n1 g salt\n", seen=1),
        {"F1", "formulas"},
    ),
    "its first line": (
        lambda book: keep_text(book, "formulas/F1.txt", b"F1, new\n", seen=1),
        {"F1", "formulas", "titles"},
    ),
    "a text out": (
        lambda book: drop_text(book, "formulas/F1.txt", seen=1),
        {"F1", "formulas", "titles"},
    ),
    "a new text": (
        lambda book: keep_text(book, "orders/101.txt", b"101\n", seen=None),
        {"orders", "titles"},
    ),
    "a row": (_edit_row, {"lots"}),
    "a row out": (_drop_row, {"lots"}),
    "a new row": (lambda book: keep_row(book, "lots.csv", ("L-9",), key=None), {"lots"}),
    "a new column": (
        lambda book: keep_row(book, "lots.csv", ("L-9", "x"), key=None, head=("lot", "note")),
        {"lots"},
    ),
    "a new table": (
        lambda book: keep_row(book, "prices.csv", ("1",), key=None, head=("price",)),
        {"prices", "sheets"},
    ),
    "a trial": (lambda book: keep_trial(book, _trial("t"), seen=None), {"trials"}),
    "a clock": (_start, {"clocks"}),
    "a clock stopped": (_stop, {"clocks"}),
    "a weighing": (lambda book: begin_weighing(book, _WEIGHING), set()),
}


def _marks(book: Book) -> dict[str, object]:
    with looked(book.path / DATABASE) as look:
        return {name: look.mark(kind) for name, kind in _KINDS.items()}


@pytest.mark.parametrize("edit", sorted(_EDITS))
def test_an_edit_moves_the_marks_of_what_it_is_of_and_no_other(edit: str, tmp_path: Path) -> None:
    book = book_at(tmp_path / "book")
    texts = {"formulas/F1.txt": b"F1\n", "formulas/F2.txt": b"F2\n", "lots.csv": b"lot\nL-1\n"}
    add_texts(book, texts)
    begin_weighing(book, replace(_WEIGHING, key="w0", place="formulas/F2.txt"))
    start_clock(book, "c1", kind="oven", weighing="w0")
    change, moved = _EDITS[edit]
    before = _marks(book)
    change(book)
    after = _marks(book)
    assert {name for name in _KINDS if before[name] != after[name]} == moved | {"whole"}
    assert after == _marks(book)
