"""Limits on a blend, as a person types them: in percent of the blend, in grams, by a class."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

from krume.base import Notice, Option, Problem, Read, plain_digits, read_number
from krume.design.blend_words.members import CLASS_NAMES, AtHand, Members, members_of
from krume.design.blend_words.wants import property_named

LIMIT_EXAMPLES = (
    "starch 30..50",
    "rice >= 25 g",
    "buckwheat <= 16 g",
    "sweet rice 9 g",
    "no tapioca",
    "at most 4 flours",
)
"""One limit of each kind, as it may be typed."""

LimitKind = Literal["share", "leave-out", "parts", "property", "price"]
LimitUnit = Literal["%", "g", "g in 100 g", "flours", "per kg", ""]
_CLASSES_FIRST = ("starch",)


@dataclass(frozen=True, slots=True)
class TypedLimit:
    """One limit as read: on the share of some flours, on a property, on how many flours.

    `low` and `high` are in `unit`, ends included; None is no end. `members` are places of flours.
    """

    read: str
    where: str
    kind: LimitKind
    name: str
    unit: LimitUnit
    low: float | None = None
    high: float | None = None
    members: tuple[int, ...] = ()


_NUMBER = r"(?:\d+\s+\d+/\d+|\d+/\d+|\d[\d.,]*\d|\d|[.,]\d+)"
_UNIT = r"(?:\s*(?P<{0}>%|percent|per cent|prozent|pct|kg|grams?|gramm|gr|g))?"
_MORE = r"(?:at least|min(?:imum|\.)?|no less than|not less than|from|mindestens|>=|≥|=>)"
_LESS = r"(?:at most|max(?:imum|\.)?|no more than|not more than|up to|höchstens|<=|≤|=<)"
_EXACT = r"(?:exactly|just|genau|=)"
_NAME = r"(?P<name>[^\d<>=≤≥%][^\d<>=≤≥%]*?)"
_TO = r"(?:\.\.\.?|…|-|–|—|to|bis|and|until)"


def _form(pattern: str) -> re.Pattern[str]:
    return re.compile(f"^{pattern}$", re.IGNORECASE)


_LOW = rf"(?P<low>{_NUMBER}){_UNIT.format('low_unit')}"
_HIGH = rf"(?P<high>{_NUMBER}){_UNIT.format('high_unit')}"
_BOTH = rf"(?P<both>{_NUMBER}){_UNIT.format('high_unit')}"
_FORMS = (
    _form(rf"{_NAME}[\s:]+(?:between\s+|from\s+)?{_LOW}\s*{_TO}\s*{_HIGH}"),
    _form(rf"(?:between\s+|from\s+)?{_LOW}\s*{_TO}\s*{_HIGH}\s+(?:of\s+)?{_NAME}"),
    _form(rf"{_NAME}[\s:]*(?:{_MORE})\s*{_LOW}"),
    _form(rf"{_NAME}[\s:]*(?:{_LESS})\s*{_HIGH}"),
    _form(rf"(?:{_MORE})\s*{_LOW}\s+(?:of\s+)?{_NAME}"),
    _form(rf"(?:{_LESS})\s*{_HIGH}\s+(?:of\s+)?{_NAME}"),
    _form(rf"{_NAME}[\s:]+{_LOW}\s*(?:or more|at least|and more|\.\.|\+)"),
    _form(rf"{_NAME}[\s:]+{_HIGH}\s*(?:or less|at most|and less)"),
    _form(rf"{_NAME}[\s:]+\.\.\s*{_HIGH}"),
    _form(rf"{_NAME}[\s:]*(?:{_EXACT})?\s*{_BOTH}"),
    _form(rf"(?:{_EXACT})?\s*{_BOTH}\s+(?:of\s+)?{_NAME}"),
)
_STRICT = _form(rf"{_NAME}\s*(?P<sign>[<>])\s*(?P<rest>{_NUMBER}.*)")
_LEAVE_OUT = _form(r"(?:no|without|not|ohne|keine?|leave out)\s+(?P<name>\D+)")
_PARTS = _form(
    rf"(?:{_LESS})?\s*(?P<count>\d{{1,2}})\s*(?:flours?|parts?|kinds?|mehle?)"
    rf"(?:\s*(?:at most|or less))?"
    rf"|(?:flours|parts|kinds)\s*(?:{_LESS})\s*(?P<other>\d{{1,2}})"
)
_MARKS = re.compile(r"\s*(?:;|\n|,(?=\s*[^\d\s]))\s*")
_FULL_STOP = re.compile(r"(?<![.\d])\.$")
_GRAMS = {"kg": 1000.0}


def read_limits(
    texts: Sequence[str], flours: Sequence[AtHand], *, where: str = "--limit"
) -> Read[tuple[TypedLimit, ...]]:
    """Read limits; each text may hold several or none, and what cannot be read is asked at once.

    >>> hand = [AtHand("potato starch", "starch-potato-ciqual", "starch")]
    >>> limit = read_limits(["starch 30..50"], hand).value[0]
    >>> limit.members, limit.low, limit.high, limit.unit
    ((0,), 30.0, 50.0, '%')
    """
    found: list[TypedLimit] = []
    problems: list[Problem] = []
    notices: list[Notice] = []
    for number, text in enumerate(texts, start=1):
        place = where if number == 1 else f"{where} {number}"
        parts = [part for part in _MARKS.split(text.strip()) if part]
        reads = [_limit(part, text, place, flours) for part in parts]
        for each in reads:
            found += each.value
            problems += each.problems
            notices += each.notices
    return Read(tuple(found), tuple(dict.fromkeys(problems)), tuple(dict.fromkeys(notices)))


_Limits = Read[tuple[TypedLimit, ...]]


def _limit(part: str, text: str, place: str, flours: Sequence[AtHand]) -> _Limits:
    said = _FULL_STOP.sub("", " ".join(plain_digits(part).split()))
    if strict := _STRICT.match(said):
        return Read((), (_strict(strict, text, place),))
    if match := _PARTS.match(said):
        count = float(match["count"] or match["other"])
        return Read((TypedLimit(part, place, "parts", "flours", "flours", high=count),))
    if match := _LEAVE_OUT.match(said):
        bare = TypedLimit(part, place, "leave-out", match["name"].strip(), "")
        return _placed(bare, text, flours)
    for form in _FORMS:
        if match := form.match(said):
            return _with_ends(match, part, text, place, flours)
    return Read((), (_unread(part, text, place),))


def _with_ends(
    match: re.Match[str], part: str, text: str, place: str, flours: Sequence[AtHand]
) -> _Limits:
    """A limit with its two ends in one unit, if what was typed makes sense."""
    ends = match.groupdict()
    unit = _unit(ends.get("high_unit") or ends.get("low_unit"))
    first = _unit(ends.get("low_unit") or ends.get("high_unit"))
    low, high = (_value(ends.get(end), ends, end) for end in ("low", "high"))
    if (both := _value(ends.get("both"), ends, "high")) is not None:
        low = high = both
    if unit != first or (low is None and high is None):
        return Read((), (_unread(part, text, place),))
    name = ends["name"].strip(" :")
    if name.endswith(("-", "–", "—", "−")):
        return Read((), (_unread(part, text, place),))
    bare = TypedLimit(part, place, "share", name, unit or "%", low, high)
    is_bare = unit is None
    problem = _absurd(bare, text)
    if problem is not None:
        return Read((), (problem,))
    if is_bare and name.casefold() in ("price", "preis"):
        return Read((replace(bare, kind="price", unit="per kg", name="price"),))
    held = property_named(name)
    if held is not None and held not in _CLASSES_FIRST and unit != "%":
        return Read((replace(bare, kind="property", unit="g in 100 g", name=held),))
    return _placed(bare, text, flours, is_bare=is_bare and both is not None)


def _unit(word: str | None) -> Literal["%", "g"] | None:
    if word is None:
        return None
    return "%" if word.casefold() in ("%", "percent", "per cent", "prozent", "pct") else "g"


def _value(number: str | None, ends: dict[str, str], end: str) -> float | None:
    read = None if number is None else read_number(number, comma_is_decimal=True)
    if read is None:
        return None
    word = ends.get(f"{end}_unit") or ends.get("high_unit") or ""
    return read.value * _GRAMS.get(word.casefold(), 1.0)


def _placed(
    bare: TypedLimit, text: str, flours: Sequence[AtHand], *, is_bare: bool = False
) -> _Limits:
    """A limit on the flours that its words mean, or the question which."""
    members = members_of(bare.name, flours)
    if members.others:
        return Read((), (_which(bare, members, text, flours),))
    if not members.is_known:
        return Read((), (_not_at_hand(bare, text, flours),))
    found = replace(bare, name=members.name, members=members.places)
    return Read((found,), (), tuple(_notices(found, flours, is_bare=is_bare)))


def _notices(limit: TypedLimit, flours: Sequence[AtHand], *, is_bare: bool) -> list[Notice]:
    notices = []
    if not limit.members and not limit.low:
        text = f"“{limit.read}”: none of it is among the flours at hand; it holds as it is."
        notices.append(Notice("limit-without-flour", text, limit.where))
    if is_bare:
        text = f"“{limit.read}” is taken in percent of the blend. In grams: {limit.read} g."
        notices.append(Notice("limit-in-percent", text, limit.where))
    if len(limit.members) == 1 and not _is_plain(limit, flours):
        text = f"“{limit.read}”: {limit.name} is taken for {flours[limit.members[0]].name}."
        notices.append(Notice("limit-taken-for", text, limit.where))
    return notices


def _is_plain(limit: TypedLimit, flours: Sequence[AtHand]) -> bool:
    """Whether the words of a limit are the flour's own, and no other flour's."""
    words = set(limit.name.casefold().split())
    holding = [at for at, f in enumerate(flours) if words <= set(f.name.casefold().split())]
    return holding == list(limit.members) or limit.name in CLASS_NAMES


def _absurd(limit: TypedLimit, text: str) -> Problem | None:
    """Ends that run backwards are for the one who asked; more than all of it is no percent."""
    ends = [end for end in (limit.low, limit.high) if end is not None]
    if limit.unit == "%" and any(end > 100 for end in ends):
        ask = f"“{limit.read}” is more than 100 % of the blend. Percent or grams?"
        grams = Option("grams", f"{limit.read.rstrip(' %')} g")
        return Problem("limit-over-100", limit.where, text, ask, (grams,))
    return None


def _strict(match: re.Match[str], text: str, place: str) -> Problem:
    sign = match["sign"]
    word = "at most" if sign == "<" else "at least"
    line = f"{match['name'].strip()} {sign}= {match['rest'].strip()}"
    ask = f"Limits here take their ends in: type {line} ({word}), or the next number inside."
    return Problem("limit-strict", place, text, ask, (Option(word, line),))


def _which(limit: TypedLimit, members: Members, text: str, flours: Sequence[AtHand]) -> Problem:
    places = (*members.places, *members.others)
    names = [flours[place].name for place in places]
    ask = f"Which flour is meant by “{limit.name}”: {' or '.join(names)}? Or all of them together?"
    typed = re.compile(re.escape(limit.name), re.IGNORECASE)
    lines = [(name, typed.sub(name, text, count=1)) for name in (*names, " + ".join(names))]
    options = tuple(Option(name, line) for name, line in lines)
    return Problem("limit-which-flour", limit.where, text, ask, options)


def _not_at_hand(limit: TypedLimit, text: str, flours: Sequence[AtHand]) -> Problem:
    names = [flour.name for flour in flours]
    ask = f"“{limit.name}” names no flour at hand. There are: {', '.join(names)}; or type starch."
    return Problem("limit-no-flour", limit.where, text, ask)


def _unread(part: str, text: str, place: str) -> Problem:
    examples = "; ".join(LIMIT_EXAMPLES)
    ask = f"“{part}” is not read as a limit. Type one such as: {examples}."
    return Problem("limit-unread", place, text, ask)
