"""The papers of the lots that a gluten claim needs: how each stands on the judged days."""

from dataclasses import dataclass
from datetime import date

from krume.label.parts import lots_in_use
from krume.label.product import Used
from krume.pantry import (
    UNREAD,
    Lot,
    LotRecord,
    RecordStanding,
    claim_rule,
    evidence_kind,
    record_method,
    record_need,
    record_standings,
    record_state,
)

_WORST = ("conflict", "missing", "not-yet-valid", "expired", "good", "not-needed")


@dataclass(frozen=True, slots=True)
class GatePaper:
    """One paper of a lot on the worst judged day, with what it proves and what it does not.

    `result` is as printed, `method` the name of how it was measured, `not_seen` what that does
    not see; each is empty where it is not said.
    """

    kind: str
    text: str
    state: str
    why: str
    result: str
    method: str
    valid_from: date | None
    valid_to: date | None
    proves: str
    not_proves: str
    not_seen: str = ""


@dataclass(frozen=True, slots=True)
class GateRecord:
    """How the papers of one lot stand; `lot` is None where the house has no lot of the goods.

    `day` is the judged day they stand worst on; `papers` are all of them.
    """

    lot: str | None
    ingredient: str
    state: str
    text: str
    of: tuple[str, ...]
    day: date | None = None
    papers: tuple[GatePaper, ...] = ()

    @property
    def is_closed(self) -> bool:
        """Whether it keeps the gate closed."""
        return self.state not in ("good", "not-needed")


def gate_records(
    used: Used,
    lots: tuple[Lot, ...],
    chosen: frozenset[str],
    days: tuple[date, ...],
    market: str,
) -> list[GateRecord]:
    """The records of one of the goods: one for each lot in use, or that there is none."""
    in_use = lots_in_use(used, lots, chosen)
    if not in_use:
        need = record_need(used.name, used.key)
        state = "missing" if need.is_needed else "not-needed"
        text = f"no lot in the house; {need.why}" if need.is_needed else need.why
        return [GateRecord(None, used.name, state, text, used.of)]
    return [_record(lot, used, days, market) for lot in in_use]


def _record(lot: Lot, used: Used, days: tuple[date, ...], market: str) -> GateRecord:
    state, day = worst_state(lot, used, days, market)
    standings = record_standings(lot, on=day, market=market)
    return GateRecord(
        lot=lot_name(lot),
        ingredient=lot.ingredient or used.name,
        state=state,
        text=_lot_text(lot, used, state, standings),
        of=used.of,
        day=day,
        papers=tuple(_paper(each) for each in standings),
    )


def lot_name(lot: Lot) -> str:
    """A lot by its mark, or by the line it stands in."""
    return lot.key or f"line {lot.line} of the lots"


def worst_state(lot: Lot, used: Used, days: tuple[date, ...], market: str) -> tuple[str, date]:
    """The worst state of a lot over the judged days, with the first day it has it."""
    states = [(record_state(lot, on=day, market=market, key=used.key), day) for day in days]
    return min(states, key=lambda each: _WORST.index(each[0]))


def _paper(standing: RecordStanding) -> GatePaper:
    record = standing.record
    method = record_method(record)
    kind = evidence_kind(record.evidence)
    return GatePaper(
        kind=kind.name,
        text=_record_text(record),
        state=standing.state,
        why=standing.why,
        result="" if record.result is None else record.result.printed,
        method=record.method if method is None else method.name,
        valid_from=record.valid_from,
        valid_to=record.valid_to,
        proves=kind.proves,
        not_proves=kind.not_proves,
        not_seen="" if method is None else method.not_reads,
    )


def _lot_text(lot: Lot, used: Used, state: str, standings: tuple[RecordStanding, ...]) -> str:
    """What the papers say that decide; where they speak against one another, both."""
    need = record_need(used.name, used.key, lot=lot)
    if not need.is_needed and state != "conflict":
        return need.why
    deciding = [s for s in standings if s.state == state] or list(standings)
    said = " and ".join(dict.fromkeys(_record_text(s.record) for s in deciding))
    good = [s for s in standings if s.state == "good"] if state == "conflict" else []
    if not good:
        return said
    beside = " and ".join(dict.fromkeys(_record_text(s.record) for s in good))
    return f"{said}, while another paper says: {beside}"


def _record_text(record: LotRecord) -> str:
    said = record.notes or record.kind.name
    if record.evidence == "may-contain" and not said.casefold().startswith("may contain"):
        said = f"may contain {said}"
    until = "" if record.valid_to is None else f", valid to {record.valid_to.isoformat()}"
    return f"{said}{_result(said, record)}{until}"


def _result(said: str, record: LotRecord) -> str:
    """The result behind a record's own words, which may end with it already."""
    if record.result is None:
        return ""
    printed = record.result.printed
    if said.endswith(f" {printed} mg/kg"):
        return ""
    unit = " mg/kg" if printed[-1].isdigit() else ""
    return unit if said.split()[-1:] == [printed] else f", {printed}{unit}"


def record_opens(record: GateRecord, market: str) -> str:
    """What a closed record says, and what would open it."""
    rule = claim_rule(market)
    if not rule.is_judged:
        return f"{record.text}; {rule.why}"
    unread = [paper.why for paper in record.papers if paper.why.startswith(UNREAD)]
    if record.state == "missing" and unread:
        return f"{record.text}; {' and '.join(unread)}: write it right, or take it out"
    opens = f"a valid test of the lot ({rule.words}) or a certificate of {rule.limit_ppm:g} or less"
    day = "" if record.day is None else f"on {record.day.isoformat()} "
    why = {
        "conflict": f"{record.text}; {_against(record)}",
        "expired": f"{record.text}; {day}it has run out; {opens} opens it",
        "not-yet-valid": f"{day}it is not in force yet; {opens} opens it",
        "missing": f"{_missing(record)}; {opens} opens it",
    }
    return why[record.state]


def _missing(record: GateRecord) -> str:
    """What is there, with why it is no record where that is not plain from its words."""
    why = [p.why for p in record.papers if p.state == "missing" and p.result]
    return "; ".join((record.text, *dict.fromkeys(why)))


def _against(record: GateRecord) -> str:
    """Why papers that speak against a lot are not outweighed, and what opens the gate."""
    doubts = [paper for paper in record.papers if paper.why.startswith("in doubt")]
    if doubts:
        return f"{doubts[0].why}: another lot opens it, or the day on which the doubt was ended"
    why = next((paper.why for paper in record.papers if paper.state == "conflict"), "")
    said = why or "it is what must not be in it"
    return (
        f"{said}: another lot, with a valid test or certificate, opens it; "
        "a better paper for this lot does not"
    )
