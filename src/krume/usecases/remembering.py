"""Answers that take their time are kept in mind until a text or a table of the book changes."""

from collections import OrderedDict
from collections.abc import Callable, Hashable
from threading import Lock
from typing import Generic, TypeVar, cast

from krume.store import Book, content_stamp_of, studio_of
from krume.usecases.answer import Asked
from krume.usecases.clock import now

T = TypeVar("T")


class Remembered(Generic[T]):
    """Answers by what was asked; only of a book in a database, which says when it changed."""

    def __init__(self, most: int) -> None:
        self._most = most
        self._kept: OrderedDict[Hashable, T] = OrderedDict()
        self._lock = Lock()

    def get(self, book: Book, key: Hashable) -> T | None:
        """An answer that still holds; None where there is none."""
        whole = _whole(book, key)
        if whole is None:
            return None
        with self._lock:
            if whole in self._kept:
                self._kept.move_to_end(whole)
            return self._kept.get(whole)

    def of(self, book: Book, key: Hashable, make: Callable[[], T]) -> T:
        """The answer that still holds, else a new one, which is kept."""
        found = self.get(book, key)
        if found is not None:
            return found
        whole = _whole(book, key)
        made = make()
        # A book that changed meanwhile has another stamp: this answer is then never found again.
        if whole is not None:
            self._keep(whole, made)
        return made

    def _keep(self, whole: Hashable, made: T) -> None:
        with self._lock:
            self._kept[whole] = made
            while len(self._kept) > self._most:
                self._kept.popitem(last=False)


def _whole(book: Book, key: Hashable) -> Hashable | None:
    stamp = content_stamp_of(book)
    return None if stamp is None else cast("Hashable", (book, stamp, key))


def day_key(book: Book, asked: Asked, *more: Hashable) -> Hashable:
    """What an answer about a day rests on beside the book: the day, the answers given, and more."""
    return (now(studio_of(book), on=asked.on).date(), asked.on, asked.answers, *more)
