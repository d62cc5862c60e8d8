"""What a person's word on a bake means: judged good, or not."""

import re
from functools import cache

from krume.evidence import column, load

TRIAL_WORD_COLUMNS = (
    column("key", "key"),
    column("words"),
    column("means", "one of", "good"),
    column("status", "status"),
    column("source", "source"),
)
_CLAUSE = re.compile(r"[,;.:]")


@cache
def _good() -> frozenset[str]:
    return frozenset(row.text("words") for row in load("trial_words.csv", TRIAL_WORD_COLUMNS))


def is_good(word: str) -> bool:
    """Whether the first words of a trial's judgement call it good; what follows tells how.

    >>> is_good("good, dry edge"), is_good("Sunk, gummy"), is_good("not good")
    (True, False, False)
    """
    return " ".join(_CLAUSE.split(word, maxsplit=1)[0].split()).casefold() in _good()
