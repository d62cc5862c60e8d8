"""The rules of keeping as rows: how long cold, how long without cooling, which cautions."""

from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache

from krume.base import Interval, NotFoundError, OutOfRangeError
from krume.evidence import Row, column, load, optional

RULE_COLUMNS = (
    column("key", "key"),
    optional("families"),
    column("low_h", "number"),
    column("best_h", "number"),
    column("high_h", "number"),
    column("words"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)
ROOM_COLUMNS = (
    column("key", "key"),
    column("hours", "number"),
    column("words"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
)
CAUTION_COLUMNS = (
    column("key", "key"),
    column("text"),
    column("status", "status"),
    column("source", "source"),
)
GROWTH_COLUMNS = (
    column("key", "key"),
    column("name"),
    column("least_activity", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)


@dataclass(frozen=True, slots=True)
class KeepRule:
    """How long something keeps at 5 degC or below, and where that is from."""

    key: str
    words: str
    cold_h: Interval
    status: str
    source: str
    note: str


@dataclass(frozen=True, slots=True)
class Caution:
    """A sentence that must be said, with its papers."""

    key: str
    text: str
    status: str
    source: str


@cache
def _rules() -> dict[str, Row]:
    return {row.text("key"): row for row in load("keep_rules.csv", RULE_COLUMNS)}


def keep_rule(key: str) -> KeepRule:
    """Rule of a key; NotFoundError when there is none."""
    row = _rules().get(key)
    if row is None:
        message = f"no rule of keeping is called '{key}'. There are: {', '.join(_rules())}."
        raise NotFoundError(message, field="rule", got=key, want=", ".join(_rules()))
    hours = Interval(row.number_of("low_h"), row.number_of("best_h"), row.number_of("high_h"))
    texts = (row.text(name) for name in ("status", "source", "note"))
    return KeepRule(row.text("key"), row.text("words"), hours, *texts)


def rule_of_family(kind: str | None) -> KeepRule | None:
    """Rule of a family of batters or creams; None where nothing is known of it."""
    for key, row in _rules().items():
        if kind is not None and kind in row.text("families").split(";"):
            return keep_rule(key)
    return None


def room_rules() -> tuple[Row, ...]:
    """Time without cooling by the named rule, each with its condition."""
    return load("keep_room.csv", ROOM_COLUMNS)


def caution(key: str) -> Caution:
    """Caution of a key."""
    rows = {row.text("key"): row for row in load("keep_cautions.csv", CAUTION_COLUMNS)}
    row = rows[key]
    return Caution(key, row.text("text"), row.text("status"), row.text("source"))


def least_growth_activity(organism: str) -> float:
    """Water activity below which an organism does not grow, the lower of two sources.

    >>> least_growth_activity("salmonella")
    0.94
    """
    rows = {row.text("key"): row for row in load("growth.csv", GROWTH_COLUMNS)}
    if organism not in rows:
        message = f"no organism is called '{organism}'. There are: {', '.join(rows)}."
        raise NotFoundError(message, field="organism", got=organism, want=", ".join(rows))
    return rows[organism].number_of("least_activity")


def use_by(made: date, *, days: int) -> date:
    """Last day of a date mark; the day of making is day 1.

    >>> use_by(date(2026, 2, 26), days=7).isoformat()
    '2026-03-04'
    """
    if days < 1:
        message = f"{days} days are none. Type 1 or more; the day of making is day 1."
        raise OutOfRangeError(message, field="days", got=str(days), want="1 or more")
    return made + timedelta(days=days - 1)
