"""What each line of a text is: name, key, heading, ingredient, step, note, blank."""

import re
from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

from krume.design.reader.cleaning import NOTHING, Clean, clean
from krume.design.reader.entries import Entry
from krume.design.reader.keylines import KeyLine, key_line
from krume.design.reader.linereading import LineReading, read_ingredients, tokens_of
from krume.design.reader.naming import part_of, phrase_of
from krume.design.reader.settings import Settings
from krume.design.reader.wording import (
    CHATTER,
    FINITE,
    FOR_SECTION,
    LIST_HEADINGS,
    METHOD_HEADINGS,
    NOT_COUNTED,
    NOTE_HEADINGS,
    NOUN_VERBS,
    SECTION_WORDS,
    SENTENCE,
    TABLE_WORDS,
    VERBS,
)

_WORD = re.compile(r"[^\W\d_]+(?:['’-][^\W\d_]+)*")
_RULE = re.compile(r"^(?:[\s|:\-=_*~#+.]+|(?:\s*\d+\s*x)+\s*)$", re.IGNORECASE)
_AMOUNT_FORMS = frozenset(("packaged", "times", "added", "doubled", "measured"))
_LONGEST_BARE = 9
_PART_OF_SOME = re.compile(
    r"^(?:the\s+)?(?:[^\W\d_]+\s+){0,2}?(?:whites?|yolks?|rinds?|peels?|zest|juice|eiwei(?:ß|ss)|eigelb|saft|schale|abrieb)\s+"
    r"(?:of\s+|from\s+|von\s+)?(?:\d|[½¼¾⅓⅔]|(?:an?|one|two|three|four|five|six|seven|eight|nine|ten|half|eine?r?|zwei|drei|vier)\b)",
    re.IGNORECASE,
)
_BRACKETED = re.compile(r"\([^()]{0,60}\)")
_IN_BRACKETS = re.compile(r"^\[[^\[\]\d]{2,40}\]:?$")
_HYPHENED = re.compile(r"^\d+-[^\W\d]")
_LEFT_OUT = re.compile(r"^\s*\(.*\)\s*$")
_UNTIL_DONE = re.compile(
    r"(?<!\btsp)(?<!\btbsp)(?<!\boz)(?<!\blb)(?<!\bg)(?<!\bpt)(?<!\bqt)(?<!\bc)[.!?]\s*$",
    re.IGNORECASE,
)
_HEAD = re.compile(r"[,:;(]|\s[-–—]\s|//")
_FILLER = re.compile(
    r"^(?:(?:and|then|take|add|you need|use|up to|at least|at most|whip from|plus|nimm)\s+)+(?=(?:about |ca\.? )?[\d½¼¾⅓⅔])",
    re.IGNORECASE,
)


class Kind(NamedTuple):
    """A line and what it was taken for; `section` is the part its heading opened."""

    number: int
    source: str
    kind: str
    section: str | None = None
    key: KeyLine | None = None
    reading: LineReading | None = None


@lru_cache(maxsize=32768)
def plain(source: str) -> Clean:
    """A line's words without what stands around them."""
    cleaned = clean(source)
    text = " ".join(cleaned.text.replace(NOTHING, "").split())
    return Clean(text, cleaned.start, cleaned.mark)


@lru_cache(maxsize=32768)
def is_sentence(text: str) -> bool:
    """Whether a line tells what to do, or tells a story.

    >>> is_sentence("Cream butter and sugar 6 minutes."), is_sentence("Cream of tartar")
    (True, False)
    """
    words = _WORD.findall(text)
    if not words:
        return False
    first = words[0].casefold()
    ends = bool(_UNTIL_DONE.search(text))
    if text[0].isdigit():
        head = _HEAD.split(text, maxsplit=1)[0]
        return len(words) > 5 and bool(FINITE.search(head))
    if first in NOUN_VERBS:
        return (ends and len(words) > 3) or (len(words) > 3 and bool(SENTENCE.search(text)))
    if first in VERBS:
        return len(words) > 1
    return (
        (ends and len(words) > 5)
        or (len(words) > 6 and bool(SENTENCE.search(text)))
        or len(words) > 16
    )


@lru_cache(maxsize=16384)
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
    words = _WORD.findall(bare)
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
    return (
        len(text) > 4
        and text[:2] in ("**", "__")
        and text[-2:] in ("**", "__")
        or bool(re.match(r"^<(b|strong|h[1-6])>.*</\1>$", text, re.IGNORECASE))
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


@lru_cache(maxsize=32768)
def ingredient_score(source: str, settings: Settings) -> int:
    """How surely a line names an ingredient: 3 an amount with a unit, 2 a known name, 1 maybe, 0 no."""
    text, _, _mark = plain(source)
    if not text or _LEFT_OUT.match(source) or _RULE.match(text):
        return 0
    if (
        _PART_OF_SOME.match(text) is None
        and is_sentence(_FILLER.sub("", text))
        and not _is_run_of_items(source, text, settings)
    ):
        return 0
    reading = read_ingredients(source, settings)
    if not reading.forms:
        return 3 if reading.problems else 0
    return _score(source, text, reading)


def _is_run_of_items(source: str, text: str, settings: Settings) -> bool:
    """A long line that is a list: `yolks of eight eggs; one cup of sugar; …`."""
    first = _WORD.search(text)
    if (
        sum(token.kind in "NA" for token in tokens_of(source)) < 3
        or first is None
        or first[0].casefold() in VERBS - NOUN_VERBS
    ):
        return False
    entries = read_ingredients(source, settings).entries
    return (
        len(entries) > 2
        and all(e.amount is not None for e in entries)
        and len(entries) * 8 > len(text.split())
    )


def _score(source: str, text: str, reading: LineReading) -> int:
    form = reading.forms[0]
    if form in ("negative", "ratio"):
        return 3
    entry = reading.entries[0]
    is_known = (
        entry.ingredient is not None
        or entry.kind in ("known", "good", "ask")
        and bool(entry.name)
        or _is_asked(reading)
    )
    if form in _AMOUNT_FORMS:
        return (
            3
            if is_known
            else 2
            if len(text.split()) < 16 and entry.unit not in ("can", "cake")
            else 0
        )
    if form == "counted":
        return _counted_score(entry, source, is_known=is_known, text=text)
    if form == "of_some":
        return _of_some_score(source, text, is_known=is_known)
    if form == "named":
        return 3 if is_known else 1 if len(text.split()) < 9 else 0
    if form in ("vague", "pinched", "sized", "share"):
        return 2 if is_known else 1 if len(text.split()) < 7 else 0
    return _bare_score(text, is_known=is_known)


def _is_asked(reading: LineReading) -> bool:
    return any(
        p.code in ("which-ingredient", "lookalike", "which-ingredient-nut")
        for p in reading.problems
    )


def _counted_score(entry: Entry, source: str, *, is_known: bool, text: str) -> int:
    words = [w.casefold() for w in _WORD.findall(text)]
    if not entry.name or _HYPHENED.match(text):
        return 0
    if (
        any(word in NOT_COUNTED for word in words[:3])
        and entry.kind != "known"
        and not (entry.kind == "good" and words[0] not in NOT_COUNTED)
    ):
        return 0
    return 2 if is_known else 1 if len(words) < 6 else 0


def _of_some_score(source: str, text: str, *, is_known: bool) -> int:
    found = tokens_of(source)
    number = next((at for at, token in enumerate(found) if token.kind in "NA"), 0)
    lead = " ".join(str(t.value) for t in found[:number] if t.kind in "WO")
    if (
        part_of(lead, lead)
        or re.search(r"\b(?:juice|saft|shell)\b", lead)
        or re.search(r"\bwhite$", lead)
    ):
        return 3
    behind = found[number + 1 :]
    if found[number].kind == "N" and is_known and (not behind or behind[0].kind in ",(N%sM\t"):
        return 2
    return 1 if is_known and len(text.split()) < 8 else 0


def _bare_score(text: str, *, is_known: bool) -> int:
    words = len(text.split())
    if words > _LONGEST_BARE or text.endswith((":", "?", "!")):
        return 0
    if is_known:
        return 1
    return 1 if words <= 3 and not re.search(r"\d", text) and phrase_of(text).head == text else 0


def is_known_bare(source: str, settings: Settings) -> bool:
    """Whether a line without an amount is a name the pantry knows."""
    reading = read_ingredients(source, settings)
    return bool(reading.entries) and reading.entries[0].ingredient is not None


class Facts(NamedTuple):
    """What a line is by itself, whatever stands around it."""

    text: str
    mark: str
    is_note: bool
    key: KeyLine | None
    heading: tuple[str, str] | None
    may_head: bool


@lru_cache(maxsize=32768)
def facts_of(source: str) -> Facts:
    """Facts of a line by itself, remembered by its text."""
    text, _, mark = plain(source)
    is_note = (
        bool(_RULE.match(text) or is_table_head(source) or _LEFT_OUT.match(source))
        if text
        else False
    )
    words = _WORD.findall(text)
    may_head = 0 < len(words) <= 4 and not mark and not _NO_HEADING.search(text)
    return Facts(text, mark, is_note, key_line(source), heading_of(source), may_head)


_NO_HEADING = re.compile(r"\d|[.!?,;]")


class _State:
    """Where in a text the reader stands."""

    __slots__ = ("after_blank", "section", "seen_list", "seen_method", "where")

    def __init__(self) -> None:
        self.where = "head"
        self.section: str | None = None
        self.seen_list = self.seen_method = False
        self.after_blank = False


def classify(lines: list[str], settings: Settings) -> Iterator[Kind]:
    """Kind of each line, in order."""
    state = _State()
    named = _name_line(lines, settings)
    if named is None and _starts_with_item(lines, settings):
        state.where = "list"
    for at, source in enumerate(lines):
        if at == named:
            yield Kind(at + 1, source, "name")
        else:
            yield _kind(at, lines, state, settings)
        state.after_blank = not source.strip()


def _starts_with_item(lines: list[str], settings: Settings) -> bool:
    first = next((at for at, line in enumerate(lines) if line.strip()), None)
    return first is not None and ingredient_score(lines[first], settings) > 0


def _name_line(lines: list[str], settings: Settings) -> int | None:
    """Index of the line that is the formula's name."""
    filled = [at for at, line in enumerate(lines) if line.strip() and not _RULE.match(line)]
    for count, at in enumerate(filled[:12]):
        found = key_line(lines[at])
        if found is not None and found.key == "name":
            return at
        if facts_of(lines[at]).is_note:
            continue
        if _is_run_of_items(lines[at], plain(lines[at]).text, settings):
            return None
        if found is not None or _is_item_at_top(at, filled, lines, settings):
            return None
        heading = heading_of(lines[at])
        if heading is not None and heading[0] != "section":
            return None
        if not _is_story(lines[at]) and (count == 0 or len(plain(lines[at]).text.split()) < 10):
            return at
    return None


def _is_story(source: str) -> bool:
    text = plain(source).text
    return (
        len(text.split()) > 9
        and (bool(_UNTIL_DONE.search(text)) or bool(CHATTER.search(text)))
        or len(text) > 90
    )


def _is_item_at_top(at: int, filled: list[int], lines: list[str], settings: Settings) -> bool:
    """Whether the first line is plainly an ingredient; a bare known name only where a list follows at once."""
    score = ingredient_score(lines[at], settings)
    reading = read_ingredients(lines[at], settings)
    if score == 0 or not reading.forms:
        return score == 3
    if reading.forms[0] == "bare":
        return is_known_bare(lines[at], settings) and _list_goes_on(at, filled, lines, settings)
    if score == 3 and reading.forms[0] != "of_some":
        return True
    if reading.forms[0] in _AMOUNT_FORMS:
        return bool(reading.entries[0].name) and (
            len(filled) == 1 or _list_goes_on(at, filled, lines, settings)
        )
    return score >= 2 and _list_goes_on(at, filled, lines, settings)


def _list_goes_on(at: int, filled: list[int], lines: list[str], settings: Settings) -> bool:
    if len(filled) == 1:
        return True
    if _is_double_spaced(filled):
        return True
    if at + 1 >= len(lines) or not lines[at + 1].strip() or key_line(lines[at + 1]):
        return False
    return ingredient_score(lines[at + 1], settings) >= 1 and not is_sentence(
        plain(lines[at + 1]).text
    )


def _is_double_spaced(filled: list[int]) -> bool:
    return len(filled) > 2 and all(
        after - before == 2 for before, after in zip(filled[:4], filled[1:5], strict=False)
    )


def _kind(at: int, lines: list[str], state: _State, settings: Settings) -> Kind:
    source, number = lines[at], at + 1
    facts = facts_of(source)
    if not facts.text:
        return Kind(number, source, "blank")
    if facts.is_note:
        return Kind(number, source, "note")
    key = facts.key
    if key is not None and not (state.where == "method" and key.key == "other"):
        return Kind(number, source, "key" if key.key != "other" else "note", key=key)
    heading = _heading(at, lines, state, settings)
    if heading is not None:
        _enter(state, heading)
        return Kind(number, source, "heading", state.section)
    return _body(at, lines, state, settings)


def _heading(
    at: int, lines: list[str], state: _State, settings: Settings
) -> tuple[str, str] | None:
    heading = facts_of(lines[at]).heading
    if heading is not None and heading[0] == "section":
        if (
            state.where == "list"
            and not heading[1].endswith(":")
            and ":" not in lines[at]
            and is_known_bare(lines[at], settings)
            and not (_is_bold(lines[at]) or plain(lines[at]).mark == "hash")
        ):
            words = [w.casefold() for w in _WORD.findall(heading[1])]
            return (
                heading
                if words and words[-1] in SECTION_WORDS and _next_is_item(at, lines, settings)
                else None
            )
        if plain(lines[at]).mark == "number":
            return None
        return heading
    if heading is not None:
        return heading
    return _plain_heading(at, lines, state, settings) if facts_of(lines[at]).may_head else None


def _plain_heading(
    at: int, lines: list[str], state: _State, settings: Settings
) -> tuple[str, str] | None:
    """`Sponge` on a line of its own, with ingredients behind it."""
    text = plain(lines[at]).text
    words = [w.casefold() for w in _WORD.findall(text)]
    follows = _next_is_item(at, lines, settings)
    if (
        follows
        and (words[-1] in SECTION_WORDS or words[0] in SECTION_WORDS)
        and (state.after_blank or not is_known_bare(lines[at], settings))
    ):
        return "section", text
    if follows and state.after_blank and state.seen_list and not is_known_bare(lines[at], settings):
        return "section", text
    return None


def _next_is_item(at: int, lines: list[str], settings: Settings) -> bool:
    for source in lines[at + 1 : at + 3]:
        if source.strip():
            return ingredient_score(source, settings) >= 2
    return False


def _enter(state: _State, heading: tuple[str, str]) -> None:
    kind, words = heading
    if kind == "section":
        state.section = (
            re.sub(
                r"^(?:for|für|fuer|zum|zur)\s+(?:the|den|die|das|a|an)?\s*",
                "",
                words,
                flags=re.IGNORECASE,
            ).strip(" :")
            or words
        )
        if state.where != "method":
            state.where = "list"
        elif state.where == "method":
            state.where = "either"
    else:
        state.where = kind
        if kind in ("method", "notes"):
            state.section = None
    state.seen_method = state.seen_method or kind == "method"


def _body(at: int, lines: list[str], state: _State, settings: Settings) -> Kind:
    source, number = lines[at], at + 1
    score = ingredient_score(source, settings)
    text, _, mark = plain(source)
    if state.where == "notes":
        return Kind(number, source, "note")
    need = {"head": 2, "list": 1, "method": 3, "either": 2}[state.where]
    if state.where == "method" and _begins_with_count(source, settings):
        need = 2
    if (
        state.where == "list"
        and state.after_blank
        and state.seen_list
        and _is_bare(source, settings)
    ):
        need = 2
    if mark == "number" and state.where in ("method", "either"):
        need = 4
    if score >= need:
        state.seen_list = True
        state.where = "list"
        return Kind(
            number, source, "ingredient", state.section, reading=read_ingredients(source, settings)
        )
    return _told(source, number, text, mark, state, settings, lines)


def _is_bare(source: str, settings: Settings) -> bool:
    reading = read_ingredients(source, settings)
    return bool(reading.forms) and reading.forms[0] == "bare"


def _begins_with_count(source: str, settings: Settings) -> bool:
    reading = read_ingredients(source, settings)
    return bool(reading.forms) and reading.forms[0] in ("counted", "vague", "pinched", "sized")


def _told(
    source: str,
    number: int,
    text: str,
    mark: str,
    state: _State,
    settings: Settings,
    lines: list[str],
) -> Kind:
    """A line that is no ingredient: a step, or a note."""
    if state.where == "head" and not (mark == "number" and is_sentence(text)):
        is_step = is_sentence(text) and _starts_with_verb(text) and not CHATTER.search(text)
        return Kind(number, source, "step" if is_step else "note")
    if state.where == "list":
        if not is_sentence(text) and mark != "number":
            is_step = state.after_blank and not _WORD.fullmatch(text)
            if is_step:
                state.where = "method"
            return Kind(number, source, "step" if is_step else "note", state.section)
        if CHATTER.search(text) and not _starts_with_verb(text):
            return Kind(number, source, "note")
    state.where = "method" if state.where != "head" else "head"
    if CHATTER.search(text) and state.after_blank and not _starts_with_verb(text):
        return Kind(number, source, "note")
    return Kind(number, source, "step")


def _starts_with_verb(text: str) -> bool:
    words = _WORD.findall(text)
    return (
        bool(words)
        and words[0].casefold() in VERBS
        and words[0].casefold() not in ("i", "my", "we", "this", "it")
    )
