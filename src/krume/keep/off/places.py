"""What each place's rule says of keeping cold, and whose rule it is."""

from dataclasses import dataclass
from functools import cache

from krume.evidence import column, load, optional

PLACE_COLUMNS = (
    column("key", "key"),
    column("place", "one of", "us", "uk", "eu", "advice"),
    column("whose"),
    column("words"),
    optional("most_c", "number"),
    optional("hours", "number"),
    optional("hours_inclusive", "flag"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
)


@dataclass(frozen=True, slots=True)
class PlaceRule:
    """One rule of a place; a temperature or hours that it does not name are None."""

    key: str
    place: str
    whose: str
    words: str
    most_c: float | None
    hours: float | None
    is_inclusive: bool
    status: str
    source: str
    page: str

    def holds_for_hours(self, hours: float) -> bool:
        """Whether so many hours lie within the rule; without a figure nothing is within it."""
        if self.hours is None:
            return False
        return hours <= self.hours if self.is_inclusive else hours < self.hours


@cache
def place_rules() -> tuple[PlaceRule, ...]:
    """All rules of all places, in the order of their table."""
    return tuple(
        PlaceRule(
            row.text("key"), row.text("place"), row.text("whose"), row.text("words"),
            row.maybe("most_c"), row.maybe("hours"), row.flag("hours_inclusive"),
            row.text("status"), row.text("source"), row.text("page"),
        )
        for row in load("keep_places.csv", PLACE_COLUMNS)
    )  # fmt: skip


def place_rule(key: str) -> PlaceRule:
    """Rule of a key.

    >>> place_rule("us-warm-4").holds_for_hours(4.0), place_rule("uk-served").holds_for_hours(4.0)
    (True, False)
    """
    return next(rule for rule in place_rules() if rule.key == key)
