"""What an order needs anew when some of it was thrown away, and by when that must be begun."""

import math
from collections.abc import Mapping
from datetime import datetime, time, timedelta

from krume.base import Infeasible
from krume.build import Torte, working
from krume.design import Formula, family
from krume.plan import (
    Kitchen,
    Step,
    cake_route,
    cream_route,
    planned_bake_min,
    torte_route,
    usual_min,
)
from krume.usecases.asking.answer import Asked
from krume.usecases.keep.fridge_result import FridgeGrams, FridgeRemake
from krume.usecases.sold.product import Sold, families_of
from krume.usecases.torte.build import torte_of

_DAY = timedelta(days=1)


def remake_of(sold: Sold, lost: frozenset[str] | None, asked: Asked) -> FridgeRemake:
    """What of a thing is made anew: all of a torte that stood there whole, or only lost formulas.

    `lost` None is the whole of it.
    """
    torte = _torte(sold, asked)
    kinds = families_of(sold)
    names = [name for name in sold.formulas if lost is None or name in lost]
    each = [_formula_min(sold.formulas[name], kinds.get(name)) for name in names]
    grams = tuple(FridgeGrams(name, _grams(name, sold, torte)) for name in names)
    return FridgeRemake(
        name=sold.name,
        title=sold.product.name,
        count=sold.count,
        formulas=grams,
        work_min=_sum([*each, _build_min(torte) * sold.count]),
        wait_min=_wait_min(torte, kinds),
    )


def begin_by(
    remakes: tuple[FridgeRemake, ...], ready: datetime, kitchen: Kitchen
) -> datetime | None:
    """Latest moment to begin, the work of all after one another and inside the working hours."""
    work = _sum([each.work_min for each in remakes])
    if work is None or not remakes:
        return None
    wait = max(each.wait_min for each in remakes)
    end = ready - timedelta(minutes=usual_min("box") * sum(each.count for each in remakes) + wait)
    while True:
        opens, closes = _hours_of(end, kitchen)
        if end < opens:
            end = closes - _DAY
            continue
        end = min(end, closes)
        room = (end - opens).total_seconds() / 60
        if work <= room:
            return end - timedelta(minutes=work)
        work -= room
        end = closes - _DAY


def _hours_of(moment: datetime, kitchen: Kitchen) -> tuple[datetime, datetime]:
    """When the work of a moment's day may begin and ends."""
    midnight = datetime.combine(moment.date(), time(), moment.tzinfo)
    opens, closes = (timedelta(minutes=m) for m in (kitchen.begins_min, kitchen.closes_min))
    return midnight + opens, midnight + max(closes, opens + timedelta(hours=1))


def _torte(sold: Sold, asked: Asked) -> Torte | None:
    if sold.product.kind != "torte":
        return None
    made = torte_of(sold.source or sold.name, asked)
    return None if isinstance(made.torte, Infeasible) else made.torte


def _formula_min(formula: Formula, kind: str | None) -> float | None:
    """Minutes of one batch, each step of its route after the other."""
    if kind is not None and family(kind).kind == "cream":
        return _minutes(cream_route(kind), None)
    bake = None if formula.bake_min is None else float(planned_bake_min(formula.bake_min))
    counts = (
        line.amount
        for line in formula.lines
        if line.unit == "each" and isinstance(line.amount, float)
    )
    return _minutes(cake_route(kind), bake, eggs=math.fsum(counts))


def _minutes(steps: tuple[Step, ...], bake_min: float | None, eggs: float = 0.0) -> float | None:
    """Minutes of a route one step after another; None where the oven's are not known."""
    each = [
        bake_min
        if step.uses == "oven"
        else (step.minutes or 0.0) * (max(eggs, 1.0) if step.per == "egg" else 1.0)
        for step in steps
    ]
    return _sum(each)


def _build_min(torte: Torte | None) -> float:
    """Minutes of building one torte; a cake or a cream alone has none."""
    if torte is None:
        return 0.0
    return math.fsum(step.minutes or 0.0 for step in torte_route(torte.kind))


def _wait_min(torte: Torte | None, kinds: Mapping[str, str | None]) -> float:
    """Minutes cold before it may be cut: the hours of the creams that set, at least some."""
    if torte is None:
        return 0.0
    hours = [60 * (working(kind).set_h or 0.0) for kind in kinds.values()]
    return max([*hours, float(usual_min("last-cold"))])


def _grams(name: str, sold: Sold, torte: Torte | None) -> float | None:
    """Grams of a formula for all of them: what the tortes take, or whole batches of itself."""
    if torte is not None:
        batch = next((each for each in torte.batches if each.name == name), None)
        needed = None if batch is None else batch.needed_g
        return None if needed is None else needed * sold.count
    total = _sum([line.mass_g for line in sold.formulas[name].lines])
    return None if total is None else total * sold.count


def _sum(values: list[float | None]) -> float | None:
    known = [value for value in values if value is not None]
    return math.fsum(known) if len(known) == len(values) else None
