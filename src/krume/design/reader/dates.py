"""Dates and clock times in a text that can be meant in two ways, or are no date at all."""

import re
from collections.abc import Iterator
from datetime import date
from functools import lru_cache

from krume.base import Problem
from krume.design.reader.asking import Asking
from krume.design.reader.blanks import blanked
from krume.design.reader.classifying import Kind

_USE_BY = re.compile(
    r"\b(?:use by|best before|eat by|sell by|mindestens haltbar bis|zu verbrauchen bis|for|on|"
    r"am|until|date)\b[:\s]*(?P<date>(?P<one>\d{1,2})[/.](?P<two>\d{1,2})[/.](?P<year>\d{4}|\d{2}))(?!\d)",
    re.IGNORECASE,
)
_CLOCK = re.compile(
    r"(?:^|\b(?:at|by|ready|hand-over|pick-?up|collect\w*|deliver\w*|start|um|until)\b[^.\d]{0,12})(?P<time>24:00|1[0-2]:[0-5]\d\s*[ap]\.?m\.?|\d:[0-5]\d\s*[ap]\.?m\.?|2[5-9]:\d\d)",
    re.IGNORECASE,
)


def dates(kinds: list[Kind]) -> Iterator[Problem]:
    """Questions about dates and times of the lines that are no ingredients."""
    for kind in kinds:
        if kind.kind in ("ingredient", "blank", "unread", "name") or not _may_date(
            blanked(kind.source)
        ):
            continue
        asking = Asking(kind.source)
        for match in _USE_BY.finditer(kind.source):
            _ask_date(match, asking)
        for match in _CLOCK.finditer(kind.source):
            _ask_time(match, asking)
        for problem in asking.problems:
            yield Problem(
                problem.code, f"line {kind.number}", problem.read, problem.ask, problem.options
            )


@lru_cache(maxsize=8192)
def _may_date(blank: str) -> bool:
    return bool(_USE_BY.search(blank) or _CLOCK.search(blank))


def _ask_date(match: re.Match[str], asking: Asking) -> None:
    one, two = int(match["one"]), int(match["two"])
    year = int(match["year"]) + (2000 if len(match["year"]) == 2 else 0)
    found = dict.fromkeys(
        d for d in (_date(year, two, one), _date(year, one, two)) if d is not None
    )
    options = [
        (d.strftime("%d %B %Y"), asking.edit(*match.span("date"), d.isoformat())) for d in found
    ]
    if not options:
        asking.ask("date-not-a-date", f"'{match['date']}' is not a date. Type it as 2027-02-28.")
    elif len(options) > 1 or ("/" in match["date"] and one <= 12 and one != two):
        asking.ask(
            "date-two-meanings", f"'{match['date']}': is the day or the month first?", *options
        )


def _date(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None


def _ask_time(match: re.Match[str], asking: Asking) -> None:
    said = match["time"].casefold().replace(".", "").replace(" ", "")
    hour, minute = int(said.split(":")[0]), said.split(":")[1][:2]
    if said.endswith("m"):
        other = hour % 12 + (12 if said.endswith("pm") else 0)
        times = [f"{other:02d}:{minute}", f"{(other + 12) % 24:02d}:{minute}"]
    elif hour == 24:
        times = ["00:00 of the next day", "00:00 of the same day"]
    else:
        times = []
    options = [(time, asking.edit(*match.span("time"), time)) for time in times]
    asking.ask(
        "time-which",
        f"'{match['time']}': which instant? Type it in 24 hours, with its day.",
        *options,
    )
