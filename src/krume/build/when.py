"""Dates and clock times as people write them, without guessing between day and month."""

import re
from dataclasses import dataclass
from datetime import date, time

_WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_TAGE = ("montag", "dienstag", "mittwoch", "donnerstag", "freitag", "samstag", "sonntag")
_MONTHS = (
    *("january", "february", "march", "april", "may", "june", "july", "august"),
    *("september", "october", "november", "december"),
)
_ISO = re.compile(r"\b(\d{4})-(\d{1,2})-(\d{1,2})\b")
_NUMERIC = re.compile(r"\b(\d{1,2})([./-])(\d{1,2})\2(\d{4}|\d{2})\b")
_DAY_MONTH = re.compile(
    r"\b(\d{1,2})(?:st|nd|rd|th|\.)?\s+(?:of\s+)?([a-z]{3,9})\.?,?\s+(\d{4})\b", re.I
)
_MONTH_DAY = re.compile(r"\b([a-z]{3,9})\.?\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4})\b", re.I)
_CLOCK = re.compile(r"\b(\d{1,2})[:.](\d{2})(?:\s*([ap])\.?m\.?)?(?![\d.:])", re.I)
_HOUR = re.compile(r"\b(\d{1,2})\s*(?:([ap])\.?m\b\.?|(h|Uhr)\b)", re.I)


@dataclass(frozen=True, slots=True)
class ReadDate:
    """Dates that words may mean, likeliest first; none when no calendar has the day.

    `weekday` is the day of the week that was written, as 0 for Monday.
    """

    candidates: tuple[date, ...]
    weekday: int | None = None

    @property
    def agrees(self) -> bool:
        """Whether the written weekday, if any, is that of the only date."""
        return self.weekday is None or any(d.weekday() == self.weekday for d in self.candidates)


def read_date(words: str) -> ReadDate | None:
    """Read a date; None when there is none, no candidates when no calendar has it.

    A weekday beside it settles what day and month leave open.

    >>> read_date("Saturday 2027-06-12").candidates
    (datetime.date(2027, 6, 12),)
    >>> [d.isoformat() for d in read_date("03/04/27").candidates]
    ['2027-04-03', '2027-03-04']
    >>> read_date("31/02/27").candidates
    ()
    """
    found = _written(words)
    if found is None:
        return None
    days = tuple(dict.fromkeys(day for parts in found if (day := _day(*parts)) is not None))
    written = _weekday(words)
    if len(days) > 1 and written is not None:
        days = tuple(day for day in days if day.weekday() == written) or days
    return ReadDate(days, written)


def _written(words: str) -> tuple[tuple[int, int, int], ...] | None:
    if match := _ISO.search(words):
        return ((int(match[1]), int(match[2]), int(match[3])),)
    if match := _NUMERIC.search(words):
        year = int(match[4]) + (2000 if len(match[4]) == 2 else 0)
        first, second = int(match[1]), int(match[3])
        day_first, month_first = (year, second, first), (year, first, second)
        return (day_first,) if match[2] == "." else (day_first, month_first)
    if match := _DAY_MONTH.search(words):
        return _named(match[3], match[2], match[1])
    if match := _MONTH_DAY.search(words):
        return _named(match[3], match[1], match[2])
    return None


def _named(year: str, month: str, day: str) -> tuple[tuple[int, int, int], ...] | None:
    for number, name in enumerate(_MONTHS, start=1):
        if name.startswith(month.casefold()):
            return ((int(year), number, int(day)),)
    return None


def _day(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None


def _weekday(words: str) -> int | None:
    for word in re.findall(r"[a-z]+", words.casefold()):
        for names in (_WEEKDAYS, _TAGE):
            for number, name in enumerate(names):
                if word == name or (len(word) >= 3 and name.startswith(word)):
                    return number
    return None


def weekday(day: date) -> str:
    """English name of the day of the week."""
    return _WEEKDAYS[day.weekday()].capitalize()


def spelled_day(day: date) -> str:
    """A date as an order writes it: `Saturday 2027-06-12`."""
    return f"{weekday(day)} {day.isoformat()}"


def read_clock(words: str) -> time | None:
    """Read the first clock time of some words; None when there is none, or no day has it.

    >>> read_clock("14:00, pick-up"), read_clock("2 pm"), read_clock("24:00")
    (datetime.time(14, 0), datetime.time(14, 0), None)
    """
    if match := _CLOCK.search(words):
        return _time(int(match[1]), int(match[2]), match[3])
    if match := _HOUR.search(words):
        return _time(int(match[1]), 0, match[2])
    return None


def _time(hour: int, minute: int, half: str | None) -> time | None:
    if half is not None:
        if not 1 <= hour <= 12:
            return None
        hour = hour % 12 + (12 if half.casefold() == "p" else 0)
    return time(hour, minute) if hour < 24 and minute < 60 else None
