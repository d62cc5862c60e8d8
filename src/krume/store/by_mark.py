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
_kept: OrderedDict[Hashable, object] = OrderedDict()
_lock = Lock()


def by_mark(
    path: Path, kind: tuple[str, ...], what: str, make: Callable[[sqlite3.Connection], T]
) -> T:
    """What `make` made of a thing, made anew where its mark changed; it is only read.

    `make` asks for nothing but what `kind` names, and `what` says which of the makers it is.
    """
    with looked(path) as look:
        note_kinds(look, (kind,))
        key = (path, kind, what, look.mark(kind))
        with _lock:
            if key in _kept:
                _kept.move_to_end(key)
                return cast("T", _kept[key])
        made = make(look.connection)
    with _lock:
        _kept[key] = made
        while len(_kept) > _MOST:
            _kept.popitem(last=False)
    return made
