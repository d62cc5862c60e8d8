"""What a formula itself says of its cooling: minutes that were measured outrank a model."""

import re

from krume.base import Interval
from krume.design import Formula

_COOLED = re.compile(
    r"^cool(?:ed|ing|s)?\s*[:=]\s*(\d+(?:[.,]\d+)?)(?:\s*(?:-|–|to)\s*(\d+(?:[.,]\d+)?))?"
    r"\s*(min|h\b|hours?\b)",
    re.IGNORECASE,
)
_MIN_AN_HOUR, _MOST_MIN = 60, 1440


def own_cooling_min(formula: Formula) -> Interval | None:
    r"""Minutes of a line `Cooled: 75 to 110 min` of the text: until it was cold; None is no line.

    No time at all, and more than a day, are no minutes of cooling.

    >>> from krume.design import read
    >>> own_cooling_min(read("Cake\nCooled: 75 to 110 min\n\n100 g sugar\n").value)
    Interval(low=75.0, best=92.5, high=110.0)
    """
    for line in formula.source_lines:
        match = _COOLED.match(line.text.strip()) if line.kind in ("key", "note") else None
        if match is not None:
            times = 1 if match[3].casefold() == "min" else _MIN_AN_HOUR
            low, high = (
                times * float(text.replace(",", ".")) for text in (match[1], match[2] or match[1])
            )
            ends = min(low, high), max(low, high)
            is_time = ends[0] > 0 and ends[1] <= _MOST_MIN
            return Interval(ends[0], sum(ends) / 2, ends[1]) if is_time else None
    return None
