"""How each market wants a list of ingredients: emphasis, order of water, shares, classes."""

from dataclasses import dataclass
from functools import cache

from krume.base import InputError
from krume.evidence import Row, column, load, optional
from krume.pantry import MARKETS

MARKET_COLUMNS = (
    column("key", "one of", *MARKETS),
    column("name"),
    optional("emphasis", "flag"),
    optional("contains_line", "flag"),
    optional("clause", "flag"),
    column("water", "one of", "mixed", "finished"),
    optional("shares", "flag"),
    column("additives", "one of", "plain", "class"),
    optional("number_mark"),
    column("sulphites", "one of", "from", "above"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
    optional("note"),
)


@dataclass(frozen=True, slots=True)
class MarketRule:
    """The rules of one market for a list.

    `has_emphasis`: allergens stand out in the list. `has_contains_line`: they are said in a line
    of their own. `has_clause`: 2 % or less may stand behind a clause. `water_is_finished`: added
    water stands where what is left of it belongs. `has_shares`: what the name speaks of has its
    share. `has_classes`: additives carry their class, by name or by number with `number_mark`.
    `sulphites_from`: at exactly their limit sulphites are declared already.
    """

    key: str
    name: str
    has_emphasis: bool
    has_contains_line: bool
    has_clause: bool
    water_is_finished: bool
    has_shares: bool
    has_classes: bool
    number_mark: str
    sulphites_from: bool
    status: str
    source: str
    note: str


@cache
def _rules() -> dict[str, MarketRule]:
    return {row.text("key"): _rule(row) for row in load("label_markets.csv", MARKET_COLUMNS)}


def _rule(row: Row) -> MarketRule:
    return MarketRule(
        key=row.text("key"),
        name=row.text("name"),
        has_emphasis=row.flag("emphasis"),
        has_contains_line=row.flag("contains_line"),
        has_clause=row.flag("clause"),
        water_is_finished=row.text("water") == "finished",
        has_shares=row.flag("shares"),
        has_classes=row.text("additives") == "class",
        number_mark=row.text("number_mark"),
        sulphites_from=row.text("sulphites") == "from",
        status=row.text("status"),
        source=row.text("source"),
        note=row.text("note"),
    )


def market_rule(market: str) -> MarketRule:
    """Rules of a market; one that is not held here is refused.

    >>> market_rule("us").has_emphasis, market_rule("eu").has_emphasis
    (False, True)
    """
    found = _rules().get(market)
    if found is None:
        known = ", ".join(_rules())
        message = f"'{market}' is no market. Type one of {known}."
        raise InputError(message, field="market", got=market, want=known)
    return found
