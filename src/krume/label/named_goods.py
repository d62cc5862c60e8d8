"""Which goods the name of a product speaks of: those carry their share."""

import re
from functools import cache

from krume.evidence import column, load

NAMED_COLUMNS = (
    column("key", "key"),
    column("word"),
    column("why"),
    column("status", "status"),
    column("source", "source"),
)
_LEAST_STEM = 5


@cache
def _unnamed() -> frozenset[str]:
    return frozenset(row.text("word") for row in load("named_words.csv", NAMED_COLUMNS))


def words_of_name(title: str) -> frozenset[str]:
    """Words of a title that can speak of goods: not sponge, torte, white, ground.

    >>> sorted(words_of_name("Walnut ring torte"))
    ['ring', 'walnut']
    """
    words = re.split(r"[^\w]+", title.casefold())
    return frozenset(word for word in words if word) - _unnamed()


def is_named(label_name: str, named: frozenset[str]) -> bool:
    """Whether a word of the goods stands in the product's name, whole or as its beginning.

    >>> is_named("walnuts", words_of_name("Walnut ring torte"))
    True
    """
    own = [w for w in re.split(r"[^\w]+", label_name.casefold()) if w and w not in _unnamed()]
    return any(_is_same(word, mine) for word in named for mine in own)


def _is_same(word: str, mine: str) -> bool:
    singular = mine.removesuffix("s")
    if word in (mine, singular):
        return True
    return len(word) >= _LEAST_STEM and mine.startswith(word)
