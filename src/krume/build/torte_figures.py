"""Figures of a torte plan as typed: counts in words, lengths in mm, cm or inches."""

from krume.base import read_number, unit_named

NUMBER_WORDS = {
    "a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6,
    "seven": 7, "eight": 8,
}  # fmt: skip
NUMBER = r"\d+(?:[.,]\d+)?|[.,]\d+|\d*\s?[½¼¾]"
COUNT = rf"\d+|{'|'.join(NUMBER_WORDS)}"
LENGTH = r"mm|cm|in|inch|inches"
"""Patterns of a number, a count in figures or words, and a unit of length."""
MOST_WASTE_PCT = 60
"""More than that of a cream is not waste."""


def count_of(words: str | None) -> int:
    """A count in figures or words; none written is one."""
    if not words:
        return 1
    said = words.casefold()
    return NUMBER_WORDS[said] if said in NUMBER_WORDS else int(said[:6])


def number_of(digits: str) -> float:
    """A number as typed; below 0 where it is none."""
    found = read_number(digits, comma_is_decimal=True)
    return -1.0 if found is None else found.value


def cm_of(digits: str, unit: str) -> float:
    """A length in centimetres."""
    return number_of(digits) * _size_cm(unit)


def mm_of(digits: str, unit: str) -> float:
    """A length in millimetres."""
    return number_of(digits) * (_size_cm(unit) * 10)


def _size_cm(unit: str) -> float:
    known = unit_named(unit)
    return known.size if known is not None and known.size is not None else 1.0
