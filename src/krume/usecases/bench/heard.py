"""What a page of the bench said, heard in its order: rows, cups, clocks and the end of a bake.

Without the network a page goes on by itself and says all of it later. Each is kept once, whenever
and however often it comes in, and a clock counts from the moment its strip was touched.
"""

from dataclasses import dataclass, field
from datetime import UTC, datetime
from itertools import groupby

from krume.base import InputError
from krume.store import book_at, weighing_at
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.clock import moment
from krume.usecases.bench.bench import bench_of, say_at_bench, weighing_of
from krume.usecases.bench.clocks import start_at_bench, stop_at_bench
from krume.usecases.bench.cup import keep_cup
from krume.usecases.bench.result import Bench, BenchSaid
from krume.usecases.bench.trials import end_as_trial, trial_numbers

_LATE = "Begun while the network was gone"
_LONGEST_S = 7 * 24 * 3600


@dataclass(frozen=True, slots=True)
class CupSaid:
    """A cup of batter, its three masses with the cup."""

    client_id: str
    empty_g: float
    water_g: float
    batter_g: float


@dataclass(frozen=True, slots=True)
class ClockSaid:
    """A clock started or stopped at a moment; `is_late` where the network was gone then."""

    client_id: str
    kind: str
    is_start: bool
    at: str
    reason: str = ""
    is_late: bool = False


@dataclass(frozen=True, slots=True)
class EndSaid:
    """A bake written down; its id is the trial's key."""

    client_id: str
    typed: dict[str, str] = field(default_factory=dict)


Said = BenchSaid | CupSaid | ClockSaid | EndSaid
"""One thing a page of the bench says."""


def hear_at_bench(name: str, key: str, said: tuple[Said, ...], asked: Asked) -> Bench:
    """Keep all that was said, in its order, each once; where the weighing stands after it."""
    found: Bench | None = None
    for is_rows, group in groupby(said, key=lambda each: isinstance(each, BenchSaid)):
        many = tuple(group)
        if is_rows:
            rows = tuple(each for each in many if isinstance(each, BenchSaid))
            found = say_at_bench(name, key, rows, asked)
            continue
        for each in many:
            _hear(name, key, each, asked)
        found = None
    if found is not None:
        return found
    is_known = bool(key) and weighing_at(book_at(asked.book), key) is not None
    return weighing_of(key, asked) if is_known else bench_of(name, asked)


def _hear(name: str, key: str, said: Said, asked: Asked) -> None:
    if isinstance(said, CupSaid):
        keep_cup(
            name, key, asked, client_id=said.client_id, empty_g=said.empty_g,
            water_g=said.water_g, batter_g=said.batter_g,
        )  # fmt: skip
    elif isinstance(said, ClockSaid):
        _clock(name, key, said, asked)
    elif isinstance(said, EndSaid):
        end_as_trial(name, key, asked, key=said.client_id, typed=whole_typed(said.typed))


def _clock(name: str, key: str, said: ClockSaid, asked: Asked) -> None:
    at = moment_said(said.at)
    if not said.is_start:
        stop_at_bench(name, asked, kind=said.kind, at=at)
        return
    try:
        _start(name, key, said, asked, at=at, reason=said.reason)
    except InputError as error:
        # The foam is whipped already: a clock that ran is kept, and says how it came about.
        if error.field != "reason" or not said.is_late:
            raise
        _start(name, key, said, asked, at=at, reason=_LATE)


def _start(name: str, key: str, said: ClockSaid, asked: Asked, *, at: str, reason: str) -> None:
    start_at_bench(
        name, key, asked, kind=said.kind, client_id=said.client_id, reason=reason, at=at
    )  # fmt: skip


def moment_said(at: str) -> str:
    """A moment as the book keeps it; never later than now, nor longer ago than a week.

    >>> moment_said("9999-01-01T00:00:00Z") <= moment()
    True
    """
    now = datetime.fromisoformat(moment())
    if not at:
        return now.isoformat(timespec="milliseconds")
    try:
        then = datetime.fromisoformat(at).astimezone(UTC)
    except (ValueError, OverflowError):
        raise InputError("That moment was not understood.", field="at", got=at[:40]) from None
    since = min(max((now - then).total_seconds(), 0.0), _LONGEST_S)
    return datetime.fromtimestamp(now.timestamp() - since, UTC).isoformat(timespec="milliseconds")


def whole_typed(typed: dict[str, str]) -> dict[str, str]:
    """What was typed of a bake, with every number that cannot be one moved into its note.

    A page has let go of the boxes by the time they come in: nothing of them may be lost.

    >>> whole_typed({"core": "ninety", "word": "good"})
    {'core': '', 'word': 'good', 'note': 'core: ninety'}
    """
    _, wrong = trial_numbers(typed)
    if not wrong:
        return typed
    note = "\n".join((typed.get("note", ""), *(f"{each}: {typed[each]}" for each in wrong)))
    return {**typed, **dict.fromkeys(wrong, ""), "note": note.strip()}
