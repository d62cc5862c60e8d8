"""The name on a line: what the pantry knows it by, which part it is, and what is only a note."""

import re
from functools import lru_cache
from typing import NamedTuple

from krume.design.reader.cleaning import NOTHING
from krume.pantry import Found, Ingredient, contains_gluten_grain, find, ingredient

_BRACKET = re.compile(r"[(\[{]([^()\[\]{}]*)[)\]}]?")
_CUT = re.compile(
    r"(?:[,;]?\s*(?:\+|\bplus\b|//|#|→|=>|--).*$)|(?:[,;]?\s+(?:or|oder)\s*$)|(?:\s+(?:ohne "
    r"schale|without (?:the )?shells?|out of the shell)\b.*$)|(?:[,;]?\s+(?:for\b(?! ?ever)|to "
    r"(?:taste|serve|dust|make|finish|garnish|decorate|"
    r"sprinkle|grease|roll|cover|fill|brush|form|moisten|stiffen|mix|thicken|coat|flavou?r|"
    r"sweeten)\b|dissolved\b|mixed with\b|(?:soaked|softened|steeped|melted|beaten|boiled|"
    r"moistened|stirred|wet|sifted|mixed|rubbed|creamed|dissolved) (?:in|with|into)\b|in \d|as "
    r"needed|as required|if (?:needed|necessary|liked|desired|you)|"
    r"optional|zum\b|zur\b|für\b|fuer\b|nach (?:belieben|geschmack|bedarf)|or (?:more|less|to "
    r"taste|as needed|so)\b|"
    r"the size of|size of|enough\b|such as|e\. ?g\.|z\. ?b\.|\(?see\b|about\b|approx\b|ca\.|"
    r"circa\b|weighing\b|weighed\b|from the\b|in (?:equal parts|all)\b).*$)",
    re.IGNORECASE,
)
_SPLIT = re.compile(r"\s*[,;]\s*|\s+[-–—]\s+|\s*[:=|]\s*")
_OR = re.compile(r"\s+(?:or|oder)\s+|(?<=[a-z])/(?=[a-z])", re.IGNORECASE)
_AND = re.compile(r"\s+(?:and|und|&)\s+", re.IGNORECASE)
_EDGE = " ()\t.,;:-–—=|/+*'\"!…" + NOTHING
_LEADING = re.compile(
    r"^(?:(?:(?:sachets?|packets?|packs?|pkts?|bars?|tins?|cans?|jars?|pots?|tubs?|cartons?|"
    r"bags?|blocks?|bottles?|punnets?|dosen?|becher|packung(?:en)?)(?: of)?(?=\s+\w)|of|von|vom|"
    r"the|der|die|das|of the|additional|another|extra|more|weitere)\b[\s,]*)+",
    re.IGNORECASE,
)
_ZEST = re.compile(
    r"\b(?:zest(?:ed)?|rinds?|peels?|abrieb|schale|\w+(?:abrieb|schale))\b", re.IGNORECASE
)
_CANDIED = re.compile(r"\b(?:candied|mixed peel|crystalli[sz]ed|kandiert\w*)\b", re.IGNORECASE)
_JUICE = re.compile(r"\b(?:juiced?|saft|ausgepresst)\b", re.IGNORECASE)
_YOLK = re.compile(r"\b(?:yolks?|eigelbe?s?|(?:ei)?dotter)\b", re.IGNORECASE)
_WHITE = re.compile(
    r"\begg[- ]?whites?\b|\bwhites?\s+of\b|\bwhites\b|\b(?:eiwei(?:ß|ss)e?n?|eiklar|albumen)\b"
    r"|^(?:(?:fresh|beaten|extra|large|small|medium|cold|unbeaten|egg|the|stiffly)\s+)*white\b(?!\s+\w)",
    re.IGNORECASE,
)
_EGG = re.compile(r"\b(?:eggs?|ei|eiern?|eies?)\b", re.IGNORECASE)
_EGG_NOT = re.compile(
    r"\begg[- ]?(?:powder|replacer|wash|substitute|noodle|plant|nog)|size of an egg|\bfree\b",
    re.IGNORECASE,
)


_OTHER_COUNT = re.compile(
    r"^\s*less\s+\d+\s+\w+\s+|^\s*(?:large|small|medium)?\s*(?:or|oder)\s+\d+\s+(?:large|small|medium)?\s*",
    re.IGNORECASE,
)


class Phrase(NamedTuple):
    """A name phrase: its head, the rest of what was written with it, and the brackets' texts."""

    head: str
    whole: str
    note: str
    brackets: tuple[str, ...]


class Named(NamedTuple):
    """What a name phrase was taken for."""

    phrase: Phrase
    found: Found
    part: str | None
    instead: str = ""


@lru_cache(maxsize=8192)
def phrase_of(text: str) -> Phrase:
    """Head and notes of a name phrase.

    >>> phrase_of("butter, soft (unsalted), plus some for the tin")[:3]
    ('butter', 'butter, soft', 'soft, unsalted, plus some for the tin')
    """
    plain = text.replace(NOTHING, "")
    brackets = tuple(b.strip(_EDGE) for b in _BRACKET.findall(plain))
    bare = _BRACKET.sub(" ", plain) if brackets else plain
    cut = _CUT.search(bare) if " " in bare or "+" in bare else None
    kept = bare[: cut.start()] if cut and bare[: cut.start()].strip(_EDGE) else bare
    kept = _OTHER_COUNT.sub("", kept)
    whole = _LEADING.sub("", " ".join(kept.split()).strip(_EDGE)).strip(_EDGE)
    head, *tail = _SPLIT.split(whole, maxsplit=1)
    after = bare[len(kept) :] if cut else ""
    notes = (*(t.strip(_EDGE) for t in tail), *brackets, after.strip(_EDGE))
    return Phrase(head.strip(_EDGE), whole, ", ".join(n for n in notes if n), brackets)


@lru_cache(maxsize=8192)
def named(text: str, own: tuple[Ingredient, ...] = ()) -> Named:
    """What the pantry makes of a name phrase, the head first, then with what stands beside it."""
    phrase = phrase_of(text)
    found = _found(phrase, own)
    instead = ""
    if found.kind not in ("known", "good") and _OR.search(phrase.whole):
        found, instead = _first_of_two(phrase, found, own)
    if found.kind in ("unknown", "close") and _AND.search(phrase.whole):
        found = _first_known(_AND.split(phrase.whole), found, own)
    return Named(phrase, found, part_of(phrase.head, phrase.whole), instead)


def _found(phrase: Phrase, own: tuple[Ingredient, ...]) -> Found:
    tries = [phrase.head]
    if phrase.whole != phrase.head:
        tries.insert(0 if "%" in phrase.whole else 1, phrase.whole)
    tries += [f"{bracket} {phrase.head}" for bracket in phrase.brackets if len(bracket) < 40]
    tries += [bracket for bracket in phrase.brackets if 3 < len(bracket) < 40]
    if "," in phrase.whole:
        tries.append(phrase.whole.rsplit(",", 1)[1])
    first: Found | None = None
    for words in tries:
        found = find(words[:120], own=own)
        if found.kind == "known":
            return _without_gluten(found, phrase)
        if first is None or (first.kind in ("unknown", "close") and found.kind in ("ask", "good")):
            first = found
    return first if first is not None else find("")


_SAYS_NO_GLUTEN = re.compile(
    r"\b(?:gluten[- ]?(?:free|frei)\w*|GF|without gluten|ohne gluten)\b", re.IGNORECASE
)


def _without_gluten(found: Found, phrase: Phrase) -> Found:
    """`flour, gluten-free` is never taken for wheat flour: it is asked which blend it is.

    A wheat starch with its gluten taken out is still the wheat starch that it says it is.
    """
    words = f"{phrase.whole}, {phrase.note}"
    if found.key is None or not _SAYS_NO_GLUTEN.search(words):
        return found
    is_other = contains_gluten_grain(found.key) and not ingredient(found.key).pure_starch
    return find("gluten-free flour") if is_other else found


def _first_of_two(phrase: Phrase, asked: Found, own: tuple[Ingredient, ...]) -> tuple[Found, str]:
    first, *others = _OR.split(phrase.whole, maxsplit=1)
    found = _found(phrase_of(first), own)
    if found.kind in ("known", "good", "ask") and others:
        return found, others[0]
    return asked, ""


def _first_known(parts: list[str], asked: Found, own: tuple[Ingredient, ...]) -> Found:
    for words in parts:
        found = find(words.strip(_EDGE)[:120], own=own)
        if found.kind == "known":
            return found
    return asked


@lru_cache(maxsize=8192)
def part_of(head: str, whole: str) -> str | None:
    """Part of an egg or a fruit that a name says: yolk, white, zest.

    >>> part_of("egg yolks", "egg yolks, medium"), part_of("white rice flour", "white rice flour")
    ('yolk', None)
    """
    if _YOLK.search(head):
        return "yolk"
    if _WHITE.search(head) and not _EGG_NOT.search(head):
        return "white"
    if _ZEST.search(whole) and not _CANDIED.search(whole):
        return "zest"
    return None


def is_egg(head: str, part: str | None) -> bool:
    """Whether a name speaks of eggs in the shell or of their parts."""
    return part in ("yolk", "white") or (bool(_EGG.search(head)) and not _EGG_NOT.search(head))


def says_zest(text: str) -> bool:
    """Whether a phrase asks for the rind of a fruit."""
    return bool(_ZEST.search(text)) and not _CANDIED.search(text)


def says_juice(text: str) -> bool:
    """Whether a phrase asks for the juice of a fruit."""
    return bool(_JUICE.search(text))
