"""In which order a torte is built: what can be made days ahead, whose hands, what waits."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from krume.base import as_text
from krume.build import ComponentFormula, Torte, working
from krume.design import family
from krume.plan import Step, cream_route, torte_route

_HOUR = 60.0


@dataclass(frozen=True, slots=True)
class AheadRow:
    """What of a torte may be made before the day it is built, and how it waits; None is no rule."""

    name: str
    title: str
    days: float | None
    how: str
    status: str


@dataclass(frozen=True, slots=True)
class OrderStep:
    """One step in its order: minutes of hands or of waiting; None is the formula's own."""

    words: str
    of: str
    minutes: float | None
    by_hand: bool
    status: str


@dataclass(frozen=True, slots=True)
class BuildOrder:
    """The order a torte is built in, as the day's plan takes it.

    `hands_min` and `waits_min` are of building it and of its creams; cakes are not in them.
    """

    ahead: tuple[AheadRow, ...]
    steps: tuple[OrderStep, ...]
    hands_min: float
    waits_min: float
    lines: tuple[str, ...]


def build_order(torte: Torte, parts: Mapping[str, ComponentFormula]) -> BuildOrder:
    """The order of a torte by the routes of the plan, and the hours its creams set."""
    ahead = tuple(_ahead(torte, parts))
    steps = (*_creams(torte, parts), *_building(torte), *_setting(torte, parts))
    hands = sum(step.minutes or 0.0 for step in steps if step.by_hand)
    waits = sum(step.minutes or 0.0 for step in steps if not step.by_hand)
    return BuildOrder(ahead, steps, hands, waits, tuple(_lines(ahead, steps, hands, waits)))


def _ahead(torte: Torte, parts: Mapping[str, ComponentFormula]) -> Iterator[AheadRow]:
    for batch in torte.batches:
        part = parts[batch.name]
        if part.is_goods:
            continue
        kind = working(part.family if batch.kind == "cake" or _is_cream(part) else None)
        yield AheadRow(batch.name, batch.title, kind.ahead_days, kind.ahead_how, kind.status)


def _creams(torte: Torte, parts: Mapping[str, ComponentFormula]) -> Iterator[OrderStep]:
    for batch in torte.batches:
        part = parts[batch.name]
        if batch.kind == "cream":
            own = part.family if _is_cream(part) else None
            yield from (_step(step, batch.name) for step in cream_route(own))


def _is_cream(part: ComponentFormula) -> bool:
    return part.family is not None and family(part.family).kind == "cream"


def _building(torte: Torte) -> Iterator[OrderStep]:
    yield from (_step(step, "") for step in torte_route(torte.kind))


def _step(step: Step, of: str) -> OrderStep:
    return OrderStep(step.word, of, step.minutes, step.by_hand, step.status)


def _setting(torte: Torte, parts: Mapping[str, ComponentFormula]) -> Iterator[OrderStep]:
    kinds = [working(parts[batch.name].family) for batch in torte.batches]
    setting = [kind for kind in kinds if kind.set_h is not None]
    if not setting:
        return
    longest = max(setting, key=lambda kind: kind.set_h or 0.0)
    minutes = (longest.set_h or 0.0) * _HOUR
    yield OrderStep("cold before it is cut", "", minutes, by_hand=False, status=longest.status)


def _lines(
    ahead: tuple[AheadRow, ...], steps: tuple[OrderStep, ...], hands: float, waits: float
) -> Iterator[str]:
    for days in sorted({row.days for row in ahead if row.days}, reverse=True):
        rows = [row for row in ahead if row.days == days]
        many = "a day" if days == 1 else f"{as_text(days)} days"
        said = ", ".join(f"{row.title} ({row.how})" for row in rows)
        yield f"Up to {many} ahead: {said}"
    same_day = [row for row in ahead if row.days == 0]
    if same_day:
        said = ", ".join(f"{row.title} ({row.how})" for row in same_day)
        yield f"On the day it is built: {said}"
    unknown = [row.title for row in ahead if row.days is None]
    if unknown:
        yield f"How far ahead is not known: {', '.join(unknown)}"
    for of in dict.fromkeys(step.of for step in steps):
        mine = [step for step in steps if step.of == of]
        yield f"{of or 'Then the torte'}: {' · '.join(_words(step) for step in mine)}"
    yield (
        f"Hands {as_text(hands, 0)} min and waiting {as_text(waits / _HOUR, 1)} h beside the "
        "cakes; the plan of an order puts them on the clock"
    )


def _words(step: OrderStep) -> str:
    if step.minutes is None:
        return step.words
    wait = "" if step.by_hand else "wait, "
    if step.minutes >= 2 * _HOUR:
        return f"{wait}{step.words} {as_text(step.minutes / _HOUR, 1)} h"
    return f"{wait}{step.words} {as_text(step.minutes, 0)} min"
