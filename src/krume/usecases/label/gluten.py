"""Can somebody with coeliac disease eat it: the gluten page of a formula, a torte or an order."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from typing import TypeVar

from krume.label import (
    GatePaper,
    GateRecord,
    GlutenGate,
    RoomStanding,
    lots_in_use,
    statement,
)
from krume.pantry import ClaimRule, claim_rule
from krume.store import book_at, studio_of
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.sources import source_keys
from krume.usecases.label.gluten_result import (
    GlutenLot,
    GlutenPaper,
    GlutenPiece,
    GlutenResult,
    GlutenRoom,
)
from krume.usecases.label.gluten_said import (
    LOCAL,
    VERDICTS,
    aloud,
    grains_in,
    not_proven,
    paper_words,
    printed_words,
    proofs,
    told,
    verdict_of,
    warning,
)
from krume.usecases.label.weighed import read_as_weighed
from krume.usecases.sold.gate import gate_of
from krume.usecases.sold.gluten_words import RECORD_STATES
from krume.usecases.sold.order import order_notices
from krume.usecases.sold.papers import Papers, papers_of
from krume.usecases.sold.product import Sold, SoldRead, sold_of

Each = TypeVar("Each")
_CAUTIONS = (
    "Shared sieves, wooden spoons and flour in the air are the usual leaks (common practice).",
    LOCAL,
)


@dataclass(frozen=True, slots=True)
class GlutenWish:
    """By whose rule, and made on which day."""

    market: str | None = None
    made: date | None = None


@dataclass(frozen=True, slots=True)
class _Judged:
    """One thing with its gate and the gluten grains that it declares."""

    sold: Sold
    gate: GlutenGate
    grains: tuple[str, ...]


def gluten_of(name: str, wish: GlutenWish, asked: Asked) -> Answer[GlutenResult]:
    """Say whether somebody with coeliac disease can eat it, lot by lot, and what is missing."""
    read = read_as_weighed(sold_of(name, asked), asked)
    papers = papers_of(asked)
    rule = claim_rule(wish.market or studio_of(book_at(asked.book)).market or "eu")
    judged = tuple(_judged(each, read, papers, rule, wish) for each in read.sold)
    keys = frozenset(
        lot.key
        for each in read.sold
        for used in each.product.used
        for lot in lots_in_use(used, papers.lots, each.chosen)
    )
    return Answer(
        _result(read, rule, judged),
        (*read.problems, *papers.problems_of(keys)),
        (*read.notices, *order_notices(read, asked), *papers.notices_beside(keys)),
        source_keys(read.sources, (rule.source,)),
        is_possible=read.is_possible,
    )


def _judged(
    sold: Sold, read: SoldRead, papers: Papers, rule: ClaimRule, wish: GlutenWish
) -> _Judged:
    gate = gate_of(
        sold.product, papers, on=read.on, market=rule.market, chosen=sold.chosen,
        made=wish.made, names=(sold.name,),
    )  # fmt: skip
    said = statement(
        sold.product, papers.lots, market="eu", chosen=sold.chosen, sheets=papers.sheets
    )
    return _Judged(sold, gate, grains_in(said))


def _result(read: SoldRead, rule: ClaimRule, judged: tuple[_Judged, ...]) -> GlutenResult:
    pieces = tuple(_piece(each, rule) for each in judged)
    gates = [each.gate for each in judged]
    allowed = bool(pieces) and all(each.claim_allowed for each in pieces)
    worst = min((each.verdict for each in pieces), key=VERDICTS.index, default="no")
    said = [told(each.sold.product.name, each.gate, each.grains) for each in judged]
    sentence = gates[0].sentence if allowed else None
    return GlutenResult(
        name=read.title,
        kind=read.kind,
        market=rule.market,
        on=read.on.isoformat(),
        rule=rule.rule,
        limit=rule.words if rule.is_judged else rule.why,
        verdict=worst,
        aloud=aloud(said, rule),
        claim_allowed=allowed,
        sentence=sentence,
        printed=printed_words(allowed, sentence, rule),
        missing=_lots_first(name for each in pieces for name in each.missing),
        opens=_lots_first(text for each in pieces for text in each.opens),
        not_proven=not_proven(gates, rule),
        proofs=proofs(paper for gate in gates for r in gate.records for paper in r.papers),
        pieces=pieces,
        room=_once(_room(each) for gate in gates[:1] for each in gate.room),
        notes=_once(note for gate in gates for note in gate.notes),
        cautions=_CAUTIONS,
        files=(),
    )


def _piece(judged: _Judged, rule: ClaimRule) -> GlutenPiece:
    gate, product = judged.gate, judged.sold.product
    opens = dict(zip(gate.missing, gate.opens, strict=True))
    shown = [record for record in gate.records if record.state != "not-needed"]
    return GlutenPiece(
        name=judged.sold.name,
        title=product.name,
        verdict=verdict_of(gate, judged.grains),
        aloud=aloud([told(product.name, gate, judged.grains)], rule),
        claim_allowed=gate.claim_allowed and not judged.grains,
        missing=gate.missing,
        opens=gate.opens,
        lots=_once(_lot(record, opens) for record in shown),
        needs_none=_once(
            record.ingredient for record in gate.records if record.state == "not-needed"
        ),
        most_ppm=gate.most_ppm,
        known_ppm=gate.known_ppm,
        warning=warning(gate, rule),
        finished=_once(_lot(record, opens) for record in gate.finished),
    )


def _lot(record: GateRecord, opens: dict[str, str]) -> GlutenLot:
    return GlutenLot(
        lot=record.lot,
        ingredient=record.ingredient,
        state=record.state,
        word=RECORD_STATES[record.state],
        text=record.text,
        opens=opens.get(record.lot or record.ingredient, "") if record.is_closed else "",
        of=record.of,
        papers=tuple(_paper(each) for each in record.papers),
    )


def _paper(paper: GatePaper) -> GlutenPaper:
    return GlutenPaper(
        kind=paper.kind,
        text=paper.text,
        words=paper_words(paper.kind, paper.text, paper.method),
        state=paper.state,
        word=RECORD_STATES[paper.state],
        why=paper.why,
        result=paper.result,
        method=paper.method,
        valid_from=None if paper.valid_from is None else paper.valid_from.isoformat(),
        valid_to=None if paper.valid_to is None else paper.valid_to.isoformat(),
        proves=paper.proves,
        not_proves=paper.not_proves,
        not_seen=paper.not_seen,
    )


def _room(standing: RoomStanding) -> GlutenRoom:
    return GlutenRoom(standing.name, standing.is_open, standing.text, standing.needs)


def _lots_first(words: Iterable[str]) -> tuple[str, ...]:
    """Each word once, those of the room behind those of the lots."""
    return tuple(sorted(dict.fromkeys(words), key=lambda word: word.startswith("room: ")))


def _once(items: Iterable[Each]) -> tuple[Each, ...]:
    return tuple(dict.fromkeys(items))
