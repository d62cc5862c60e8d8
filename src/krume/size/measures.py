"""Numbers of a tin text with what each of them measures, before the shape gives them sense."""

import re
from dataclasses import dataclass, field

from krume.base import Unit, plain_digits, read_number, unit_named
from krume.size.words import (
    ADJECTIVES,
    BRIDGES,
    COUNT_WORDS,
    CUP_WORDS,
    MANY_ROUND,
    NOUNS,
    PHRASES,
    SHAPE_WORDS,
    WATER_WORDS,
)

_TOKEN = re.compile(
    r"(?P<number>(?<![^\W\d_])(?:(?<=[\s(,;:])|(?<=^))-(?=\d)\d+(?:[.,]\d+)*|\d+(?:[.,]\d+)*(?:e\d+)?)"
    r"|(?P<slash>/)|(?P<stop>[,;:])|(?P<quote>[\"″”“]|''|′′)"
    r"|(?P<word>[^\W\d_]+(?:-[^\W\d_]+)*|[°ø⌀])|(?P<times>[×*✕])"
)
_MIXED = re.compile(r"(?<![\d.,/])(\d{1,3})[ -](\d{1,2})/(2|3|4|8|16)(?![\d.])")
_PROPER = re.compile(r"(?<![\d.,/])(\d{1,2})/(2|3|4|8|16)(?![\d.])")
_GLUED_BY = re.compile(r"(?<=\d)\s*(cm|mm|in|inch|\")x(?=\s*\d)")
_WITH_TUBE = re.compile(r"\bwith (?:an? )?(\d[\d.,]*)[ -]?(in|inch|cm|mm|\")? ?(?:central )?tube\b")
_MOST_TINS = 24
_MOST_ROUNDS = 6
_BY_WORDS = frozenset({"x", "by", "mal"})


@dataclass(slots=True)
class Number:
    """A numeral: its value as typed, its unit if it had one, and what it measures."""

    value: float
    unit: Unit | None
    at: int
    end: int
    german_er: bool = False
    label: str | None = None


@dataclass(slots=True)
class Chain:
    """Numbers joined by signs: `joints` holds `x` or `/` between neighbours."""

    numbers: list[Number]
    joints: str = ""


@dataclass(slots=True)
class Measures:
    """What a tin text holds: words, chains of lengths, labelled lengths, capacity, count."""

    words: list[str] = field(default_factory=list)
    chains: list[Chain] = field(default_factory=list)
    labelled: dict[str, list[Number]] = field(default_factory=dict)
    capacity: list[Number] = field(default_factory=list)
    count: int | None = None
    unreadable: list[str] = field(default_factory=list)

    def lengths(self) -> list[Number]:
        """Every length of the text, in the order of the text."""
        found = [n for chain in self.chains for n in chain.numbers]
        for label, numbers in self.labelled.items():
            found += [] if label == "cups" else numbers
        return sorted(found, key=lambda n: n.at)


@dataclass(frozen=True, slots=True)
class Token:
    """One sign or word of the text."""

    kind: str
    text: str


def measures(text: str) -> Measures:
    """Scan a tin text.

    >>> found = measures("tube 25/23 x 9 hole 6 cm")
    >>> [n.value for n in found.chains[0].numbers], found.chains[0].joints
    ([25.0, 23.0, 9.0], '/x')
    >>> found.labelled["hole"][0].value
    6.0
    """
    tokens = _tokens(plain(text))
    found = Measures()
    numbers = _numbers(tokens, found)
    found.words = _words(tokens, numbers)
    lengths = _take_capacity(tokens, numbers, found)
    found.chains = _chains(tokens, lengths)
    _take_labels(tokens, found)
    _take_count(tokens, found)
    _take_count_behind(tokens, found)
    _take_count_of_rounds(found)
    return found


def plain(text: str) -> str:
    """Text in small letters and plain signs, fractions as decimals, known phrases as one word."""
    spelled = plain_digits(text).casefold().replace("ß", "ss")
    spelled = spelled.replace("weissblech", "weißblech").replace("\u2011", "-")
    spelled = spelled.replace("\u2212", "-").replace("\u2013", "-")
    spelled = _MIXED.sub(lambda m: _decimal(int(m[1]), int(m[2]), int(m[3]), m[0]), spelled)
    spelled = _PROPER.sub(lambda m: _decimal(0, int(m[1]), int(m[2]), m[0]), spelled)
    spelled = _GLUED_BY.sub(r" \1 x ", spelled)
    spelled = _WITH_TUBE.sub(r"hole \1 \2", spelled)
    for phrase, word in PHRASES:
        spelled = spelled.replace(phrase, word)
    return spelled


def _decimal(whole: int, top: int, bottom: int, typed: str) -> str:
    return typed if top >= bottom else f"{whole + top / bottom:.6f}"


def _tokens(spelled: str) -> list[Token]:
    return [Token(m.lastgroup or "", m[0]) for m in _TOKEN.finditer(spelled)]


def _numbers(tokens: list[Token], found: Measures) -> list[Number]:
    numbers: list[Number] = []
    for at, token in enumerate(tokens):
        if token.kind != "number":
            continue
        sign = -1.0 if token.text.startswith("-") else 1.0
        read = read_number(token.text.lstrip("-"))
        if read is None:
            found.unreadable.append(token.text)
            continue
        unit, german_er, end = _unit_after(tokens, at)
        numbers.append(Number(sign * read.value, unit, at, end, german_er))
    return numbers


def _words(tokens: list[Token], numbers: list[Number]) -> list[str]:
    units = {at for n in numbers for at in range(n.at, n.end + 1)}
    words = [t.text for at, t in enumerate(tokens) if t.kind == "word" and at not in units]
    return [word for word in words if word not in _BY_WORDS and word != "er"]


def _unit_after(tokens: list[Token], at: int) -> tuple[Unit | None, bool, int]:
    """Unit right behind a number, whether it is the German -er, and the last token it takes."""
    if at + 1 >= len(tokens) or tokens[at + 1].kind not in ("word", "quote"):
        return None, False, at
    after = tokens[at + 1]
    if after.kind == "quote":
        return unit_named("in"), False, at + 1
    if after.text == "er":
        return None, True, at + 1
    unit, end = unit_named(after.text), at + 1
    if after.text == "fl" and at + 2 < len(tokens) and tokens[at + 2].text == "oz":
        unit, end = unit_named("fl oz"), at + 2
    if unit is None or unit.kind not in ("length", "mass", "volume"):
        return None, False, at
    return unit, False, end


def _take_capacity(tokens: list[Token], numbers: list[Number], found: Measures) -> list[Number]:
    lengths = []
    for number in numbers:
        if number.unit is None or number.unit.kind == "length":
            lengths.append(number)
        elif tokens[number.end].text in CUP_WORDS and _is_cup_count(number.value):
            found.labelled.setdefault("cups", []).append(number)
        else:
            found.capacity.append(number)
    return lengths


def _is_cup_count(value: float) -> bool:
    return value == int(value) and 0 < value <= 60


def _chains(tokens: list[Token], numbers: list[Number]) -> list[Chain]:
    chains: list[Chain] = []
    for number in numbers:
        joint = _joint(tokens, chains[-1].numbers[-1], number) if chains else ""
        if joint:
            chains[-1].numbers.append(number)
            chains[-1].joints += joint
        else:
            chains.append(Chain([number]))
    return chains


def _joint(tokens: list[Token], before: Number, number: Number) -> str:
    between = tokens[before.end + 1 : number.at]
    if len(between) != 1:
        return ""
    if between[0].kind == "slash":
        return "/"
    return "x" if between[0].kind == "times" or between[0].text in _BY_WORDS else ""


def _take_labels(tokens: list[Token], found: Measures) -> None:
    for at, token in enumerate(tokens):
        if token.kind == "word" and token.text in ADJECTIVES and not _describes(tokens, at):
            _move(found, ADJECTIVES[token.text], _number_before(tokens, found, at))
    for at, token in enumerate(tokens):
        if token.kind == "word" and token.text in NOUNS:
            _move(found, NOUNS[token.text], _number_of_noun(tokens, found, at))


def _describes(tokens: list[Token], at: int) -> bool:
    """`20 cm deep round tin`: the word belongs to the shape behind it, not to the number."""
    after = tokens[at + 1].text if at + 1 < len(tokens) else ""
    return after in SHAPE_WORDS or after in ("cake", "loose-bottomed")


def _number_of_noun(tokens: list[Token], found: Measures, at: int) -> Number | None:
    before, after = _number_before(tokens, found, at), _number_after(tokens, found, at)
    if after is None or before is None:
        return after or before
    follower = tokens[after.end + 1].text if after.end + 1 < len(tokens) else ""
    belongs_onwards = follower in NOUNS and not _number_follows(tokens, after.end + 1)
    return before if belongs_onwards else after


def _number_follows(tokens: list[Token], at: int) -> bool:
    return at + 1 < len(tokens) and tokens[at + 1].kind == "number"


def _number_before(tokens: list[Token], found: Measures, at: int) -> Number | None:
    ends = {c.numbers[-1].end: c.numbers[-1] for c in found.chains}
    for before in range(at - 1, -1, -1):
        if before in ends:
            return ends[before]
        if tokens[before].text not in BRIDGES:
            return None
    return None


def _number_after(tokens: list[Token], found: Measures, at: int) -> Number | None:
    starts = {c.numbers[0].at: c.numbers[0] for c in found.chains}
    for after in range(at + 1, len(tokens)):
        if after in starts:
            return starts[after]
        if tokens[after].text not in BRIDGES and tokens[after].text != ":":
            return None
    return None


def _move(found: Measures, label: str, number: Number | None) -> None:
    """Take a number out of its chain and keep it under its label."""
    if number is None:
        return
    chain = next(c for c in found.chains if number in c.numbers)
    place = chain.numbers.index(number)
    if len(chain.numbers) > 1 and place == 0:
        return
    chain.numbers.pop(place)
    chain.joints = chain.joints[: max(place - 1, 0)]
    found.chains = [c for c in found.chains if c.numbers]
    found.labelled.setdefault(label, []).append(number)


def _take_count(tokens: list[Token], found: Measures) -> None:
    """`2 x round 20 x 5 cm`, `two 8-inch tins`: the count of tins in front."""
    if tokens and tokens[0].text in COUNT_WORDS and COUNT_WORDS[tokens[0].text] > 1:
        found.count = COUNT_WORDS[tokens[0].text]
    first = found.chains[0] if found.chains else None
    others = len(found.lengths()) + len(found.capacity)
    if first is None or others < 2 or len(first.numbers) != 1:
        return
    number = first.numbers[0]
    bare = number.at == 0 and number.unit is None and not number.german_er
    if bare and 1 <= number.value <= _MOST_TINS and number.value == int(number.value):
        found.count = int(number.value)
        found.chains = found.chains[1:]


def _take_count_behind(tokens: list[Token], found: Measures) -> None:
    """`6-inch tins x 3`: the count of tins behind."""
    last = found.chains[-1] if len(found.chains) > 1 else None
    if last is None or len(last.numbers) != 1 or last.numbers[0].unit is not None:
        return
    number = last.numbers[0]
    if (
        tokens[number.at - 1].text in _BY_WORDS
        and _MOST_TINS >= number.value == int(number.value) > 0
    ):
        found.count = int(number.value)
        found.chains = found.chains[:-1]


def _take_count_of_rounds(found: Measures) -> None:
    """`2 x 20 cm rounds`: a small bare number before one length, of several round tins."""
    chain = found.chains[0] if len(found.chains) == 1 else None
    if chain is None or len(chain.numbers) != 2 or not MANY_ROUND & set(found.words):
        return
    number, length = chain.numbers
    bare = number.at == 0 and number.unit is None and number.value == int(number.value)
    if bare and 1 < number.value < length.value and number.value <= _MOST_ROUNDS:
        found.count = int(number.value)
        chain.numbers, chain.joints = [length], ""


def has_water(found: Measures) -> bool:
    """Whether the text says that a mass is one of water."""
    return any(word in WATER_WORDS for word in found.words)
