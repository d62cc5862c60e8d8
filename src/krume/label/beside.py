"""What is on no list of a market and still matters to somebody: said beside, never printed."""

from collections.abc import Iterable
from fnmatch import fnmatchcase
from functools import cache

from krume.evidence import Row, column, load, optional
from krume.label.market_rules import market_rule
from krume.label.product import Used
from krume.pantry import Allergen

BESIDE_COLUMNS = (
    column("key", "key"),
    column("market"),
    optional("goods"),
    column("words"),
    column("text"),
    column("status", "status"),
    column("source", "source"),
)


@cache
def _rows(market: str) -> tuple[Row, ...]:
    rows = load("allergens_beside.csv", BESIDE_COLUMNS)
    return tuple(row for row in rows if market in row.text("market").split(";"))


@cache
def beside_of_goods(key: str | None, name: str, market: str) -> tuple[str, ...]:
    """What to tell of goods that no list of a market names.

    >>> beside_of_goods("flour-buckwheat-whole", "buckwheat flour", "eu")
    ('Buckwheat is a known allergen, though on no list here: say so when asked.',)
    """
    plain = name.casefold()
    return tuple(
        row.text("text")
        for row in _rows(market)
        if (key is not None and _fits(key, row.text("goods"))) or _fits(plain, row.text("words"))
    )


def _fits(word: str, patterns: str) -> bool:
    return any(fnmatchcase(word, pattern) for pattern in patterns.split(";") if pattern)


def beside_of_allergens(found: Iterable[Allergen], market: str) -> tuple[str, ...]:
    """Allergens of another market's list that this one does not have."""
    names = dict.fromkeys(a.allergen for a in found if a.allergen and not a.words(market))
    where = market_rule(market).name
    return tuple(
        f"{name[:1].upper()}{name[1:]} is in it and on no list of allergens of {where}: "
        "say so when asked."
        for name in names
    )


def beside(used: Iterable[Used], found: Iterable[Allergen], market: str) -> tuple[str, ...]:
    """Everything to tell beside the list of a product, each once."""
    told = [text for each in used for text in beside_of_goods(each.key, each.name, market)]
    return tuple(dict.fromkeys((*told, *beside_of_allergens(found, market))))
