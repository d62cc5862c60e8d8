"""What must be bought or an order stops: shut gates, eggs, what the house has too little of."""

from dataclasses import dataclass

from krume.base import KrumeError, as_text
from krume.label import gluten_gate
from krume.pantry import find
from krume.plan import EggsToBuy, ShoppingRow
from krume.store import book_at
from krume.usecases.answer import Asked
from krume.usecases.gluten_words import RECORD_STATES
from krume.usecases.order import judge_order
from krume.usecases.order_standing import OrderStanding
from krume.usecases.papers import papers_of
from krume.usecases.plan_gathered import Gathered, gather
from krume.usecases.plan_kitchen import plan_now
from krume.usecases.plan_shopping import list_eggs, list_shopping
from krume.usecases.product import sold_of
from krume.usecases.remembering import Remembered, day_key

_GOOD = ("good", "not-needed")


@dataclass(frozen=True, slots=True)
class ToBuy:
    """One thing to buy; what is not known of it is said in words.

    `is_urgent` is False for what the book only does not know the stock of.
    """

    what: str
    need: str
    need_unit: str
    house: str
    buy: str
    buy_unit: str
    stops: tuple[str, ...]
    is_urgent: bool


_LISTS: Remembered[tuple[ToBuy, ...]] = Remembered(8)


def to_buy(rows: tuple[OrderStanding, ...], asked: Asked) -> tuple[ToBuy, ...]:
    """What these orders take beyond what the book says is in the house, what stops them first."""
    book = book_at(asked.book)
    names = tuple(row.name for row in rows if row.day is not None and row.state != "past")
    if not names:
        return ()
    return _LISTS.of(book, day_key(book, asked, names), lambda: _list(names, asked))


def _list(names: tuple[str, ...], asked: Asked) -> tuple[ToBuy, ...]:
    found = _gathered(names, asked)
    shopping = () if found is None else list_shopping(found, book_at(asked.book))
    eggs = () if found is None else list_eggs(found)
    return (
        *_lots_wanted(names, shopping, asked),
        *(_eggs(each, found) for each in eggs if found is not None),
        *sorted(map(_row, shopping), key=lambda each: not each.is_urgent),
    )


def _gathered(names: tuple[str, ...], asked: Asked) -> Gathered | None:
    """All orders together; one that cannot be read is left out, and is said elsewhere."""
    moment = plan_now(asked, book_at(asked.book), None)
    readable = [name for name in names if _is_readable(name, asked)]
    places = tuple(f"orders/{name}.txt" for name in readable)
    return gather(places, asked, moment) if places else None


def _is_readable(name: str, asked: Asked) -> bool:
    try:
        gather((f"orders/{name}.txt",), asked, plan_now(asked, book_at(asked.book), None))
    except KrumeError:
        return False
    return True


def _lots_wanted(
    names: tuple[str, ...], shopping: tuple[ShoppingRow, ...], asked: Asked
) -> tuple[ToBuy, ...]:
    """Goods whose lot has no good record where a guest must not eat gluten, each once."""
    need = {row.ingredient: row.need_g for row in shopping}
    found: dict[str, ToBuy] = {}
    for name in names:
        for ingredient, house in _shut(name, asked):
            before = found.get(ingredient)
            stops = (name,) if before is None else (*before.stops, name)
            grams = need.get(find(ingredient).key)
            found[ingredient] = ToBuy(
                what=f"{ingredient}, tested lot",
                need="not known" if grams is None else as_text(grams, 1),
                need_unit="" if grams is None else "g",
                house=house,
                buy="1",
                buy_unit="pack",
                stops=stops,
                is_urgent=True,
            )
    return tuple(found.values())


def _shut(name: str, asked: Asked) -> tuple[tuple[str, str], ...]:
    """Goods that keep the gluten gate of a held order shut, with how their lot stands."""
    try:
        read = sold_of(f"orders/{name}.txt", asked)
        judged = None if read.order is None else judge_order(read, read.order, asked)
    except KrumeError:
        return ()
    if judged is None or not any(each.verdict == "gate-shut" for each in judged.findings):
        return ()
    papers = papers_of(asked)
    gates = [
        gluten_gate(
            sold.product, papers.lots, papers.cleaning, on=read.on, market="eu",
            chosen=sold.chosen, today=papers.today,
        )
        for sold in read.sold
    ]  # fmt: skip
    return tuple(
        (record.ingredient, f"{record.lot or 'no lot'}, {RECORD_STATES[record.state]}")
        for gate in gates
        for record in gate.records
        if record.state not in _GOOD
    )


def _eggs(eggs: EggsToBuy, found: Gathered) -> ToBuy:
    """Eggs by count; the book does not say how many are in the house."""
    orders = [name for formula in eggs.formulas for name in found.used_by.get(formula, ())]
    return ToBuy(
        what=f"eggs, {eggs.label}",
        need=str(eggs.count),
        need_unit="",
        house="not said",
        buy=str(eggs.count),
        buy_unit="",
        stops=tuple(sorted(set(orders))),
        is_urgent=True,
    )


def _row(row: ShoppingRow) -> ToBuy:
    """A thing by its grams; it is urgent where the book says that there is too little."""
    if row.packs is not None:
        buy, unit = str(row.packs), "pack" if row.packs == 1 else "packs"
    else:
        buy, unit = ("not known", "") if row.buy_g is None else (as_text(row.buy_g, 1), "g")
    return ToBuy(
        what=row.name,
        need="not known" if row.need_g is None else as_text(row.need_g, 1),
        need_unit="" if row.need_g is None else "g",
        house="not said" if row.stock_g is None else f"{as_text(row.stock_g, 1)} g",
        buy=buy,
        buy_unit=unit,
        stops=row.stops,
        is_urgent=row.stock_g is not None,
    )
