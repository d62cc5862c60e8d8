"""Which goods the name of a product speaks of: those carry their share."""

import re
from collections.abc import Iterable
from functools import cache

from krume.evidence import column, load
from krume.pantry import find, ingredient

NAMED_COLUMNS = (
    column("key", "key"),
    column("word"),
    column("why"),
    column("status", "status"),
    column("source", "source"),
)
_LEAST_STEM = 5
_TASTED = ("nut", "fruit", "chocolate", "cocoa", "flavour", "spirit")
"""Roles of goods that a name promises the taste of."""


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


def named_and_missing(title: str, label_names: Iterable[str]) -> tuple[str, ...]:
    """Goods that a name promises and that are on no list: a name must not mislead.

    >>> named_and_missing("Hazelnut and lemon slice", ["sugar", "lemon juice"])
    ('hazelnut',)
    """
    listed = tuple(label_names)
    return tuple(
        word
        for word in sorted(words_of_name(title))
        if _is_tasted(word) and not any(is_named(name, frozenset({word})) for name in listed)
    )


def _is_tasted(word: str) -> bool:
    found = find(word)
    return (
        found.kind == "known" and found.key is not None and (ingredient(found.key).role in _TASTED)
    )
