"""Every number of freezing is a row; and which component takes it."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from krume.base import Figure, Interval
from krume.evidence import column, load, optional
from krume.properties import CONSTANT_COLUMNS

FREEZES_COLUMNS = (
    column("key", "key"),
    optional("families"),
    optional("trait"),
    column("takes", "one of", "well", "some-loss", "no"),
    optional("days_low", "number"),
    optional("days_high", "number"),
    column("words"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)
_ORDER = ("well", "some-loss", "unknown", "no")


@cache
def frozen_figures() -> dict[str, Figure]:
    """Rows of freezing, thawing and what goes with it, by key."""
    return {
        row.text("key"): Figure(
            row.number_of("value"), row.text("unit"), row.text("basis"), row.text("status"),
            row.text("source"), row.maybe("half_width"),
        )
        for row in load("keep_frozen.csv", CONSTANT_COLUMNS)
    }  # fmt: skip


def frozen_value(key: str) -> float:
    """Value of one of them."""
    return frozen_figures()[key].value


@dataclass(frozen=True, slots=True)
class TakesFreezing:
    """Whether a component takes freezing: well, some-loss, no, or unknown; and for how many days.

    `frozen_days` is None where it does not, or where nothing is known.
    """

    takes: str
    frozen_days: Interval | None
    words: str
    status: str
    source: str


def takes_freezing(family: str | None, traits: frozenset[str]) -> TakesFreezing:
    """Judge a component by its family and by what is in it; the hardest wins.

    >>> takes_freezing("jelly", frozenset()).takes, takes_freezing(None, frozenset()).takes
    ('no', 'unknown')
    """
    rows = load("keep_freezes.csv", FREEZES_COLUMNS)
    mine = [
        row
        for row in rows
        if (family is not None and family in row.text("families").split(";"))
        or row.text("trait") in traits
    ]
    if not any(row.text("families") for row in mine):
        unknown = TakesFreezing(
            "unknown", None, "nothing is known of how it freezes", "assumed", "krume"
        )
        if not mine:
            return unknown
    row = max(mine, key=lambda r: _ORDER.index(r.text("takes")))
    low, high = row.maybe("days_low"), row.maybe("days_high")
    days = None if low is None or high is None else Interval(low, (low + high) / 2, high)
    return TakesFreezing(
        row.text("takes"), days, row.text("words"), row.text("status"), row.text("source")
    )


def hardest_to_freeze(found: Iterable[str]) -> str:
    """The hardest of several; of none it is unknown.

    >>> hardest_to_freeze(["well", "no", "some-loss"])
    'no'
    """
    words = list(found)
    return max(words, key=_ORDER.index) if words else "unknown"
