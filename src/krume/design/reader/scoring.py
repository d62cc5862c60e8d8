"""How surely a line names an ingredient, by the form it takes and the name it holds."""

import re
from functools import lru_cache

from krume.design.reader.entry import Entry
from krume.design.reader.headings import LEFT_OUT, RULE, WORD, is_sentence, plain
from krume.design.reader.linereading import LineReading, read_line, tokens_of
from krume.design.reader.naming import part_of, phrase_of
from krume.design.reader.settings import Settings
from krume.design.reader.wording import (
    NOT_COUNTED,
    NOUN_VERBS,
    VERBS,
)

AMOUNT_FORMS = frozenset(("packaged", "times", "added", "joined", "doubled", "measured"))


_LONGEST_BARE = 9


_PART_OF_SOME = re.compile(
    r"^(?:the\s+)?(?:[^\W\d_]+\s+){0,2}?(?:whites?|yolks?|rinds?|peels?|zest|juice|eiwei(?:ß|ss)|eigelb|saft|schale|abrieb)\s+"
    r"(?:of\s+|from\s+|von\s+)?(?:\d|[½¼¾⅓⅔]|(?:an?|one|two|three|four|five|six|seven|eight|nine|ten|half|eine?r?|zwei|drei|vier)\b)",
    re.IGNORECASE,
)


_NOT_AN_AMOUNT = re.compile(
    r"^\d[\d.,]*\s*(?:°|degrees?\b|[CF]\b|min\w*\b|hours?\b|h\b|cm\b|mm\b|inch\w*\b|in\b|%)",
    re.IGNORECASE,
)
_AMOUNT_LAST = re.compile(r"\d\s*(?:g|kg|ml|l|dl|cl|oz|lb)\.?$", re.IGNORECASE)
_HYPHENED = re.compile(r"^\d+-[^\W\d]")


_FILLER = re.compile(
    r"^(?:(?:and|then|take|add|you need|use|up to|at least|at most|whip from|plus|"
    r"nimm)\s+)+(?=(?:about |ca\.? )?[\d½¼¾⅓⅔])",
    re.IGNORECASE,
)


@lru_cache(maxsize=8192)
def ingredient_score(source: str, settings: Settings) -> int:
    """How surely a line names an ingredient: 3 with a unit, 2 by a known name, 1 maybe, 0 no."""
    text, _, _mark = plain(source)
    if not text or LEFT_OUT.match(source) or RULE.match(text):
        return 0
    if (
        _PART_OF_SOME.match(text) is None
        and is_sentence(_FILLER.sub("", text))
        and not is_run_of_items(source, text, settings)
    ):
        return 0
    reading = read_line(source, settings)
    if not reading.forms:
        return 3 if reading.problems else 0
    return _score(source, text, reading)


def is_run_of_items(source: str, text: str, settings: Settings) -> bool:
    """A long line that is a list: `yolks of eight eggs; one cup of sugar; …`."""
    first = WORD.search(text)
    if (
        sum(token.kind in "NA" for token in tokens_of(source)) < 3
        or first is None
        or first[0].casefold() in VERBS - NOUN_VERBS
    ):
        return False
    entries = read_line(source, settings).entries
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
        or (entry.kind in ("known", "good", "ask") and bool(entry.name))
        or _is_asked(reading)
    )
    if form in AMOUNT_FORMS:
        return (
            3
            if is_known
            else 2
            if len(text.split()) < 16 and entry.unit not in ("can", "cake")
            else 0
        )
    if form == "counted":
        return _counted_score(entry, is_known=is_known, text=text)
    if form == "of_some":
        return _of_some_score(source, text, is_known=is_known)
    if form == "named" and _AMOUNT_LAST.search(text) and len(text.split()) < 7:
        return 3 if is_known else 2
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


def _counted_score(entry: Entry, *, is_known: bool, text: str) -> int:
    words = [w.casefold() for w in WORD.findall(text)]
    if not entry.name or _HYPHENED.match(text) or _NOT_AN_AMOUNT.match(text):
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
    if found[number].kind == "N" and is_known and (not behind or behind[0].kind in ",()N%sM\t"):
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
    reading = read_line(source, settings)
    return bool(reading.entries) and reading.entries[0].ingredient is not None
