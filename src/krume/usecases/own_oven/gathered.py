"""Everything a book says of its ovens: rows of its tables, bakes of its trials, by oven."""

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import datetime

from krume.base import as_text
from krume.learn import oven_figure
from krume.store import (
    Book,
    KeptTrial,
    Studio,
    book_at,
    clocks_of,
    clocks_since,
    studio_of,
    table_rows,
    trials_of,
)
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.text import book_text
from krume.usecases.book.rows import table_now
from krume.usecases.own_oven.cells import BAKES, OVENS, READINGS
from krume.usecases.own_oven.rows import Habit, OvenRecord, bake_of, reading_of

NO_NAME = "the oven"
"""What an oven is called where its owner gave it no name."""

_TRIALS, _LOADS = "trials.csv", "loads.csv"
_WANTED = ("formula", "dial_c", "bake_min", "core_c")
_MOST, _MOST_INVENTED = 40, 8
"""The newest trials that are looked at; an oven is no older than they are."""
_SAME_MIN = 1.0
"""Minutes typed are whole: up or down, these are the minutes of the clock."""
_MOST_SHEET = 12
"""Rows of the table of trials that are looked at, the newest: an oven is as it was lately."""


@dataclass(frozen=True, slots=True)
class Written:
    """A record and where it stands; `row` is the key of its row in the table, None elsewhere."""

    place: str
    record: OvenRecord
    row: int | None = None
    revision: int = 0


@dataclass(frozen=True, slots=True)
class Gathered:
    """All records of a book, each with the oven it is of, and the ovens' names, one's own first."""

    own: str
    names: tuple[str, ...]
    readings: tuple[Written, ...]
    bakes: tuple[Written, ...]


def habit_of(studio: Studio) -> Habit:
    """How the studio bakes where a row does not say."""
    return Habit(fan=bool(studio.bakes_with_fan))


def gathered(asked: Asked) -> Gathered:
    """Readings, finished bakes and trials of a book, sorted to their ovens."""
    book = book_at(asked.book)
    studio = studio_of(book)
    habit, ends = habit_of(studio), _ends(book)
    readings = [
        Written(READINGS, reading_of(f"{READINGS} line {row.line}", row.cells, habit), row.key,
                row.revision)
        for row in table_now(READINGS, asked).rows
    ]  # fmt: skip
    bakes = [
        Written(BAKES, bake_of(f"{BAKES} line {row.line}", row.cells, habit, asked), row.key,
                row.revision)
        for row in table_now(BAKES, asked).rows
    ]  # fmt: skip
    loads = {row.get("id", ""): row for row in table_rows(book, _LOADS)}
    bench = tuple(_bench_trials(book, loads, habit, asked))
    told = frozenset(clock for clock, _ in bench)
    bakes += [*_sheet_trials(book, habit, asked), *(each for _, each in bench)]
    typed = [row.cells for row in table_now(BAKES, asked).rows]
    loaded = _probed_loads(book, loads, told, habit, asked)
    bakes += [each for each, cells in loaded if not any(_is_same(cells, row) for row in typed)]
    own = studio.oven_name or _only([each.record.oven for each in (*readings, *bakes)])
    named = tuple(_named(each, own, ends) for each in readings)
    baked = tuple(_named(each, own, ends) for each in bakes)
    others = dict.fromkeys(each.record.oven for each in (*named, *baked))
    return Gathered(own, tuple(dict.fromkeys((own, *others))), named, baked)


def _only(names: Iterable[str]) -> str:
    """The one oven that rows name, where the studio names none."""
    said = {name.casefold(): name for name in names if name}
    return next(iter(said.values())) if len(said) == 1 else NO_NAME


def _ends(book: Book) -> dict[str, list[str]]:
    """Days on which an oven was replaced or mended, by its name in small letters."""
    found: dict[str, list[str]] = {}
    for row in table_rows(book, OVENS):
        name, until = row.get("oven", "").strip(), row.get("until", "").strip()
        if until:
            found.setdefault(name.casefold(), []).append(until)
    return {name: sorted(days) for name, days in found.items()}


def _named(each: Written, own: str, ends: Mapping[str, list[str]]) -> Written:
    """A record under its oven's name; one from before its end under `NAME until DAY`."""
    name = each.record.oven or own
    name = own if name.casefold() == own.casefold() else name
    day = each.record.day
    end = next((until for until in ends.get(name.casefold(), []) if day and day <= until), None)
    whole = name if end is None else f"{name} until {end}"
    return replace(each, record=replace(each.record, oven=whole))


def _sheet_trials(book: Book, habit: Habit, asked: Asked) -> Iterable[Written]:
    """The newest trials of the book's own table that carry dial, minutes and core."""
    whole = [row for row in table_rows(book, _TRIALS) if all(row.get(name) for name in _WANTED)]
    real = [row for row in whole if row.get("status", "").strip() != "invented"]
    for row in real[-_MOST:] or whole[-_MOST_INVENTED:]:
        cells = {
            "formula": row["formula"], "dial_c": row["dial_c"], "done_min": row["bake_min"],
            "core_c": row["core_c"], "batter_g": row.get("batter_g", ""),
            "status": row.get("status", ""),
        }  # fmt: skip
        record = bake_of(f"trial {row.get('trial', '')}", cells, habit, asked)
        yield _once(Written(_TRIALS, record))


def _once(each: Written) -> Written:
    """A trial is one of its own, however like another: it has a name."""
    value = each.record.value
    if value is None:
        return each
    return replace(each, record=replace(each.record, value=replace(value, day=each.record.key)))


def bench_trial(key: str) -> str:
    """What a trial of the bench goes by here."""
    return f"trial {key[:8]}"


def _bench_trials(
    book: Book, loads: Mapping[str, dict[str, str]], habit: Habit, asked: Asked
) -> Iterator[tuple[str, Written]]:
    """Trials of the bench with minutes and core whose load stood in the oven of the book."""
    for trial in trials_of(book, most=_MOST) if loads else ():
        is_whole = trial.core_c is not None and trial.minutes is not None
        clocks = clocks_of(book, trial.weighing) if is_whole and trial.weighing else ()
        load = next((loads[c.client_id] for c in clocks if c.client_id in loads), None)
        cells = None if load is None else _cells(book, trial, load)
        if load is not None and cells is not None and _is_alone(load):
            record = bake_of(bench_trial(trial.key), cells, habit, asked)
            yield load.get("id", ""), _once(Written("bench", replace(record, day=trial.at)))


def _probed_loads(
    book: Book,
    loads: Mapping[str, dict[str, str]],
    told: Collection[str],
    habit: Habit,
    asked: Asked,
) -> Iterator[tuple[Written, Mapping[str, str]]]:
    """Loads that stood alone and were probed near their end, with their cells.

    One that a trial tells of is not told a second time.
    """
    least = oven_figure("load-core")
    probed = {key: row for key, row in loads.items() if _number(row, "core_c") >= least}
    clocks = clocks_since(book, "oven", since="") if probed else ()
    for clock in [c for c in clocks if c.client_id in probed][-_MOST:]:
        row = probed[clock.client_id]
        if clock.client_id in told or not _is_alone(row) or not row.get("formula", ""):
            continue
        done = datetime.fromisoformat(row["core_at"]) - datetime.fromisoformat(clock.started_at)
        cells = {
            **_setting(row), "formula": row["formula"], "core_c": row["core_c"],
            "done_min": as_text(done.total_seconds() / 60, 1), "day": row["core_at"][:10],
        }  # fmt: skip
        record = bake_of(f"load {clock.client_id[:8]}", cells, habit, asked)
        yield _once(Written(_LOADS, replace(record, day=cells["day"]))), cells


def _is_alone(load: Mapping[str, str]) -> bool:
    """Whether a load was one tin that others took nothing from: a full oven is another oven."""
    return load.get("tins", "") in ("", "1") and not load.get("why", "")


def _is_same(load: Mapping[str, str], typed: Mapping[str, str]) -> bool:
    """Whether a load is the bake that somebody typed: formula, day and minutes agree."""
    is_cake = load["formula"].casefold() == typed.get("formula", "").strip().casefold()
    if not is_cake or load["day"] != typed.get("day", "").strip():
        return False
    return abs(_number(load, "done_min") - _number(typed, "done_min")) <= _SAME_MIN


def _number(row: Mapping[str, str], name: str) -> float:
    try:
        return float(row.get(name, "") or 0.0)
    except ValueError:
        return 0.0


def _setting(load: Mapping[str, str]) -> dict[str, str]:
    """Tin and heat of a load: its dial where one was said, else the true temperature."""
    dial, true = load.get("dial_c", ""), load.get("oven_c", "")
    return {"tin": load.get("tin", ""), "dial_c": dial, "oven_c": "" if dial else true}


def _cells(book: Book, trial: KeptTrial, load: Mapping[str, str]) -> dict[str, str] | None:
    """A trial as a bake; None where its heat or its formula is not known."""
    if not (load.get("oven_c") or load.get("dial_c")) or book_text(trial.place, book) is None:
        return None
    return {
        **_setting(load), "formula": trial.place.partition("/")[2].removesuffix(".txt"),
        "done_min": f"{trial.minutes:g}", "core_c": f"{trial.core_c:g}",
        "density_g_ml": "" if trial.sg is None else f"{trial.sg:g}", "day": trial.at,
    }  # fmt: skip
