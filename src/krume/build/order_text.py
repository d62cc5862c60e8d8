"""Read an order: customer, date, hand-over, how many people, and what. Never raises on text."""

import datetime
import re
from dataclasses import dataclass, field, replace
from decimal import Decimal

from krume.base import Notice, Option, Problem, Read
from krume.build.plain import PlainLine, PlainText, plain_text, unread
from krume.build.when import read_clock, read_date, spelled_day, weekday

_EXAMPLE = "1 T1"
_ASK_LINE = "This line of the order was not understood. Type how many of what, such as: 2 T2"
_LINE = re.compile(
    r"^(?P<count>\d{1,4})\s*(?:x|×|pcs?\.?|pieces? of)?\s+(?:of\s+)?(?P<what>\S.*)$", re.I
)
_GLUED = re.compile(r"^(?P<count>\d{1,4})\s*[x×]\s*(?P<what>\S.*)$", re.I)
_NAME_ONLY = re.compile(r"^\S{1,40}$")
_PEOPLE = re.compile(r"\d{1,5}")
_PRICE = re.compile(
    r"^(?P<before>[^\d\s.,-]*)\s*(?P<digits>\d{1,9}(?:[.,]\d{1,2})?)\s*(?P<after>\D*)$"
)
_DRIVE = re.compile(r"(\d{1,3})\s*(?:minutes?|min)\b[’']?s?\s*(?:drive|by car|away)", re.I)
_BRACKET = re.compile(r"^(\S.*?)\s*\(([^()]*)\)\s*$")
_TOLD = re.compile(r"\btold(?: in writing)?\s*:\s*(.+)", re.I)
_MOST_PEOPLE = 10_000
_MOST_PIECES = 1_000
_WAYS = (("pick-up", "pick-up"), ("pick up", "pick-up"), ("collect", "pick-up"),
         ("deliver", "delivery"), ("post", "post"))  # fmt: skip


@dataclass(frozen=True, slots=True)
class OrderLine:
    """How many of what; `what` is the name of a torte or a formula, `note` what stands in brackets.

    `told` names what the customer was told of in writing: `1 T3 (told in writing: walnut)`.
    """

    read: str
    number: int
    what: str
    count: int
    note: str = ""
    told: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class HandOver:
    """When and how an order changes hands; None is not said, and the words stay as typed."""

    read: str
    time: datetime.time | None = None
    way: str | None = None
    drive_min: float | None = None


@dataclass(frozen=True, slots=True)
class Order:
    """What was promised to whom and when; None is not said.

    `currency` is the sign or word beside the price, or empty. `source_lines` are all lines of the
    text with what each was taken for.
    """

    name: str | None
    lines: tuple[OrderLine, ...] = ()
    customer: str | None = None
    date: datetime.date | None = None
    hand_over: HandOver | None = None
    people: int | None = None
    price: Decimal | None = None
    currency: str = ""
    notes: tuple[str, ...] = ()
    keys: dict[str, str] = field(default_factory=dict)
    source_lines: tuple[PlainLine, ...] = ()


def read_order(text: str) -> Read[Order]:
    r"""Read an order as a person types it; all questions at once, every line kept.

    >>> order = read_order("Order 7\nDate: 2027-06-12\nFor: 14 people\n\n1 T1").value
    >>> order.name, order.date.isoformat(), order.people, order.lines[0].what
    ('Order 7', '2027-06-12', 14, 'T1')
    """
    plain = plain_text(text, what="line of an order", example=_EXAMPLE)
    order = Order(
        plain.name,
        keys={line.key: line.value for line in plain.key_lines()},
        source_lines=plain.lines,
    )
    problems, notices = list(plain.problems), list[Notice]()
    for line in plain.lines:
        found = _taken(order, line)
        order = found[0]
        problems.extend(part for part in found[1:] if isinstance(part, Problem))
        notices.extend(part for part in found[1:] if isinstance(part, Notice))
    problems.extend(_date_missing(order, plain))
    return Read(order, tuple(problems), tuple(notices))


_Taken = tuple[Order, *tuple[Problem | Notice, ...]]


def _taken(order: Order, line: PlainLine) -> _Taken:
    if line.kind == "line":
        return _what(order, line)
    if line.kind != "key":
        return (order,)
    reader = _KEYS.get(line.key)
    if reader is None:
        kept = f"“{line.text}” is kept; nothing is worked out from it."
        return (order, Notice("key-kept", kept, line.where))
    return reader(order, line)


def _what(order: Order, line: PlainLine) -> _Taken:
    match = _GLUED.match(line.text) or _LINE.match(line.text)
    if match is None and _NAME_ONLY.match(line.text) and not line.text[0].isdigit():
        one = OrderLine(line.text, line.number, line.text, 1)
        taken = Notice("one-taken", f"“{line.text}” has no number: 1 is taken.", line.where)
        return (replace(order, lines=(*order.lines, one)), taken)
    if match is None or not 0 < int(match["count"]) <= _MOST_PIECES:
        return (order, unread(line, code="order-line-unread", ask=_ASK_LINE))
    what, note = _without_bracket(match["what"])
    told = _TOLD.search(note)
    words = () if told is None else tuple(w for w in re.split(r",| and ", told[1]) if w.strip())
    found = OrderLine(
        line.text, line.number, what, int(match["count"]), note, tuple(w.strip() for w in words)
    )
    return (replace(order, lines=(*order.lines, found)),)


def _without_bracket(what: str) -> tuple[str, str]:
    match = _BRACKET.match(what)
    return (match[1], match[2]) if match else (what, "")


def _customer(order: Order, line: PlainLine) -> _Taken:
    return (replace(order, customer=line.value or None),)


def _notes(order: Order, line: PlainLine) -> _Taken:
    return (replace(order, notes=(*order.notes, line.value)),)


def _date(order: Order, line: PlainLine) -> _Taken:
    found = read_date(line.value)
    if found is None or not found.candidates:
        no = "No calendar has this day." if found is not None else "There is no date here."
        ask = f"{no} Type year, month and day, such as: Date: Saturday 2027-06-12"
        return (order, Problem("date-unread", line.where, line.text, ask))
    options = tuple(Option(f"{spelled_day(d)}", f"Date: {spelled_day(d)}")
                    for d in found.candidates)  # fmt: skip
    if len(found.candidates) > 1:
        ask = "Which day is it? Day first and month first are both in use."
        return (order, Problem("date-ambiguous", line.where, line.text, ask, options))
    day = found.candidates[0]
    if not found.agrees:
        ask = f"{day.isoformat()} is a {weekday(day)}. Which of the two holds, the day or the date?"
        return (order, Problem("weekday-differs", line.where, line.text, ask, options))
    return (replace(order, date=day),)


def _hand_over(order: Order, line: PlainLine) -> _Taken:
    words = line.value
    said = words.casefold()
    drive = _DRIVE.search(words)
    found = HandOver(
        words,
        read_clock(words),
        next((way for word, way in _WAYS if word in said), None),
        float(drive[1]) if drive else None,
    )
    order = replace(order, hand_over=found)
    if found.time is not None:
        return (order,)
    ask = "At what time is it handed over? Type hours and minutes, such as: Hand-over: 14:00"
    return (order, Problem("time-missing", line.where, line.text, ask))


def _people(order: Order, line: PlainLine) -> _Taken:
    counts = [int(digits) for digits in _PEOPLE.findall(line.value)]
    if len(counts) == 1 and 0 < counts[0] <= _MOST_PEOPLE:
        return (replace(order, people=counts[0]),)
    ask = "For how many people? Type one number, such as: For: 14 people"
    options = tuple(Option(str(n), f"For: {n} people") for n in counts[:4] if 0 < n <= _MOST_PEOPLE)
    return (order, Problem("people-unread", line.where, line.text, ask, options))


def _price(order: Order, line: PlainLine) -> _Taken:
    match = _PRICE.match(line.value)
    if match is None:
        ask = "What is the agreed price? Type one amount, such as: Price: 96.00"
        return (order, Problem("price-unread", line.where, line.text, ask))
    price = Decimal(match["digits"].replace(",", "."))
    currency = (match["before"] or match["after"]).strip()
    return (replace(order, price=price, currency=currency),)


def _kept(order: Order, _: PlainLine) -> _Taken:
    """A key that is read where it is needed, from the order's own keys."""
    return (order,)


_KEYS = {
    "customer": _customer,
    "date": _date,
    "hand-over": _hand_over,
    "handover": _hand_over,
    "for": _people,
    "price": _price,
    "note": _notes,
    "notes": _notes,
    **dict.fromkeys(("diet", "diets", "allergy", "allergies", "allergens"), _notes),
    **dict.fromkeys(("phone", "telephone", "tel"), _kept),
}


def _date_missing(order: Order, plain: PlainText) -> tuple[Problem, ...]:
    if order.date is not None or any(line.key == "date" for line in plain.key_lines()):
        return ()
    ask = "For which day is the order? Type year, month and day, such as: Date: 2027-06-12"
    return (Problem("date-missing", "after line 1", plain.name or "", ask),)
