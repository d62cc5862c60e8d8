"""How gluten was looked for: which methods give a figure of it, and what each does not see."""

import re
from dataclasses import dataclass
from functools import cache

from krume.evidence import column, load, optional
from krume.pantry.typed_rows import plain_word

METHOD_COLUMNS = (
    column("key", "key"),
    column("words"),
    optional("counts", "flag"),
    column("name"),
    column("reads"),
    column("not_reads"),
    column("status", "status"),
    column("source", "source"),
)


@dataclass(frozen=True, slots=True)
class GlutenMethod:
    """One method; `counts` where its figure is a record of gluten."""

    key: str
    words: tuple[str, ...]
    counts: bool
    name: str
    reads: str
    not_reads: str


@cache
def gluten_methods() -> tuple[GlutenMethod, ...]:
    """All methods, in the order in which a paper's words are held against them."""
    return tuple(
        GlutenMethod(
            row.text("key"), tuple(row.text("words").split(";")), row.flag("counts"),
            row.text("name"), row.text("reads"), row.text("not_reads"),
        )
        for row in load("gluten_methods.csv", METHOD_COLUMNS)
    )  # fmt: skip


def _names(word: str, said: str) -> bool:
    """Whether words hold a word by itself: “stripped” is no strip."""
    return re.search(rf"(?<![a-z0-9]){re.escape(word)}(?![a-z0-9])", said) is not None


def method_of(typed: str) -> GlutenMethod | None:
    """The method that a paper's words name; one that gives no figure is seen first.

    >>> method_of("R5 ELISA, sandwich").name, method_of("PCR and R5").counts, method_of("by eye")
    ('R5 sandwich ELISA', False, None)
    """
    said = plain_word(typed)
    named = [each for each in gluten_methods() if any(_names(word, said) for word in each.words)]
    named.sort(key=lambda each: each.counts)
    return named[0] if named else None
