"""Eggs to buy for a plan, and what is left over, with the formula that takes it."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from krume.base import as_text
from krume.pantry import egg_size
from krume.plan.eggs import (
    Cracking,
    EggNeed,
    Taken,
    Taker,
    UsedUp,
    cold_days,
    crack,
    each_g,
    left_over,
    offers,
    use_up,
)

_DUST = 1e-9
_CRUMB_G = 0.05


@dataclass(frozen=True, slots=True)
class EggsWanted:
    """Eggs of all batches of one formula: of which size, which part, how many, for which day."""

    formula: str
    size: str
    part: str
    count: float
    day: int = 0


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

    `left_g` is what remains after the orders' own formulas.
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
    answer = _cracking(wanted)
    found = []
    for size in sorted({one.size for one in wanted}):
        formulas = tuple(dict.fromkeys(one.formula for one in wanted if one.size == size))
        found.append(EggsToBuy(size, egg_size(size).label, answer.count_of(size), formulas))
    return tuple(found)


def spare_eggs(wanted: Sequence[EggsWanted], takers: Iterable[Taker]) -> tuple[Spare, ...]:
    """Whites and yolks left over, the ones of the order's own formulas offered first."""
    answer = _cracking(wanted)
    every = tuple(takers)
    used, taken = use_up(left_over(answer), every)
    more = offers(used, every)
    return tuple(_spare(each, answer, (*taken, *more), every) for each in used)


def _cracking(wanted: Sequence[EggsWanted]) -> Cracking:
    needs = [
        EggNeed(
            one.formula, one.part, one.count * each_g(one.size, one.part),
            size=one.size, count=one.count, day=one.day,
        )
        for one in wanted
        if one.count > _DUST
    ]  # fmt: skip
    found = crack(needs)
    # Every need has a size of its own and the shop has them all: there is always an answer.
    return Cracking((), (), {}, (), proven=True) if found is None else found


def _spare(
    each: UsedUp, answer: Cracking, taken: Sequence[Taken], takers: Sequence[Taker]
) -> Spare:
    loose = each.loose
    own = each.taken_g > _DUST
    fits = [t for t in taken if t.part == loose.part and t.is_ordered == own]
    found = fits[0] if fits else None
    taker = next((t for t in takers if found and t.formula == found.formula), None)
    wants_g = taker.wants_g.get(loose.part) if taker is not None and own else None
    return Spare(
        loose.size,
        loose.part,
        loose.count,
        each.mass_g,
        None if found is None else found.formula,
        wants_g,
        None if found is None else found.use.heat_c,
        each.left_g,
        egg_size(loose.size).status if found is None else found.use.status,
        f"{_left_words(each, answer)}{_taken_words(each, found, wants_g)}",
    )


def _left_words(each: UsedUp, answer: Cracking) -> str:
    """What is left, and why eggs were cracked for it."""
    loose = each.loose
    mass = f"{_parts(loose.count, loose.part)} left, {as_text(each.mass_g, 1)} g"
    other = "yolk" if loose.part == "white" else "white"
    alone = answer.used(loose.size, other) - answer.used(loose.size, loose.part)
    if loose.count < 1:
        return f"{_parts(loose.count, loose.part)}, {as_text(each.mass_g, 1)} g, left"
    if loose.part == "whole" or alone <= _DUST:
        return mass
    apart = answer.count_of(loose.size) - answer.used(loose.size, "whole")
    eggs = apart - answer.used(loose.size, loose.part)
    more = f"{as_text(eggs, 2)} more egg{'' if eggs == 1 else 's'}"
    return f"{_parts(alone, other)} wanted alone: {more}, {mass}"


def _taken_words(each: UsedUp, found: Taken | None, wants_g: float | None) -> str:
    days = f"{cold_days(each.loose.part)} days cold"
    if found is None:
        small = each.loose.count < 1
        return " when the bowl is weighed." if small else ": no formula here takes it."
    if not found.is_ordered:
        return f": {days}, for {found.formula} ({found.use.treated})."
    part_in = "" if wants_g is None else f" ({as_text(wants_g, 1)} g of it goes in)"
    took = f"{found.formula} takes {as_text(each.taken_g, 1)} g{part_in}, {found.use.treated}"
    rest = f" Then {as_text(each.left_g, 1)} g left: {days}, or frozen."
    return f". {took}, in place of pasteurised.{rest if each.left_g > _CRUMB_G else ''}"


def _parts(count: float, part: str) -> str:
    word = {"whole": "egg", "yolk": "yolk", "white": "white"}[part]
    return f"{as_text(count, 2)} {word}{'' if count <= 1 else 's'}"
