"""What a line is by itself: a heading, a sentence, the head of a table, or plain words."""

import re
from functools import lru_cache
from typing import NamedTuple

from krume.design.reader.cleaning import NOTHING, Clean, clean
from krume.design.reader.keylines import KeyLine, key_line
from krume.design.reader.wording import (
    FINITE,
    FOR_SECTION,
    LIST_HEADINGS,
    METHOD_HEADINGS,
    NOTE_HEADINGS,
    NOUN_VERBS,
    SENTENCE,
    TABLE_WORDS,
    VERBS,
)

WORD = re.compile(r"[^\W\d_]+(?:['’-][^\W\d_]+)*")


RULE = re.compile(r"^(?:[\s|:\-=_*~#+.]+|(?:\s*\d+\s*x)+\s*)$", re.IGNORECASE)


_BRACKETED = re.compile(r"\([^()]{0,60}\)")


_IN_BRACKETS = re.compile(r"^\[[^\[\]\d]{2,40}\]:?$")


LEFT_OUT = re.compile(r"^\s*\(.*\)\s*$")


UNTIL_DONE = re.compile(
    r"(?<!\btsp)(?<!\btbsp)(?<!\boz)(?<!\blb)(?<!\bg)(?<!\bpt)(?<!\bqt)(?<!\bc)[.!?]\s*$",
    re.IGNORECASE,
)


_HEAD = re.compile(r"[,:;(]|\s[-–—]\s|//")


@lru_cache(maxsize=8192)
def plain(source: str) -> Clean:
    """A line's words without what stands around them."""
    cleaned = clean(source)
    text = " ".join(cleaned.text.replace(NOTHING, "").split())
    return Clean(text, cleaned.start, cleaned.mark)


_DETERMINERS = frozenset("the a an your both den die das".split())


@lru_cache(maxsize=8192)
def is_sentence(text: str) -> bool:
    """Whether a line tells what to do, or tells a story.

    >>> is_sentence("Cream butter and sugar 6 minutes."), is_sentence("Cream of tartar")
    (True, False)
    """
    words = WORD.findall(text)
    if not words:
        return False
    first = words[0].casefold()
    ends = bool(UNTIL_DONE.search(text))
    if text[0].isdigit():
        head = _HEAD.split(text, maxsplit=1)[0]
        return len(words) > 5 and bool(FINITE.search(head))
    if len(words) > 2 and first in VERBS & NOUN_VERBS and words[1].casefold() in _DETERMINERS:
        return bool(words[2].casefold() != "size")
    if first in NOUN_VERBS:
        return (ends and len(words) > 3) or (len(words) > 3 and bool(SENTENCE.search(text)))
    if first in VERBS:
        return len(words) > 1
    return (
        (ends and len(words) > 5)
        or (len(words) > 6 and bool(SENTENCE.search(text)))
        or len(words) > 16
    )


@lru_cache(maxsize=8192)
def heading_of(source: str) -> tuple[str, str] | None:
    """Kind of a heading (list, method, notes, section) and its words, or None."""
    text, _, mark = plain(source)
    bare = text.strip(" :–—-=#*.").strip()
    if not bare or len(bare) > 80:
        return None
    for pattern, kind in (
        (METHOD_HEADINGS, "method"),
        (NOTE_HEADINGS, "notes"),
        (LIST_HEADINGS, "list"),
    ):
        if pattern.match(bare):
            return kind, bare
    if _IN_BRACKETS.match(bare):
        return "section", bare.strip("[] :")
    words = WORD.findall(bare)
    has_number = bool(re.search(r"\d", re.sub(r"\([^)]*\)", "", bare)))
    if mark == "hash" and len(words) <= 10:
        return "section", bare
    if text.endswith(":") and len(words) <= 7 and not has_number:
        return "section", bare
    if (
        not has_number
        and len(words) <= 6
        and (
            FOR_SECTION.match(bare)
            or _is_bold(source)
            or (_is_capitals(_BRACKETED.sub("", bare)) and not text.endswith((".", "!")))
        )
    ):
        return "section", bare
    return None


def _is_bold(source: str) -> bool:
    text = source.strip()
    return (len(text) > 4 and text[:2] in ("**", "__") and text[-2:] in ("**", "__")) or bool(
        re.match(r"^<(b|strong|h[1-6])>.*</\1>$", text, re.IGNORECASE)
    )


def _is_capitals(text: str) -> bool:
    letters = [sign for sign in text if sign.isalpha()]
    return len(letters) > 3 and text.upper() == text and text.lower() != text


def is_table_head(source: str) -> bool:
    """Whether a line is the head of a table."""
    text = plain(source).text
    if any(sign.isdigit() for sign in text):
        return False
    words = re.findall(r"[^\W\d_]+|%", text.casefold())
    return (
        bool(words)
        and all(word in TABLE_WORDS for word in words)
        and bool(re.search(r"[\t|;]|\s{2,}|<t[dh]", source) or len(words) > 1)
    )


def table_unit(source: str) -> str | None:
    """Unit a table's head names for its bare figures."""
    if not is_table_head(source):
        return None
    words = re.findall(r"[^\W\d_]+", source.casefold())
    return "g" if any(word in ("g", "gram", "grams", "gramm") for word in words) else None


class Facts(NamedTuple):
    """What a line is by itself, whatever stands around it."""

    text: str
    mark: str
    is_note: bool
    key: KeyLine | None
    heading: tuple[str, str] | None
    may_head: bool


@lru_cache(maxsize=8192)
def facts_of(source: str) -> Facts:
    """Facts of a line by itself, remembered by its text."""
    text, _, mark = plain(source)
    is_note = (
        bool(RULE.match(text) or is_table_head(source) or LEFT_OUT.match(source)) if text else False
    )
    words = WORD.findall(text)
    may_head = 0 < len(words) <= 4 and not mark and not _NO_HEADING.search(text)
    return Facts(text, mark, is_note, key_line(source), heading_of(source), may_head)


_NO_HEADING = re.compile(r"\d|[.!?,;]")
