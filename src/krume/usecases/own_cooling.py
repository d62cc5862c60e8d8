"""What a formula itself says of its cooling: minutes that were measured outrank a model."""

import re

from krume.base import Interval
from krume.design import Formula

_COOLED = re.compile(
    r"^cool(?:ed|ing|s)?\s*[:=]\s*(\d+)(?:\s*(?:-|–|to)\s*(\d+))?\s*min", re.IGNORECASE
)


def own_cooling_min(formula: Formula) -> Interval | None:
    r"""Minutes of a line `Cooled: 75 to 110 min` of the text: until it was cold; None is no line.

    >>> from krume.design import read
    >>> own_cooling_min(read("Cake\nCooled: 75 to 110 min\n\n100 g sugar\n").value)
    Interval(low=75.0, best=92.5, high=110.0)
    """
    for line in formula.source_lines:
        match = _COOLED.match(line.text.strip()) if line.kind in ("key", "note") else None
        if match is not None:
            low = float(match[1])
            high = float(match[2]) if match[2] else low
            return Interval(min(low, high), (low + high) / 2, max(low, high))
    return None
