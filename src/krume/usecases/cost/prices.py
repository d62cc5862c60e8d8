"""The prices and planned values a cost is worked out with, this request's answers in them."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal
from pathlib import Path

from krume.base import Notice, Option, Problem, read_money
from krume.cost import PLANNED, Missing, Planned, figure, missing_plans
from krume.design import apply_answers, decode_text
from krume.pantry import Price, PriceList, as_line, egg_size_named, old_prices, read_prices
from krume.store import Studio, book_at, prices_of, studio_of
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.clock import now
from krume.usecases.asking.kind import answers_for

PRICES = "prices.csv"
STUDIO = "studio.toml [cost]"
_HEAD = "item,price,per,status"
_FREE = "water"


@dataclass(frozen=True, slots=True)
class CostBook:
    """What a cost needs of the book: prices, planned values, currency, the usual egg."""

    prices: PriceList
    planned: Planned
    currency: str
    usual_egg: str | None
    today: date
    problems: tuple[Problem, ...]
    notices: tuple[Notice, ...]


def cost_book(asked: Asked, beside: Path | None) -> CostBook:
    """The book's prices and planned values; a price list beside a text serves where it has none."""
    book = book_at(asked.book)
    studio = studio_of(book)
    data = prices_of(book, beside)
    decoded = decode_text(data or b"")
    text = decoded.value if decoded.value.strip() else _HEAD
    text = apply_answers(text, answers_for(PRICES, asked).answers)
    read = read_prices(text, eggs_region=studio.eggs_region)
    planned, asked_plans = _planned(studio, asked)
    prices, mixed = _one_currency(read.value, studio.cost.currency)
    return CostBook(
        prices=prices,
        planned=planned,
        currency=studio.cost.currency or prices.currency,
        usual_egg=_usual_egg(studio),
        today=now(studio, on=asked.on).date(),
        problems=(*decoded.problems, *read.problems, *mixed, *asked_plans),
        notices=read.notices,
    )


def for_the_text(asked: Asked) -> Asked:
    """The request with the answers that are meant for its texts, not for prices and plans."""
    beside = (f"{PRICES} ", f"{STUDIO} ")
    return replace(asked, answers=tuple(a for a in asked.answers if not a.startswith(beside)))


def _planned(studio: Studio, asked: Asked) -> tuple[Planned, tuple[Problem, ...]]:
    """Planned values of the book, each replaced by its answer where one is given."""
    cost, problems = studio.cost, list[Problem]()

    def said(name: str, of_book: Decimal | None) -> Decimal | None:
        answer = asked.answer_for(f"{STUDIO} {name}")
        if answer is None:
            return of_book
        amount = _amount(name, answer)
        problems.extend([] if amount is not None else [_plan_unread(name, answer)])
        return amount

    planned = Planned(
        fixed_a_month=said("fixed_a_month", cost.fixed_a_month),
        tortes_a_month=said("tortes_a_month", cost.tortes_a_month),
        own_work_h=said("own_work_h", cost.own_work_h),
        own_work_rate=said("own_work_rate", cost.own_work_rate),
        energy_kwh=said("energy_kwh", cost.energy_kwh),
        boxes=said("boxes", cost.boxes),
        labels=said("labels", cost.labels),
        status=cost.status,
    )
    return planned, tuple(problems)


def _amount(name: str, answer: str) -> Decimal | None:
    money = read_money(answer)
    if money is None or money.currency or (name == "tortes_a_month" and money.amount == 0):
        return None
    return money.amount


def _plan_unread(name: str, answer: str) -> Problem:
    question, number = PLANNED[name]
    ask = f"{question} Type one number, such as: {STUDIO} {name}={number}"
    return Problem("plan-unread", f"{STUDIO} {name}", answer, ask)


def plans_asked(planned: Planned, problems: tuple[Problem, ...]) -> tuple[Problem, ...]:
    """Questions for planned values that nobody has said, and that are not asked already."""
    asked = {problem.where for problem in problems}
    return tuple(
        _plan_missing(name) for name in missing_plans(planned) if f"{STUDIO} {name}" not in asked
    )


def _plan_missing(name: str) -> Problem:
    question, number = PLANNED[name]
    ask = f"{question} Write your own number in {STUDIO}, such as: {name} = {number}"
    return Problem("plan-missing", f"{STUDIO} {name}", "", ask)


def price_asked(missing: Missing, prices: PriceList) -> Problem:
    """Question for a price that is not on the list, with the line to add."""
    example = _line(missing, prices, "1.20", "declared")
    ask = (
        f"What is the price of {missing.item}, {_PER[missing.per]}? Until you say it the cost is "
        f"unknown, not 0. Add a line with your own price to {PRICES}, such as: {example}"
    )
    free = Option("Water from the tap, taken as free", _line(missing, prices, "0.00", "assumed"))
    where = f"{PRICES} after line {prices.lines}"
    options = (free,) if missing.item == _FREE else ()
    return Problem("price-missing", where, missing.read or missing.item, ask, options)


_PER = {"kg": "per kg", "each": "each", "kWh": "per kWh"}


def _line(missing: Missing, prices: PriceList, price: str, status: str) -> str:
    cells = {"item": missing.item, "price": price, "per": missing.per, "status": status}
    return as_line({name: cells.get(name, "") for name in prices.columns}, prices.mark)


def rivals_asked(rivals: tuple[Price, ...], read: str) -> Problem:
    """Question which of several prices that differ serves a line."""
    named = " and ".join(f"{p.item} {p.amount} per {p.per} (line {p.line})" for p in rivals)
    ask = f"“{read}” may be paid as {named}. Name the line as the list does, or take one price out."
    last = rivals[-1]
    out = Option(f"Take {last.item} out", "")
    return Problem("price-of-several", f"{PRICES} line {last.line}", last.item, ask, (out,))


def currency_asked(where: str, read: str, one: str, two: str) -> Problem:
    """Question about money in two currencies, which cannot be added up."""
    ask = f"This is in {one} and the rest in {two}; they cannot be added up. Say all in {two}."
    return Problem("currency-differs", where, read, ask)


def _one_currency(prices: PriceList, currency: str) -> tuple[PriceList, tuple[Problem, ...]]:
    if not (prices.currency and currency and prices.currency != currency):
        return prices, ()
    odd = next(price for price in prices.prices if price.currency)
    asked = currency_asked(f"{PRICES} line {odd.line}", odd.item, prices.currency, currency)
    return replace(prices, prices=()), (asked,)


def _usual_egg(studio: Studio) -> str | None:
    if studio.egg_size is None:
        return None
    sizes = egg_size_named(studio.egg_size, studio.eggs_region)
    return sizes[0].key if len(sizes) == 1 else None


def old_notices(prices: Iterable[Price], book: CostBook) -> tuple[Notice, ...]:
    """Notice for prices whose date lies far back."""
    most = round(figure("price-age").value)
    old = old_prices(prices, book.today, most)
    if not old:
        return ()
    named = ", ".join(f"{p.item} ({p.day})" for p in old)
    text = f"Older than {most} days: {named}. Look whether they still hold."
    return (Notice("price-old", text, PRICES),)
