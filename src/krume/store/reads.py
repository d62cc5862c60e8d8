"""What an answer was read from: each thing that was looked at, with the mark it had then."""

import contextlib
from collections.abc import Hashable, Iterator
from contextvars import ContextVar
from pathlib import Path

Key = tuple[str, ...]
"""What was looked at: a kind, and what it is of."""

Reads = dict[Key, Hashable]
"""Everything an answer was read from, with the mark of each."""

_noted: ContextVar[Reads | None] = ContextVar("noted", default=None)


class _Never:
    """The mark of what cannot be found the same again: it equals nothing but itself."""


NEVER = _Never()


def is_noting() -> bool:
    """Whether somebody wants to know what is read."""
    return _noted.get() is not None


def note(key: Key, mark: Hashable) -> None:
    """Something was looked at; what changed between two looks is never the same again."""
    noted = _noted.get()
    if noted is not None and noted.setdefault(key, mark) != mark:
        noted[key] = NEVER


def note_all(reads: Reads) -> None:
    """An answer that was kept in mind is used: what it was read from counts here too."""
    for key, mark in reads.items():
        note(key, mark)


@contextlib.contextmanager
def noting() -> Iterator[Reads]:
    """Note what is read within; whoever asked for it has read that too, even if it failed."""
    reads: Reads = {}
    token = _noted.set(reads)
    try:
        yield reads
    finally:
        _noted.reset(token)
        note_all(reads)


def note_file(path: Path) -> None:
    """A file outside of a database was looked at, or looked for."""
    if is_noting():
        whole = path.absolute()
        note(("file", str(whole)), mark_of_file(whole))


def mark_of_file(path: Path) -> Hashable:
    """What changes when a file is written anew; None where there is none."""
    try:
        found = path.stat()
    except (OSError, ValueError):
        return None
    return (found.st_ino, found.st_mtime_ns, found.st_size)
