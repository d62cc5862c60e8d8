"""The lines of a torte plan that begin with a key: ring, frame, slices, waste, keep, notes."""

import re
from dataclasses import replace

from krume.base import Notice, Problem
from krume.build.plain import PlainLine
from krume.build.plan_lines import RingLine, TortePlan
from krume.build.torte_figures import LENGTH, MOST_WASTE_PCT, NUMBER, cm_of, number_of

_RING = re.compile(
    rf"^(?P<d>{NUMBER})\s*(?P<du>{LENGTH})?(?:\s*[x×]\s*(?P<h>{NUMBER})\s*(?P<hu>{LENGTH})?)?"
    r"(?:\s+high)?$",
    re.I,
)
_FRAME = re.compile(
    rf"^(?:(?P<sq>square)\s+)?(?P<l>{NUMBER})\s*(?P<lu>{LENGTH})?\s*[x×]\s*(?P<w>{NUMBER})\s*"
    rf"(?P<wu>{LENGTH})?(?:\s*[x×]\s*(?P<h>{NUMBER})\s*(?P<hu>{LENGTH}))?(?:\s+high)?$",
    re.I,
)
_PCT = re.compile(rf"^(?P<n>{NUMBER})\s*%?$")
_SLICES = re.compile(
    r"^\d+(?:\s*(?:,|or|to|-|–|/)+\s*(?:or\s+)?\d+)*(?:\s+(?:slices|pieces))?$", re.I
)
_MOST_SLICES = 400


def read_key(plan: TortePlan, line: PlainLine) -> TortePlan | Problem | Notice:
    """The plan with what one such line says, a question about it, or that it is only kept."""
    if line.key in ("ring", "frame"):
        return _ring(plan, line)
    if line.key == "waste":
        return _waste(plan, line)
    if line.key == "slices":
        return _slices(plan, line)
    if line.key == "keep":
        return replace(plan, keep=line.value or None)
    if line.key in ("note", "notes"):
        return replace(plan, notes=(*plan.notes, line.value))
    return Notice("key-kept", f"“{line.text}” is kept; nothing is worked out from it.", line.where)


def _waste(plan: TortePlan, line: PlainLine) -> TortePlan | Problem:
    match = _PCT.match(line.value)
    if match is None or not 0 <= number_of(match["n"]) <= MOST_WASTE_PCT:
        ask = "How much stays in bag and bowl? Type a share of what is made, such as: Waste: 5 %"
        return Problem("waste-unread", line.where, line.text, ask)
    return replace(plan, waste_pct=number_of(match["n"]))


def _frame(plan: TortePlan, line: PlainLine) -> TortePlan | None:
    """A frame by two sides and a height, or a square one by side and height."""
    match = _FRAME.match(line.value)
    if match is None or (match["sq"] is None and match["h"] is None):
        return None
    unit = match["hu"] or match["wu"] or match["lu"]
    if unit is None:
        return None
    long = cm_of(match["l"], match["lu"] or unit)
    second = cm_of(match["w"], match["wu"] or unit)
    wide, high = long, second
    if match["h"] is not None:
        wide, high = second, cm_of(match["h"], match["hu"] or unit)
    if min(long, wide, high) <= 0:
        return None
    ring = RingLine(line.text, None, high, max(long, wide), min(long, wide))
    return replace(plan, ring=ring)


def _ring(plan: TortePlan, line: PlainLine) -> TortePlan | Problem:
    framed = _frame(plan, line)
    if framed is not None:
        return framed
    match = _RING.match(line.value) if line.key == "ring" else None
    unit = (match["hu"] or match["du"]) if match else None
    if match is None or unit is None or number_of(match["d"]) <= 0:
        ask = (
            "Which ring is it? Type diameter and height inside, such as: Ring: 22 x 6 cm, or of "
            "a frame: Frame: 30 x 20 x 6 cm"
        )
        return Problem("ring-unread", line.where, line.text, ask)
    height = cm_of(match["h"], unit) if match["h"] else None
    diameter = cm_of(match["d"], match["du"] or unit)
    return replace(plan, ring=RingLine(line.text, diameter, height))


def _slices(plan: TortePlan, line: PlainLine) -> TortePlan | Problem:
    counts = [int(digits) for digits in re.findall(r"\d{1,6}", line.value)]
    if not _SLICES.match(line.value) or not all(1 <= n <= _MOST_SLICES for n in counts):
        ask = "How many slices? Type whole numbers, such as: Slices: 12, or 14"
        return Problem("slices-unread", line.where, line.text, ask)
    return replace(plan, slices=tuple(dict.fromkeys(counts)))
