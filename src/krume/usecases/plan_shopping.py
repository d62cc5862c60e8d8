"""What orders take of the shop: planned batches, eggs, and spare whites and yolks."""

from collections.abc import Iterator

from krume.design import Formula, Line
from krume.plan import (
    EggsToBuy,
    EggsWanted,
    NeededLine,
    ShoppingRow,
    Spare,
    Taker,
    batches_made,
    eggs_to_buy,
    shopping,
    spare_eggs,
)
from krume.store import Book, book_at, list_texts
from krume.usecases.answer import Asked
from krume.usecases.build import component
from krume.usecases.plan_gathered import Gathered
from krume.usecases.plan_kitchen import packs_of
from krume.usecases.read import formula_of

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
    for name, read in gathered.read.items():
        count = batches_of(gathered, name)
        if count is None and name not in gathered.used_by:
            continue
        for line in read.formula.lines:
            if line.basis == "egg" or line.ingredient in _FREE:
                continue
            mass = None if line.mass_g is None or count is None else line.mass_g * count
            orders = tuple(gathered.used_by.get(name, ()))
            yield NeededLine(line.name, line.ingredient, mass, name, orders)


def list_eggs(gathered: Gathered) -> tuple[EggsToBuy, ...]:
    """Eggs by count and size."""
    return eggs_to_buy(tuple(_eggs(gathered)))


def list_spares(gathered: Gathered, asked: Asked) -> tuple[Spare, ...]:
    """What is left of eggs, offered to the order's own formulas, else to those of the book."""
    wanted = tuple(_eggs(gathered))
    own = tuple(_takers(gathered))
    spares = spare_eggs(wanted, own)
    if all(spare.offered_to is not None for spare in spares):
        return spares
    return spare_eggs(wanted, (*own, *_book_takers(gathered, asked)))


def _eggs(gathered: Gathered) -> Iterator[EggsWanted]:
    for name, read in gathered.read.items():
        count = batches_of(gathered, name)
        for line in read.formula.lines:
            if _is_egg(line) and line.egg_size is not None and count is not None:
                each = float(line.amount)  # type: ignore[arg-type]
                yield EggsWanted(name, line.egg_size, line.part or "whole", each * count)


def _is_egg(line: Line) -> bool:
    counted = isinstance(line.amount, int | float)
    return line.basis == "egg" and counted and line.part in (None, "whole", "white", "yolk")


def _takers(gathered: Gathered) -> Iterator[Taker]:
    """Formulas of the orders that take whites or yolks by weight."""
    for name, read in gathered.read.items():
        made, planned = batches_of(gathered, name), gathered.formulas[name]
        if made is None or planned.family is None:
            continue
        need = gathered.needs_g.get(name)
        factor = made if need is None or not planned.batch_g else need / planned.batch_g
        bought = _bought_g(read.formula)
        yield Taker(
            name,
            planned.title,
            planned.family,
            {part: mass * factor for part, mass in bought.items()},
            {part: mass * made for part, mass in bought.items()},
            is_ordered=True,
        )


def _bought_g(formula: Formula) -> dict[str, float]:
    """Grams of whites and yolks a batch takes that are not cracked for it."""
    grams: dict[str, float] = {}
    for line in formula.lines:
        key = line.ingredient or ""
        part = line.part or next((p for p in ("white", "yolk") if key.startswith(f"egg-{p}")), None)
        if line.basis != "egg" and part in ("white", "yolk") and line.mass_g is not None:
            grams[part] = grams.get(part, 0.0) + line.mass_g
    return grams


def _book_takers(gathered: Gathered, asked: Asked) -> Iterator[Taker]:
    for text in list_texts(book_at(asked.book)):
        if text.kind != "formula" or text.name in gathered.formulas:
            continue
        formula = formula_of(str(text.path), Asked(book=asked.book)).formula
        part = component(text.name, formula)
        if part.family is not None:
            yield Taker(text.name, part.title, part.family, {}, {}, is_ordered=False)
