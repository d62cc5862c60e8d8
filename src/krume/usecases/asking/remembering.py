"""Answers that take their time are kept in mind for as long as all they were read from stays."""

from collections import OrderedDict
from collections.abc import Callable, Hashable
from dataclasses import dataclass
from threading import Lock
from typing import ClassVar, Generic, TypeVar
from weakref import WeakSet

from krume.store import Book, Reads, database_of, note_all, noting, reads_hold
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.clock import today

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class _Kept(Generic[T]):
    """An answer with what it was read from."""

    answer: T
    reads: Reads


class Remembered(Generic[T]):
    """Answers by what was asked; only of a book in a database, which says when it changed.

    An answer holds while every text, table and file it was read from has the mark it had then.
    What was read is noted as it is read: nobody has to say what an answer rests on.
    """

    _all: ClassVar["WeakSet[Remembered[object]]"] = WeakSet()

    def __init__(self, most: int) -> None:
        self._most = most
        self._kept: OrderedDict[Hashable, _Kept[T]] = OrderedDict()
        self._lock = Lock()
        Remembered._all.add(self)  # type: ignore[arg-type]

    def get(self, book: Book, key: Hashable) -> T | None:
        """An answer that still holds; None where there is none."""
        found = None if database_of(book) is None else self._found((book, key))
        if found is None:
            return None
        note_all(found.reads)
        return found.answer

    def of(self, book: Book, key: Hashable, make: Callable[[], T]) -> T:
        """The answer that still holds, else a new one, which is kept."""
        if database_of(book) is None:
            return make()
        whole = (book, key)
        found = self._found(whole)
        if found is None:
            with noting() as reads:
                found = _Kept(make(), reads)
            self._keep(whole, found)
        else:
            note_all(found.reads)
        return found.answer

    def _found(self, whole: Hashable) -> _Kept[T] | None:
        with self._lock:
            found = self._kept.get(whole)
            if found is None:
                return None
            self._kept.move_to_end(whole)
        return found if reads_hold(found.reads) else None

    def _keep(self, whole: Hashable, made: _Kept[T]) -> None:
        with self._lock:
            self._kept[whole] = made
            self._kept.move_to_end(whole)
            while len(self._kept) > self._most:
                self._kept.popitem(last=False)

    def forget(self) -> None:
        """Keep nothing in mind."""
        with self._lock:
            self._kept.clear()


def forget_all() -> None:
    """Keep no answer in mind: the next of each is made anew."""
    for each in Remembered._all:  # noqa: SLF001
        each.forget()


def day_key(book: Book, asked: Asked, *more: Hashable) -> Hashable:
    """What an answer about a day rests on beside the book: the day, the answers given, and more."""
    return (today(book, on=asked.on), asked.on, asked.answers, *more)
