"""The steps: their texts, which amounts they take of which line, oven, core and minutes."""

import re
from functools import lru_cache
from typing import NamedTuple

from krume.base import Interval, Notice, Problem
from krume.design.formula import Line, OvenLine, Use
from krume.design.reader.asking import Asking
from krume.design.reader.blanks import blanked
from krume.design.reader.classifying import Kind
from krume.design.reader.cleaning import NOTHING, clean
from krume.design.reader.heads import Head
from krume.design.reader.keyfigures import step_core
from krume.design.reader.keylines import CORE
from krume.design.reader.mentions import Mention, mentions, stem, words_of
from krume.design.reader.ovens import minutes_of, oven_of, speaks_of_baking
from krume.design.reader.tinsaid import TinSaid, tins_said
from krume.design.reader.wording import VERBS
from krume.pantry import measure
from krume.size import Tin

_ENDS = re.compile(r"[.!?:;)]\s*$")
_LONG_LINE = 48
_ADDED = re.compile(
    r"\b(?:more|another|further|longer|extra|then|weitere|dann|noch|blind|again|uncover\w*|return|remaining|cover\w*|fill\w*)\b",
    re.IGNORECASE,
)
_NO_BAKE = re.compile(
    r"\b(?:toast\w*|cool\w*|chill\w*|rest\w*|soak\w*|freez\w*|whisk\w*|beat\w*|cream|boil\w*|"
    r"simmer\w*|stand|hang\w*|abkühlen|ruhen|rühren|schlagen|on a rack|preheat\w*)\b",
    re.IGNORECASE,
)
_OPEN = re.compile(
    r"\bbak\w*\s+(?:them\s+|it\s+)?until\s+(?:it(?:'s| is)\s+)?done\b|\d+\s*min\w*\s+or so\b|"
    r"\bor so\b",
    re.IGNORECASE,
)


_ABBREVIATED = re.compile(r"\b(min|mins|ca|approx|std|hrs?)\.", re.IGNORECASE)


class Said(NamedTuple):
    """What one step line says about the oven, the core and the minutes."""

    oven: OvenLine | None
    problems: tuple[Problem, ...]
    notices: tuple[Notice, ...]
    core_c: float | None
    minutes: tuple[tuple[Interval, int, bool], ...]
    is_open: bool


class Steps(NamedTuple):
    """The steps of a text with what they say."""

    texts: tuple[str, ...]
    uses: tuple[Use, ...]
    oven: OvenLine | None = None
    oven_line: int | None = None
    core_c: float | None = None
    bake_min: Interval | None = None
    tins: tuple[Tin, ...] = ()
    kinds: tuple[tuple[Kind, ...], ...] = ()
    minutes: tuple[tuple[Kind, Interval, int, bool], ...] = ()
    tins_said: tuple[tuple[Kind, TinSaid], ...] = ()
    taken: tuple[tuple[Kind, Mention, int | None, float | None], ...] = ()


def steps_of(
    kinds: list[Kind], lines: list[Line], head: Head,
    problems: list[Problem], notices: list[Notice],
) -> Steps:  # fmt: skip
    """Steps of a text; what they ask about the oven is added to the problems."""
    groups = _grouped([kind for kind in kinds if kind.kind == "step"])
    texts = tuple(" ".join(_text(kind.source) for kind in group) for group in groups)
    said = [(kind, step_said(kind.source)) for group in groups for kind in group]
    oven = oven_line = core = None
    minutes = []
    for kind, one in said:
        core = core if one.core_c is None else core or one.core_c
        minutes += [(kind, *m) for m in one.minutes]
        if head.oven is None and oven is None and one.oven is not None:
            oven, oven_line = one.oven, kind.number
        if head.oven is None or one.oven is None or one.problems:
            _carry(kind, one, problems, notices)
        if one.is_open:
            notices.append(
                Notice(
                    "minutes-open",
                    "no interval of minutes: the family's core and check rule decide",
                    f"line {kind.number}",
                )
            )
    tins = _tins(kinds)
    uses, taken = _uses(groups, lines)
    decided_first = sorted(tins, key=lambda said: not said[1].decided)
    known = tuple(said.tin for _, said in decided_first if said.tin is not None)
    return Steps(
        texts, uses, oven, oven_line, core, _bake_min(minutes), known, tuple(groups),
        tuple(minutes), tins, taken,
    )  # fmt: skip


def _carry(kind: Kind, said: Said, problems: list[Problem], notices: list[Notice]) -> None:
    where = f"line {kind.number}"
    problems.extend(Problem(p.code, where, p.read, p.ask, p.options) for p in said.problems)
    notices.extend(Notice(n.code, n.text, where) for n in said.notices)


def _text(source: str) -> str:
    cleaned = clean(source)
    text = source[cleaned.start :] if "<" not in source and "&" not in source else cleaned.text
    return " ".join(text.replace(NOTHING, "").replace("**", "").split())


def _grouped(kinds: list[Kind]) -> list[tuple[Kind, ...]]:
    """Step lines, with lines that only go on joined to the one before."""
    groups: list[tuple[Kind, ...]] = []
    for kind in kinds:
        last = groups[-1][-1] if groups else None
        if (
            last is not None
            and last.number == kind.number - 1
            and _goes_on(last.source, kind.source)
        ):
            groups[-1] = (*groups[-1], kind)
        else:
            groups.append((kind,))
    return groups


def _goes_on(before: str, source: str) -> bool:
    cleaned = clean(source)
    text = cleaned.text.strip()
    if not text or cleaned.mark or _ENDS.search(before) or len(before) < _LONG_LINE:
        return False
    first = re.split(r"\W", text, maxsplit=1)[0]
    return text[0].islower() and first not in VERBS


_SAYS_NOTHING = Said(None, (), (), None, (), is_open=False)
_OR_SO = re.compile(r"\d+\s*min\w*\s+or so\b")


def step_said(source: str) -> Said:
    """What a step line says about oven, core and minutes, remembered by its text."""
    return _said(source) if _may_say(blanked(source)) else _SAYS_NOTHING


@lru_cache(maxsize=8192)
def _may_say(blank: str) -> bool:
    return (
        speaks_of_baking(blank)
        or speaks_of_baking(clean(blank).text.replace(NOTHING, " "))
        or CORE.search(blank) is not None
        or _OR_SO.search(blank) is not None
    )


@lru_cache(maxsize=8192)
def _said(source: str) -> Said:
    asking = Asking(source)
    oven = oven_of(source, asking, keyed=False, has_grams=True)
    core_c = step_core(source, asking)
    minutes = tuple(_bake_minutes(source))
    is_open = (bool(_OPEN.search(source)) and speaks_of_baking(source)) or bool(
        _OR_SO.search(source)
    )
    return Said(oven, tuple(asking.problems), tuple(asking.notices), core_c, minutes, is_open)


def _bake_minutes(source: str) -> list[tuple[Interval, int, bool]]:
    """Minutes in the oven a line names: each with its place, and whether it comes on top."""
    out = []
    text = clean(source).text
    for minutes, at in minutes_of(text):
        text = _ABBREVIATED.sub(r"\1 ", text)
        start = max(text.rfind(". ", 0, at) + 1, text.rfind(";", 0, at) + 1, 0)
        clause_start = max(text.rfind(",", 0, at) + 1, start)
        sentence = text[start : text.find(". ", at) if text.find(". ", at) > 0 else len(text)]
        clause = text[clause_start : at + 30]
        if (
            speaks_of_baking(sentence)
            and not _NO_BAKE.search(text[clause_start:at])
            and not re.search(
                r"\bevery\b|\bafter\b|\bnach\b", text[max(0, at - 12) : at], re.IGNORECASE
            )
        ):
            out.append((minutes, at, bool(_ADDED.search(clause))))
    return out


def _bake_min(minutes: list[tuple[Kind, Interval, int, bool]]) -> Interval | None:
    if not minutes:
        return None
    total = minutes[0][1]
    for _, other, _, is_added in minutes[1:]:
        if is_added:
            total = Interval(
                total.low + other.low, total.best + other.best, total.high + other.high
            )
    return total


def _tins(kinds: list[Kind]) -> tuple[tuple[Kind, TinSaid], ...]:
    texts = [kind for kind in kinds if kind.kind in ("name", "step", "note", "heading")]
    return tuple((kind, said) for kind in texts for said in tins_said(kind.source))


def _uses(
    groups: list[tuple[Kind, ...]], lines: list[Line]
) -> tuple[tuple[Use, ...], tuple[tuple[Kind, Mention, int | None, float | None], ...]]:
    uses: list[Use] = []
    named: list[tuple[Kind, Mention, int | None, float | None]] = []
    names = [line_words(line) for line in lines]
    for number, group in enumerate(groups):
        taken: set[int] = set()
        for kind in group:
            last: int | None = None
            for mention in mentions(kind.source):
                at = line_of(mention, names, last)
                mass = mass_of(mention, lines[at]) if at is not None else None
                named.append((kind, mention, at, mass))
                if at is not None:
                    last = at
                    taken.add(at)
                    uses.append(Use(number, at, mass, kind.source[mention.start : mention.end]))
        words = words_of(group[0].source) if len(group) == 1 else _all_words(group)
        for at, name in enumerate(names):
            if (
                at not in taken
                and name
                and (name[-1] in words or (words & _EGG_WORDS and _is_egg(lines[at])))
            ):
                uses.append(Use(number, at, None, name[-1]))
    return tuple(uses), tuple(named)


def _all_words(group: tuple[Kind, ...]) -> frozenset[str]:
    return frozenset().union(*(words_of(kind.source) for kind in group))


_EGG_WORDS = frozenset("egg eier white yolk eiweiß eigelb eischnee".split())


def _is_egg(line: Line) -> bool:
    return (line.ingredient or "").startswith("egg")


@lru_cache(maxsize=8192)
def _name_words(name: str) -> tuple[str, ...]:
    return tuple(stem(word) for word in re.findall(r"[^\W\d_]+", name.casefold()))


def line_words(line: Line) -> tuple[str, ...]:
    """Words of a line's name, the head noun last; parts of eggs by their own words."""
    words = _name_words(line.name)
    if line.part == "juice":
        return (*words, "juice")
    if line.part == "zest" and "zest" not in words:
        return (*words, "zest")
    return words


def line_of(mention: Mention, names: list[tuple[str, ...]], last: int | None) -> int | None:
    """Index of the line a mention takes from."""
    if not mention.words:
        return last if mention.goes_on else None
    best, most = None, 0
    for at, name in enumerate(names):
        shared = sum(word in name for word in mention.words)
        fits = bool(name) and (name[-1] in mention.words or mention.words[-1] in name)
        if fits and shared > most:
            best, most = at, shared
    return best


def mass_of(mention: Mention, line: Line) -> float | None:
    """Grams of a mention, by the line's ingredient where it is a volume."""
    value = mention.value.best if isinstance(mention.value, Interval) else mention.value
    if mention.unit.kind == "mass":
        return value * (mention.unit.size or 1.0)
    if (
        mention.unit.name == line.unit
        and line.mass_g is not None
        and isinstance(line.amount, float)
    ):
        return line.mass_g * value / line.amount if line.amount else None
    if line.ingredient is None:
        return None
    one = measure(line.ingredient, mention.unit.name)
    return one.mass_g.best * value if one is not None else None
