"""Words of an ingredient name in one spelling: case, umlauts, plural, hyphens, percent figures."""

import re
import unicodedata
from dataclasses import dataclass

_UMLAUTS = str.maketrans(
    {"ä": "ae", "ö": "oe", "ü": "ue", "ß": "ss", "æ": "ae", "œ": "oe", "ø": "oe"}
)
_PERCENT = re.compile(
    r"(?:about |min\.? |at least |>= ?|≥ ?)?(\d+(?:[.,]\d+)?)(?: ?[-–] ?(\d+(?:[.,]\d+)?))? ?"
    r"(?:%|per ?cent\b|p\. ?c\.|prozent\b)"
    r"(?: ?(?:fat|milkfat|butterfat|cocoa|cacao|fett|kakao|vol|abv)\b\.?)?"
)
_DROPPED = re.compile(
    r"\b\d+(?:[.,]\d+)? ?(?:bloom|proof|°? ?[cf]\b|µm|mm|cm|in\b)|\b\d+(?:[.,/]\d+)?\b"
)
_BREAKS = str.maketrans("();[]:", ",,,,,,")
_PICTURES = str.maketrans(
    {"’": "'", "🥜": " nut ", "🌰": " chestnut ", "🥚": " egg ", "🧈": " butter ", "🥛": " milk ",
     "🍋": " lemon ", "🍊": " orange ", "🍫": " chocolate ", "🍯": " honey ", "🧂": " salt "}
)  # fmt: skip
_ANY_DIGIT = re.compile(r"\d")
_SPLIT = re.compile(r"[^\w,]+|_")
_KEEP_S = ("ss", "us", "is")


@dataclass(frozen=True, slots=True)
class Words:
    """A name in one spelling; `parts` are its pieces between commas; `percent` a figure in it."""

    parts: tuple[tuple[str, ...], ...]
    percent: float | None = None

    @property
    def tokens(self) -> tuple[str, ...]:
        """All words in the order typed."""
        return tuple(word for part in self.parts for word in part)


def spelled(text: str) -> Words:
    """One spelling of a name.

    >>> spelled("Whipping cream, 35 % fat")
    Words(parts=(('whipping', 'cream'),), percent=35.0)
    >>> spelled("Kartoffelstärke").tokens, spelled("Haselnüsse").tokens
    (('kartoffelstaerke',), ('haselnuesse',))
    """
    plain = text.casefold()
    if not plain.isascii():
        plain = unicodedata.normalize("NFC", plain).translate(_PICTURES)
    percent = None
    if _ANY_DIGIT.search(plain):
        percent = _PERCENT.search(plain)
        plain = _DROPPED.sub(" ", _PERCENT.sub(" , ", plain))
    parts = (_tokens(part) for part in plain.translate(_BREAKS).split(","))
    return Words(tuple(part for part in parts if part), _percent_of(percent))


def _percent_of(match: re.Match[str] | None) -> float | None:
    if match is None:
        return None
    low = float(match[1].replace(",", "."))
    high = float(match[2].replace(",", ".")) if match[2] else low
    return (low + high) / 2


def _tokens(part: str) -> tuple[str, ...]:
    bare = part.replace("'", "").replace(".", "")
    return tuple(singular(word) for word in _SPLIT.split(_latin(bare)) if word)


def _latin(text: str) -> str:
    if text.isascii():
        return text
    parted = unicodedata.normalize("NFD", text.translate(_UMLAUTS))
    return "".join(sign for sign in parted if not unicodedata.combining(sign))


def singular(word: str) -> str:
    """English singular of a word, good enough to find it by.

    >>> [singular(w) for w in ("eggs", "cherries", "leaves", "potatoes", "molasses", "swiss")]
    ['egg', 'cherry', 'leaf', 'potato', 'molass', 'swiss']
    """
    if len(word) < 4 or not word.endswith("s") or word.endswith(_KEEP_S):
        return word
    if word.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    if word.endswith(("leaves", "halves", "loaves", "calves")):
        return word[:-3] + "f"
    if word.endswith(("oes", "sses", "ches", "shes", "xes")):
        return word[:-2]
    return word[:-1]
