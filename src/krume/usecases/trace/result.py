"""The answer of `trace`: what went into a cake, where a lot went, which bags a batch may take."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class TraceLine:
    """One ingredient of a batch with its lots; none is not known. `supplier` is one step back.

    `in_house` are lots that may have gone in on that day by the table of lots.
    """

    ingredient: str
    goods: str
    lots: tuple[str, ...]
    supplier: str | None
    in_house: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class TraceChange:
    """One record of a cake or a batch in its history: when it was written, and why."""

    written_at: str
    state: str
    reason: str
    text: str


@dataclass(frozen=True, slots=True)
class TraceBatch:
    """One bowl of a formula; `code` is None where it is not written down, or not known.

    `cakes` are the lot codes it went into; `earlier` are batches of the formula that are there.
    """

    code: str | None
    formula: str
    title: str
    made_on: str | None
    lines: tuple[TraceLine, ...]
    cakes: tuple[str, ...] = ()
    earlier: tuple[str, ...] = ()
    trial: str | None = None
    state: str = "made"
    history: tuple[TraceChange, ...] = ()


@dataclass(frozen=True, slots=True)
class TraceCake:
    """Cakes of one kind made together, one step forward: the order, the person, the day.

    `why` says which line of which batch speaks of the lot that was asked for.
    """

    code: str | None
    what: str
    title: str
    pieces: int
    made_on: str | None
    order: str | None
    customer: str | None
    telephone: str | None
    handed_on: str | None
    why: tuple[str, ...] = ()
    batches: tuple[TraceBatch, ...] = ()
    history: tuple[TraceChange, ...] = ()
    state: str = "made"


@dataclass(frozen=True, slots=True)
class TraceRecall:
    """Where a lot went. `surely` holds it; `not_ruled_out` may; `to_come` is not made yet.

    `batches` hold it, or may, and are in no cake that is written down. `ruled_out_by_days` counts
    the lines whose lot is not known that were made outside the lot's days in the house.
    """

    lot: str
    ingredient: str | None
    supplier: str | None
    came: str | None
    used_up: str | None
    surely: tuple[TraceCake, ...]
    not_ruled_out: tuple[TraceCake, ...]
    to_come: tuple[TraceCake, ...]
    batches: tuple[TraceBatch, ...]
    ruled_out_by_days: int
    verdict: str


@dataclass(frozen=True, slots=True)
class TraceFile:
    """One written file."""

    kind: str
    path: str


@dataclass(frozen=True, slots=True)
class TraceResult:
    """What is known of a name. `kind` is lot, cake, batch, order, or nothing where it is asked.

    `is_written` says whether what went in is written down; `written` are the codes given now.
    `proposed` is what would be written for an order: its batches with the lots in the house.
    """

    kind: str
    name: str
    title: str
    is_written: bool
    cakes: tuple[TraceCake, ...] = ()
    batches: tuple[TraceBatch, ...] = ()
    proposed: tuple[TraceBatch, ...] = ()
    recall: TraceRecall | None = None
    written: tuple[str, ...] = ()
    not_known: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    files: tuple[TraceFile, ...] = ()
