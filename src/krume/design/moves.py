"""What a step is about: sifting, yolks, whites, a pot; English and German words."""

import re
from dataclasses import dataclass


def _words(text: str) -> re.Pattern[str]:
    return re.compile(text, re.IGNORECASE)


_YOLK = r"\b(?:yolks?|eigelbe?n?|dottern?|eidotter)\b"
_WHITE = r"\b(?:whites|egg white|white (?:and|with|until|in)|eiweiß|eiweiss|eiklar)\b"
_WHIP = r"\b(?:beat|whisk|whip(?:ped)?\b|froth|\w*schlagen|\w*rühren|schaumig|steif)"
_STIR_YOLKS = r"\b(?:cream|stir|mix|combine|blend)\b(?: the| egg| \w+)? yolks?\b"
_HEAT = (
    r"\b(?:boil|simmer|cook|scald|(?<!off the )(?<!from the )heat|bring|\w*kochen|köcheln"
    r"|erhitzen|erwärmen|warm(?= (?:the|up|milk|cream|white|egg)))\b"
)
_BUTTER = r"\b(?:butter|margarine|fat)\b"
_NOTHING = r"(?!)"

# Kind, the words that must all be there, and the words that must not. The first that fits counts.
_MOVES = tuple(
    (kind, tuple(map(_words, needed)), _words(barred))
    for kind, needed, barred in (
        ("soak", (r"\b(?:soak|soften|bloom|swell)\b|einweichen|quellen",), _NOTHING),
        ("warm whites", (_WHITE, _HEAT), _YOLK),
        ("whites", (_WHITE, _WHIP), _NOTHING),
        ("yolks", (_YOLK, f"{_WHIP}|{_STIR_YOLKS}"), _NOTHING),
        ("cream butter", (r"\b(?:cream|beat|whisk|cremig|schaumig)\b", _BUTTER), _NOTHING),
        ("rub", (r"\b(?:rub|bröseln|verkneten|kneten)\b",), _NOTHING),
        ("melt", (r"\b(?:melt|schmelzen|zerlassen)\b",), _NOTHING),
        ("whip cream", (r"\bcream\b|sahne\b", _WHIP), _NOTHING),
        ("boil", (_HEAT,), _NOTHING),
        ("nuts", (r"\b(?:toast|roast|grind|rösten|mahlen)\b",), _NOTHING),
        ("sift", (r"\b(?:sift|sieve|weigh|sieben|vermischen|mischen|mix)\b",), _NOTHING),
        ("eggs", (r"\b(?:eggs?|eier|ei)\b", _WHIP), _NOTHING),
    )
)
_ANCHOR = _words(f"(?P<yolks>{_YOLK})|(?P<whites>{_WHITE})")
_LATE = _words(r"\b(?:then|dann|danach|zuletzt)\b")
_SENTENCE_END = re.compile(r"[.;!?](?=\s|$)")


@dataclass(frozen=True, slots=True)
class Move:
    """What a mention of a line in a step is about: its kind, and whether it comes in later."""

    kind: str
    sentence: str
    is_late: bool


def move_of(step: str, *, words: str, name: str) -> Move:
    """What a step does with the line it mentions by `words`, or by its name.

    >>> move_of("Beat the yolks with 40 g sugar, then the oil.", words="oil", name="olive oil")
    Move(kind='yolks', sentence='Beat the yolks with 40 g sugar, then the oil.', is_late=True)
    """
    at = _place(step, words, name)
    sentence, start = _sentence_at(step, at)
    kind = _kind_of(sentence)
    if kind in ("yolks", "whites"):
        kind = _nearest(sentence, at - start) or kind
    late = _LATE.search(sentence)
    return Move(kind, sentence, late is not None and late.start() < at - start)


def kinds_in(step: str) -> set[str]:
    """All a step is about; yolks and whites whipped in one sentence are both in it."""
    found = {_kind_of(text) for text in _SENTENCE_END.split(step) if text.strip()}
    if found & {"yolks", "whites"}:
        found |= {match.lastgroup or "" for match in _ANCHOR.finditer(step)}
    return found


def _place(step: str, words: str, name: str) -> int:
    text = step.casefold()
    last = name.split(",")[0].split()[-1:] or [""]
    for wanted in (words, name, last[0]):
        at = text.find(wanted.casefold()) if wanted else -1
        if at >= 0:
            return at
    return 0


def _sentence_at(step: str, at: int) -> tuple[str, int]:
    start = 0
    for match in _SENTENCE_END.finditer(step):
        if at < match.end():
            return step[start : match.end()], start
        start = match.end()
    return step[start:], start


def _kind_of(sentence: str) -> str:
    for kind, needed, barred in _MOVES:
        if all(words.search(sentence) for words in needed) and not barred.search(sentence):
            return kind
    return "other"


def _nearest(sentence: str, at: int) -> str | None:
    """Yolks or whites, whichever is named last before the mention, else first after it."""
    named = [(match.start(), match.lastgroup) for match in _ANCHOR.finditer(sentence)]
    before = [kind for start, kind in named if start <= at]
    return before[-1] if before else (named[0][1] if named else None)
