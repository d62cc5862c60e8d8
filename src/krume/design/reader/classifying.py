"""What each line of a text is: name, key, heading, ingredient, step, note, blank."""

import itertools
import re
from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

from krume.design.reader.headings import (
    RULE,
    UNTIL_DONE,
    WORD,
    _is_bold,
    facts_of,
    heading_of,
    is_sentence,
    plain,
)
from krume.design.reader.keylines import KeyLine, key_line
from krume.design.reader.linereading import LineReading, read_ingredients, read_line
from krume.design.reader.scoring import (
    AMOUNT_FORMS,
    ingredient_score,
    is_known_bare,
    is_run_of_items,
)
from krume.design.reader.settings import Settings
from krume.design.reader.twins import reading_as, twin_of
from krume.design.reader.wording import (
    CHATTER,
    SECTION_WORDS,
    VERBS,
)


class Kind(NamedTuple):
    """A line and what it was taken for; `section` is the part its heading opened."""

    number: int
    source: str
    kind: str
    section: str | None = None
    key: KeyLine | None = None
    reading: LineReading | None = None


class _State:
    """Where in a text the reader stands."""

    __slots__ = ("after_blank", "section", "seen_list", "seen_method", "where")

    def __init__(self) -> None:
        self.where = "head"
        self.section: str | None = None
        self.seen_list = self.seen_method = False
        self.after_blank = False


def classify(lines: list[str], settings: Settings) -> Iterator[Kind]:
    """Kind of each line, in order; each is read by its twin."""
    twins = [twin_of(line, settings) for line in lines]
    for source, kind in zip(lines, _kinds(twins, settings), strict=True):
        yield kind if kind.source == source else _of_twin(kind, source)


def _of_twin(kind: Kind, source: str) -> Kind:
    reading = None if kind.reading is None else reading_as(kind.reading, source)
    return Kind(kind.number, source, kind.kind, kind.section, kind.key, reading)


def _kinds(lines: list[str], settings: Settings) -> Iterator[Kind]:
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
    filled = [at for at, line in enumerate(lines) if line.strip() and not _is_rule(line)]
    for count, at in enumerate(filled[:12]):
        found = key_line(lines[at])
        if found is not None and found.key == "name":
            return at
        if facts_of(lines[at]).is_note:
            continue
        if is_run_of_items(lines[at], plain(lines[at]).text, settings):
            return None
        if found is not None or _is_item_at_top(at, filled, lines, settings):
            return None
        heading = heading_of(lines[at])
        if heading is not None and heading[0] != "section":
            return None
        if not _is_story(lines[at]) and (count == 0 or len(plain(lines[at]).text.split()) < 10):
            return at
    return None


@lru_cache(maxsize=8192)
def _is_rule(source: str) -> bool:
    return RULE.match(source) is not None


def _is_story(source: str) -> bool:
    text = plain(source).text
    return (
        len(text.split()) > 9 and (bool(UNTIL_DONE.search(text)) or bool(CHATTER.search(text)))
    ) or len(text) > 90


def _is_item_at_top(at: int, filled: list[int], lines: list[str], settings: Settings) -> bool:
    """Whether the first line is plainly an ingredient; a bare name only where a list follows."""
    score = ingredient_score(lines[at], settings)
    reading = read_line(lines[at], settings)
    if score == 0 or not reading.forms:
        return score == 3
    if reading.forms[0] == "bare":
        return is_known_bare(lines[at], settings) and _list_goes_on(at, filled, lines, settings)
    if score == 3 and reading.forms[0] != "of_some":
        return True
    if reading.forms[0] in AMOUNT_FORMS:
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
        after - before == 2 for before, after in itertools.pairwise(filled)
    )


def _kind(at: int, lines: list[str], state: _State, settings: Settings) -> Kind:
    source, number = lines[at], at + 1
    facts = facts_of(source)
    if not facts.text:
        return Kind(number, source, "blank")
    if facts.is_note:
        return Kind(number, source, "note")
    key = facts.key
    if (
        key is not None
        and state.where != "notes"
        and not (state.where == "method" and key.key == "other")
    ):
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
            words = [w.casefold() for w in WORD.findall(heading[1])]
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
    words = [w.casefold() for w in WORD.findall(text)]
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
    if _is_enough(score, source, mark, state, settings):
        state.seen_list = True
        state.where = "list"
        return Kind(
            number, source, "ingredient", state.section, reading=read_ingredients(source, settings)
        )
    return _told(source, number, text, mark, state)


_NEED = {"head": 2, "list": 1, "method": 3, "either": 2}


def _is_enough(score: int, source: str, mark: str, state: _State, settings: Settings) -> bool:
    """Whether a line scores enough for an ingredient, by where it stands."""
    where = state.where
    if mark == "number" and where in ("method", "either"):
        return False
    if where == "method" and score == 2:
        return _begins_with_count(source, settings)
    if where == "list" and score == 1:
        return not (state.after_blank and state.seen_list and _is_bare(source, settings))
    return score >= _NEED[where]


def _is_bare(source: str, settings: Settings) -> bool:
    reading = read_line(source, settings)
    return bool(reading.forms) and reading.forms[0] == "bare"


def _begins_with_count(source: str, settings: Settings) -> bool:
    reading = read_line(source, settings)
    return bool(reading.forms) and reading.forms[0] in ("counted", "vague", "pinched", "sized")


def _told(
    source: str,
    number: int,
    text: str,
    mark: str,
    state: _State,
) -> Kind:
    """A line that is no ingredient: a step, or a note."""
    told = _tells(text)
    if state.where == "head" and not (mark == "number" and told.is_sentence):
        is_step = told.is_sentence and told.begins_with_verb and not told.is_chatter
        return Kind(number, source, "step" if is_step else "note")
    if state.where == "list":
        if not told.is_sentence and mark != "number":
            is_step = state.after_blank and not WORD.fullmatch(text)
            if is_step:
                state.where = "method"
            return Kind(number, source, "step" if is_step else "note", state.section)
        if told.is_chatter and not told.begins_with_verb:
            return Kind(number, source, "note")
    state.where = "method" if state.where != "head" else "head"
    if told.is_chatter and state.after_blank and not told.begins_with_verb:
        return Kind(number, source, "note")
    return Kind(number, source, "step")


class _Tells(NamedTuple):
    """How a line tells something: as a sentence, with a verb first, as chatter."""

    is_sentence: bool
    begins_with_verb: bool
    is_chatter: bool


@lru_cache(maxsize=8192)
def _tells(text: str) -> _Tells:
    return _Tells(is_sentence(text), _starts_with_verb(text), bool(CHATTER.search(text)))


def _starts_with_verb(text: str) -> bool:
    words = WORD.findall(text)
    return (
        bool(words)
        and words[0].casefold() in VERBS
        and words[0].casefold() not in ("i", "my", "we", "this", "it")
    )
