"""What orders take of the shop: planned batches, eggs, and spare whites and yolks."""

from collections.abc import Iterator

from krume.design import Line
from krume.plan import (
    EggsToBuy,
    EggsWanted,
    NeededLine,
    ShoppingRow,
    Spare,
    batches_made,
    egg_good,
    eggs_to_buy,
    shopping,
    spare_eggs,
)
from krume.store import Book
from krume.usecases.asking.answer import Asked
from krume.usecases.eggs.wanted import (
    EggFormula,
    EggsAsked,
    book_takers,
    egg_needs,
    own_takers,
    size_in_play,
)
from krume.usecases.plan.gathered import Gathered
from krume.usecases.plan.kitchen import packs_of
from krume.usecases.torte.build import component

_FREE = frozenset({"water-tap", "water"})


def batches_of(gathered: Gathered, name: str) -> float | None:
    """Batches that are made of a formula: whole cakes, halves or whole pots of a cream."""
    if name in gathered.cakes:
        return float(gathered.cakes[name])
    batch = gathered.formulas[name].batch_g
    need = gathered.needs_g.get(name)
    return None if batch is None or need is None else batches_made(need, batch)


def list_shopping(gathered: Gathered, book: Book) -> tuple[ShoppingRow, ...]:
    """What to buy beside eggs, less what the book says is in the house."""
    turns = {name: turn for turn, name in enumerate([*gathered.cakes, *gathered.needs_g])}
    return shopping(_lines(gathered), packs_of(book), turns)


def _lines(gathered: Gathered) -> Iterator[NeededLine]:
    size = _size(gathered)
    for name, read in gathered.read.items():
        count = batches_of(gathered, name)
        if count is None and name not in gathered.used_by:
            continue
        for line in read.formula.lines:
            if _is_cracked(line, size) or line.ingredient in _FREE:
                continue
            mass = None if line.mass_g is None or count is None else line.mass_g * count
            orders = tuple(gathered.used_by.get(name, ()))
            yield NeededLine(line.name, line.ingredient, mass, name, orders)


def _is_cracked(line: Line, size: str | None) -> bool:
    """Whether a line is bought as eggs: counted ones, and grams where a size is known."""
    good = egg_good(line.ingredient)
    return line.basis == "egg" or (size is not None and good is not None and good[1] == "shell")


def list_eggs(gathered: Gathered) -> tuple[EggsToBuy, ...]:
    """Eggs by count and size."""
    return eggs_to_buy(_eggs(gathered))


def list_spares(gathered: Gathered, asked: Asked) -> tuple[Spare, ...]:
    """What is left of eggs, offered to the order's own formulas, else to those of the book."""
    wanted = _eggs(gathered)
    own = own_takers(_asked(gathered))
    spares = spare_eggs(wanted, own)
    if all(spare.offered_to is not None for spare in spares):
        return spares
    return spare_eggs(wanted, (*own, *book_takers(gathered.formulas, asked)))


def _eggs(gathered: Gathered) -> tuple[EggsWanted, ...]:
    return tuple(
        EggsWanted(need.formula, need.size, need.part, need.count * need.batches)
        for need in egg_needs(_asked(gathered), _size(gathered))
        if need.size is not None and need.count is not None
    )


def _size(gathered: Gathered) -> str | None:
    return size_in_play(_asked(gathered), gathered.asked)


def _asked(gathered: Gathered) -> EggsAsked:
    """The formulas of the orders with their batches, all made in the same days."""
    formulas = []
    for name, read in gathered.read.items():
        made, need_g = batches_of(gathered, name), gathered.needs_g.get(name)
        if made is not None:
            batch_g = gathered.formulas[name].batch_g
            share = 1.0 if need_g is None or not batch_g else need_g / batch_g / made
            part = component(name, read.formula)
            formulas.append(EggFormula(name, read.formula, part, made, share, None))
    return EggsAsked((), tuple(formulas), (), (), (), is_possible=True)
