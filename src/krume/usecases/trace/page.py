"""What the pages of tracing show: what is still to be written down, and what was."""

from dataclasses import dataclass
from datetime import date

from krume.base import NotFoundError
from krume.store import (
    KeptBatch,
    KeptCake,
    batch_of_trial,
    batches_called,
    book_at,
    cakes_called,
    cakes_now,
    database_of,
    is_book,
    order_versions,
    recorded_orders,
)
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.clock import today
from krume.usecases.sold.standing import OrderStanding, orders_of
from krume.usecases.trace.bags import Bags, BagsSaid, bags_of
from krume.usecases.trace.house import house_lots
from krume.usecases.trace.record import bags_of_trial, earlier_batches
from krume.usecases.trace.result import TraceCake
from krume.usecases.trace.shown import cake_shown, line_groups, telephones_of

_MOST = 20


@dataclass(frozen=True, slots=True)
class TraceHome:
    """The first page: orders nobody wrote a record for, the last cakes, and the lots by mark."""

    today: date
    has_book: bool
    can_write: bool
    to_write: tuple[OrderStanding, ...]
    more: int
    cakes: tuple[TraceCake, ...]
    marks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class BatchNow:
    """A batch as it stands, as bags to put right; `seen` is the record that was looked at."""

    code: str
    seen: str
    state: str
    bags: Bags


@dataclass(frozen=True, slots=True)
class CakeNow:
    """A cake as it stands, and for each formula the batches it may have been built of."""

    code: str
    seen: str
    state: str
    parts: tuple[tuple[str, str, tuple[str, ...]], ...]


def trace_home(asked: Asked) -> TraceHome:
    """What is still to be written down first: orders that are over, the last ones first."""
    book, day = book_at(asked.book), today(book_at(asked.book), on=asked.on)
    written, versions = recorded_orders(book), order_versions(book)
    due = [
        row
        for row in reversed(orders_of(asked))
        if row.day is not None
        and row.day <= day
        and written.get(row.name) != versions.get(row.name)
    ]
    cakes = cakes_now(book, most=_MOST)
    telephones = telephones_of(book, (cake.order_name for cake in cakes))
    marks = sorted({lot.mark for lot in house_lots(asked)})
    return TraceHome(
        today=day,
        has_book=is_book(book),
        can_write=database_of(book) is not None,
        to_write=tuple(due[:_MOST]),
        more=max(0, len(due) - _MOST),
        cakes=tuple(cake_shown(cake, telephones) for cake in cakes),
        marks=tuple(marks),
    )


def batch_now(code: str, asked: Asked, said: BagsSaid | None = None) -> BatchNow:
    """A batch by its code, with the bags each line may have taken; raises NotFoundError."""
    found = batches_called(book_at(asked.book), code)
    if not found:
        raise NotFoundError(f"No batch is called {code}.", where=code, got=code)
    batch = found[0]
    told = said or _told(batch)
    bags = _bags(batch, asked, told)
    return BatchNow(batch.code, batch.key, batch.state, bags)


def _told(batch: KeptBatch) -> BagsSaid:
    """What the record says, as if it were said now."""
    lots = {line.ingredient: line.lots for line in line_groups(batch)}
    return BagsSaid(made_on=date.fromisoformat(batch.made_on), lots=lots)


def _bags(batch: KeptBatch, asked: Asked, said: BagsSaid) -> Bags:
    """The lines of the record itself: the formula may have changed since."""
    day = said.made_on or date.fromisoformat(batch.made_on)
    pairs = tuple((line.ingredient, line.goods) for line in line_groups(batch))
    return bags_of(batch.formula, batch.title, pairs, day, house_lots(asked), said)


def trial_bags(key: str, asked: Asked, said: BagsSaid | None = None) -> tuple[Bags, str]:
    """The bags of a bake that was written down, and the code of its batch where it has one."""
    there = batch_of_trial(book_at(asked.book), key)
    told = said or (None if there is None else _told(there))
    return bags_of_trial(key, asked, told), "" if there is None else there.code


def cake_now(code: str, asked: Asked) -> CakeNow:
    """A cake by its lot code; raises NotFoundError where there is none."""
    found = cakes_called(book_at(asked.book), code)
    if not found:
        raise NotFoundError(f"No cake has the lot code {code}.", where=code, got=code)
    return CakeNow(found[0].code, found[0].key, found[0].state, _parts(found[0], asked))


def _parts(cake: KeptCake, asked: Asked) -> tuple[tuple[str, str, tuple[str, ...]], ...]:
    parts = []
    for part in cake.parts:
        batches = [b for b in earlier_batches(part.formula, asked) if b.made_on <= cake.made_on]
        code = next((b.code for b in batches if b.chain == part.batch), "")
        parts.append((part.formula, code, tuple(b.code for b in batches)))
    return tuple(parts)
