"""How each order stands: ready, held, against itself, asked about, or past; one line of each."""

from dataclasses import dataclass, replace
from datetime import date, time

from krume.base import KrumeError, Problem
from krume.build import Order, read_order
from krume.design import decode_text
from krume.store import book_at, folder_bytes
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.clock import today
from krume.usecases.asking.remembering import Remembered, day_key
from krume.usecases.sold.gate import gate_of
from krume.usecases.sold.gluten_words import RECORD_STATES
from krume.usecases.sold.order import OrderJudgement, judge_order
from krume.usecases.sold.papers import papers_of
from krume.usecases.sold.product import SoldRead, sold_of

_FOLDER = "orders"
_GOOD = ("good", "not-needed")
_CONTRADICTS = "diet-contradiction"
_MOST = 500


@dataclass(frozen=True, slots=True)
class OrderStanding:
    """One order of the book, and the one thing that is missing.

    `state` is `ready`, `held`, `against itself`, `asked`, `past` or `no date`; None until it is
    judged. `missing` is said first, `more` is what opens it; `way` is empty where it is not said.
    `shut` are goods whose lot keeps a gate shut that a guest needs open, with how that lot stands.
    """

    name: str
    title: str
    customer: str
    what: str
    day: date | None
    at: time | None
    way: str
    people: int | None
    state: str | None = None
    missing: str = ""
    more: str = ""
    where: str = ""
    shut: tuple[tuple[str, str], ...] = ()


_ROWS: Remembered[tuple[OrderStanding, ...]] = Remembered(4)
_JUDGED: Remembered[OrderStanding] = Remembered(_MOST)


def orders_of(asked: Asked) -> tuple[OrderStanding, ...]:
    """All orders of the book by date, none judged yet but for those that are past."""
    book = book_at(asked.book)
    return _ROWS.of(book, day_key(book, asked), lambda: _rows(asked))


def standing_of(row: OrderStanding, asked: Asked) -> OrderStanding:
    """The same order judged; one that is past stays as it is."""
    return standings_of((row,), asked)[0]


def standings_of(rows: tuple[OrderStanding, ...], asked: Asked) -> tuple[OrderStanding, ...]:
    """The same orders judged, each kept in mind by itself."""
    book = book_at(asked.book)
    day = day_key(book, asked)

    def judged(row: OrderStanding) -> OrderStanding:
        return _JUDGED.of(book, (day, row.name), lambda: _standing(row, asked))

    return tuple(judged(row) if row.state is None else row for row in rows)


def _rows(asked: Asked) -> tuple[OrderStanding, ...]:
    book = book_at(asked.book)
    day = today(book, on=asked.on)
    found = [
        _row(name, read_order(decode_text(data).value).value, day)
        for name, data in folder_bytes(book, _FOLDER).items()
    ]
    return tuple(sorted(found, key=_turn))


def _turn(row: OrderStanding) -> tuple[date, time, str]:
    return (row.day or date.max, row.at or time.max, row.name)


def _row(name: str, order: Order, day: date) -> OrderStanding:
    hand = order.hand_over
    is_past = order.date is not None and order.date < day
    return OrderStanding(
        name=name,
        title=order.name or name,
        customer=order.customer or "",
        what=", ".join(f"{line.count} {line.what}" for line in order.lines),
        day=order.date,
        at=None if hand is None else hand.time,
        way="" if hand is None else hand.way or "",
        people=order.people,
        state="past" if is_past else None,
    )


def _standing(row: OrderStanding, asked: Asked) -> OrderStanding:
    place = f"{_FOLDER}/{row.name}.txt"
    try:
        read = sold_of(place, asked)
        order = read.order or Order(None)
        judged = judge_order(read, order, asked) if read.sold else None
    except KrumeError as error:
        return replace(row, state="asked", missing=error.message, where=error.where or "")
    shut = () if judged is None else _shut(read, judged, asked)
    return replace(_judged(row, read, judged), shut=shut)


def _shut(read: SoldRead, judged: OrderJudgement, asked: Asked) -> tuple[tuple[str, str], ...]:
    """Goods that keep the gluten gate of an order shut, with their lot and how it stands."""
    if not any(finding.verdict == "gate-shut" for finding in judged.findings):
        return ()
    papers = papers_of(asked)
    gates = [gate_of(sold.product, papers, on=read.on, chosen=sold.chosen) for sold in read.sold]
    found = (record for gate in gates for record in gate.records if record.state not in _GOOD)
    return tuple(
        dict.fromkeys(
            (each.ingredient, f"{each.lot or 'no lot'}, {RECORD_STATES[each.state]}")
            for each in found
        )
    )


def _judged(row: OrderStanding, read: SoldRead, judged: OrderJudgement | None) -> OrderStanding:
    """The worst thing first: it contradicts itself, then what is asked, then what holds it."""
    against = () if judged is None else judged.problems
    if judged is not None and any(p.code == _CONTRADICTS for p in against):
        return replace(row, state="against itself", missing=_against(judged), more=against[0].ask)
    asked = (*against, *read.problems)
    if asked or judged is None:
        return _asked(row, asked)
    if judged.holds:
        hold = judged.holds[0]
        return replace(row, state="held", missing=_held(judged), more=f"{hold.text} {hold.opens}")
    return replace(row, state="ready", missing="Nothing stops it")


def _asked(row: OrderStanding, problems: tuple[Problem, ...]) -> OrderStanding:
    if not problems:
        ask = "It says nothing of what is ordered. Type a line such as: 1 T1"
        return replace(row, state="asked", missing="What is ordered?", more=ask)
    first, more = problems[0], len(problems) - 1
    others = f" And {more} more." if more else ""
    missing = "1 question is open" if not more else f"{more + 1} questions are open"
    return replace(row, state="asked", missing=missing, more=first.ask + others, where=first.where)


def _against(judged: OrderJudgement) -> str:
    """What stands against what, in the customer's words: “No nuts” and T3 with walnut."""
    found = next(f for f in judged.findings if f.verdict == "contains")
    return f"“{found.diet.words}” and {found.piece} with {', '.join(found.what)}"


_WHY = {
    "gate-shut": "gate shut",
    "may-contain": "a lot may contain it",
    "unknown": "something is not known",
}


def _held(judged: OrderJudgement) -> str:
    found = next(f for f in judged.findings if f.verdict in _WHY)
    return f"Held: {found.diet.label}, {_WHY[found.verdict]}"
