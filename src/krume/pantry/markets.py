"""The lists of allergens, market by market: the words each law declares one by."""

from dataclasses import dataclass
from functools import cache

from krume.evidence import Row, column, load, optional

MARKETS = ("us", "eu", "uk", "ca", "au-nz")
LIST_COLUMNS = (
    column("key", "key"),
    column("market", "one of", *MARKETS),
    column("allergen"),
    column("words"),
    column("named"),
    column("since"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
    optional("note"),
)


@dataclass(frozen=True, slots=True)
class Declared:
    """How a market declares one allergen: the words of the line, the name in the list, its rule."""

    words: tuple[str, ...]
    named: str
    since: str
    status: str
    source: str
    note: str = ""


@cache
def _lists() -> dict[tuple[str, str], Declared]:
    rows = load("allergen_lists.csv", LIST_COLUMNS)
    return {(row.text("market"), row.text("allergen")): _declared(row) for row in rows}


def _declared(row: Row) -> Declared:
    words = tuple(word.strip() for word in row.text("words").split(";"))
    texts = ("named", "since", "status", "source", "note")
    return Declared(words, *(row.text(name) for name in texts))


def declared(allergen: str, market: str) -> Declared | None:
    """How a market declares an allergen; None where its list does not have it.

    >>> declared("hazelnut", "eu").words, declared("pine nut", "eu")
    (('nuts (hazelnut)',), None)
    >>> declared("wheat", "au-nz").words
    ('wheat', 'gluten')
    """
    return _lists().get((market, allergen))


def declared_words(allergen: str, market: str) -> tuple[str, ...]:
    """Words of a market's line for an allergen; none where its list does not have it."""
    found = declared(allergen, market)
    return () if found is None else found.words


def listed_allergens() -> frozenset[str]:
    """Every allergen that at least one list names."""
    return frozenset(allergen for _, allergen in _lists())


def market_list(market: str) -> tuple[tuple[str, Declared], ...]:
    """The list of a market, in the order of the table."""
    return tuple((name, found) for (of, name), found in _lists().items() if of == market)


def is_tree_nut(allergen: str) -> bool:
    """Whether an allergen is a nut of a tree, by the lists that group them.

    >>> is_tree_nut("hazelnut"), is_tree_nut("pine nut"), is_tree_nut("peanut")
    (True, True, False)
    """
    words = (*declared_words(allergen, "us"), *declared_words(allergen, "eu"))
    return any(word.startswith(("tree nut", "nuts")) for word in words)
