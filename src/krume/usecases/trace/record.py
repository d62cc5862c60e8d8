"""Writing down what went into the cakes of an order, and putting a wrong record right."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from hashlib import blake2b
from types import MappingProxyType

from krume.base import ConflictError, InputError, NotFoundError, Problem
from krume.design import Formula
from krume.store import (
    KeptBatch,
    KeptCake,
    KeptPart,
    batch_of_trial,
    batches_called,
    batches_now,
    book_at,
    cakes_called,
    cakes_of_kind,
    cakes_of_order,
    keep_made,
    order_versions,
    trial_at,
)
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.clock import today
from krume.usecases.asking.kind import PROMISES
from krume.usecases.asking.read import formula_of
from krume.usecases.sold.product import Sold, SoldRead, sold_of
from krume.usecases.trace.bags import (
    Bags,
    BagsSaid,
    bag_problems,
    bags_of,
    check_marks,
    kept_batch,
    lines_of,
    marks_said,
)
from krume.usecases.trace.house import house_lots

REASON_LIMIT = 400
_EARLIER = 12
_NOTHING: Mapping[str, BagsSaid] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Making:
    """What is to be written down for a name: the things still without a record, their batches."""

    read: SoldRead
    order: str
    made_on: date
    things: tuple[Sold, ...]
    done: tuple[KeptCake, ...]
    bags: tuple[Bags, ...]
    problems: tuple[Problem, ...]


def making_of(
    name: str, asked: Asked, *, made_on: date | None = None, said: Mapping[str, BagsSaid] = _NOTHING
) -> Making:
    """What would be written down for an order, a class, a torte or a formula."""
    book, read = book_at(asked.book), sold_of(name, asked)
    order = _order_name(read, name)
    done = tuple(cake for cake in cakes_of_order(book, order) if cake.state == "made")
    written = {cake.what for cake in done}
    things = tuple(sold for sold in _merged(read.sold) if not order or sold.name not in written)
    day = made_on or _day(read, asked)
    house = house_lots(asked)
    formulas: dict[str, Formula] = {}
    for sold in things:
        formulas |= dict(sold.formulas)
    chosen = frozenset[str]().union(*(sold.chosen for sold in things))
    bags = tuple(
        bags_of(
            what,
            title_of(formula),
            lines_of(formula),
            day,
            house,
            replace(said.get(what, BagsSaid()), named=chosen),
        )
        for what, formula in formulas.items()
    )
    problems = bag_problems(bags) if read.sold else read.problems
    return Making(read, order, day, things, done, bags, problems)


def title_of(formula: Formula) -> str:
    """The name on a formula's first line, as one line."""
    return " ".join((formula.name or "").split())


def _order_name(read: SoldRead, name: str) -> str:
    """The short name of a text that promises something; nothing for a torte or a formula."""
    if read.kind not in PROMISES:
        return ""
    return name.rpartition("/")[2].removesuffix(".txt")


def _merged(sold: Iterable[Sold]) -> tuple[Sold, ...]:
    """Two lines of one thing are one making of it."""
    found: dict[str, Sold] = {}
    for each in sold:
        known = found.get(each.name)
        count = each.count + (0 if known is None else known.count)
        found[each.name] = replace(each, count=count)
    return tuple(found.values())


def _day(read: SoldRead, asked: Asked) -> date:
    """The book's day; nothing is made after it was handed over."""
    now = today(book_at(asked.book), on=asked.on)
    order = read.order
    return now if order is None or order.date is None else min(now, order.date)


def write_making(
    making: Making, asked: Asked, *, before: str | None = None
) -> tuple[KeptCake, ...]:
    """Write the batches and cakes of a making down, all or none.

    `before` is the code of the last making there was when it was looked at (`last_code`): the
    same making sent twice is kept once, while a torte may be made again on one day.
    """
    book, house = book_at(asked.book), house_lots(asked)
    check_days(making, today(book, on=asked.on))
    check_marks(making.bags)
    start = _key(making, last_code(making, asked) if before is None else before)
    batches, chains = [], {}
    for bags in making.bags:
        if bags.batch or bags.is_unknown:
            chains[bags.formula] = _chain(bags, asked)
            continue
        kept = kept_batch(bags, f"{start}-{bags.formula}", house)
        batches.append(kept)
        chains[bags.formula] = kept.key
    cakes = [_cake(sold, making, chains, f"{start}-{sold.name}", asked) for sold in making.things]
    return keep_made(book, batches, cakes)[1]


def check_days(making: Making, now: date) -> None:
    """Refuse a day that is still to come, and a part that is younger than its torte."""
    if making.made_on > now:
        raise _refused(f"{making.made_on} is still to come. Write it down once it is made.")
    late = next((b for b in making.bags if not b.batch and b.made_on > making.made_on), None)
    if late is not None and not late.is_unknown:
        raise _refused(
            f"{late.formula} cannot be of {late.made_on}: it went into a cake of {making.made_on}."
        )


def _refused(why: str) -> InputError:
    return InputError(why, field="made", want="a day that is over, 2027-06-10")


def _chain(bags: Bags, asked: Asked) -> str:
    """The chain of the earlier batch that was named by its code; nothing where nobody knows."""
    if bags.is_unknown:
        return ""
    found = [b for b in batches_called(book_at(asked.book), bags.batch) if b.state == "made"]
    if not found:
        raise NotFoundError(
            f"No batch is called {bags.batch}. Type its code as written, such as B270611-1, or a "
            "day to write down a new one.",
            field="batch",
            got=bags.batch,
        )
    if found[0].formula != bags.formula:
        raise InputError(
            f"{found[0].code} is a batch of {found[0].formula}, not of {bags.formula}.",
            field="batch",
            got=bags.batch,
            want=f"a batch of {bags.formula}",
        )
    return found[0].chain


def _cake(
    sold: Sold, making: Making, chains: Mapping[str, str], key: str, asked: Asked
) -> KeptCake:
    order = making.read.order
    handed = "" if order is None or order.date is None else order.date.isoformat()
    return KeptCake(
        key=key,
        what=sold.name,
        title=sold.product.name,
        pieces=sold.count,
        made_on=making.made_on.isoformat(),
        parts=tuple(KeptPart(what, chains[what]) for what in sold.formulas),
        order_name=making.order,
        order_revision=order_versions(book_at(asked.book)).get(making.order, 0),
        customer="" if order is None else order.customer or "",
        handed_on=handed,
    )


def last_code(making: Making, asked: Asked) -> str:
    """Code of the last making of a torte that no order asked for; nothing for an order."""
    if making.order or not making.things:
        return ""
    found = cakes_of_kind(book_at(asked.book), making.things[0].name)
    return found[0].code if found else ""


def _key(making: Making, before: str) -> str:
    codes = [cake.code for cake in making.done]
    bags = [
        (b.formula, b.made_on, b.batch, b.is_unknown, [(x.ingredient, x.taken) for x in b.lines])
        for b in making.bags
    ]
    names = [(sold.name, sold.count) for sold in making.things]
    said = repr((making.order, making.made_on, names, bags, codes, before))
    return blake2b(said.encode(), digest_size=8).hexdigest()


def earlier_batches(formula: str, asked: Asked) -> tuple[KeptBatch, ...]:
    """Batches of a formula that a cake may be built of, the newest first."""
    found = batches_now(book_at(asked.book), formula=formula, most=_EARLIER)
    return tuple(batch for batch in found if batch.state == "made")


def bags_of_trial(key: str, asked: Asked, said: BagsSaid | None = None) -> Bags:
    """The batch of a bake that was written down at the bench, with the bags it may have taken."""
    trial = trial_at(book_at(asked.book), key)
    if trial is None:
        raise NotFoundError("The book has no such trial.", where=key, got=key)
    name = trial.place.partition("/")[2].removesuffix(".txt")
    formula = formula_of(trial.place, asked).formula
    day = date.fromisoformat(trial.at)
    return bags_of(name, title_of(formula), lines_of(formula), day, house_lots(asked), said)


def write_trial_batch(key: str, bags: Bags, asked: Asked) -> KeptBatch:
    """Write down which bags went into a bake; a second time corrects the first."""
    book = book_at(asked.book)
    there = batch_of_trial(book, key)
    if there is not None:
        return correct_batch(there.code, bags, asked, seen=there.key, reason="")
    check_marks([bags])
    kept = kept_batch(bags, f"trial-{key}", house_lots(asked), trial=key)
    return keep_made(book, [kept])[0][0]


def correct_batch(
    code: str, bags: Bags, asked: Asked, *, seen: str, reason: str, is_void: bool = False
) -> KeptBatch:
    """A new record in place of the one that was seen, which stays in the history.

    The same said again changes nothing. Raises ConflictError where it was corrected meanwhile, and
    InputError where a mark is of something else, but for a batch that is taken back.
    """
    if not is_void:
        check_marks([bags])
    book = book_at(asked.book)
    was = next((each for each in batches_called(book, code) if each.key == seen), None)
    if was is None:
        message = "This batch was corrected since you opened it. Nothing was written; look again."
        raise ConflictError(message, where=code)
    new = kept_batch(bags, "new", house_lots(asked), trial=was.trial)
    state = "void" if is_void else "made"
    if (new.lots, new.made_on, state) == (was.lots, was.made_on, was.state):
        return was
    said = _reason(reason)
    key = _corrected(seen, repr((new.lots, new.made_on, state, said)))
    kept = replace(new, key=key, state=state, reason=said, replaces=seen)
    return keep_made(book, [kept])[0][0]


def correct_cake(
    code: str,
    asked: Asked,
    *,
    seen: str,
    parts: Mapping[str, str],
    reason: str,
    is_void: bool = False,
) -> KeptCake:
    """A new record of a cake: other batches by their codes, or that it was never made."""
    book = book_at(asked.book)
    was = next((each for each in cakes_called(book, code) if each.key == seen), None)
    if was is None:
        message = "This cake was corrected since you opened it. Nothing was written; look again."
        raise ConflictError(message, where=code)
    told = tuple(KeptPart(p.formula, _said_chain(p, parts, asked)) for p in was.parts)
    state = "void" if is_void else "made"
    if (told, state) == (was.parts, was.state):
        return was
    said = _reason(reason)
    key = _corrected(seen, repr((told, state, said)))
    new = replace(was, key=key, parts=told, state=state, reason=said, replaces=seen)
    return keep_made(book, [], [new])[1][0]


def _said_chain(part: KeptPart, parts: Mapping[str, str], asked: Asked) -> str:
    """The batch that was named for a part; what was not named stays."""
    if part.formula not in parts:
        return part.batch
    marks = marks_said(parts[part.formula])
    if not marks:
        return ""
    day = today(book_at(asked.book), on=asked.on)
    return _chain(Bags(part.formula, "", day, (), marks[0]), asked)


def _reason(text: str) -> str:
    return " ".join(text.split())[:REASON_LIMIT]


def _corrected(seen: str, said: str) -> str:
    mark = blake2b(f"{seen}{said}".encode(), digest_size=8).hexdigest()
    return f"{seen.partition('~')[0]}~{mark}"
