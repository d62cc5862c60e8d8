"""Records of the book in the words of an answer: batches with their lots, cakes with their way."""

import re
from collections.abc import Iterable, Mapping

from krume.store import (
    Book,
    KeptBatch,
    KeptCake,
    batch_history,
    batches_now,
    cake_history,
    folder_bytes,
)
from krume.usecases.trace.bags import Bags
from krume.usecases.trace.result import TraceBatch, TraceCake, TraceChange, TraceLine

_TELEPHONE = re.compile(rb"^\s*(?:phone|telephone|tel)\s*:[ \t]*([^\r\n]+)", re.I | re.M)


def line_groups(batch: KeptBatch) -> tuple[TraceLine, ...]:
    """Lines of a batch, the lots of one ingredient together."""
    found: dict[tuple[str, str], list[tuple[str, str]]] = {}
    for lot in batch.lots:
        found.setdefault((lot.ingredient, lot.goods), []).append((lot.lot, lot.supplier))
    return tuple(
        TraceLine(
            ingredient,
            goods,
            tuple(mark for mark, _ in lots if mark),
            ", ".join(dict.fromkeys(who for _, who in lots if who)) or None,
        )
        for (ingredient, goods), lots in found.items()
    )


def batch_shown(batch: KeptBatch, cakes: Iterable[str] = ()) -> TraceBatch:
    """A batch that is written down."""
    return TraceBatch(
        code=batch.code,
        formula=batch.formula,
        title=batch.title,
        made_on=batch.made_on,
        lines=line_groups(batch),
        cakes=tuple(dict.fromkeys(cakes)),
        trial=batch.trial or None,
        state=batch.state,
    )


def bags_shown(bags: Bags, earlier: Iterable[KeptBatch]) -> TraceBatch:
    """A batch as it would be written down."""
    lines = tuple(
        TraceLine(
            line.ingredient,
            line.goods,
            line.taken,
            ", ".join(
                dict.fromkeys(
                    lot.supplier for lot in line.in_house if lot.supplier and lot.mark in line.taken
                )
            )
            or None,
            tuple(lot.mark for lot in line.in_house),
        )
        for line in bags.lines
    )
    return TraceBatch(
        code=None,
        formula=bags.formula,
        title=bags.title,
        made_on=bags.made_on.isoformat(),
        lines=lines,
        earlier=tuple(batch.code for batch in earlier),
    )


def cake_shown(
    cake: KeptCake,
    telephones: Mapping[str, str],
    *,
    why: Iterable[str] = (),
    batches: tuple[TraceBatch, ...] = (),
    history: tuple[TraceChange, ...] = (),
) -> TraceCake:
    """A cake that is written down, one step forward."""
    return TraceCake(
        code=cake.code,
        what=cake.what,
        title=cake.title,
        pieces=cake.pieces,
        made_on=cake.made_on,
        order=cake.order_name or None,
        customer=cake.customer or None,
        telephone=telephones.get(cake.order_name),
        handed_on=cake.handed_on or None,
        why=tuple(dict.fromkeys(why)),
        batches=batches,
        history=history,
        state=cake.state,
    )


def cake_whole(cake: KeptCake, book: Book, telephones: Mapping[str, str]) -> TraceCake:
    """A cake with the batches it was built of, and what was written of it before."""
    chains = {part.batch for part in cake.parts if part.batch}
    now = {each.chain: each for each in batches_now(book, chains=chains)}
    built = tuple(
        batch_shown(now[part.batch])
        if part.batch in now
        else TraceBatch(None, part.formula, part.formula, None, ())
        for part in cake.parts
    )
    return cake_shown(
        cake, telephones, batches=built, history=cake_changes(cake_history(book, cake.chain), book)
    )


def cake_changes(records: tuple[KeptCake, ...], book: Book) -> tuple[TraceChange, ...]:
    """Records of a cake, the newest first; one alone is no history."""
    if len(records) < 2:
        return ()
    chains = {part.batch for record in records for part in record.parts if part.batch}
    codes = {each.chain: each.code for each in batches_now(book, chains=chains)}
    return tuple(
        TraceChange(
            record.at, record.state, record.reason,
            ", ".join(f"{p.formula} {codes.get(p.batch, 'not known')}" for p in record.parts),
        )
        for record in records
    )  # fmt: skip


def batch_changes(batch: KeptBatch, book: Book) -> tuple[TraceChange, ...]:
    """Records of a batch, the newest first; one alone is no history."""
    records = batch_history(book, batch.chain)
    if len(records) < 2:
        return ()
    return tuple(
        TraceChange(
            record.at, record.state, record.reason,
            "; ".join(
                f"{line.ingredient} {', '.join(line.lots) or 'not known'}"
                for line in line_groups(record)
            ),
        )
        for record in records
    )  # fmt: skip


def telephones_of(book: Book, names: Iterable[str]) -> dict[str, str]:
    """Telephone numbers of orders, looked up in their own texts and kept nowhere else."""
    wanted = {name for name in names if name}
    if not wanted:
        return {}
    found: dict[str, str] = {}
    for name, body in folder_bytes(book, "orders").items():
        if name in wanted and (match := _TELEPHONE.search(body)) is not None:
            found[name] = match[1].decode("utf-8", errors="replace").strip()
    return found
