"""The list on paper: who is to be told of a lot, or what went into a cake; PDF, page, CSV, JSON."""

import csv
import io
import json
import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import replace
from pathlib import Path

from krume.base import unturned
from krume.publish import Fact, Leaf, LeafPart, LeafTable, leaf_html, leaf_pdf, missing_leaf_signs
from krume.store import book_at, place_all, safe_cell, studio_of
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.as_json import plain
from krume.usecases.asking.slug import slug
from krume.usecases.sheets.imprint import imprint_of
from krume.usecases.trace.result import TraceBatch, TraceCake, TraceFile, TraceRecall, TraceResult
from krume.usecases.trace.trace import TraceWish, trace_of

_BLANK = "________"
_LAW = "Your local law and, where one exists, your licensing authority decide."
ENDINGS = ("pdf", "html", "csv", "json")
_RECALL_HEAD = (
    "state", "lot", "ingredient", "lot_code", "what", "title", "pieces", "order", "customer",
    "telephone", "made_on", "handed_on", "why",
)  # fmt: skip
_CAKE_HEAD = (
    "lot_code", "what", "title", "pieces", "order", "customer", "made_on", "handed_on", "formula",
    "batch", "batch_made_on", "ingredient", "lot", "supplier",
)  # fmt: skip
_STATES = {"surely": "surely in it", "not_ruled_out": "not ruled out", "to_come": "not made yet"}


def trace_lists(
    typed: str, wish: TraceWish, asked: Asked, *, out: Path, paper: str = "a4"
) -> Answer[TraceResult]:
    """What a name means, and its list written into a folder; nothing while a question is open."""
    answer = trace_of(typed, wish, asked)
    if answer.problems:
        return answer
    leaf = leaf_of(answer.result, asked)
    stem = f"{slug(answer.result.name)}-{leaf.kind.replace(' ', '-')}"
    files = {f"{stem}.{end}": list_bytes(answer, asked, ending=end, paper=paper) for end in ENDINGS}
    place_all(out, files)
    folder = out.resolve()
    written = tuple(TraceFile(leaf.kind, str(folder / name)) for name in files)
    return replace(
        answer,
        result=replace(answer.result, files=written),
        notices=(*answer.notices, *missing_leaf_signs(leaf)),
    )


def list_bytes(
    answer: Answer[TraceResult], asked: Asked, *, ending: str, paper: str = "a4"
) -> bytes:
    """One format of the list, kept nowhere."""
    if ending == "pdf":
        return leaf_pdf(leaf_of(answer.result, asked), paper)
    if ending == "html":
        return leaf_html(leaf_of(answer.result, asked)).encode()
    if ending == "csv":
        return table_bytes(answer.result)
    return f"{json.dumps(plain(answer.result), ensure_ascii=False, indent=1)}\n".encode()


def table_bytes(result: TraceResult) -> bytes:
    """The list as a table: no cell is a formula to a spreadsheet, no sign of control is in it."""
    out = io.StringIO()
    rows = csv.writer(out, lineterminator="\r\n")
    head, found = _rows(result)
    for cells in (head, *found):
        rows.writerow(safe_cell(_shown(cell)) for cell in cells)
    return out.getvalue().encode("utf-8-sig")


def _shown(cell: str) -> str:
    """Words as one line; a sign of control is left as a mark that something stood there."""
    line = " ".join(unturned(cell).split())
    return "".join("\ufffd" if unicodedata.category(c) in ("Cc", "Cs") else c for c in line)


def _rows(result: TraceResult) -> tuple[Sequence[str], list[tuple[str, ...]]]:
    recall = result.recall
    if recall is None:
        return _CAKE_HEAD, [row for cake in result.cakes for row in _cake_rows(cake)]
    return _RECALL_HEAD, [
        (
            _STATES[state], recall.lot, recall.ingredient or "", cake.code or "", cake.what,
            cake.title, str(cake.pieces), cake.order or "", cake.customer or "",
            cake.telephone or "", cake.made_on or "", cake.handed_on or "", "; ".join(cake.why),
        )
        for state in _STATES
        for cake in getattr(recall, state)
    ]  # fmt: skip


def _cake_rows(cake: TraceCake) -> Iterable[tuple[str, ...]]:
    start = (
        cake.code or "", cake.what, cake.title, str(cake.pieces), cake.order or "",
        cake.customer or "", cake.made_on or "", cake.handed_on or "",
    )  # fmt: skip
    for batch in cake.batches:
        named = (batch.formula, batch.code or "not known", batch.made_on or "not known")
        if not batch.lines:
            yield (*start, *named, "not known", "not known", "not known")
        for line in batch.lines:
            lots = ", ".join(line.lots) or "not known"
            yield (*start, *named, line.ingredient, lots, line.supplier or "not known")


def leaf_of(result: TraceResult, asked: Asked) -> Leaf:
    """The list as a leaf: a recall list of a lot, or a trace sheet of cakes and batches."""
    studio = studio_of(book_at(asked.book))
    imprint = imprint_of(studio, asked, is_of_book=False)
    if studio.invented_note:
        imprint = replace(imprint, notes=(studio.invented_note,))
    kind = "trace sheet" if result.recall is None else "recall list"
    facts, parts = _cakes_part(result) if result.recall is None else _recall_part(result.recall)
    return Leaf(
        kind=kind,
        name=f"{result.title}: {kind}",
        facts=facts,
        parts=(*parts, *_open_part(result)),
        cautions=(*result.cautions, _LAW),
        hold=None,
        imprint=imprint,
    )


def _open_part(result: TraceResult) -> tuple[LeafPart, ...]:
    return (LeafPart("Not known", result.not_known),) if result.not_known else ()


def _recall_part(recall: TraceRecall) -> tuple[tuple[Fact, ...], tuple[LeafPart, ...]]:
    facts = (
        Fact("surely in it", str(len(recall.surely))),
        Fact("not ruled out", str(len(recall.not_ruled_out))),
        Fact("not made yet", str(len(recall.to_come))),
    )
    parts = [
        LeafPart("Verdict", (recall.verdict,), boxed=True),
        LeafPart("One step back", (_back(recall),)),
        *_called("Surely in it: call these first", recall.surely),
        *_called("Not ruled out: call these too", recall.not_ruled_out),
        *_called("Not made yet: take another bag", recall.to_come),
    ]
    if recall.batches:
        parts.append(LeafPart("In the house", tuple(map(_in_house, recall.batches))))
    return facts, tuple(parts)


def _back(recall: TraceRecall) -> str:
    who = recall.supplier or "not known"
    days = f"in the house from {recall.came or 'a day that is not known'}"
    until = "" if recall.used_up is None else f" to {recall.used_up}"
    return f"Supplier: {who}; {days}{until}."


def _in_house(batch: TraceBatch) -> str:
    lines = ", ".join(f"{x.ingredient} {', '.join(x.lots) or 'not known'}" for x in batch.lines)
    return f"{batch.code}, {batch.formula} of {batch.made_on}, in no cake yet: {lines}. Set aside."


def _called(heading: str, cakes: tuple[TraceCake, ...]) -> tuple[LeafPart, ...]:
    if not cakes:
        return ()
    rows = tuple(
        (
            cake.code or "not written",
            f"{cake.pieces} {cake.what}",
            _whom(cake),
            cake.handed_on or "not known",
            "; ".join(cake.why),
            _BLANK,
        )
        for cake in cakes
    )
    table = LeafTable(("lot code", "what", "for whom", "handed over", "why", "told"), rows, wide=4)
    return (LeafPart(heading, table=table),)


def _whom(cake: TraceCake) -> str:
    told = (cake.customer or "not known", cake.telephone, cake.order and f"order {cake.order}")
    return ", ".join(each for each in told if each)


def _cakes_part(result: TraceResult) -> tuple[tuple[Fact, ...], tuple[LeafPart, ...]]:
    facts = (
        Fact("written down", str(len(result.cakes) or len(result.batches))),
        Fact("not known", str(len(result.not_known))),
    )
    parts = [LeafPart(f"{c.code}, {c.pieces} {c.what}", (_forward(c),)) for c in result.cakes]
    batches = {b.code or b.formula: b for cake in result.cakes for b in cake.batches}
    batches |= {batch.code or batch.formula: batch for batch in result.batches}
    return facts, (*parts, *(_batch_part(batch) for batch in batches.values()))


def _forward(cake: TraceCake) -> str:
    state = " It was taken back: never made." if cake.state == "void" else ""
    built = ", ".join(f"{b.formula} {b.code or 'not known'}" for b in cake.batches)
    return (
        f"Made {cake.made_on}, for {_whom(cake)}, handed over {cake.handed_on or 'not known'}. "
        f"Built of {built}.{state}"
    )


def _batch_part(batch: TraceBatch) -> LeafPart:
    heading = (
        f"{batch.code or 'Batch not known'}, {batch.formula} of {batch.made_on or 'not known'}"
    )
    if not batch.lines:
        return LeafPart(heading, ("What went in is not written down.",))
    rows = tuple(
        (x.ingredient, ", ".join(x.lots) or "not known", x.supplier or "not known")
        for x in batch.lines
    )
    return LeafPart(heading, table=LeafTable(("ingredient", "lot", "supplier"), rows, wide=0))
