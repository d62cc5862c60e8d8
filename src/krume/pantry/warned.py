"""What a paper warns of, where its words are not understood: unknown, and never none."""

from functools import lru_cache

from krume.pantry.lot_words import doubtful_words, record_words
from krume.pantry.lots import LotRecord
from krume.pantry.said import allergens_said

_OAT = "oat"


@lru_cache(maxsize=4096)
def warning_unread(record: LotRecord) -> str:
    """What a paper may contain by its own words that is not known to be no grain; empty if none.

    >>> warning_unread(LotRecord("may-contain", notes="milk, everything"))
    'everything'
    >>> warning_unread(LotRecord("may-contain", notes="milk, nuts, soya"))
    ''
    """
    words = record_words(record)
    warned = (each for each in words.may_contain if not _is_no_grain(each))
    return next(warned, "") or doubtful_words(record)


def _is_no_grain(word: str) -> bool:
    """Whether everything that a word means is known; oats may bring wheat with them."""
    return all(a.presence != "unknown" and a.allergen != _OAT for a in allergens_said(word))
