"""What the pantry stops: orders that a lot, a missing lot or an empty bag stands against."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date

from krume.base import KrumeError
from krume.label import GateRecord, read_diets
from krume.store import book_at
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.remembering import Remembered, day_key
from krume.usecases.plan.gathered import gather
from krume.usecases.plan.kitchen import packs_of, plan_now
from krume.usecases.plan.shopping import list_shopping
from krume.usecases.sold.gate import gate_of
from krume.usecases.sold.gluten_words import RECORD_STATES
from krume.usecases.sold.papers import Papers, papers_of
from krume.usecases.sold.product import Sold, SoldRead, sold_of
from krume.usecases.sold.standing import OrderStanding, orders_of

LOOKED_AT = 12
"""Orders that are looked at, the soonest first: about a month of one person's tortes."""


@dataclass(frozen=True, slots=True)
class OrderStopped:
    """One order that goods stand against: held where a guest's illness asks for the sentence."""

    name: str
    title: str
    day: date | None
    things: tuple[str, ...]
    is_held: bool


@dataclass(frozen=True, slots=True)
class LotStop:
    """Goods whose record closes a gate, with the orders behind it; `lot` is None where none is.

    `state` is one of the states of a record.
    """

    lot: str | None
    ingredient: str
    state: str
    word: str
    text: str
    orders: tuple[OrderStopped, ...]

    @property
    def is_held(self) -> bool:
        """Whether an order waits for it."""
        return any(order.is_held for order in self.orders)


@dataclass(frozen=True, slots=True)
class StockStop:
    """Goods the house has too little of, in grams."""

    item: str
    need_g: float
    stock_g: float
    orders: tuple[str, ...]

    @property
    def short_g(self) -> float:
        """Grams that are missing."""
        return self.need_g - self.stock_g


@dataclass(frozen=True, slots=True)
class Stops:
    """All that stops the next orders; `unread` are those that could not be judged.

    `later` orders were not looked at; `has_stock` says whether the book says what is there.
    """

    lots: tuple[LotStop, ...]
    stock: tuple[StockStop, ...]
    has_stock: bool
    orders: int
    later: int
    unread: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Judged:
    """One order's closed records, each with the thing it is in."""

    order: OrderStopped
    closed: tuple[tuple[str, GateRecord], ...]


_STOCK: Remembered[tuple[StockStop, ...]] = Remembered(8)


def stops_of(asked: Asked) -> Stops:
    """What stops the orders that are still to come, held ones first."""
    coming = [row for row in orders_of(asked) if row.state != "past"]
    looked = coming[:LOOKED_AT]
    papers = papers_of(asked)
    judged, unread = [], []
    for row in looked:
        try:
            judged.append(_judge(row, asked, papers))
        except KrumeError:
            unread.append(row.name)
    names = tuple(each.order.name for each in judged)
    stock = _stock(names, asked)
    return Stops(
        lots=_by_lot(judged),
        stock=stock,
        has_stock=_has_stock(asked),
        orders=len(looked),
        later=len(coming) - len(looked),
        unread=tuple(unread),
    )


def _judge(row: OrderStanding, asked: Asked, papers: Papers) -> _Judged:
    read = sold_of(f"orders/{row.name}.txt", asked)
    order = OrderStopped(row.name, row.title, row.day, (), _asks_for_none(read))
    closed = tuple((sold.name, each) for sold in read.sold for each in _closed(sold, read, papers))
    return _Judged(order, closed)


def _closed(sold: Sold, read: SoldRead, papers: Papers) -> Iterator[GateRecord]:
    """Records that close the gate of one thing on the order's own day."""
    gate = gate_of(sold.product, papers, on=read.on, chosen=sold.chosen)
    return (record for record in gate.records if record.is_closed)


def _asks_for_none(read: SoldRead) -> bool:
    """Whether the order names somebody who must not eat gluten."""
    if read.order is None:
        return False
    lines = ((line.number, line.value or line.text) for line in read.order.source_lines)
    return any(diet.kind == "gluten" for diet in read_diets(lines))


def _by_lot(judged: list[_Judged]) -> tuple[LotStop, ...]:
    found: dict[tuple[str | None, str], LotStop] = {}
    for each in judged:
        for thing, record in each.closed:
            key = (record.lot, "" if record.lot else record.ingredient)
            known = found.get(key) or _stop(record)
            found[key] = replace(known, orders=_with(known.orders, each.order, thing))
    return tuple(sorted(found.values(), key=lambda s: (not s.is_held, s.lot is None, s.lot or "")))


def _stop(record: GateRecord) -> LotStop:
    word = RECORD_STATES[record.state]
    return LotStop(record.lot, record.ingredient, record.state, word, record.text, ())


def _with(
    orders: tuple[OrderStopped, ...], order: OrderStopped, thing: str
) -> tuple[OrderStopped, ...]:
    """The orders with one more thing of an order."""
    known = next((each for each in orders if each.name == order.name), None)
    if known is None:
        return (*orders, replace(order, things=(thing,)))
    things = tuple(dict.fromkeys((*known.things, thing)))
    return tuple(replace(each, things=things) if each is known else each for each in orders)


def _has_stock(asked: Asked) -> bool:
    try:
        packs = packs_of(book_at(asked.book))
    except KrumeError:
        return False
    return any(pack.stock_g is not None for pack in packs.values())


def _stock(names: tuple[str, ...], asked: Asked) -> tuple[StockStop, ...]:
    """Goods of which the house has less than the orders take; only where it says what it has."""
    book = book_at(asked.book)
    if not names or not _has_stock(asked):
        return ()
    try:
        return _STOCK.of(book, day_key(book, asked, *names), lambda: _short(names, asked))
    except KrumeError:
        return ()


def _short(names: tuple[str, ...], asked: Asked) -> tuple[StockStop, ...]:
    book = book_at(asked.book)
    rows = list_shopping(gather(names, asked, plan_now(asked, book, None)), book)
    return tuple(
        StockStop(row.name, row.need_g, row.stock_g, row.stops)
        for row in rows
        if row.need_g is not None and row.stock_g is not None and row.need_g > row.stock_g
    )
