"""Loads that are in the oven at one time: what a new one does to the minutes of all of them."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime

from krume.bake import LoadTogether, Oven, OvenLoad, oven_box, together
from krume.base import Infeasible, KrumeError, as_text
from krume.usecases.asking.answer import Asked
from krume.usecases.bake.bake import BakeGround, bake_formula, bake_ground
from krume.usecases.bake.wish import BakeWish
from krume.usecases.oven.load import Load
from krume.usecases.oven.together import delay_text, later_minutes, oven_text


@dataclass(frozen=True, slots=True)
class _Case:
    """A load of the book as the model bakes it."""

    load: Load
    case: OvenLoad


def standing_oven(loads: Sequence[Load], asked: Asked) -> str:
    """The oven as it stands for the loads that are in; empty where none of them knows."""
    inside = (load for load in loads if load.out_at is None and load.formula)
    for load in sorted(inside, key=lambda load: load.in_at):
        if load.oven:
            return load.oven
        if load.oven_c is not None:
            return oven_text(_ground_oven(load, asked)) or ""
    return ""


def _ground_oven(load: Load, asked: Asked) -> Oven | None:
    ground = _ground(load, asked)
    return None if ground is None else ground.oven


def _ground(load: Load, asked: Asked) -> BakeGround | None:
    """What a load stands on; None where its formula is in the book no more, or cannot be read."""
    try:
        return bake_ground(_place(load), wish_of(load), asked)
    except KrumeError:
        return None


def _place(load: Load) -> str:
    return f"formulas/{load.formula}.txt"


def wish_of(load: Load) -> BakeWish:
    """The bake of a load, in the oven it stands in."""
    return BakeWish(tin=load.tin or None, oven=load.oven or None)


def timed(load: Load, asked: Asked) -> Load:
    """A load with its minutes as the only tin, or with the words that say why it has none."""
    if not load.formula:
        return replace(load, said="No formula was named, so no minutes are worked out.")
    answer = bake_formula(_place(load), wish_of(load), asked)
    found = answer.result
    said = answer.problems[0].ask if answer.problems else _other_oven(load, asked)
    low = found.check_from_min
    best = None if found.minutes is None else round(found.minutes.best, 1)
    high = None if found.minutes is None else found.minutes.high
    return replace(
        load,
        tin=found.tin or load.tin,
        oven_c=found.oven_c,
        dial_c=None if found.dial is None else found.dial.set_c,
        check_min=low, likely_min=best, latest_min=high,
        alone_check_min=low, alone_likely_min=best, alone_latest_min=high,
        said=said,
    )  # fmt: skip


def _other_oven(load: Load, asked: Asked) -> str:
    """Said where a load stands in an oven its formula does not want."""
    if not load.oven:
        return ""
    own = bake_ground(_place(load), BakeWish(tin=load.tin or None), asked).oven
    here = bake_ground(_place(load), wish_of(load), asked).oven
    if (
        own is None
        or here is None
        or (round(own.temp_c), own.fan) == (round(here.temp_c), here.fan)
    ):
        return ""
    return f"{load.formula} wants {_words(own)}; the oven stands at {_words(here)}."


def _words(oven: Oven) -> str:
    return f"{as_text(oven.temp_c, 0)} °C{' with the fan' if oven.fan else ''}"


def with_neighbours(loads: Sequence[Load], asked: Asked) -> tuple[Load, ...]:
    """The loads that are in, each with its minutes beside the others; unknown ones stay as is.

    Loads that came out while one of these was in still count for their time.
    """
    inside = [load for load in loads if load.out_at is None]
    if not inside:
        return ()
    begin = min(load.in_at for load in inside)
    then = [load for load in loads if load.out_at is not None and load.out_at > begin]
    cases = [each for load in (*inside, *then) if (each := _case(load, begin, asked))]
    tins = sum(each.load.tins for each in cases)
    oven = _ground_oven(min(cases, key=lambda c: c.load.in_at).load, asked) if cases else None
    if oven is None or tins < 2:
        return tuple(_alone_again(load) for load in inside)
    found = together([each.case for each in cases], oven, oven_box(), count=0)
    if isinstance(found, Infeasible):
        return tuple(inside)
    moved = {
        each.load.client_id: _moved(each.load, one)
        for each, one in zip(cases, found.loads, strict=True)
    }
    return tuple(moved.get(load.client_id, load) for load in inside)


def _case(load: Load, begin: str, asked: Asked) -> _Case | None:
    """A load on the clock that begins with the first of them; None has no batter or no minutes."""
    if not load.formula or load.alone is None:
        return None
    ground = _ground(load, asked)
    if ground is None or ground.batter is None or ground.tin is None:
        return None
    first = datetime.fromisoformat(begin)

    def minute(at: str) -> float:
        return (datetime.fromisoformat(at) - first).total_seconds() / 60

    out = None if load.out_at is None else minute(load.out_at)
    case = OvenLoad(ground.batter, ground.tin, load.tins, minute(load.in_at), out)
    return _Case(load, case)


def _alone_again(load: Load) -> Load:
    if load.alone is None:
        return load
    return replace(
        load, check_min=load.alone_check_min, likely_min=load.alone_likely_min,
        latest_min=load.alone_latest_min, why="",
    )  # fmt: skip


def _moved(load: Load, found: LoadTogether) -> Load:
    """A load with the minutes the others leave it, and why."""
    alone = load.alone
    said = [delay_text(found), *(notice.text for notice in found.notices)]
    text = ". ".join(part.rstrip(".") for part in said if part)
    text = text and f"{text[:1].upper()}{text[1:]}."
    if alone is None or found.later_factor == float("inf"):
        return replace(load, why=text)
    minutes = later_minutes(alone, found)
    return replace(
        load, check_min=minutes.low, likely_min=minutes.best, latest_min=minutes.high, why=text
    )
