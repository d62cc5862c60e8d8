"""The oven's minutes on the bench's own clock: as at the oven, with the others that are in."""

from dataclasses import dataclass

from krume.base import Interval, KrumeError
from krume.store import book_at
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.remembering import Remembered
from krume.usecases.bake.bake import bake_formula
from krume.usecases.bake.wish import BakeWish
from krume.usecases.oven.loads import load_kept, time_load

_KEPT = 64
_minutes: Remembered[Interval | None] = Remembered(_KEPT)


@dataclass(frozen=True, slots=True)
class Awaited:
    """When a batter in the oven is looked at first, and when it is out at the latest."""

    check_min: float
    latest_min: float


def awaited_at_bench(name: str, client_id: str, asked: Asked) -> Awaited | None:
    """The minutes of the load a clock runs for, else those of its formula; None has none.

    A load that has none where it stands is not promised those of its formula's own oven.
    """
    book = book_at(asked.book)
    load = load_kept(client_id, asked) if client_id else None
    if load is not None:
        if load.check_min is None or load.latest_min is None:
            return None
        return Awaited(load.check_min, load.latest_min)
    found = _minutes.of(book, ("bench", name), lambda: _model(name, asked))
    return None if found is None else Awaited(found.low, found.high)


def _model(name: str, asked: Asked) -> Interval | None:
    """The formula's minutes in its own tin and oven; None where the model has none."""
    try:
        return bake_formula(f"formulas/{name}.txt", BakeWish(), asked).result.minutes
    except KrumeError:
        return None


def time_at_bench(client_id: str, asked: Asked) -> None:
    """Work out the minutes of a load that goes in from the bench; where it cannot be, it is in."""
    try:
        time_load(client_id, asked)
    except KrumeError:
        return
