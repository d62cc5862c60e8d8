"""The loads of an oven in the book: its clocks, and beside each what it holds and is awaited."""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from krume.base import NotFoundError
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
from krume.usecases.answer import Asked
from krume.usecases.bake import BakeWish, bake_formula
from krume.usecases.clock import moment
from krume.usecases.core_now import core_left
from krume.usecases.texts import text_now

LOADS = "loads.csv"
HEAD = (
    "id", "formula", "tin", "oven_c", "dial_c", "check_min", "likely_min", "latest_min",
    "core_c", "core_at", "left_low_min", "left_best_min", "left_high_min", "said",
)  # fmt: skip
KEPT_HOURS = 6
"""A load that came out longer ago than this is no longer shown at the oven."""


@dataclass(frozen=True, slots=True)
class Load:
    """One load: its clock, and what is known of it. Times are UTC; None is not known.

    `check_min`, `likely_min` and `latest_min` count from the door; `left_*` from `core_at`.
    """

    client_id: str
    number: int
    formula: str
    tin: str
    in_at: str
    out_at: str | None
    oven_c: float | None = None
    dial_c: float | None = None
    check_min: float | None = None
    likely_min: float | None = None
    latest_min: float | None = None
    core_c: float | None = None
    core_at: str = ""
    left_low_min: float | None = None
    left_best_min: float | None = None
    left_high_min: float | None = None
    said: str = ""


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


def put_in(client_id: str, formula: str, tin: str, asked: Asked) -> None:
    """A load goes in; its minutes are worked out, and where they cannot be it is in all the same.

    Sent twice it is in once. Without a formula only its clock runs.
    """
    name = text_now("formula", formula, asked).name if formula.strip() else ""
    book = book_at(asked.book)
    if not any(load.client_id == client_id for _, load in _rows(book)):
        start_clock(book, client_id, kind="oven", weighing="")
        _keep(book, _timed(Load(client_id, 0, name, tin.strip(), "", None), asked))


def time_load(client_id: str, asked: Asked) -> None:
    """Work out the minutes of a load that was started at the bench."""
    load = _one(client_id, asked)
    _keep(book_at(asked.book), _timed(load, asked))


def _timed(load: Load, asked: Asked) -> Load:
    """A load with its minutes in its tin, or with the words that say why it has none."""
    if not load.formula:
        return replace(load, said="No formula was named, so no minutes are worked out.")
    wish = BakeWish(tin=load.tin or None)
    answer = bake_formula(f"formulas/{load.formula}.txt", wish, asked)
    found = answer.result
    said = answer.problems[0].ask if answer.problems else ""
    return replace(
        load,
        tin=found.tin or load.tin,
        oven_c=found.oven_c,
        dial_c=None if found.dial is None else found.dial.set_c,
        check_min=found.check_from_min,
        likely_min=None if found.minutes is None else round(found.minutes.best, 1),
        latest_min=None if found.minutes is None else found.minutes.high,
        said=said,
    )


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
        BakeWish(tin=load.tin or None), core_c, asked, after_min=after or None,
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
    return [(row, _read(dict(zip(head, row.cells, strict=False)))) for row in rows]


def _read(cells: dict[str, str]) -> Load:
    def number(name: str) -> float | None:
        text = cells.get(name, "")
        try:
            return float(text) if text else None
        except ValueError:
            return None

    return Load(
        cells.get("id", ""), 0, cells.get("formula", ""), cells.get("tin", ""), "", None,
        number("oven_c"), number("dial_c"), number("check_min"), number("likely_min"),
        number("latest_min"), number("core_c"), cells.get("core_at", ""),
        number("left_low_min"), number("left_best_min"), number("left_high_min"),
        cells.get("said", ""),
    )  # fmt: skip


def _keep(book: Book, load: Load) -> None:
    numbers = (
        load.oven_c, load.dial_c, load.check_min, load.likely_min, load.latest_min, load.core_c,
    )  # fmt: skip
    left = (load.left_low_min, load.left_best_min, load.left_high_min)
    cells = (
        load.client_id, load.formula, load.tin, *(_cell(n) for n in numbers), load.core_at,
        *(_cell(n) for n in left), load.said,
    )  # fmt: skip
    there = next((row for row, kept in _rows(book) if kept.client_id == load.client_id), None)
    key, seen = (None, 0) if there is None else (there.key, there.revision)
    keep_row(book, LOADS, cells, key=key, seen=seen, head=HEAD)


def _cell(number: float | None) -> str:
    return "" if number is None else f"{number:g}"
