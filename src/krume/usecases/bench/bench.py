"""Weighing at the counter: opened where it was, every step kept once, a slip answered at once."""

import json
import math
from dataclasses import replace

from krume.base import ConflictError, InputError, NotFoundError
from krume.store import (
    KeptStep,
    KeptWeighing,
    begin_weighing,
    book_at,
    end_weighing,
    open_weighing,
    say_steps,
    steps_of,
    studio_of,
    weighing_at,
)
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.as_json import Json
from krume.usecases.asking.clock import moment, now
from krume.usecases.bench.ground import ground_of
from krume.usecases.bench.plan import BenchPlan, plan_of
from krume.usecases.bench.result import Bench, BenchSaid
from krume.usecases.bench.state import Standing, standing
from krume.usecases.bench.ways import bench_slip, card_now, choice_of, rescue_at

KINDS = ("tare", "in", "got", "not-weighed", "no-more", "undo", "choose")
"""What can be said of a row."""

ID_LIMIT = 80
_MOST_G = 100_000.0


def bench_of(name: str, asked: Asked) -> Bench:
    """The weighing of a formula that goes on, on whatever device; else its first row."""
    plan = plan_of(name, asked)
    kept = open_weighing(book_at(asked.book), _place(plan))
    if kept is None:
        return _bench("", "open", plan, ())
    return weighing_of(kept.key, asked)


def weighing_of(key: str, asked: Asked) -> Bench:
    """A weighing by its key, the version it was weighed from."""
    kept = weighing_at(book_at(asked.book), key)
    if kept is None:
        raise NotFoundError("The book has no such weighing.", where=key, got=key)
    name = kept.place.partition("/")[2].removesuffix(".txt")
    plan = plan_of(name, asked, revision=kept.place_revision)
    return _bench(key, kept.state, plan, steps_of(book_at(asked.book), key))


def _bench(key: str, state: str, plan: BenchPlan, steps: tuple[KeptStep, ...]) -> Bench:
    found = standing(plan.rows, steps)
    slip = None if found.slip is None else bench_slip(found, rescue_at(plan, found, steps))
    return Bench(key, state, plan, steps, found, slip, moment())


def say_at_bench(name: str, key: str, said: tuple[BenchSaid, ...], asked: Asked) -> Bench:
    """Keep what was said, each once; the weighing begins with the first of it."""
    for each in said:
        _check(each)
    seen = {each.version for each in said if each.version is not None}
    plan = plan_of(name, asked, revision=min(seen, default=None))
    began = begin_weighing(book_at(asked.book), _begun(plan, key, asked))
    if seen - {began.place_revision}:
        raise _other_version(name, began.place_revision)
    if began.place_revision != plan.revision:
        plan = plan_of(name, asked, revision=began.place_revision)
    steps = say_steps(book_at(asked.book), began.key, lambda there: _made(plan, there, said))
    return _bench(began.key, began.state, plan, steps)


def _other_version(name: str, weighed: int) -> ConflictError:
    """A position in one version may be another ingredient in the next."""
    message = (
        f"{name} changed, and a weighing of its version {weighed} goes on. What was said of the "
        "other version was not kept: look at the rows again."
    )
    return ConflictError(message, where=name, want=f"version {weighed}")


def begin_at_bench(name: str, key: str, asked: Asked) -> str:
    """The key of the weighing that goes on; where there is none it begins, under this one."""
    plan = plan_of(name, asked)
    return begin_weighing(book_at(asked.book), _begun(plan, key, asked)).key


def set_aside(name: str, asked: Asked) -> None:
    """Set the weighing that goes on aside; its steps stay in the book."""
    kept = open_weighing(book_at(asked.book), _place(plan_of(name, asked)))
    if kept is not None:
        end_weighing(book_at(asked.book), kept.key, state="aside")


def _place(plan: BenchPlan) -> str:
    return f"formulas/{plan.name}.txt"


def check_id(client_id: str) -> str:
    """A sender's own id as it may be kept; raises InputError for none, or one without end."""
    if not 0 < len(client_id) <= ID_LIMIT:
        message = "That was not understood. Open the page again and say it once more."
        raise InputError(message, field="id", got=client_id[:ID_LIMIT])
    return client_id


def _begun(plan: BenchPlan, key: str, asked: Asked) -> KeptWeighing:
    check_id(key)
    day = now(studio_of(book_at(asked.book)), on=asked.on).date().isoformat()
    return KeptWeighing(key, _place(plan), plan.revision, day, plan.step_g, "open")


def _check(said: BenchSaid) -> None:
    check_id(said.client_id)
    is_known = said.kind in KINDS
    shown = said.display_g
    if not is_known or (said.kind == "got" and shown is None):
        message = "That was not understood. Go back to the scale and say it again."
        raise InputError(message, field="kind", got=said.kind, want=", ".join(KINDS))
    if shown is not None and not 0 <= shown <= _MOST_G:
        message = f"A display shows 0 to {_MOST_G:.0f} g. Type what it shows, for example 96."
        raise InputError(message, field="shows", got=str(shown), want=f"0 to {_MOST_G:.0f}")


def _made(
    plan: BenchPlan, there: tuple[KeptStep, ...], said: tuple[BenchSaid, ...]
) -> tuple[KeptStep, ...]:
    """The steps that what was said comes to, each on what stands after the one before it."""
    steps = list(there)
    known = {step.client_id for step in there}
    for each in said:
        if each.client_id in known:
            continue
        step = _step(plan, tuple(steps), each)
        if step is None:
            continue
        known.add(each.client_id)
        if step.kind == "undo":
            steps = [replace(s, is_undone=s.is_undone or s.client_id == step.of) for s in steps]
        steps.append(step)
    return tuple(steps[len(there) :])


def _step(plan: BenchPlan, there: tuple[KeptStep, ...], said: BenchSaid) -> KeptStep | None:
    found = standing(plan.rows, there)
    if said.kind == "undo":
        return KeptStep(said.client_id, "undo", of=said.of)
    if said.kind == "choose":
        chosen = choice_of(plan, found, there, said.way)
        return None if chosen is None else replace(chosen, client_id=said.client_id)
    at = said.position
    if at is None or not 0 <= at < len(plan.rows):
        message = "There is no such row in this weighing. Open it again from its formula."
        raise InputError(message, field="row", got=str(at))
    row = plan.rows[at]
    return KeptStep(
        client_id=said.client_id,
        kind=said.kind,
        position=at,
        line=row.line,
        planned_g=row.add_g,
        display_g=found.display_g(at) if said.kind == "in" else said.display_g,
        got_g=_got(found, at, said),
        said=json.dumps({"take": row.take}, ensure_ascii=False) if row.kind != "tare" else "",
    )


def _got(found: Standing, at: int, said: BenchSaid) -> float | None:
    """What of the row is in, the display's own word before the plan's."""
    spot = found.spots[at]
    if said.kind == "in":
        return spot.target_g
    if said.kind == "no-more":
        return spot.got_g
    if said.display_g is None:
        return None
    got = found.got_g(at, said.display_g)
    if got < 0 or not math.isfinite(got):
        message = (
            f"The display cannot show less than the {found.running_g(at):.1f} g that are in. "
            "Set the scale to 0 and weigh this one again, or type what it shows."
        )
        raise InputError(message, field="shows", got=str(said.display_g))
    return got


def ground_at_bench(bench: Bench) -> dict[str, Json]:
    """What the page needs of a weighing to work out a slip without the network."""
    formula = card_now(bench.plan.formula, bench.steps)
    return ground_of(formula, bench.plan.step_g)
