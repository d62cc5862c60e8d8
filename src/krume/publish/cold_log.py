"""The cold log: the verdict so far and what it does not prove, then tables for a pencil."""

from dataclasses import dataclass

from krume.base import as_text
from krume.publish.card import Hold, Imprint
from krume.publish.facts import Fact
from krume.publish.leaf import Leaf, LeafPart, LeafTable

_BLANK = "________"
_ON_THE_WAY = ("leaves the cold", "handed over", "cold again or eaten")
_BETWEEN = "between"
_ROOMY = 2  # more creams than this leave room for one reading less in each, or a page runs over


@dataclass(frozen=True, slots=True)
class CoolingLimits:
    """Two stages in which a cooked food cools, and where that is written.

    `cold_most_c` is what a cold cake stays at or below; `rule` names the source and its place.
    `fresh_h` are the hours in which a food that no step cooks is cold.
    """

    start_c: float
    middle_c: float
    end_c: float
    first_h: float
    total_h: float
    cold_most_c: float
    rule: str
    fresh_h: float


@dataclass(frozen=True, slots=True)
class LoggedCooling:
    """A log the book holds, judged: times of both stages, None where the log does not show one."""

    log: str
    of: str
    stage_1_h: float | None
    total_h: float | None
    verdict: str
    reason: str
    status: str


@dataclass(frozen=True, slots=True)
class ColdLog:
    """All that stands on a cold log.

    `cooked` and `raw` are creams by their names, the first cooled from a boil; `warm` says what
    is known of hours out of the cold; `earlier` are logs the book holds of the same creams;
    `predicted` says which depth is likely to cool in time, and shows nothing.
    """

    title: str
    cooked: tuple[str, ...]
    raw: tuple[str, ...]
    limits: CoolingLimits
    warm: tuple[str, ...]
    earlier: tuple[LoggedCooling, ...]
    cautions: tuple[str, ...]
    predicted: str = ""


def cold_log_leaf(log: ColdLog, imprint: Imprint, hold: Hold | None = None) -> Leaf:
    """The cold log of a torte or an order, as a leaf for paper, page and JSON."""
    between = 1 if len(log.cooked) > _ROOMY else 2
    return Leaf(
        kind="cold log",
        name=f"{log.title}: cold log",
        facts=_facts(log.limits),
        parts=(
            LeafPart("Verdict so far: not shown", _verdict(log), boxed=True),
            *((LeafPart("Which depth", (log.predicted,)),) if log.predicted else ()),
            *(_cooling(name, log.limits, between) for name in log.cooked),
            *_raw(log),
            LeafPart("Out of the cold", log.warm, _way(log.limits)),
            *_earlier(log),
        ),
        cautions=log.cautions,
        hold=hold,
        imprint=imprint,
    )


def _facts(limits: CoolingLimits) -> tuple[Fact, ...]:
    start, middle, end = (as_text(c, 1) for c in (limits.start_c, limits.middle_c, limits.end_c))
    return (
        Fact(f"{start} to {middle} °C within", as_text(limits.first_h, 1), "h"),
        Fact(f"{start} to {end} °C within, in all", as_text(limits.total_h, 1), "h"),
        Fact("cold is at most", as_text(limits.cold_most_c, 1), "°C"),
    )


def _verdict(log: ColdLog) -> tuple[str, ...]:
    return (
        "No reading of this batch is written yet, and what is not shown does not pass.",
        "It will not prove: that the warmest place was probed; what happened between two readings; "
        "that what went in was sound; anything about gluten or allergens.",
        f"Limits: {log.limits.rule}.",
    )


def _cooling(name: str, limits: CoolingLimits, between: int) -> LeafPart:
    begin = f"passes {as_text(limits.start_c, 1)} °C: the clock starts"
    first = f"{as_text(limits.middle_c, 1)} °C or below by {as_text(limits.first_h, 1)} h"
    last = f"{as_text(limits.end_c, 1)} °C or below by {as_text(limits.total_h, 1)} h"
    rows = (begin, _BETWEEN, first, *(_BETWEEN,) * between, last)
    table = LeafTable(
        ("reading", "time", "where probed", "°C"),
        tuple((row, _BLANK, _BLANK * 2, _BLANK) for row in rows),
        wide=0,
    )
    return LeafPart(f"Cooling of {name}", table=table)


def _raw(log: ColdLog) -> tuple[LeafPart, ...]:
    if not log.raw:
        return ()
    cold, fresh = as_text(log.limits.cold_most_c, 1), as_text(log.limits.fresh_h, 1)
    said = (
        f"{', '.join(log.raw)}: no step cooks it, so it has no two stages. Made of things at room "
        f"temperature it is at {as_text(log.limits.end_c, 1)} °C or below within {fresh} h. It "
        f"stays at {cold} °C or below from the fridge to the fridge; write hours above that below.",
    )
    last = f"{as_text(log.limits.end_c, 1)} °C or below by {fresh} h"
    rows = ("mixed: the clock starts", _BETWEEN, last)
    table = LeafTable(
        ("reading", "time", "where probed", "°C"),
        tuple((row, _BLANK, _BLANK * 2, _BLANK) for row in rows),
        wide=0,
    )
    return (LeafPart("Not cooked", said, table),)


def _way(limits: CoolingLimits) -> LeafTable:
    head = ("moment", "time", "where probed", "°C", f"h above {as_text(limits.cold_most_c, 1)} °C")
    return LeafTable(
        head, tuple((row, _BLANK, _BLANK * 2, _BLANK, _BLANK) for row in _ON_THE_WAY), wide=0
    )


def _earlier(log: ColdLog) -> tuple[LeafPart, ...]:
    if not log.earlier:
        return ()
    rows = tuple(
        (each.log, each.of, _hours(each.stage_1_h), _hours(each.total_h), _word(each), each.status)
        for each in log.earlier
    )
    table = LeafTable(("log", "of", "stage 1", "in all", "verdict", "status"), rows, wide=4)
    return (LeafPart("Earlier logs in the book; they prove nothing of this batch", table=table),)


def _hours(value_h: float | None) -> str:
    return "not shown" if value_h is None else f"{as_text(value_h, 2)} h"


def _word(each: LoggedCooling) -> str:
    reasons = {"stage-1": "the first stage took too long", "total": "it took too long in all"}
    if each.verdict == "pass":
        return "within"
    if each.reason == "not-shown":
        return "not shown"
    return "over: " + ", ".join(reasons[word] for word in each.reason.split(","))
