"""The creams of a plan: pots and whippings, and which torte waits for which of them."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from krume.plan.days import Window
from krume.plan.draft import HANDS, MIXER, Draft, Mark
from krume.plan.usual import Step, cream_route, usual
from krume.plan.work import PlannedFormula, batches_made


@dataclass(frozen=True, slots=True)
class Taken:
    """Grams of a cream that one torte takes, the job that takes it, and how long that lasts."""

    job: str
    mass_g: float
    minutes: int
    window: Window


def add_creams(draft: Draft, formula: PlannedFormula, taken: Sequence[Taken]) -> None:
    """Jobs of one cream, day by day; each taking job waits for the part that it needs."""
    by_day: dict[int, list[Taken]] = {}
    for one in taken:
        by_day.setdefault(one.window.day, []).append(one)
    for day, ones in sorted(by_day.items()):
        _add_day(draft, formula, ones, f"{formula.name} day {day}")


def _add_day(draft: Draft, formula: PlannedFormula, taken: list[Taken], name: str) -> None:
    batch_g = formula.batch_g or sum(one.mass_g for one in taken) or 1.0
    made = batches_made(sum(one.mass_g for one in taken), batch_g)
    before: list[tuple[str, float]] = []
    steps = cream_route(formula.family)
    for index, step in enumerate(steps):
        parts = list(_parts(step, formula, taken, made, batch_g))
        done: list[tuple[str, float]] = []
        reached = 0.0
        for number, grams in enumerate(parts, start=1):
            many = len(parts) > 1
            job = _add_step(
                draft, formula, step, f"{name}: {step.word} {number}",
                taken[0].window, number if many else 0,
            )  # fmt: skip
            reached += grams
            previous = steps[index - 1] if index else None
            _tie(draft, before, job, reached, previous, is_by_hand=step.by_hand)
            if done:
                # Equal pots are made in their order: it does not matter which is first.
                draft.after(done[-1][0], job, -draft.minutes(job))
            done.append((job, reached))
        before = done
    last = steps[-1]
    most = last.gap_most_min if formula.use_min is None else formula.use_min
    reached = 0.0
    for one in taken:
        reached += one.mass_g
        source = _covering(before, reached)
        draft.after(source, one.job, 0, None if most is None else int(most))


def _parts(
    step: Step, formula: PlannedFormula, taken: list[Taken], made: float, batch_g: float
) -> Iterator[float]:
    """Grams of each pot or whipping, so that together they are enough."""
    need = sum(one.mass_g for one in taken)
    if step.per == "whip":
        yield from _whippings(formula, taken, batch_g)
        return
    most = {
        "cook": usual("syrup-batches" if formula.family == "syrup" else "cook-batches").value,
    }.get(step.per, 1.0)
    pots = max(1, math.ceil(made / most - 1e-9))
    total = max(need, made * batch_g)
    yield from (total / pots for _ in range(pots))


def _whippings(formula: PlannedFormula, taken: list[Taken], batch_g: float) -> Iterator[float]:
    """One whipping for as many tortes as its grams and its clock allow."""
    most_g = usual("whip-batches").value * batch_g
    grams, spent = 0.0, 0
    for one in taken:
        late = formula.use_min is not None and spent > formula.use_min
        if grams and (grams + one.mass_g > most_g + 1e-6 or late):
            yield grams
            grams, spent = 0.0, 0
        grams += one.mass_g
        spent += one.minutes
    if grams:
        yield grams


def _add_step(
    draft: Draft, formula: PlannedFormula, step: Step, name: str, window: Window, number: int
) -> str:  # fmt: skip
    uses = ((HANDS,) if step.by_hand else ()) + ((MIXER,) if step.uses == "mixer" else ())
    which = f" {number}" if number else ""
    tight = formula.use_min is not None and step.per == "whip"
    mark = Mark(
        f"{step.word}: {formula.name}{which}", "cream" if step.by_hand else "cool",
        formula.name, window.day, number, cannot_move=tight, status=step.status,
    )  # fmt: skip
    return draft.add(name, math.ceil(step.minutes or 0.0), uses, window, mark)


def _tie(
    draft: Draft, before: list[tuple[str, float]], job: str, reached: float,
    previous: Step | None, *, is_by_hand: bool,
) -> None:  # fmt: skip
    if not before or previous is None:
        return
    most = previous.gap_most_min if is_by_hand else 0.0
    draft.after(_covering(before, reached), job, 0, None if most is None else int(most))


def _covering(done: list[tuple[str, float]], grams: float) -> str:
    """The pot or whipping with which so many grams are reached."""
    return next((job for job, reached in done if reached >= grams - 1e-6), done[-1][0])
