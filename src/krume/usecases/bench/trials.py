"""Trials: a bake written down at its end, and all of them with what differs from the plan."""

import json
import math
from collections.abc import Iterable
from dataclasses import dataclass

from krume.base import InputError, NotFoundError, as_text
from krume.evidence import figures
from krume.store import (
    KeptStep,
    KeptTrial,
    book_at,
    database_of,
    end_weighing,
    keep_trial,
    say_steps,
    steps_of,
    steps_of_each,
    studio_of,
    table_rows,
    trial_at,
    trial_of_weighing,
    trials_of,
)
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.clock import now
from krume.usecases.bench.bench import begin_at_bench, bench_of, check_id, weighing_of
from krume.usecases.bench.clocks import clocks_at_bench
from krume.usecases.bench.cup import cup_of_weighing
from krume.usecases.book.texts import text_now

FIELDS = {
    "centre": ("height-most", "A height in millimetres, for example 50."),
    "core": ("core-most", "A core in °C, for example 95."),
    "edge": ("height-most", "A height in millimetres, for example 44."),
    "minutes": ("minutes-most", "Minutes in the oven, for example 35."),
    "baked": ("baked-most", "The baked cake in grams, for example 462."),
    "sg": ("sg-most", "A specific gravity, for example 0.48."),
}
"""Numbers of a trial: the limit past which one is asked about, and what to type."""

_MOST_NAMED = 3
WORD_LIMIT, NOTE_LIMIT = 80, 4_000


@dataclass(frozen=True, slots=True)
class TrialRow:
    """A trial with the name of its formula, and what of its weighing differs from the plan.

    `has_plan` says whether the version it was weighed by is there; plain texts keep none.
    """

    trial: KeptTrial
    formula: str
    differs: tuple[str, ...]
    has_plan: bool = False


def trial_numbers(typed: dict[str, str]) -> tuple[dict[str, float | None], dict[str, str]]:
    """Numbers of a trial as typed, and what is wrong with them by field; empty is not known.

    >>> trial_numbers({"core": "95,5", "centre": "", "minutes": "long"})[0]["core"]
    95.5
    """
    found: dict[str, float | None] = {}
    wrong: dict[str, str] = {}
    for field, (limit, hint) in FIELDS.items():
        text = typed.get(field, "").strip().replace(",", ".")
        found[field] = None
        if not text:
            continue
        value = _number(text)
        if value is None or not _least(field) <= value <= figures("trial_limits.csv")[limit].value:
            wrong[field] = hint
        else:
            found[field] = value
    return found, wrong


def trial_limits() -> dict[str, dict[str, str | float]]:
    """Each number of a trial: from where to where it is taken, and what to type."""
    most = figures("trial_limits.csv")
    return {
        field: {"least": _least(field), "most": most[limit].value, "hint": hint}
        for field, (limit, hint) in FIELDS.items()
    }


def _number(text: str) -> float | None:
    try:
        value = float(text)
    except ValueError:
        return None
    return value if math.isfinite(value) and value > 0 else None


def _least(field: str) -> float:
    least = {"core": "core-least", "sg": "sg-least"}
    return figures("trial_limits.csv")[least[field]].value if field in least else 0.0


def drafted(name: str, asked: Asked) -> dict[str, str]:
    """What the clocks and the cup already know of the bake that ends now."""
    bench = bench_of(name, asked)
    sg = cup_of_weighing(bench.steps)
    oven = clocks_at_bench(name, asked).last("oven")
    is_timed = oven is not None and oven.minutes >= 1
    return {
        "sg": "" if sg is None else as_text(sg, 3),
        "minutes": as_text(oven.minutes, 0) if oven is not None and is_timed else "",
    }


def end_as_trial(
    name: str, weighing: str, asked: Asked, *, key: str, typed: dict[str, str]
) -> KeptTrial:
    """Write down the bake that ends now; its weighing is done with it. Sent twice it is one."""
    book = book_at(asked.book)
    there = trial_at(book, check_id(key)) or (
        trial_of_weighing(book, weighing) if weighing else None
    )
    if there is not None:
        return there
    began = begin_at_bench(name, weighing, asked)
    place = f"formulas/{text_now('formula', name, asked).name}.txt"
    day = now(studio_of(book), on=asked.on).date().isoformat()
    _close(began, key, asked)
    kept = keep_trial(book, _trial(key, place, began, day, typed), seen=None)
    end_weighing(book, began, state="done")
    return kept


def _close(weighing: str, key: str, asked: Asked) -> None:
    """What was never weighed is written down as that: a trial claims no plan it did not follow."""
    bench = weighing_of(weighing, asked)
    rows = [s.row for s in bench.found.spots if not s.is_done and s.row.kind != "tare"]
    missing = tuple(
        KeptStep(f"{key}-{row.position}", "not-weighed", row.position, row.line, row.add_g,
                 said=json.dumps({"take": row.take}, ensure_ascii=False))
        for row in rows
    )  # fmt: skip
    say_steps(book_at(asked.book), weighing, lambda _: missing)


def edit_trial(key: str, asked: Asked, *, typed: dict[str, str], seen: int) -> KeptTrial:
    """A new version of a trial; raises ConflictError where it changed since `seen`."""
    book = book_at(asked.book)
    was = trial_at(book, key)
    if was is None:
        raise NotFoundError("The book has no such trial.", where=key, got=key)
    return keep_trial(book, _trial(key, was.place, was.weighing, was.at, typed), seen=seen)


def _trial(
    key: str, place: str, weighing: str | None, day: str, typed: dict[str, str]
) -> KeptTrial:
    numbers, wrong = trial_numbers(typed)
    if wrong:
        field, hint = next(iter(wrong.items()))
        raise InputError(hint, field=field, got=typed.get(field, ""))
    return KeptTrial(
        key=key,
        place=place,
        weighing=weighing,
        sg=numbers["sg"],
        core_c=numbers["core"],
        centre_mm=numbers["centre"],
        edge_mm=numbers["edge"],
        minutes=numbers["minutes"],
        baked_g=numbers["baked"],
        word=" ".join(typed.get("word", "").split())[:WORD_LIMIT],
        note=typed.get("note", "").strip()[:NOTE_LIMIT],
        at=day,
    )


def trial_rows(asked: Asked, *, formula: str = "", most: int = 50) -> tuple[TrialRow, ...]:
    """Trials of a formula or of all, the newest first, each with what differs from its plan."""
    book = book_at(asked.book)
    place = f"formulas/{formula}.txt" if formula else ""
    trials = trials_of(book, place=place, most=most)
    steps = steps_of_each(book, tuple(t.weighing for t in trials if t.weighing))
    return tuple(
        TrialRow(
            t,
            formula_in(t.place),
            differences_of(steps.get(t.weighing, ())) if t.weighing else (),
        )
        for t in trials
    )


def trial_row(key: str, asked: Asked) -> TrialRow:
    """One trial; raises NotFoundError where there is none."""
    book = book_at(asked.book)
    found = trial_at(book, key)
    if found is None:
        raise NotFoundError("The book has no such trial.", where=key, got=key)
    differs: tuple[str, ...] = ()
    if found.weighing:
        differs = differences_of(steps_of(book, found.weighing))
    has_plan = found.weighing is not None and database_of(book) is not None
    return TrialRow(found, formula_in(found.place), differs, has_plan)


def formula_in(place: str) -> str:
    """The name of a formula by its place in the book."""
    return place.partition("/")[2].removesuffix(".txt")


def differences_of(steps: Iterable[KeptStep]) -> tuple[str, ...]:
    """What of a weighing is not as planned, in words; a jar's surplus is no difference."""
    alive = [s for s in steps if not s.is_undone]
    gone = {s.client_id for s in steps if s.is_undone}
    chosen = [s for s in alive if s.kind == "choose" and s.of not in gone]
    last = {s.position: s for s in alive if s.kind in ("in", "got", "not-weighed", "no-more")}
    said = json.loads(chosen[-1].said) if chosen else {}
    in_jar = said.get("targets", {}) if said.get("kind") == "jar" else {}
    if not last:
        return ("nothing was weighed at the bench",)
    words = [json.loads(s.said)["title"] for s in chosen]
    missing = [s for s in last.values() if s.kind == "not-weighed"]
    if len(missing) > _MOST_NAMED:
        words.append(f"{len(missing)} lines not weighed")
        last = {at: s for at, s in last.items() if s.kind != "not-weighed"}
    for position, step in sorted(last.items(), key=lambda each: each[0] or 0):
        take = json.loads(step.said or "{}").get("take", "")
        target = in_jar.get(str(position), step.planned_g)
        words += _difference(step, take, target)
    return tuple(words)


def _difference(step: KeptStep, take: str, target: float | None) -> list[str]:
    if step.kind == "not-weighed" or step.got_g is None:
        return [f"{take}: not weighed"]
    if target is None:
        return [f"{take}: {as_text(step.got_g, 1)} g, no plan"]
    if as_text(step.got_g, 1) == as_text(target, 1):
        return []
    return [f"{take}: {as_text(step.got_g, 1)} g instead of {as_text(target, 1)}"]


def trial_sheet(asked: Asked, *, formula: str = "", most: int = 50) -> tuple[dict[str, str], ...]:
    """Trials of the book's own table, as it has them, the last ones."""
    rows = table_rows(book_at(asked.book), "trials.csv")
    return tuple(row for row in rows if formula in ("", row.get("formula", "")))[-most:]
