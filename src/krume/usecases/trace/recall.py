"""Where a lot went: who surely has it, and for whom nothing written down rules it out."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from datetime import date

from krume.base import KrumeError, Option, Problem
from krume.build import Order, read_order
from krume.design import decode_text
from krume.store import (
    Book,
    KeptCake,
    Reached,
    book_at,
    cakes_of_order,
    folder_bytes,
    lot_written,
    not_known_lines,
    not_ruled_out,
    order_versions,
    reached_by_lot,
    reached_by_lots,
    recorded_orders,
    without_batch,
)
from krume.usecases.asking.answer import Asked, QuestionError
from krume.usecases.asking.clock import today
from krume.usecases.sold.product import sold_of
from krume.usecases.trace.find import Meant
from krume.usecases.trace.house import HouseLot, goods_of, may_take, takes
from krume.usecases.trace.result import TraceBatch, TraceCake, TraceLine, TraceRecall
from krume.usecases.trace.shown import cake_shown, telephones_of

_FOLDERS = ("orders", "classes")


@dataclass(frozen=True, slots=True)
class _Found:
    """Lines that speak of a lot, and how many were ruled out by its days in the house."""

    surely: tuple[Reached, ...]
    maybe: tuple[Reached, ...]
    ruled_out: int


def recall_of(meant: Meant, ingredient: str, asked: Asked) -> TraceRecall:
    """Everything a lot reached, and everything that it may have reached."""
    book = book_at(asked.book)
    lot = _lot(meant, ingredient)
    written = None if lot else lot_written(book, meant.name)
    words = ingredient or (lot.ingredient if lot else "") or (written[1] if written else "")
    wanted = lot or HouseLot(meant.name, words, "", None, None)
    found = _lines(book, wanted, words, asked, is_one=len(meant.lots) < 2)
    unwritten, coming, more = _unwritten(book, wanted, words, asked)
    surely = _cakes(found.surely)
    maybe = {key: why for key, why in _cakes(found.maybe).items() if key not in surely}
    names = [*(c.order_name for c, _ in (*surely.values(), *maybe.values()) if c.order_name),
             *(cake.order or "" for cake in (*unwritten, *coming))]  # fmt: skip
    telephones = telephones_of(book, names)
    told = [cake_shown(cake, telephones, why=why) for cake, why in surely.values()]
    open_ones = [cake_shown(cake, telephones, why=why) for cake, why in maybe.values()]
    open_ones += [replace(c, telephone=telephones.get(c.order or "")) for c in unwritten]
    recall = TraceRecall(
        lot=wanted.mark,
        ingredient=words or None,
        supplier=wanted.supplier or _supplier(found.surely),
        came=_iso(wanted.came),
        used_up=_iso(wanted.used_up),
        surely=_latest_first(told),
        not_ruled_out=_latest_first(open_ones),
        to_come=tuple(replace(c, telephone=telephones.get(c.order or "")) for c in coming),
        batches=_in_no_cake(found),
        ruled_out_by_days=found.ruled_out + more,
        verdict="",
    )
    return replace(recall, verdict=_verdict(recall))


def _lot(meant: Meant, ingredient: str) -> HouseLot | None:
    """The lot of the house that is meant; one mark on different goods is asked."""
    goods = goods_of(ingredient)
    fit = [x for x in meant.lots if not ingredient or takes(ingredient, goods, x.ingredient)]
    if len(fit) < 2:
        return fit[0] if fit else None
    options = tuple(Option(f"{lot.mark}, {lot.ingredient}", lot.ingredient) for lot in fit)
    ask = f"{meant.name} stands on {len(fit)} different goods. Which one?"
    raise QuestionError(Problem("lot-twice", "--ingredient", meant.name, ask, options))


def _lines(book: Book, lot: HouseLot, words: str, asked: Asked, *, is_one: bool) -> _Found:
    said = reached_by_lot(book, lot.mark)
    surely = tuple(x for x in said if is_one or may_take(x.ingredient, x.goods, words))
    pairs = [pair for pair in not_known_lines(book) if may_take(*pair, words)]
    open_lines = not_ruled_out(book, pairs)
    maybe = tuple(x for x in open_lines if lot.was_there(date.fromisoformat(x.made_on)))
    contains = _asker(words, asked)
    no_batch = [x for x in without_batch(book) if contains(x.formula)]
    in_time = [x for x in no_batch if not _is_before(x, lot)]
    ruled_out = len(open_lines) - len(maybe) + len(no_batch) - len(in_time)
    return _Found(_followed(book, surely), _followed(book, (*maybe, *in_time)), ruled_out)


def _is_before(line: Reached, lot: HouseLot) -> bool:
    """Whether a cake was finished before the lot came: its batches are no younger."""
    cake = line.cake
    return cake is not None and lot.came is not None and cake.made_on < lot.came.isoformat()


def _followed(book: Book, lines: tuple[Reached, ...]) -> tuple[Reached, ...]:
    """The lines, and those of batches that took one of these batches as their lot."""
    found, seen, new = list(lines), set[str](), {x.batch_code for x in lines if x.batch_code}
    while new:
        seen |= new
        more = reached_by_lots(book, new)
        found += more
        new = {line.batch_code for line in more} - seen
    return tuple(found)


def _cakes(lines: Iterable[Reached]) -> dict[str, tuple[KeptCake, list[str]]]:
    """Cakes of these lines, each once with everything that speaks of it."""
    found: dict[str, tuple[KeptCake, list[str]]] = {}
    for line in lines:
        if line.cake is not None:
            found.setdefault(line.cake.key, (line.cake, []))[1].append(_why(line))
    return found


def _why(line: Reached) -> str:
    if not line.batch_code:
        return f"which batch of {line.formula} went in is not known"
    where = f"in {line.formula}, {line.batch_code} of {line.made_on}"
    if not line.lot:
        return f"the lot of {line.ingredient} {where} is not known"
    return f"{line.lot}, {line.ingredient}, {where}"


def _in_no_cake(found: _Found) -> tuple[TraceBatch, ...]:
    """Batches that went into nothing that is written down: they may stand in the fridge."""
    lines = [x for x in (*found.surely, *found.maybe) if x.cake is None and x.batch_code]
    by_code: dict[str, list[Reached]] = {}
    for line in lines:
        by_code.setdefault(line.batch_code, []).append(line)
    return tuple(
        TraceBatch(
            code, held[0].formula, held[0].formula, held[0].made_on,
            tuple(
                TraceLine(x.ingredient, x.goods, (x.lot,) if x.lot else (), x.supplier or None)
                for x in held
            ),
        )
        for code, held in by_code.items()
    )  # fmt: skip


def _asker(words: str, asked: Asked) -> Callable[[str], bool]:
    """Whether a thing of the book may hold these goods; one that cannot be read may."""
    known: dict[str, bool] = {}

    def contains(what: str) -> bool:
        if what not in known:
            known[what] = _holds(what, words, asked)
        return known[what]

    return contains


def _holds(what: str, words: str, asked: Asked) -> bool:
    try:
        sold = sold_of(what, asked).sold
    except KrumeError:
        return True
    lines = [line for each in sold for f in each.formulas.values() for line in f.lines]
    return not lines or any(
        may_take(" ".join((line.name or line.read).split()), line.ingredient or "", words)
        for line in lines
    )


def _unwritten(
    book: Book, lot: HouseLot, words: str, asked: Asked
) -> tuple[tuple[TraceCake, ...], tuple[TraceCake, ...], int]:
    """Orders nobody wrote a record for: those that are over, those to come, and the ruled out."""
    written, now = recorded_orders(book), today(book, on=asked.on)
    open_names = {n for n, version in order_versions(book).items() if written.get(n) != version}
    contains = _asker(words, asked)
    over: list[TraceCake] = []
    coming: list[TraceCake] = []
    ruled_out = 0
    folders = _FOLDERS if open_names else ()
    bodies = {name: body for each in folders for name, body in folder_bytes(book, each).items()}
    for name in sorted(open_names & set(bodies)):
        order = read_order(decode_text(bodies[name]).value).value
        done = {c.what.casefold() for c in cakes_of_order(book, name)} if name in written else set()
        things = [x for x in order.lines if x.what.casefold() not in done and contains(x.what)]
        if things and order.date is not None and lot.came is not None and order.date < lot.came:
            ruled_out += len(things)
            continue
        is_coming = order.date is not None and order.date > now
        (coming if is_coming else over).extend(
            _unmade(name, order, x.what, x.count) for x in things
        )
    return tuple(over), tuple(coming), ruled_out


def _unmade(name: str, order: Order, what: str, count: int) -> TraceCake:
    day = None if order.date is None else order.date.isoformat()
    return TraceCake(
        None, what, what, count, None, name, order.customer, None, day,
        ("what went in is not written down",),
    )  # fmt: skip


def _latest_first(cakes: Iterable[TraceCake]) -> tuple[TraceCake, ...]:
    """Those handed over last are most likely still there: they are called first."""
    return tuple(
        sorted(cakes, key=lambda c: (c.handed_on or c.made_on or "", c.code or ""), reverse=True)
    )


def _supplier(lines: Iterable[Reached]) -> str | None:
    """Whom a lot came from by the records, where the table of lots does not say it."""
    return ", ".join(dict.fromkeys(line.supplier for line in lines if line.supplier)) or None


def _iso(day: date | None) -> str | None:
    return None if day is None else day.isoformat()


def _verdict(recall: TraceRecall) -> str:
    """The count in words: what is sure, what is open, and what is still to be made."""
    sure, open_ones, coming = map(len, (recall.surely, recall.not_ruled_out, recall.to_come))
    if not sure and not open_ones:
        first = (
            f"No cake that is written down holds {recall.lot}, and none leaves it open. What was "
            "made and never written down, nobody can tell."
        )
    elif not sure:
        first = f"No record names {recall.lot}. For {_many(open_ones)} it cannot be ruled out."
    else:
        more = f" For {_many(open_ones)} more it cannot be ruled out." if open_ones else ""
        first = f"{recall.lot} is in {_many(sure)}.{more}"
    return first + (f" {_many(coming)} still to come would take it." if coming else "")


def _many(count: int) -> str:
    return "1 making" if count == 1 else f"{count} makings"
