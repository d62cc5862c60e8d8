"""What it costs, what to ask for it, and how many a month pay the fixed costs."""

from dataclasses import dataclass, replace
from decimal import Decimal

from krume.base import Money, Notice, Problem, currency_named, read_money
from krume.cost import (
    Component,
    Heads,
    Missing,
    Offer,
    component,
    figure,
    heads,
    missing_beside,
    offer,
    price_for_margin,
)
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.kind import own_answers
from krume.usecases.asking.sources import source_keys
from krume.usecases.asking.text import text_of
from krume.usecases.cost.prices import (
    CostBook,
    cost_book,
    currency_asked,
    for_the_text,
    old_notices,
    plans_asked,
    price_asked,
    rivals_asked,
)
from krume.usecases.cost.result import CostResult, Worked, cost_result
from krume.usecases.cost.said import cost_notices
from krume.usecases.cost.sold import Sold, sold_of
from krume.usecases.sold.order import order_notices
from krume.usecases.sold.product import sold_of as things_sold

_PRICE, _MARGIN, _SLICES = "--price", "--margin", "--slices"
_WHOLE_PCT = 100
_MOST_SLICES = 10_000


@dataclass(frozen=True, slots=True)
class CostWish:
    """What is wished of a cost, as typed; None is not said."""

    price: str | None = None
    margin: str | None = None
    slices: str | None = None


def cost_of(name: str, wish: CostWish, asked: Asked) -> Answer[CostResult]:
    """Cost of a formula, a torte or an order, and what a price for it means."""
    sold, book = _sold(name, asked)
    wanted = _wanted(wish, asked, sold, book)
    parts = tuple(component(need, book.prices) for need in sold.needs)
    came_to = _heads(parts, book, sold)
    basis, made = _offered(wanted, came_to, book, sold)
    missing = _missing(parts, book, sold)
    worked = Worked(
        sold=sold,
        components=parts,
        heads=came_to,
        planned=book.planned,
        offer=made,
        price_basis=basis,
        margin_pct=wanted.margin_pct,
        slices=wanted.slices or sold.slices,
        currency=wanted.currency,
        missing=tuple(dict.fromkeys(each.item for each in missing)),
    )
    return Answer(
        cost_result(worked),
        _problems(worked, book, wanted, missing),
        (*_of_order(name, sold, asked), *_notices(worked, book)),
        source_keys(sold.sources, ("krume",)),
        is_possible=sold.is_possible,
    )


def _of_order(name: str, sold: Sold, asked: Asked) -> tuple[Notice, ...]:
    """What stops or holds an order of the book is said beside its price too."""
    inner = for_the_text(asked)
    if sold.kind != "order" or not sold.is_whole or text_of(name, own_answers(inner)).kind is None:
        return ()
    return order_notices(things_sold(name, inner), asked)


def _heads(parts: tuple[Component, ...], book: CostBook, sold: Sold) -> Heads:
    """Heads of what is sold; of an order that is not read whole none is known."""
    if sold.kind == "order" and not sold.is_whole:
        return Heads(None, None, None, None, None)
    paid = parts if sold.is_whole else ()
    return heads(paid, book.planned, book.prices, tortes=sold.tortes)


def _sold(name: str, asked: Asked) -> tuple[Sold, CostBook]:
    """What is sold, and the book's prices; the list may lie beside the text itself."""
    inner = for_the_text(asked)
    source = text_of(name, own_answers(inner))
    book = cost_book(asked, source.path if source.kind is None else None)
    return sold_of(name, inner, usual_egg=book.usual_egg), book


@dataclass(frozen=True, slots=True)
class _Wanted:
    """The wish as read: a price or None, a margin, slices, and the one currency."""

    price: Decimal | None
    basis: str
    margin_pct: Decimal
    slices: tuple[int, ...]
    currency: str
    problems: tuple[Problem, ...]


def _wanted(wish: CostWish, asked: Asked, sold: Sold, book: CostBook) -> _Wanted:
    price, basis, asked_price = _price(asked.answer_for(_PRICE) or wish.price, sold, book)
    margin, asked_margin = _margin(asked.answer_for(_MARGIN) or wish.margin)
    slices, asked_slices = _slices(asked.answer_for(_SLICES) or wish.slices)
    return _Wanted(
        price=None if price is None else price.amount,
        basis=basis,
        margin_pct=margin,
        slices=slices,
        currency=book.currency or ("" if price is None else price.currency),
        problems=(*asked_price, *asked_margin, *asked_slices),
    )


def _price(
    typed: str | None, sold: Sold, book: CostBook
) -> tuple[Money | None, str, tuple[Problem, ...]]:
    """The price given, else the one agreed in the order."""
    if typed is not None:
        money = read_money(typed)
        if money is None or money.amount <= 0:
            ask = "For what price? Type one amount above 0, such as: --price 96.00"
            return None, "given", (Problem("price-unread", _PRICE, typed, ask),)
        return _in_currency(money, "given", _PRICE, typed, book)
    order = sold.order
    if order is None or order.price is None or order.price <= 0:
        return None, "margin", ()
    agreed = Money(order.price, currency_named(order.currency))
    line = next((x for x in order.source_lines if x.key == "price"), None)
    where = "FILE" if line is None else line.where
    return _in_currency(agreed, "agreed", where, "" if line is None else line.text, book)


def _in_currency(
    money: Money, basis: str, where: str, read: str, book: CostBook
) -> tuple[Money | None, str, tuple[Problem, ...]]:
    if not money.currency or not book.currency or money.currency == book.currency:
        return money, basis, ()
    return None, basis, (currency_asked(where, read, money.currency, book.currency),)


def _margin(typed: str | None) -> tuple[Decimal, tuple[Problem, ...]]:
    usual = Decimal(str(figure("margin").value))
    if typed is None:
        return usual, ()
    read = read_money(typed.strip().removesuffix("%"))
    if read is not None and not read.currency and read.amount < _WHOLE_PCT:
        return read.amount, ()
    ask = (
        "Which margin? It is the share of the price that is left after the full cost: type a "
        "number from 0 to below 100, such as: --margin 30"
    )
    return usual, (Problem("margin-unread", _MARGIN, typed, ask),)


def _slices(typed: str | None) -> tuple[tuple[int, ...], tuple[Problem, ...]]:
    if typed is None:
        return (), ()
    digits = typed.strip()
    if digits.isascii() and digits.isdigit() and 0 < int(digits[:6]) <= _MOST_SLICES:
        return (int(digits),), ()
    ask = "Into how many slices is it cut? Type one whole number, such as: --slices 14"
    return (), (Problem("slices-unread", _SLICES, typed, ask),)


def _offered(
    wanted: _Wanted, came_to: Heads, book: CostBook, sold: Sold
) -> tuple[str, Offer | None]:
    """The offer at the price wanted, else at the one for the margin; unknown is None."""
    price, basis = wanted.price, wanted.basis
    if price is None and basis == "margin" and came_to.full is not None:
        price = price_for_margin(came_to.full, wanted.margin_pct)
    if price is None:
        return "unknown", None
    return basis, offer(price, came_to, book.planned, tortes=sold.tortes)


def _missing(parts: tuple[Component, ...], book: CostBook, sold: Sold) -> tuple[Missing, ...]:
    """Prices that are wanted and not on the list, each once."""
    wanted = [costed.missing for each in parts for costed in each.lines]
    beside = missing_beside(book.planned, book.prices) if sold.tortes else ()
    found = {each.item: each for each in (*wanted, *beside) if each is not None}
    return tuple(found.values())


def _problems(
    worked: Worked, book: CostBook, wanted: _Wanted, missing: tuple[Missing, ...]
) -> tuple[Problem, ...]:
    if not worked.sold.is_possible:
        return worked.sold.problems
    plans = plans_asked(book.planned, book.problems) if worked.sold.tortes else ()
    rivals = [
        rivals_asked(costed.rivals, costed.line.read)
        for each in worked.components
        for costed in each.lines
        if costed.rivals
    ]
    prices = [price_asked(each, book.prices) for each in missing]
    return tuple(
        dict.fromkeys(
            (*worked.sold.problems, *wanted.problems, *book.problems, *plans, *rivals, *prices)
        )
    )


def _currency_taken(currency: str, book: CostBook) -> tuple[Notice, ...]:
    """Prices without a currency are taken to be in that of the price asked."""
    if not currency or book.currency:
        return ()
    text = f"The book says no currency: {currency} is taken for all of it."
    return (Notice("currency-taken", text),)


def _notices(worked: Worked, book: CostBook) -> tuple[Notice, ...]:
    of_lines = [
        replace(notice, where=f"{each.need.name} {notice.where}")
        for each in worked.components
        for costed in each.lines
        for notice in costed.notices
    ]
    prices = [c.line.price for each in worked.components for c in each.lines]
    taken = _currency_taken(worked.currency, book)
    old = old_notices((price for price in prices if price is not None), book)
    return tuple(
        dict.fromkeys(
            (*worked.sold.notices, *taken, *book.notices, *of_lines, *old, *cost_notices(worked))
        )
    )
