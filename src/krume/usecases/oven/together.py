"""Several loads in one oven: how much later each is done, and which comes out last."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from statistics import NormalDist

from krume.bake import (
    Around,
    Batter,
    LoadTogether,
    Oven,
    OvenLoad,
    Together,
    oven_air_figures,
    oven_box,
    together,
    warming_kwh,
)
from krume.base import Infeasible, InputError, Interval, Notice, Problem, as_text
from krume.size import Tin
from krume.store import book_at, kitchen_of
from krume.usecases.asking.answer import Answer, Asked, clash_problems
from krume.usecases.asking.sources import source_keys
from krume.usecases.bake.bake import BakeGround, bake_formula, bake_ground
from krume.usecases.bake.result import BakeResult
from krume.usecases.bake.wish import BakeWish
from krume.usecases.oven.together_result import TogetherLoad, TogetherResult

_TENTH = NormalDist().inv_cdf(0.9)
_TOLD_MIN = 0.5
_MOST_TINS = 24


@dataclass(frozen=True, slots=True)
class LoadWish:
    """One load that is wished: a formula, its tin (None is its own), how many, when, its shelf."""

    formula: str
    tin: str | None = None
    tins: int = 1
    in_min: float = 0.0
    rack: str = "middle"


@dataclass(frozen=True, slots=True)
class TogetherWish:
    """The loads in the order they are asked for; the oven is the first one's own, or `oven`.

    `power_w` is what stands on the oven's plate, `gap_cm` the room between tins; None is not said.
    """

    loads: tuple[LoadWish, ...]
    oven: str | None = None
    fan: bool = False
    oven_name: str | None = None
    power_w: float | None = None
    gap_cm: float | None = None


@dataclass(frozen=True, slots=True)
class _Baked:
    """One wished load: its minutes alone, and what it bakes."""

    wish: LoadWish
    alone: Answer[BakeResult]
    ground: BakeGround
    wants_c: float | None


def bakes_together(wish: TogetherWish, asked: Asked) -> Answer[TogetherResult]:
    """Minutes of every load with the others in, or what is asked, or the limit that forbids it."""
    _check(wish)
    baked = _baked(wish, asked)
    problems = tuple(_named(p, each.wish) for each in baked for p in each.alone.problems)
    # What the own oven says of each cake alone is in its minutes, and no news here.
    heard = (n for each in baked for n in each.alone.notices if n.where != "--oven-name")
    notices = tuple(dict.fromkeys(heard))
    keys = [each.alone.sources for each in baked]
    sources = tuple(dict.fromkeys(key for some in keys for key in some))
    known = _bare(wish, baked)
    if problems:
        possible = all(each.alone.is_possible for each in baked)
        return Answer(known, problems, notices, sources, is_possible=possible)
    box = oven_box(power_w=wish.power_w, tins_most=kitchen_of(book_at(asked.book)).tins_per_load)
    oven = _oven(baked)
    found = together(_loads(baked, wish.gap_cm), oven, box, count=0)
    if isinstance(found, Infeasible):
        return Answer(known, clash_problems(found, "loads"), notices, sources, is_possible=False)
    weak = tuple(dict.fromkeys(n for each in found.loads for n in each.notices))
    more = source_keys((*sources, *(f.source for f in oven_air_figures().values())), set())
    result = _result(known, baked, found, warming_kwh(box, oven.temp_c))
    late = _never_done(baked, found)
    said = (*notices, *weak, _assumed())
    return Answer(result, late, said, more, is_possible=not late)


def _never_done(baked: Sequence[_Baked], found: Together) -> tuple[Problem, ...]:
    """The loads that the model does not see done with the others in."""
    text = (
        "{} is not done in 200 minutes with all of this in the oven, and the model ends there. "
        "Bake fewer tins at once, or one load after the other."
    )
    return tuple(
        Problem("limits-clash", "loads", each.wish.formula, text.format(each.wish.formula))
        for each, beside in zip(baked, found.loads, strict=True)
        if not math.isfinite(beside.later_factor)
    )


def _check(wish: TogetherWish) -> None:
    if not wish.loads:
        text = "Name at least one load: a formula, and where it is not its own, the tin."
        raise InputError(text, field="loads", got="none", want="one load or more")
    for load in wish.loads:
        if not 1 <= load.tins <= _MOST_TINS:
            text = f"A load is 1 to {_MOST_TINS} tins."
            raise InputError(text, field="tins", got=f"{load.tins}", want=f"1 to {_MOST_TINS}")
        if not 0 <= load.in_min <= 24 * 60:
            text = "A load goes in at a minute from 0 on, within one day."
            raise InputError(text, field="at", got=f"{load.in_min:g}", want="minutes, 0 or more")
    if wish.power_w is not None and not 200 <= wish.power_w <= 20000:
        text = "The power of an oven is 200 to 20000 W; its plate says it."
        raise InputError(text, field="power", got=f"{wish.power_w:g}", want="200 to 20000 W")


def _baked(wish: TogetherWish, asked: Asked) -> list[_Baked]:
    """Every load alone, in the oven of the one that goes in first."""
    first = min(wish.loads, key=lambda load: load.in_min)
    setting = wish.oven or oven_text(bake_ground(first.formula, _wish(wish, first), asked).oven)
    return [_alone(replace(wish, oven=setting), load, asked) for load in wish.loads]


def _wish(wish: TogetherWish, load: LoadWish) -> BakeWish:
    return BakeWish(
        tin=load.tin, oven=wish.oven, fan=wish.fan, oven_name=wish.oven_name, rack=load.rack
    )  # fmt: skip


def _alone(wish: TogetherWish, load: LoadWish, asked: Asked) -> _Baked:
    asking = _wish(wish, load)
    ground = bake_ground(load.formula, asking, asked)
    own = None if ground.formula.oven is None else ground.formula.oven.temp_c
    other = own is not None and ground.oven is not None and abs(own - ground.oven.temp_c) >= 1
    alone = bake_formula(load.formula, asking, asked)
    return _Baked(load, alone, ground, own if other else None)


def oven_text(oven: Oven | None) -> str | None:
    """An oven as a person types it; None stays None, and is asked about.

    >>> oven_text(Oven(150.0, fan=True)), oven_text(None)
    ('fan 150 C', None)
    """
    if oven is None:
        return None
    return f"{'fan ' if oven.fan else ''}{as_text(oven.temp_c, 1)} C"


def _named(problem: Problem, load: LoadWish) -> Problem:
    return replace(problem, ask=f"{load.formula}: {problem.ask}")


def _oven(baked: Sequence[_Baked]) -> Oven:
    first = min(baked, key=lambda each: each.wish.in_min)
    if first.ground.oven is None:
        raise InputError("The first load has no oven.", field="oven", want="an oven")
    return first.ground.oven


def _loads(baked: Sequence[_Baked], gap_cm: float | None) -> list[OvenLoad]:
    found = []
    for each in baked:
        case = oven_load(each.ground.batter, each.ground.tin, each.wish)
        if case is not None:
            found.append(replace(case, gap_cm=gap_cm))
    return found


def oven_load(batter: Batter | None, tin: Tin | None, wish: LoadWish) -> OvenLoad | None:
    """A load as the model bakes it; None where its batter or tin is not known."""
    if batter is None or tin is None:
        return None
    around = Around(rack=wish.rack)
    return OvenLoad(batter, tin, tins=wish.tins, in_min=wish.in_min, around=around)


def later_minutes(alone: Interval, found: LoadTogether) -> Interval:
    """Minutes alone moved by what the others take; ends go out to whole minutes.

    The doubt of the delay is put beside the doubt there was.
    """
    best, unsure = alone.best * found.later_factor, _TENTH * found.later_ln
    low = best * math.exp(-math.hypot(math.log(alone.best / alone.low), unsure))
    high = best * math.exp(math.hypot(math.log(alone.high / alone.best), unsure))
    # An end never comes sooner because more is in doubt.
    low, high = max(low, alone.low), max(high, alone.high)
    return Interval(math.floor(low + 1e-9), round(best, 1), math.ceil(high - 1e-9))


def _bare(wish: TogetherWish, baked: Sequence[_Baked]) -> TogetherResult:
    """What is known before the loads are put together."""
    first = min(baked, key=lambda each: each.wish.in_min).alone.result
    rows = tuple(
        TogetherLoad(
            formula=each.wish.formula, name=each.alone.result.name, tin=each.alone.result.tin,
            tins=each.wish.tins, in_min=each.wish.in_min, rack=each.wish.rack,
            check_from_min=None, minutes=None,
            alone_min=each.alone.result.minutes, later_min=None, air_c=None, door_c=None,
            heat_pct=None, back_min=None, wants_c=each.wants_c, text="",
        )
        for each in baked
    )  # fmt: skip
    tins = sum(load.tins for load in wish.loads)
    return TogetherResult(first.oven_c, first.fan, tins, rows, None, None, None, "")


def _result(
    known: TogetherResult, baked: Sequence[_Baked], found: Together, warming: float
) -> TogetherResult:
    rows = tuple(
        _row(row, each, beside)
        for row, each, beside in zip(known.loads, baked, found.loads, strict=True)
    )
    last = None if found.last is None else found.last + 1
    return replace(
        known,
        loads=rows,
        last=last,
        oven_kwh=round(found.heater_kwh, 2),
        warming_kwh=round(warming, 2) if math.isfinite(warming) else None,
        text=_summary(rows, last, known.tins),
    )


def _row(row: TogetherLoad, each: _Baked, beside: LoadTogether) -> TogetherLoad:
    alone = each.alone.result.minutes
    minutes = None
    if alone is not None and math.isfinite(beside.later_factor):
        minutes = later_minutes(alone, beside)
    return replace(
        row,
        minutes=minutes,
        check_from_min=None if minutes is None else minutes.low,
        later_min=None if minutes is None or alone is None else round(minutes.best - alone.best, 1),
        air_c=round(beside.short_k, 1),
        door_c=round(beside.door_k, 1),
        heat_pct=round(100 * (1 - beside.heat_factor), 1),
        back_min=None if beside.back_min is None else round(beside.back_min, 1),
        text=delay_text(beside),
    )


def delay_text(found: LoadTogether) -> str:
    """What the others take from a load, in words; empty where it is nothing to speak of."""
    if not math.isfinite(found.later_factor):
        return "With the others in, the model never sees it done."
    if (found.later_factor - 1) * found.alone_min < _TOLD_MIN:
        return ""
    said = []
    if found.short_k >= _TOLD_MIN:
        door = ""
        if found.door_k >= _TOLD_MIN:
            door = f", {as_text(found.door_k, 0)} of it for the door"
        said.append(f"the air about {as_text(max(1.0, found.short_k), 0)} °C lower{door}")
    if found.heat_factor < 0.995:
        said.append(f"{as_text(100 * (1 - found.heat_factor), 0)} % less heat between the tins")
    return " and ".join(said)


def _summary(rows: tuple[TogetherLoad, ...], last: int | None, tins: int) -> str:
    count = "1 tin" if tins == 1 else f"{tins} tins"
    if last is None:
        return f"{count} in one oven: the model does not see all of them done in 200 minutes."
    row = rows[last - 1]
    best = 0.0 if row.minutes is None else row.minutes.best
    clock = as_text(row.in_min + best, 0)
    which = f"load {last}, {row.formula}," if len(rows) > 1 else row.formula
    return f"{count} in one oven: {which} comes out last, likely at {clock} min."


def _assumed() -> Notice:
    return Notice(
        "together-assumed",
        "Oven and shelf are a domestic oven's, assumed: what a second tin does was measured by "
        "nobody here. The first check comes early enough either way.",
    )
