"""Source lines, and the same lines with what carries no meaning blanked, sign by sign.

A cleaned line is as long as its source, so that every place found in it is a place of the source.
"""

import html
import re
import unicodedata
from functools import lru_cache
from typing import NamedTuple

NOTHING = "\u200b"
BREAK = "\x1e"

_LINE_END = re.compile(r"\r\n|\n|\r")
_STRUCK = re.compile(
    r"<(script|style|s|del|strike)\b[^>]*>.*?(?:</\1\s*>|$)|~~.+?~~", re.IGNORECASE
)
_TAG = re.compile(r"<!--.*?(?:-->|$)|</?[a-zA-Z][^<>]*>?")
_BREAK_TAG = re.compile(r"</?(?:br|li|p|div|h[1-6]|ul|ol|tr)\b", re.IGNORECASE)
_CELL_TAG = re.compile(r"</t[dh]\b", re.IGNORECASE)
_ENTITY = re.compile(r"&(?:#\d{1,7}|#x[0-9a-fA-F]{1,6}|[a-zA-Z][a-zA-Z0-9]{1,30});")
_EMPHASIS = re.compile(
    r"\*{2,3}|(?<!\w)_{1,3}(?=\w)|(?<=\w)_{1,3}(?!\w)|`+|~~|(?<![\d\s*])\*(?!\w)|(?<![\d*])\*(?=[^\W\d])"
)
_BULLETS = "-*•·▢☐□☑☒✓✔◦‣⁃▪●○■◆–—>+→➢►"
_LEAD = re.compile(
    rf"(?P<bullet>[{re.escape(_BULLETS)}\u25a1]+\s+|[•▢☐□☑☒✓✔◦‣⁃▪●○■◆▢](?=\S)|\[[ xX✓]?\]\s*|"
    rf"\(\s\)\s*)"
    r"|(?P<hash>#{1,6}\s+)"
    r"|(?P<number>\(?\d{1,2}[.)]\s+(?=\S)|(?:step|schritt)\s*\d{1,2}\s*[:.)\-–]?\s+)",
    re.IGNORECASE,
)
_PLAIN = re.compile(r"^[^<&*_`~\t]*$")


class Clean(NamedTuple):
    """A cleaned line: its text, where its words begin, and which mark stood before them."""

    text: str
    start: int
    mark: str


def source_lines(text: str) -> list[str]:
    r"""Lines of a text as an editor counts them; line ends left out.

    >>> source_lines("a\r\nb\n")
    ['a', 'b', '']
    """
    return _LINE_END.split(text)


class _Signs(dict[int, str]):
    """What a sign of any script stands for, worked out when it is first met."""

    def __missing__(self, code: int) -> str:
        meant = _meant(chr(code))
        self[code] = meant
        return meant


_SIGNS = _Signs({ord("\t"): "\t", ord(BREAK): " "})
_SAME = {
    "−": "-", "‐": "-", "‑": "-", "‒": "–", "―": "—", "⁄": "/", "∕": "/", "٫": ".",
    "٬": ",", "’": "'", "‘": "'", "“": '"', "”": '"', "„": '"', "″": '"', "′": "'",
    "✕": "×", "✖": "×", "º": "°", "˚": "°", "│": "|", "，": ",", "：": ":", "；": ";",
    "،": ",",
}  # fmt: skip


_FOOTNOTES = "¹²³⁰⁴⁵⁶⁷⁸⁹†‡"


def _meant(sign: str) -> str:
    if sign in _SAME:
        return _SAME[sign]
    if sign in _FOOTNOTES:
        return " "
    category = unicodedata.category(sign)
    if category == "Nd":
        return str(unicodedata.decimal(sign))
    if category in ("Zs", "Zl", "Zp", "Cc"):
        return " "
    if category == "Cf" or "\ufe00" <= sign <= "\ufe0f":
        return NOTHING
    plain = unicodedata.normalize("NFKC", sign)
    return plain if len(plain) == 1 and plain.isascii() else sign


@lru_cache(maxsize=8192)
def clean(line: str) -> Clean:
    """A line with tags, entities, emphasis, bullets and foreign digits put aside.

    >>> clean("- [ ] **85 g** flour").text[6:]
    '  85 g   flour'
    >>> clean("<b>٨٥ g</b> flour").text
    '   85 g     flour'
    """
    text = line if line.isascii() and line.isprintable() else line.translate(_SIGNS)
    if not _PLAIN.match(text):
        text = _without_markup(text)
    if unicodedata.is_normalized("NFC", text):
        return _without_lead(text)
    return _without_lead(text)


def _without_markup(text: str) -> str:
    if "<" in text or "~~" in text:
        text = _STRUCK.sub(lambda m: " " * len(m[0]), text)
        text = _TAG.sub(_blank_tag, text)
    if "&" in text:
        text = _ENTITY.sub(_entity, text)
    return _EMPHASIS.sub(lambda m: " " * len(m[0]), text)


def _blank_tag(match: re.Match[str]) -> str:
    tag = match[0]
    if _BREAK_TAG.match(tag):
        return BREAK + " " * (len(tag) - 1)
    if _CELL_TAG.match(tag):
        return "\t" + " " * (len(tag) - 1)
    return " " * len(tag)


def _entity(match: re.Match[str]) -> str:
    meant = html.unescape(match[0]).translate(_SIGNS)
    if len(meant) != 1 or meant == match[0]:
        return match[0]
    return meant + NOTHING * (len(match[0]) - 1)


def _without_lead(text: str) -> Clean:
    at, mark = 0, ""
    while True:
        while at < len(text) and text[at] in f" \t{NOTHING}{BREAK}":
            at += 1
        match = _LEAD.match(text, at)
        if match is None or (mark == "number" and match.lastgroup == "number"):
            return Clean(" " * at + text[at:], at, mark)
        mark = match.lastgroup or mark
        at = match.end()
