"""Amounts a step names: `60 g of the sugar`, `the remaining 75 g`, `five whites`."""

import re
from functools import lru_cache
from itertools import pairwise
from typing import NamedTuple

from krume.base import Interval, Unit
from krume.design.reader.blanks import blanked, figure_at
from krume.design.reader.cleaning import clean
from krume.design.reader.tokens import Number, Token, tokens

_REMAINING = frozenset(
    "remaining rest remainder other restliche restlichen restlicher übrige übrigen "
    "remaining".split()
)
_SKIPPED = frozenset(
    "the of this that your each extra more further another a an cold warm hot soft melted "
    "sifted der die das den dem von vom caster".split()
)
_STOPS = frozenset(
    "and und or oder then dann until bis in into with mit to over on at for from by while whisk "
    "beat fold add stir mix "
    "pour sift bake cook cool chill whip boil melt at until plus sowie unterheben rühren "
    "schlagen".split()
)
_FRACTIONS = frozenset("half third quarter hälfte drittel viertel".split())
_PARTS = {
    "white": "white", "whites": "white", "eiweiß": "white", "eiweiss": "white",
    "eiweiße": "white", "eischnee": "white", "yolk": "yolk", "yolks": "yolk",
    "eigelb": "yolk", "eigelbe": "yolk", "dotter": "yolk", "egg": "whole",
    "eggs": "whole", "eier": "whole", "ei": "whole",
}  # fmt: skip
_WORD = re.compile(r"[^\W\d_]+(?:-[^\W\d_]+)*")


class Mention(NamedTuple):
    """An amount in a step, with the words behind it and whether it is called the remaining one."""

    value: float | Interval
    unit: Unit
    words: tuple[str, ...]
    is_remaining: bool
    is_of_the: bool
    start: int
    end: int
    goes_on: bool


class Count(NamedTuple):
    """A number of eggs, whites or yolks in a step."""

    how_many: float
    part: str
    is_definite: bool
    start: int
    end: int


def words_of(text: str) -> frozenset[str]:
    """Words of a text in small letters, plural s put aside.

    >>> sorted(words_of("Fold the Flours in"))
    ['flour', 'fold', 'in', 'the']
    """
    return _words_of(blanked(text))


@lru_cache(maxsize=8192)
def _words_of(text: str) -> frozenset[str]:
    return frozenset(stem(word) for word in _WORD.findall(text.casefold()))


def stem(word: str) -> str:
    """A word without its plural."""
    if len(word) > 4 and word.endswith("ies"):
        return word[:-3] + "y"
    return word[:-1] if len(word) > 3 and word.endswith("s") and not word.endswith("ss") else word


@lru_cache(maxsize=8192)
def step_tokens(source: str) -> tuple[Token, ...]:
    """Tokens of a step."""
    cleaned = clean(source[:4000])
    return tuple(tokens(cleaned.text, cleaned.start, len(cleaned.text)))


def mentions(source: str) -> tuple[Mention, ...]:
    """Masses and volumes a step names, with the words that say of what."""
    blank = blanked(source)
    found = _mentions(blank)
    return found if blank == source else tuple(_with_figure(m, source, blank) for m in found)


def _with_figure(mention: Mention, source: str, blank: str) -> Mention:
    """A mention of a blanked line with the figure of the line itself."""
    start, end = mention.start, mention.end
    if source[start:end] == blank[start:end]:
        return mention
    value = figure_at(source, start)
    return mention if value is None else mention._replace(value=value)


@lru_cache(maxsize=8192)
def _mentions(source: str) -> tuple[Mention, ...]:
    if not any(sign.isdigit() for sign in source):
        return ()
    found = step_tokens(source)
    out: list[Mention] = []
    for at, token in enumerate(found[:-1]):
        if token.kind == "N" and found[at + 1].kind in "MV":
            out.append(_mention(found, at, source, goes_on=bool(out)))
    return tuple(out)


def _mention(found: tuple[Token, ...], at: int, source: str, *, goes_on: bool) -> Mention:
    unit_at = at + 1
    number, unit = found[at].value, found[unit_at].value
    value = number.value if isinstance(number, Number) else 0.0
    words: list[str] = []
    of_the, remaining = False, _is_remaining_before(found, at)
    end = found[unit_at].end
    for before, token in pairwise(found[unit_at : unit_at + 9]):
        if before.kind == "W" and "." in source[before.end : token.start]:
            break
        if token.kind == "O":
            of_the = True
            continue
        if token.kind not in "WH" or token.value in _STOPS:
            break
        if token.value in _REMAINING:
            remaining = True
        elif token.value not in _SKIPPED:
            words.append(stem(str(token.value)))
            end = token.end
    return Mention(
        value, unit if isinstance(unit, Unit) else _NO_UNIT, tuple(words), remaining, of_the,
        found[at].start, end, goes_on and not words,
    )  # fmt: skip


_NO_UNIT = Unit("", "count", None)


def _is_remaining_before(found: tuple[Token, ...], at: int) -> bool:
    return any(
        token.kind == "W" and token.value in _REMAINING for token in found[max(0, at - 3) : at]
    )


def egg_counts(source: str) -> tuple[Count, ...]:
    """Counts of eggs, whites and yolks a step names: `the five whites`, `4 egg yolks`."""
    return _egg_counts(source) if _egg_counts(blanked(source)) else ()


@lru_cache(maxsize=8192)
def _egg_counts(source: str) -> tuple[Count, ...]:
    found = step_tokens(source)
    out = []
    for at, token in enumerate(found):
        if (
            token.kind != "N"
            or not isinstance(token.value, Number)
            or token.value.value != int(token.value.value if token.value.value < 1e6 else 0)
        ):
            continue
        part = _part_behind(found, at)
        if part is not None:
            before = found[at - 1].value if at else None
            out.append(
                Count(
                    token.value.value,
                    part,
                    before in ("the", "all", "die", "alle"),
                    token.start,
                    token.end,
                )
            )
    return tuple(out)


def _part_behind(found: tuple[Token, ...], at: int) -> str | None:
    part = None
    for token in found[at + 1 : at + 4]:
        if token.kind == "H" or token.value in ("fresh", "cold", "room-temperature", "beaten"):
            continue
        if token.kind != "W" or token.value not in _PARTS:
            break
        part = _PARTS[str(token.value)]
        if part != "whole":
            return part
    return part


def fraction_words(source: str) -> bool:
    """Whether a step takes a share: half, a third, the rest."""
    words = words_of(source)
    return bool(words & (_FRACTIONS | _REMAINING))
