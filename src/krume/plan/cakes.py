"""The loads of a plan: cakes of one formula and day together, each load with its own foam."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from krume.plan.days import Window
from krume.plan.draft import HANDS, MIXER, OVEN, Draft, Mark
from krume.plan.project import Hold
from krume.plan.usual import Step, cake_route, usual_min
from krume.plan.work import PlannedFormula, cakes_a_load, planned_bake_min

_STEP_OF = {"mixer": "foam", "rack": "cool", "cold": "cool"}


@dataclass(frozen=True, slots=True)
class Wanted:
    """One cake that a torte waits for."""

    torte: str
    window: Window


@dataclass(frozen=True, slots=True)
class _Load:
    """One load: how many cakes, and what its words begin with."""

    formula: PlannedFormula
    number: int
    count: int
    window: Window

    @property
    def name(self) -> str:
        return f"{self.formula.name} load {self.number}"

    def mark(self, words: str, step: str, *, tight: bool = False, status: str = "assumed") -> Mark:
        return Mark(
            words,
            step,
            self.formula.name,
            self.window.day,
            self.number,
            self.count,
            cannot_move=tight,
            status=status,
        )


def add_cakes(draft: Draft, formula: PlannedFormula, wanted: Sequence[Wanted]) -> dict[str, str]:
    """Loads for the cakes wanted; by torte, the job after which its cakes are at hand."""
    at_hand: dict[str, str] = {}
    size = cakes_a_load(formula, draft.kitchen)
    by_window: dict[Window, list[Wanted]] = {}
    for one in wanted:
        by_window.setdefault(one.window, []).append(one)
    number, before = 0, ""
    for window, cakes in sorted(by_window.items(), key=lambda pair: pair[0].day):
        for start in range(0, len(cakes), size):
            part = cakes[start : start + size]
            number += 1
            load = _Load(formula, number, len(part), window)
            into, last = _add_load(draft, load, is_tinned=len(wanted) > size)
            if before:
                draft.after(before, into)
            before = into
            at_hand.update({one.torte: last for one in part})
    return at_hand


def _add_load(draft: Draft, load: _Load, *, is_tinned: bool) -> tuple[str, str]:
    """Jobs of one load; the one that puts it into the oven, and the last."""
    steps = cake_route(load.formula.family)
    last, most, into = "", None, ""
    for index, step in enumerate(steps):
        if step.uses == "oven":
            into, baked = _add_oven(draft, load)
            if is_tinned:
                _add_tin(draft, load, last or into, baked)
            first, end = into, baked
        else:
            tight = step.gap_most_min is not None or step.uses == "mixer"
            first = end = _add_step(draft, load, step, index, tight=tight)
        if last:
            draft.after(last, first, 0, most if step.by_hand or step.uses == "oven" else 0)
        last = end
        most = None if step.gap_most_min is None else int(step.gap_most_min)
    return into, last


def _add_step(draft: Draft, load: _Load, step: Step, index: int, *, tight: bool) -> str:
    uses = ((HANDS,) if step.by_hand else ()) + ((MIXER,) if step.uses == "mixer" else ())
    kind = _STEP_OF.get(step.uses, "kit" if index == 0 else "prepare")
    if kind == "prepare" and _is_after_oven(load, index):
        kind = "wrap"
    own = _own_cooling_min(step, load, index)
    status = step.status if own is None else "declared"
    mark = load.mark(_words(step, load), kind, tight=tight, status=status)
    name = f"{load.name}: {step.word}"
    minutes = _minutes(step, load) if own is None else own
    return draft.add(name, minutes, uses, load.window, mark)


def _own_cooling_min(step: Step, load: _Load, index: int) -> int | None:
    """A cake's own minutes on the rack after the oven, the late end of them; None is the row's."""
    own = load.formula.cool_min
    is_cooling = step.uses == "rack" and _is_after_oven(load, index)
    return math.ceil(own.high) if own is not None and is_cooling else None


def _is_after_oven(load: _Load, index: int) -> bool:
    return any(step.uses == "oven" for step in cake_route(load.formula.family)[:index])


def _minutes(step: Step, load: _Load) -> int:
    times = {
        "cake": load.count,
        "egg": load.count * (load.formula.eggs or 1.0),
    }.get(step.per, 1)
    return math.ceil((step.minutes or 0.0) * times - 1e-9)


def _words(step: Step, load: _Load) -> str:
    name, count = load.formula.name, load.count
    if step.per == "egg":
        eggs = round(load.count * load.formula.eggs)
        return f"separate {eggs} egg{'' if eggs == 1 else 's'} for {name}"
    cakes = name if count == 1 else f"{count} {name}"
    return f"{step.word}: {cakes}"


def _add_oven(draft: Draft, load: _Load) -> tuple[str, str]:
    kitchen, bake = draft.kitchen, load.formula.bake_min
    minutes = 0 if bake is None else planned_bake_min(bake)
    ends = (0, 0) if bake is None else (math.floor(bake.low), math.ceil(bake.high))
    cakes = "1 cake" if load.count == 1 else f"{load.count} cakes"
    # Loads are counted by formula: the name in front keeps two "load 1" of a day apart.
    word = f"{load.formula.name} load {load.number}, {cakes}:"
    into = draft.add(
        f"{load.name}: into the oven", kitchen.load_min, (HANDS, OVEN), load.window,
        load.mark(f"{word} into the oven", "load", tight=True),
    )  # fmt: skip
    baked = draft.add(
        f"{load.name}: bake", minutes, (OVEN,), load.window,
        replace(
            load.mark(f"{word} bake", "bake", tight=True),
            first_check_min=ends[0], latest_out_min=ends[1],
        ),
    )  # fmt: skip
    back = draft.add(
        f"{load.name}: heat back", kitchen.recover_min, (OVEN,), load.window,
        load.mark("the oven heats back", "recover"),
    )  # fmt: skip
    draft.after(into, baked, 0, 0)
    draft.after(baked, back, 0, 0)
    return into, baked


def _add_tin(draft: Draft, load: _Load, filled: str, baked: str) -> None:
    """Tins are taken from the foam until some minutes after the load is out."""
    mark = replace(load.mark("the tin cools", "tin"), is_shown=False)
    free = draft.add(f"{load.name}: tin free", usual_min("tin-after"), (), load.window, mark)
    draft.after(baked, free, 0, 0)
    draft.holds.append(Hold(f"tin {load.formula.tin}", load.count, filled, free))
