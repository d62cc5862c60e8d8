"""Eggs to buy, and the whites and yolks left over, each offered to a formula that takes it."""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from krume.base import as_text
from krume.evidence import Row, column, load, optional
from krume.pantry import egg_size

_COLUMNS = (
    column("key", "key"),
    column("part", "one of", "white", "yolk"),
    column("family", "key"),
    optional("heat_c", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)
_DUST = 1e-9


@dataclass(frozen=True, slots=True)
class EggsWanted:
    """Eggs of all batches of one formula: of which size, which part, how many."""

    formula: str
    size: str
    part: str
    count: float


@dataclass(frozen=True, slots=True)
class Taker:
    """A formula that may take spare whites or yolks.

    `wants_g` is what goes into the order, `made_g` what the batches made take; None where the
    formula is not part of these orders.
    """

    formula: str
    title: str
    family: str
    wants_g: Mapping[str, float]
    made_g: Mapping[str, float]
    is_ordered: bool


@dataclass(frozen=True, slots=True)
class EggsToBuy:
    """Eggs of one size: how many to crack, and for what."""

    size: str
    label: str
    count: int
    formulas: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Spare:
    """A part of eggs left over, and the formula it is offered to; None where none takes it.

    `left_g` is what remains after that.
    """

    size: str
    part: str
    count: float
    mass_g: float
    offered_to: str | None
    wants_g: float | None
    heat_c: float | None
    left_g: float
    status: str
    text: str


def eggs_to_buy(wanted: Sequence[EggsWanted]) -> tuple[EggsToBuy, ...]:
    """Eggs to crack by size; a yolk and a white that are both wanted come from one egg."""
    found = []
    for size in sorted({one.size for one in wanted}):
        ones = [one for one in wanted if one.size == size]
        formulas = tuple(dict.fromkeys(one.formula for one in ones))
        found.append(EggsToBuy(size, egg_size(size).label, _cracked(ones), formulas))
    return tuple(found)


def spare_eggs(wanted: Sequence[EggsWanted], takers: Iterable[Taker]) -> tuple[Spare, ...]:
    """Whites and yolks left over, the ones of the order's own formulas offered first."""
    offered = sorted(takers, key=lambda one: (not one.is_ordered, one.formula))
    found = []
    for size in sorted({one.size for one in wanted}):
        ones = [one for one in wanted if one.size == size]
        apart = _cracked(ones) - _sum(ones, "whole")
        for part in ("white", "yolk"):
            count = apart - _sum(ones, part)
            if count > _DUST:
                found.append(_spare(size, part, count, offered))
    return tuple(found)


def _cracked(ones: Sequence[EggsWanted]) -> int:
    more = max(_sum(ones, "yolk"), _sum(ones, "white"))
    return math.ceil(_sum(ones, "whole") + more - _DUST)


def _sum(ones: Iterable[EggsWanted], part: str) -> float:
    return sum(one.count for one in ones if one.part == part)


@cache
def _uses() -> tuple[Row, ...]:
    return load("spares.csv", _COLUMNS)


def _spare(size: str, part: str, count: float, takers: Sequence[Taker]) -> Spare:
    mass = count * egg_size(size).part_g(part).best
    for taker in takers:
        use = next((r for r in _uses() if _takes(r, part, taker)), None)
        if use is not None:
            return _offered(size, part, (count, mass), taker, use)
    text = f"{_said(count, part)}, {as_text(mass, 1)} g, left over: no formula here takes it."
    return Spare(size, part, count, mass, None, None, None, mass, egg_size(size).status, text)


def _takes(use: Row, part: str, taker: Taker) -> bool:
    fits = use.text("part") == part and use.text("family") == taker.family
    return fits and (not taker.is_ordered or taker.wants_g.get(part, 0.0) > 0)


def _offered(size: str, part: str, left: tuple[float, float], taker: Taker, use: Row) -> Spare:
    count, mass = left
    wants, made = taker.wants_g.get(part), taker.made_g.get(part)
    heat = use.maybe("heat_c")
    text = f"{_said(count, part)}, {as_text(mass, 1)} g, left over: offer to {taker.formula}"
    if wants is not None and made is not None and taker.is_ordered:
        text += f", which wants {as_text(wants, 1)} g ({as_text(made, 1)} g in the batch made)"
    text += f", heated to {as_text(heat)} °C." if heat is not None else f" ({use.text('note')})."
    rest = mass - made if made is not None and taker.is_ordered else mass
    return Spare(
        size, part, count, mass, taker.formula, wants, heat, max(0.0, rest),
        use.text("status"), text,
    )  # fmt: skip


def _said(count: float, part: str) -> str:
    return f"{as_text(count, 2)} {part}{'' if count <= 1 else 's'}"
