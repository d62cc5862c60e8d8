"""Tins named in passing: `in a greased 8-inch round`, `13x9 tin`, `Springform (26 cm)`."""

import re
from functools import lru_cache
from typing import NamedTuple

from krume.base import Notice, Problem
from krume.design.reader.blanks import blanked
from krume.design.reader.cleaning import NOTHING, clean
from krume.design.reader.settings import limit
from krume.size import Tin, read_tin

_SIZE = (
    r"(?:Ø\s*)?\d+(?:[.,]\d+)?(?:\s?[½¼¾])?(?:(?:\s*(?:cm|mm|in|\"))?\s*(?:x|×|by)\s*\d+(?:[.,]\d+)?){0,2}(?:[\s-]*(?:cm|mm|inch(?:es)?|in\b|\"|zoll))?(?:[\s-]*er\b)?"
    r"(?:\s*\(\s*\d+(?:[.,]\d+)?(?:\s*(?:x|×|by)\s*\d+(?:[.,]\d+)?){0,2}[\s-]*(?:cm|mm|inch(?:es)?|in\b|\"|zoll)\s*\))?"
)
_NOUN = (
    r"(?:(?:cake|baking|loaf|tube|bundt|jelly[ -]?roll|sponge|sandwich|spring|tart|pie|muffin|"
    r"sheet|angel food)[ -]?)?(?:tins?|pans?|spring[- ]?forms?|moulds?|molds?|trays?|dish)"
    r"|(?:\w*(?:kasten|spring|back|kuchen|tarte?|gugelhupf|rund|obst)form(?:en)?|backblech|"
    r"blech)|tart rings?|cake rings?|rings?|rounds?|squares?|loaf|sheets?|tubes?"
)
_HOLE = (
    r"(?:,?\s*(?:with a\s+)?(?:hole|loch)\s*(?:of\s*)?\d+(?:[.,]\d+)?\s*(?:cm|mm|"
    r"in(?:ch(?:es)?)?))?"
)
_SAID = re.compile(
    rf"(?<![\d./,])(?P<size>{_SIZE})"
    rf"(?P<between>(?:[\s,-]+(?!and\b|or\b|for\b|with\b|of\b|und\b|thick\b|dick\b|minutes?\b)[a-zäöüß-]+){{0,4}}?)"
    rf"[\s-]+(?P<noun>{_NOUN})\b(?P<more>\s+(?:tins?|pans?))?"
    rf"(?P<deep>,?\s*\d+(?:[.,]\d+)?\s*(?:cm|mm|in(?:ch(?:es)?)?)\s*(?:deep|high|hoch))?{_HOLE}"
    rf"|\b(?P<noun2>{_NOUN})\b\s*(?:[(,:]|von|of|mit|with|à|Ø|measuring|"
    rf"\s)*\s*(?P<size2>{_SIZE})(?:\s*(?:Länge|Durchmesser|Ø|deep|high|diameter|in "
    rf"diameter)\b)?\)?{_HOLE}",
    re.IGNORECASE,
)
_UNIT = re.compile(r"(?:cm|mm|inch|in\b|\"|zoll|er\b|x|×|by)", re.IGNORECASE)
_NOT_A_TIN = re.compile(
    r"^\s*(?:rounds?|circles?|sheets?|squares?)?\s*(?:of\s+)?(?:parchment|baking paper|paper|"
    r"greaseproof|gelatine?|pastry|puff)",
    re.IGNORECASE,
)
_MAY_NAME_TIN = re.compile(
    r"\d.*?(?:tin|pan|form|round|square|sheet|loaf|ring|tube|dish|tray|mou?ld|blech)|(?:tin|pan|form|round|square|sheet|loaf|ring|tube|dish|tray|mou?ld|blech).*?\d",
    re.IGNORECASE,
)
_THIS_ONE = re.compile(r"^\s*,?\s*\(this one\)", re.IGNORECASE)
THIS_ONE = "(this one)"


class TinSaid(NamedTuple):
    """A tin named in a line: the words, where they stand, what they are, what is asked."""

    text: str
    start: int
    end: int
    tin: Tin | None
    problems: tuple[Problem, ...]
    notices: tuple[Notice, ...]
    decided: bool


@lru_cache(maxsize=8192)
def _may_name_tin(blank: str) -> bool:
    if _MAY_NAME_TIN.search(blank) is None:
        return False
    return _SAID.search(clean(blank).text.replace(NOTHING, " ")) is not None


def tins_said(source: str) -> tuple[TinSaid, ...]:
    """Tins a line names in passing."""
    return _tins_said(source) if _may_name_tin(blanked(source)) else ()


@lru_cache(maxsize=8192)
def _tins_said(source: str) -> tuple[TinSaid, ...]:
    text = clean(source).text.replace(NOTHING, " ")
    return tuple(said for match in _SAID.finditer(text) if (said := _said(match, text, source)))


def _said(match: re.Match[str], text: str, source: str) -> TinSaid | None:
    size = match["size"] or match["size2"]
    noun = (match["noun"] or match["noun2"]).casefold()
    if not _UNIT.search(size) or _NOT_A_TIN.match(
        text[match.start("noun") if match["noun"] else match.end() :]
    ):
        return None
    if _NOT_A_TIN.match(text[match.end() :]) or (
        noun in ("sheet", "sheets", "squares") and "x" not in size and "×" not in size
    ):
        return None
    words = source[match.start() : match.end()].strip(" ,")
    if words.count("(") < words.count(")"):
        words = words.rstrip(")")
    found = read_tin(_tidy(words))
    if found.value is not None and not _is_big(found.value):
        return None
    asks_shape = any(p.code.startswith("tin-shape") for p in found.problems)
    if found.value is None and not asks_shape and not re.search(r"\d\s*(?:x|×|by)\s*\d", size):
        return None
    decided = bool(_THIS_ONE.match(text[match.end() :]))
    return TinSaid(
        words,
        match.start(),
        match.start() + len(words),
        found.value,
        found.problems,
        found.notices,
        decided,
    )


def _tidy(words: str) -> str:
    return re.sub(
        r"\b(?:greased|lined|buttered|prepared|von|measuring|Länge|gefettete?n?|two|three|a|an)\b",
        " ",
        words,
        flags=re.IGNORECASE,
    )


def _is_big(tin: Tin) -> bool:
    widest = max(
        tin.diameter_cm or 0.0, tin.length_cm or 0.0, tin.width_cm or 0.0, tin.hole_cm or 0.0
    )
    return widest >= limit("tin-smallest")


def same_tin(one: Tin, other: Tin) -> bool:
    """Whether two texts can name one tin: the same base, whatever depth was left out.

    >>> from krume.size import Tin
    >>> same_tin(Tin("", "round", diameter_cm=20), Tin("", "springform", diameter_cm=20.3))
    True
    """
    pairs = (
        (one.diameter_cm, other.diameter_cm),
        (one.length_cm, other.length_cm),
        (one.width_cm, other.width_cm),
        (one.height_cm, other.height_cm),
    )
    if all(a is None or b is None for a, b in pairs[:3]):
        return False
    return all(
        a is None or b is None or abs(a - b) <= limit("tin-same") / 100 * max(a, b)
        for a, b in pairs
    )
