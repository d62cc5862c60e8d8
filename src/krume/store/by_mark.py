"""What was made of a part of a book, kept in mind for as long as that part stays as it is."""

import sqlite3
from collections import OrderedDict
from collections.abc import Callable, Hashable
from pathlib import Path
from threading import Lock
from typing import TypeVar, cast

from krume.store.database import looked, note_kinds

T = TypeVar("T")

_MOST = 64
_kept: OrderedDict[Hashable, tuple[Hashable, object]] = OrderedDict()
_lock = Lock()


def by_mark(
    path: Path, kind: tuple[str, ...], what: str, make: Callable[[sqlite3.Connection], T]
) -> T:
    """What `make` made of a thing, made anew where its mark changed; it is only read.

    `make` asks for nothing but what `kind` names, and `what` says which of the makers it is. Of
    each thing one is kept: a long table takes its room once.
    """
    key = (path, kind, what)
    with looked(path) as look:
        note_kinds(look, (kind,))
        mark = look.mark(kind)
        with _lock:
            held = _kept.get(key)
        if held is not None and held[0] == mark:
            return cast("T", held[1])
        made = make(look.connection)
    with _lock:
        _kept[key] = (mark, made)
        _kept.move_to_end(key)
        while len(_kept) > _MOST:
            _kept.popitem(last=False)
    return made
