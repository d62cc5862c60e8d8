"""Oven temperatures and minutes of a text, held against each other."""

import re
from collections.abc import Iterator

from krume.base import Interval, Problem, as_text
from krume.design.reader.asking import Asking
from krume.design.reader.classifying import Kind
from krume.design.reader.heads import Head
from krume.design.reader.placing import first_part, placed
from krume.design.reader.settings import limit
from krume.design.reader.steps import Steps, step_said
from krume.design.reader.tinsaid import THIS_ONE


def ovens_agree(head: Head, kinds: list[Kind]) -> Iterator[Problem]:
    """An oven line against the temperature a step bakes at; two steps against each other."""
    said = []
    for kind in kinds:
        oven = step_said(kind.source).oven if kind.kind == "step" else None
        if kind.number == head.oven_line:
            oven = head.oven
        if oven is not None and oven.temp_c is not None:
            said.append((kind, oven))
    here = first_part(kinds, [kind for kind, _ in said if kind.kind == "step"])
    said = [(kind, oven) for kind, oven in said if kind.kind != "step" or kind.number in here]
    if len(said) < 2 or any(THIS_ONE in kind.source for kind, _ in said):
        return
    first_kind, first = said[0]
    for kind, oven in said[1:]:
        if oven.temp_c is None or first.temp_c is None or first.stages or _is_later(kind.source):
            continue
        if oven.fan != first.fan and (oven.fan or first.fan):
            continue
        if abs(oven.temp_c - first.temp_c) > limit("temperatures-agree"):
            yield _ask_ovens(first_kind, first.temp_c, kind, oven.temp_c)
            return


def _is_later(source: str) -> bool:
    return bool(
        re.search(
            r"\b(?:reduce|lower|turn|then|increase|raise|drop|dann|reduzieren|second|toast|roast|meringue)\b",
            source,
            re.IGNORECASE,
        )
    )


def _ask_ovens(first: Kind, first_c: float, kind: Kind, other_c: float) -> Problem:
    asking = Asking(kind.source)
    match = re.search(r"\d{3}(?:[.,]\d)?(?:\s*(?:°|degrees|grad))?\s*[CF]?\b", kind.source)
    start, end = match.span() if match else (len(kind.source), len(kind.source))
    asking.ask(
        "oven-conflict",
        f"Line {first.number} bakes at {as_text(first_c, 1)} °C, line {kind.number} at "
        f"{as_text(other_c, 1)} °C. Which one?",
        (f"{as_text(first_c, 1)} °C", asking.edit(start, end, f"{as_text(first_c, 1)} C")),
        (f"{as_text(other_c, 1)} °C", asking.edit(end, end, f" {THIS_ONE}")),
    )
    return placed(asking.problems[0], kind)


def minutes_agree(steps: Steps, kinds: list[Kind]) -> Iterator[Problem]:
    """Minutes in the oven named twice, without a word that says one follows the other."""
    plain = [(kind, minutes, at) for kind, minutes, at, is_added in steps.minutes if not is_added]
    here = first_part(kinds, [kind for kind, _, _ in plain])
    plain = [one for one in plain if one[0].number in here]
    for kind in dict.fromkeys(kind for kind, _, _ in plain):
        loose = _OR_MINUTES.search(kind.source)
        if loose is not None:
            yield _ask_minutes(kind, loose)
            return
    if len(plain) < 2:
        return
    _, first, _ = plain[0]
    for kind, minutes, _ in plain[1:]:
        if minutes.low > first.high or minutes.high < first.low:
            yield _ask_two_minutes(kind, first, minutes)
            return


_OR_MINUTES = re.compile(
    r"(?P<one>\d{1,3}(?:\s*[-–]\s*\d{1,3})?)\s*min\w*\.?\s*(?:\.{2,}|…|,|/)*\s*\bor\s+(?P<two>\d{1,3}(?:\s*(?:[-–]|to)\s*\d{1,3})?)\b(?!\s*(?:g|c|f|°))(?:\s*min\w*)?",
    re.IGNORECASE,
)


def _ask_minutes(kind: Kind, match: re.Match[str]) -> Problem:
    asking = Asking(kind.source)
    asking.ask(
        "minutes-conflict",
        f"{match['one']} minutes or {match['two']} minutes: the depth decides, and it is not "
        f"written. Which?",
        *(
            (f"{m} minutes", asking.edit(*match.span(), f"{m} minutes"))
            for m in (match["one"], match["two"])
        ),
    )
    return placed(asking.problems[0], kind)


def _ask_two_minutes(kind: Kind, first: Interval, other: Interval) -> Problem:
    asking = Asking(kind.source)
    match = re.search(
        r"\d{1,3}(?:\s*(?:-|–|to|bis)\s*\d{1,3})?(?=\s*min)", kind.source, re.IGNORECASE
    )
    start, end = match.span() if match else (len(kind.source), len(kind.source))
    texts = [_span(first), _span(other)]
    asking.ask(
        "minutes-conflict",
        f"The text bakes {texts[0]} minutes in one place and {texts[1]} minutes in another. Which?",
        (f"{texts[0]} minutes", asking.edit(start, end, texts[0])),
        (f"{texts[1]} minutes more", asking.edit(end, end, " more")),
    )
    return placed(asking.problems[0], kind)


def _span(minutes: Interval) -> str:
    low, high = as_text(minutes.low), as_text(minutes.high)
    return low if low == high else f"{low} to {high}"
