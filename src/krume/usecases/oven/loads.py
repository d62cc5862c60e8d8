"""The loads of an oven in the book: its clocks, and beside each what it holds and is awaited."""

from dataclasses import replace
from datetime import datetime, timedelta

from krume.base import InputError, NotFoundError
from krume.store import (
    Book,
    KeptClock,
    KeptRow,
    book_at,
    clocks_since,
    keep_row,
    kept_rows,
    resume_clock,
    start_clock,
    stop_clock,
    weighing_at,
)
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.clock import moment
from krume.usecases.bake.core_now import core_left
from krume.usecases.book.texts import text_now
from krume.usecases.oven.load import HEAD, LOADS, Load, cells_of, load_of
from krume.usecases.oven.neighbours import standing_oven, timed, wish_of, with_neighbours

KEPT_HOURS = 6
"""A load that came out longer ago than this is no longer shown at the oven."""
_MOST_TINS = 24


def loads_now(asked: Asked, *, at: str = "") -> tuple[Load, ...]:
    """Loads that are in, and those of the last hours, numbered by their start."""
    book = book_at(asked.book)
    begin = datetime.fromisoformat(at or moment()) - timedelta(hours=KEPT_HOURS)
    clocks = clocks_since(book, "oven", since=begin.isoformat(timespec="milliseconds"))
    if not clocks:
        return ()
    rows = {load.client_id: load for _, load in _rows(book)}
    found = (_load(book, clock, rows.get(clock.client_id)) for clock in clocks)
    return tuple(replace(load, number=number) for number, load in enumerate(found, start=1))


def _load(book: Book, clock: KeptClock, row: Load | None) -> Load:
    """A clock with its row; one that was started at the bench has the formula of its weighing."""
    if row is not None:
        return replace(row, in_at=clock.started_at, out_at=clock.stopped_at)
    formula = _formula_of(book, clock.weighing)
    return Load(clock.client_id, 0, formula, "", clock.started_at, clock.stopped_at)


def _formula_of(book: Book, weighing: str | None) -> str:
    kept = None if weighing is None else weighing_at(book, weighing)
    return "" if kept is None else kept.place.partition("/")[2].removesuffix(".txt")


def put_in(client_id: str, formula: str, tin: str, asked: Asked, *, tins: int = 1) -> None:
    """A load goes in; its minutes are worked out, and those of the others that are in again.

    Where there are no minutes it is in all the same. Sent twice it is in once. Without a formula
    only its clock runs. It stands in the oven as it is, whatever its formula wants.
    """
    if not 1 <= tins <= _MOST_TINS:
        text = f"A load is 1 to {_MOST_TINS} tins."
        raise InputError(text, field="tins", got=f"{tins}", want=f"1 to {_MOST_TINS}")
    name = text_now("formula", formula, asked).name if formula.strip() else ""
    book = book_at(asked.book)
    if not any(load.client_id == client_id for _, load in _rows(book)):
        oven = standing_oven(loads_now(asked), asked) if name else ""
        start_clock(book, client_id, kind="oven", weighing="")
        fresh = Load(client_id, 0, name, tin.strip(), "", None, tins=tins, oven=oven)
        _keep(book, timed(fresh, asked))
        _again(asked)


def _again(asked: Asked) -> None:
    """Work out the minutes of all loads that are in beside one another, and keep what moved."""
    book, loads = book_at(asked.book), loads_now(asked)
    before = {load.client_id: load for load in loads}
    for load in with_neighbours(loads, asked):
        if load != before[load.client_id]:
            _keep(book, load)


def if_it_went_in(formula: str, tin: str, asked: Asked, *, tins: int = 1) -> tuple[Load, ...]:
    """All loads that are in and one more, as they would be if it went in now; nothing is kept."""
    name, loads = text_now("formula", formula, asked).name, loads_now(asked)
    oven = standing_oven(loads, asked)
    fresh = Load("", len(loads) + 1, name, tin.strip(), moment(), None, tins=tins, oven=oven)
    return with_neighbours((*loads, timed(fresh, asked)), asked)


def load_kept(client_id: str, asked: Asked) -> Load | None:
    """What is kept of the load of a clock; None where its minutes were never worked out."""
    rows = _rows(book_at(asked.book))
    return next((load for _, load in rows if load.client_id == client_id), None)


def time_load(client_id: str, asked: Asked) -> None:
    """Work out the minutes of a load that was started at the bench, beside those that are in."""
    load = _one(client_id, asked)
    others = [each for each in loads_now(asked) if each.client_id != client_id]
    earlier = [each for each in others if each.in_at <= load.in_at]
    oven = standing_oven(earlier, asked) if load.formula else ""
    _keep(book_at(asked.book), timed(replace(load, oven=oven), asked))
    _again(asked)


def take_out(client_id: str, asked: Asked) -> None:
    """A load is out; said twice it came out the first time."""
    _one(client_id, asked)
    stop_clock(book_at(asked.book), client_id)


def put_back(client_id: str, asked: Asked) -> None:
    """A load that was said to be out by mistake: it is still in."""
    _one(client_id, asked)
    resume_clock(book_at(asked.book), client_id)


def probe_load(client_id: str, core_c: float, asked: Asked, *, at: str = "") -> None:
    """Keep the core of a load by the probe, with the minutes that are left by the model."""
    load, when = _one(client_id, asked), at or moment()
    passed = datetime.fromisoformat(when) - datetime.fromisoformat(load.in_at)
    after = max(0.0, passed.total_seconds() / 60)
    answer = core_left(
        f"formulas/{load.formula}.txt" if load.formula else "",
        wish_of(load), core_c, asked, after_min=after or None,
    ) if load.formula else None  # fmt: skip
    left = None if answer is None else answer.result.left_min
    words = ["No formula was named: the probe alone decides."] if answer is None else [
        answer.result.text, *(notice.text for notice in answer.notices)
    ]  # fmt: skip
    kept = replace(
        load,
        core_c=core_c,
        core_at=when,
        left_low_min=None if left is None else left.low,
        left_best_min=None if left is None else round(left.best, 1),
        left_high_min=None if left is None else left.high,
        said=" ".join(words),
    )
    _keep(book_at(asked.book), kept)


def _one(client_id: str, asked: Asked) -> Load:
    found = next((load for load in loads_now(asked) if load.client_id == client_id), None)
    if found is None:
        raise NotFoundError("The oven has no such load.", where=client_id, got=client_id)
    return found


def _rows(book: Book) -> list[tuple[KeptRow, Load]]:
    head, rows = kept_rows(book, LOADS)
    return [(row, load_of(dict(zip(head, row.cells, strict=False)))) for row in rows]


def _keep(book: Book, load: Load) -> None:
    there = next((row for row, kept in _rows(book) if kept.client_id == load.client_id), None)
    key, seen = (None, 0) if there is None else (there.key, there.revision)
    keep_row(book, LOADS, cells_of(load), key=key, seen=seen, head=HEAD)
