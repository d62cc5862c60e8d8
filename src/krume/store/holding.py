"""Whether all that an answer was read from is still as it was then."""

from collections.abc import Hashable
from pathlib import Path

from krume.store.database import looked
from krume.store.moment import DAY, MINUTE, mark_of_clock
from krume.store.reads import Key, Reads, mark_of_file


def reads_hold(reads: Reads) -> bool:
    """Whether every text, table, file and clock has the mark it had."""
    books: dict[str, Reads] = {}
    for key, mark in reads.items():
        if key[0] == "book":
            books.setdefault(key[1], {})[key[2:]] = mark
        elif _mark_now(key) != mark:
            return False
    return all(_book_holds(Path(path), marks) for path, marks in books.items())


def _book_holds(path: Path, marks: Reads) -> bool:
    """Whether things of a book have these marks, all at one moment."""
    if mark_of_file(path) is None:
        return False
    with looked(path) as look:
        return all(look.mark(kind) == mark for kind, mark in marks.items())


def _mark_now(key: Key) -> Hashable:
    """Mark of what stands outside of a book; of what is never the same there is none."""
    if key[0] == "file":
        return mark_of_file(Path(key[1]))
    return mark_of_clock(key) if key in (DAY, MINUTE) else object()
