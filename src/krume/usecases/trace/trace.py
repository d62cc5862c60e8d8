"""`trace`: what went into this cake, where that lot went, and writing down which bags were used."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from functools import cache

from krume.base import Notice
from krume.evidence import Row, column, load, optional
from krume.store import (
    KeptBatch,
    KeptCake,
    book_at,
    cakes_of_kind,
    one_look,
    reached_by_batch,
)
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.remembering import Remembered
from krume.usecases.asking.sources import source_keys
from krume.usecases.trace.bags import strange_marks
from krume.usecases.trace.find import Meant, meant_by
from krume.usecases.trace.house import day_notices, is_known
from krume.usecases.trace.recall import recall_of
from krume.usecases.trace.record import Making, earlier_batches, making_of, write_making
from krume.usecases.trace.result import TraceBatch, TraceCake, TraceRecall, TraceResult
from krume.usecases.trace.said import bags_said, lots_answered
from krume.usecases.trace.shown import (
    bags_shown,
    batch_changes,
    batch_shown,
    cake_whole,
    telephones_of,
)

_MOST_SHOWN = 20
_RECALLED: Remembered[TraceRecall] = Remembered(8)
_COLUMNS = (
    column("key", "key"),
    column("text"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
)


@dataclass(frozen=True, slots=True)
class TraceWish:
    """What is wanted beside the name.

    `lots` say which bags went in, `F1 ground hazelnuts=L-008`; `batches` the day or the code of a
    formula's batch, `F1=2027-06-11`; `made_on` the day of the cake. `is_kept` writes it down.
    `ingredient` says what a lot is of.
    """

    lots: tuple[str, ...] = ()
    batches: tuple[str, ...] = ()
    made_on: date | None = None
    is_kept: bool = False
    ingredient: str = ""


def trace_of(typed: str, wish: TraceWish, asked: Asked) -> Answer[TraceResult]:
    """What a name means, and everything that is written down of it."""
    asked, answered = lots_answered(asked)
    ingredient = asked.answer_for("--ingredient") or wish.ingredient
    meant = meant_by(typed, ingredient, asked)
    if meant.kind == "lot":
        answer = _lot(meant, ingredient, asked)
    elif meant.kind == "cake":
        answer = _cakes("cake", meant.name, meant.cakes, asked)
    elif meant.kind == "batch":
        answer = _batches(meant.batches, asked)
    else:
        answer = _text(meant.name, replace(wish, lots=(*wish.lots, *answered)), asked)
    return answer


@cache
def _said() -> dict[str, Row]:
    return {row.text("key"): row for row in load("trace_said.csv", _COLUMNS)}


def _answer(
    result: TraceResult, keys: Iterable[str], notices: Iterable[Notice] = ()
) -> Answer[TraceResult]:
    rows = [_said()[key] for key in keys]
    told = replace(result, cautions=tuple(row.text("text") for row in rows))
    return Answer(
        told, notices=tuple(notices), sources=source_keys(tuple(r.text("source") for r in rows))
    )


def _lot(meant: Meant, ingredient: str, asked: Asked) -> Answer[TraceResult]:
    recall = _RECALLED.of(
        book_at(asked.book), (meant, ingredient, asked), lambda: _recalled(meant, ingredient, asked)
    )
    title = recall.lot if recall.ingredient is None else f"{recall.lot}, {recall.ingredient}"
    result = TraceResult(
        "lot", recall.lot, title, is_written=bool(recall.surely), recall=recall,
        not_known=_not_known_of_lot(recall),
    )  # fmt: skip
    return _answer(result, ("shows", "recall", "person", "law-eu", "law-us"), day_notices(asked))


def _recalled(meant: Meant, ingredient: str, asked: Asked) -> TraceRecall:
    with one_look():
        return recall_of(meant, ingredient, asked)


def _not_known_of_lot(recall: TraceRecall) -> tuple[str, ...]:
    told = []
    if not is_known(recall.ingredient or ""):
        told.append(
            f"What “{recall.ingredient or recall.lot}” is, the pantry does not know: every line "
            "without a lot counts. Name it as your formulas do."
        )
    if recall.supplier is None:
        told.append("Whom it came from is not known: write the supplier into the table of lots.")
    if recall.came is None:
        told.append("Since when it was in the house is not known: no day rules anything out.")
    return tuple(told)


def _cakes(kind: str, name: str, cakes: tuple[KeptCake, ...], asked: Asked) -> Answer[TraceResult]:
    book = book_at(asked.book)
    telephones = telephones_of(book, (cake.order_name for cake in cakes))
    shown = tuple(cake_whole(cake, book, telephones) for cake in cakes)
    title = ", ".join(dict.fromkeys(cake.title for cake in cakes)) or name
    result = TraceResult(
        kind, name, title, is_written=True, cakes=shown, not_known=not_known_in(shown)
    )
    return _answer(result, ("shows", "person", "law-lot"))


def not_known_in(cakes: Iterable[TraceCake]) -> tuple[str, ...]:
    """What the records of cakes leave open, in words."""
    told: list[str] = []
    for cake in cakes:
        for batch in cake.batches:
            if batch.code is None:
                told.append(f"{cake.code}: which batch of {batch.formula} went in is not known.")
            elif open_ones := _open(batch):
                told.append(f"{batch.code}, {batch.formula}: the lot of {open_ones} is not known.")
    return tuple(dict.fromkeys(told))


def _open(batch: TraceBatch) -> str:
    return ", ".join(line.ingredient for line in batch.lines if not line.lots)


def _batches(batches: tuple[KeptBatch, ...], asked: Asked) -> Answer[TraceResult]:
    book = book_at(asked.book)
    shown: list[TraceBatch] = []
    cakes: list[KeptCake] = []
    for batch in batches:
        reached = reached_by_batch(book, batch.chain)
        shown.append(
            replace(
                batch_shown(batch, (cake.code for cake in reached)),
                history=batch_changes(batch, book),
            )
        )
        cakes += reached
    telephones = telephones_of(book, (cake.order_name for cake in cakes))
    result = TraceResult(
        "batch", batches[0].code, batches[0].title, is_written=True, batches=tuple(shown),
        cakes=tuple(cake_whole(cake, book, telephones) for cake in cakes),
    )  # fmt: skip
    return _answer(result, ("shows", "person"))


def _text(name: str, wish: TraceWish, asked: Asked) -> Answer[TraceResult]:
    making = making_of(name, asked, made_on=wish.made_on)
    said = bags_said(making.bags, wish.lots, wish.batches) if making.bags else {}
    making = making_of(name, asked, made_on=wish.made_on, said=said)
    answer = _kept(name, making, asked) if wish.is_kept else _before(name, making, asked)
    return replace(answer, notices=(*answer.notices, *strange_marks(making.bags)))


def _kept(name: str, making: Making, asked: Asked) -> Answer[TraceResult]:
    """Written down, or asked what has to be said first."""
    if making.problems:
        return replace(_before(name, making, asked), problems=making.problems)
    return _after(name, write_making(making, asked) if making.things else (), asked)


def _before(name: str, making: Making, asked: Asked) -> Answer[TraceResult]:
    """What is written down of a text, and what would be."""
    book = book_at(asked.book)
    cakes = making.done if making.order else cakes_of_kind(book, making.read.sold[0].name)
    telephones = telephones_of(book, (cake.order_name for cake in cakes))
    shown = tuple(cake_whole(cake, book, telephones) for cake in cakes[:_MOST_SHOWN])
    proposed = tuple(bags_shown(b, earlier_batches(b.formula, asked)) for b in making.bags)
    result = TraceResult(
        making.read.kind, name, making.read.title, is_written=not making.things, cakes=shown,
        proposed=proposed, not_known=not_known_in(shown),
    )  # fmt: skip
    notices = () if not making.things else (Notice("not-written", _to_write(making)),)
    return _answer(result, ("shows", "person"), (*day_notices(asked), *notices))


def _to_write(making: Making) -> str:
    names = ", ".join(f"{sold.count} {sold.name}" for sold in making.things)
    return (
        f"What went into {names} is not written down. Look at the bags, put right what differs "
        "with --lot, and add --write."
    )


def _after(name: str, written: tuple[KeptCake, ...], asked: Asked) -> Answer[TraceResult]:
    """What is written down, with the codes that were given now."""
    making = making_of(name, asked)
    answer = _before(name, making, asked)
    if not written:
        text = "Everything of it was written down before; nothing was changed."
        return replace(answer, notices=(*answer.notices, Notice("written-before", text)))
    codes = tuple(cake.code for cake in written)
    kept = [cake for cake in answer.result.cakes if cake.code in codes or making.order]
    result = replace(
        answer.result, is_written=True, written=codes, proposed=(), cakes=tuple(kept),
        not_known=not_known_in(kept),
    )  # fmt: skip
    return replace(answer, result=result, notices=day_notices(asked))
