"""How many batches of each formula an order takes, all its things together."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from krume.base import Infeasible, as_text
from krume.build import Batch
from krume.plan import batches_made
from krume.publish import LeafTable
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.kind import answers_for
from krume.usecases.sheets.result import SheetCheck
from krume.usecases.sold.product import Sold, SoldRead
from krume.usecases.torte.build import torte_of


@dataclass(frozen=True, slots=True)
class OrderBatch:
    """Batches of one formula for an order; None is not known.

    Cakes are made whole, one torte's apart from another's. Creams are put together: a half is
    made where it is enough. Masses of a cake are baked, those of a cream as mixed.
    """

    name: str
    title: str
    kind: str
    needed_g: float | None
    batch_g: float | None
    batches: float | None

    @property
    def over_g(self) -> float | None:
        """What is made beyond what is needed."""
        if self.needed_g is None or self.batch_g is None or self.batches is None:
            return None
        return self.batches * self.batch_g - self.needed_g


def order_batches(read: SoldRead, asked: Asked) -> tuple[OrderBatch, ...]:
    """Batches of each formula of an order, each formula once."""
    found: dict[str, OrderBatch] = {}
    for sold in read.sold:
        for each in _of(sold, asked):
            before = found.get(each.name)
            found[each.name] = each if before is None else _together(before, each)
    return tuple(_made(each) for each in found.values())


def _of(sold: Sold, asked: Asked) -> Iterator[OrderBatch]:
    if sold.product.kind != "torte":
        mass = sold.product.finished_g
        needed = None if mass is None else mass * sold.count
        yield OrderBatch(sold.name, sold.product.name, "cake", needed, mass, float(sold.count))
        return
    name = sold.source or sold.name
    torte = torte_of(name, answers_for(sold.name, asked)).torte
    if not isinstance(torte, Infeasible):
        yield from (_times(batch, sold.count) for batch in torte.batches)


def _times(batch: Batch, count: int) -> OrderBatch:
    return OrderBatch(
        name=batch.name,
        title=batch.title,
        kind=batch.kind,
        needed_g=None if batch.needed_g is None else batch.needed_g * count,
        batch_g=batch.batch_g,
        batches=None if batch.batches is None else batch.batches * count,
    )


def _together(one: OrderBatch, other: OrderBatch) -> OrderBatch:
    return replace(
        one,
        needed_g=_sum(one.needed_g, other.needed_g),
        batches=_sum(one.batches, other.batches),
    )


def _sum(one: float | None, other: float | None) -> float | None:
    return None if one is None or other is None else one + other


def _made(each: OrderBatch) -> OrderBatch:
    """A cream of several tortes is made together."""
    if each.kind == "cake" or each.needed_g is None or not each.batch_g:
        return each
    return replace(each, batches=batches_made(each.needed_g, each.batch_g))


def batch_table(found: tuple[OrderBatch, ...]) -> LeafTable:
    """The batches as a table of the order sheet."""
    head = ("formula", "what", "needed, g", "one batch, g", "batches", "over, g")
    rows = tuple(
        (each.name, each.title, *(_said(x, 1) for x in (each.needed_g, each.batch_g)),
         _said(each.batches, 2), _said(each.over_g, 1))
        for each in found
    )  # fmt: skip
    return LeafTable(head, rows, right=(2, 3, 4, 5), wide=1)


def _said(value: float | None, digits: int) -> str:
    return "not known" if value is None else as_text(value, digits)


def batch_check(found: tuple[OrderBatch, ...]) -> SheetCheck:
    """The batches in one sentence; not judged while one is not known."""
    said = ", ".join(f"{each.name} {_said(each.batches, 2)}" for each in found)
    unknown = [each.name for each in found if each.batches is None]
    text = f"Each card is for one batch, or for the part of one that is needed: {said}."
    return SheetCheck("batches", None if unknown else True, text)
