"""The tortes of a plan: built, chilled, kept cold in their places, and boxed at the end."""

import math
from dataclasses import dataclass, field

from krume.plan.cakes import Wanted, add_cakes
from krume.plan.creams import Taken, add_creams
from krume.plan.days import DAY_MIN, Days, Window, bake_window, build_window
from krume.plan.draft import FRIDGE, HALVES, HANDS, Draft, Mark
from krume.plan.project import Hold, Job
from krume.plan.usual import torte_route, usual, usual_min
from krume.plan.work import Kitchen, PlannedFormula, PlannedTorte, Promise


@dataclass(slots=True)
class _Gathered:
    """What the tortes want of cakes and creams, by the formula's name."""

    cakes: dict[str, list[Wanted]] = field(default_factory=dict)
    creams: dict[str, list[Taken]] = field(default_factory=dict)
    firsts: dict[str, list[tuple[str, str]]] = field(default_factory=dict)


def draft_of(
    promises: tuple[Promise, ...],
    formulas: dict[str, PlannedFormula],
    kitchen: Kitchen,
    days: Days,
) -> Draft:
    """All jobs of several orders, with their ties."""
    draft = Draft(days, kitchen, formulas)
    gathered = _Gathered()
    for promise in sorted(promises, key=lambda one: (one.ready, one.order)):
        _add_promise(draft, promise, gathered)
    for name, wanted in sorted(gathered.cakes.items()):
        at_hand = add_cakes(draft, formulas[name], wanted)
        for torte, first in gathered.firsts[name]:
            draft.after(at_hand[torte], first)
    for name, taken in sorted(gathered.creams.items()):
        add_creams(draft, formulas[name], taken)
    return draft


def _add_promise(draft: Draft, promise: Promise, gathered: _Gathered) -> None:
    before: dict[str, list[str]] = {}
    for torte, count in promise.tortes:
        for number in range(1, count + 1):
            which = f"{promise.order}: {torte.name} {number}"
            words = f"{torte.name} {number}" if count > 1 else torte.name
            chain = _add_torte(draft, promise, torte, (which, words), gathered)
            # Equal tortes are built in their order: it does not matter which is first.
            for earlier, later in zip(before.get(torte.name, []), chain, strict=False):
                draft.after(earlier, later, -draft.minutes(earlier))
            before[torte.name] = chain


def _add_torte(
    draft: Draft,
    promise: Promise,
    torte: PlannedTorte,
    named: tuple[str, str],
    gathered: _Gathered,
) -> list[str]:
    """Jobs of one torte, from the first step to the box."""
    which = named[0]
    build = build_window(promise, draft.days)
    built = _build(draft, promise, torte, named, build)
    box = _box(draft, promise, torte, named)
    if built:
        out = _handed_over(draft, promise, which)
        draft.holds.append(Hold(FRIDGE, places(torte), built[0], out, from_end=True))
        draft.after(built[0], box, _set_min(torte, draft.formulas, is_last=False))
        draft.after(built[-1], box, _set_min(torte, draft.formulas, is_last=True))
    first = built[0] if built else box
    window = bake_window(promise, torte, draft.days)
    for name, count in torte.cakes:
        gathered.cakes.setdefault(name, []).extend(Wanted(which, window) for _ in range(count))
        gathered.firsts.setdefault(name, []).append((which, first))
    made = (use for use in torte.creams if not draft.formulas[use.formula].is_bought)
    for use in made:
        job = built[-1] if use.is_last and built else first
        taken = Taken(job, use.mass_g, draft.minutes(job), build)
        gathered.creams.setdefault(use.formula, []).append(taken)
    return [*built, box]


def _handed_over(draft: Draft, promise: Promise, which: str) -> str:
    """The moment of the hand-over: until then a torte keeps its place in the cold."""
    ready = draft.days.minute(promise.ready)
    mark = Mark("handed over", "handed-over", "", ready // DAY_MIN, is_shown=False)
    name = f"{which}: handed over"
    draft.jobs.append(Job(name, 0, (), release=ready, deadline=ready))
    draft.marks[name] = mark
    return name


def places(torte: PlannedTorte) -> int:
    """Half places of the fridge a torte takes."""
    key = {"roll": "roll-places", "tiers": "tiers-places"}.get(torte.kind, "torte-places")
    return round(usual(key).value * HALVES)


def _build(
    draft: Draft,
    promise: Promise,
    torte: PlannedTorte,
    named: tuple[str, str],
    window: Window,
) -> list[str]:
    which, words = named
    names: list[str] = []
    for step in torte_route(torte.kind):
        mark = Mark(
            f"{step.word}: {words}",
            "build" if step.by_hand else "chill",
            torte.name,
            window.day,
            order=promise.order,
            status=step.status,
        )
        uses = (HANDS,) if step.by_hand else ()
        minutes = math.ceil(step.minutes or 0.0)
        name = draft.add(f"{which}: {step.word}", minutes, uses, window, mark)
        if names:
            draft.after(names[-1], name, 0, None if step.by_hand else 0)
        names.append(name)
    return names


def _box(draft: Draft, promise: Promise, torte: PlannedTorte, named: tuple[str, str]) -> str:
    which, words = named
    ready = draft.days.minute(promise.ready) - usual_min("early-for")
    opens = ready // DAY_MIN * DAY_MIN + draft.kitchen.opens_min
    if ready - opens < usual_min("box") * sum(count for _, count in promise.tortes):
        opens -= DAY_MIN
    opens = max(draft.days.now_min, opens)
    window = Window(opens, ready, ready // DAY_MIN)
    mark = Mark(f"box: {words}", "box", torte.name, window.day, order=promise.order)
    return draft.add(f"{which}: box", usual_min("box"), (HANDS,), window, mark)


def _set_min(torte: PlannedTorte, formulas: dict[str, PlannedFormula], *, is_last: bool) -> int:
    """Minutes cold before the torte may be cut: the hours of the creams that set, at least some."""
    hours = [formulas[use.formula].set_h or 0.0 for use in torte.creams if use.is_last == is_last]
    least = usual_min("last-cold")
    return max([least, *(round(h * 60) for h in hours)])
