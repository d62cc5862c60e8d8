"""Signs and words of a line as tokens: numbers, units, articles, separators, plain words."""

import re
from functools import lru_cache
from typing import NamedTuple

from krume.base import UNITS, Unit, read_number, unit_named
from krume.design.reader.cleaning import BREAK, NOTHING
from krume.design.reader.vocabulary import (
    ABOUT,
    ARTICLES,
    COUNT_WORDS,
    HOW_FULL,
    MASS_WORDS,
    NUMBER_WORDS,
    SOME,
    VOLUME_WORDS,
)

_VULGAR = "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
_SCAN = re.compile(
    rf"(?P<N>\d+\s*[{_VULGAR}]|\d+(?:\s+|-)\d{{1,2}}\s*/\s*\d{{1,2}}(?![\d/])|\d+\s+[1-7]-[2348](?![\d/.,])|\d{{1,2}}\s*/\s*(?:2|3|4|5|6|8|10|16|32)(?![\d/])"
    rf"|[{_VULGAR}]|\d+(?:\.\d+)?[eE]\+?\d{{1,3}}(?!\w)|"
    rf"\d{{1,3}}(?:[ '’]\d{{3}})+(?:[.,]\d+)?(?!\d)"
    rf"(?!\s*(?:g|ml|oz)\s+(?:tin|can|jar|pack|bag|bar|box|dose))"
    r"|\d+(?:[.,]\d+)*|(?<![\w.,])[.,]\d+)"
    rf"|(?P<W>[^\W\d_]+(?:['{NOTHING}\-][^\W\d_]+)*)"
    r"|(?P<gap>\s{2,}|\t)"
    r"|(?P<dots>\.{2,}|…|_{2,})"
    r"|(?P<sign>[^\w\s])"
)
_SIGN_KINDS = {
    "(": "(", "[": "(", "{": "(", ")": ")", "]": ")", "}": ")", ",": ",", ";": ";", ":": ":",
    "/": "/", "+": "+", "&": "&", "=": "=", "≈": "~", "~": "~", "%": "%", "×": "x", "*": "x",
    "-": "-", "–": "-", "—": "s", "|": "s", '"': "L", BREAK: ";",
}  # fmt: skip
_UNIT_KINDS = {
    "mass": "M", "volume": "V", "count": "K", "length": "L", "time": "D", "temperature": "T",
}  # fmt: skip
_FRACTION_WORDS = (0.5, 0.25, 1 / 3, 0.125)
_HALF_UNIT = re.compile(r"^(half|quarter|one|two|three|four)-([^\W\d_]+)$", re.IGNORECASE)
_MIXED_BY_DASH = re.compile(r"^(\d+)\s+([1-7])-([2348])$")
_CUP_KINDS = frozenset(("breakfast", "coffee", "tea", "wine", "kitchen", "measuring"))
_BEFORE_UNIT = frozenset("NAH?L")


class Token(NamedTuple):
    """A piece of a line: its kind, what it means, and where it stands."""

    kind: str
    value: object
    start: int
    end: int


class Number(NamedTuple):
    """A numeral: its value, a second meaning of the same signs, and how it was spelled."""

    value: float
    other: float | None
    spelled: str


def tokens(text: str, start: int, end: int) -> list[Token]:
    """Tokens of a cleaned line between two places.

    Kinds: N number, A article, M mass, V volume, K count unit, L length, D time, T temperature,
    H how full (a heaped spoon), ? some, O of, ~ about, x times, W word, and signs as themselves.
    """
    out: list[Token] = []
    for match in _SCAN.finditer(text, start, end):
        kind = match.lastgroup
        if kind == "W":
            half = _HALF_UNIT.match(match[0])
            if half is not None and unit_named(half[2]) is not None:
                at = match.start(0) + half.start(2)
                out.append(
                    Token(
                        "N",
                        Number(NUMBER_WORDS[half[1].casefold()], None, half[1]),
                        match.start(),
                        at - 1,
                    )
                )
                unit = unit_named(half[2])
                out.append(Token(_UNIT_KINDS[unit.kind] if unit else "W", unit, at, match.end()))
                continue
            out.append(_word(match, out))
        elif kind == "N":
            out.append(_number(match[0], match.start(), match.end()))
        elif kind == "sign":
            _sign(match, text, out)
        elif kind == "gap":
            out.append(Token("\t", None, match.start(), match.end()))
        else:
            out.append(Token("s", None, match.start(), match.end()))
    return _joined(out)


@lru_cache(maxsize=8192)
def _numeral(spelled: str) -> Number:
    plain = _MIXED_BY_DASH.sub(r"\1 \2/\3", spelled)
    plain = re.sub(r"(?<=\d)-(?=\d+\s*/)", " ", plain)
    found = read_number(plain)
    if found is not None:
        return Number(found.value, found.other, spelled)
    try:
        return Number(float(plain), None, spelled)
    except ValueError:
        return Number(float("nan"), None, spelled)


def _number(spelled: str, start: int, end: int) -> Token:
    return Token("N", _numeral(spelled), start, end)


def _sign(match: re.Match[str], text: str, out: list[Token]) -> None:
    sign, at = match[0], match.start()
    if sign == "." or sign == "'":
        return
    if sign == "#" and out and out[-1].kind == "N":
        out.append(Token("M", UNITS["lb"], at, at + 1))
    elif sign == "°":
        out.append(Token("T", UNITS["c"], at, at + 1))
    elif sign == NOTHING:
        return
    elif sign == ";" and text[at - 1 : at].strip() and text[at + 1 : at + 2].strip():
        out.append(Token("s", ";", at, at + 1))
    elif sign == "," and at > 0 and text[at - 1].isdigit() and text[at + 1 : at + 2].isalpha():
        out.append(Token(",", ",,", at, at + 1))
    elif sign == "-" and at > 0 and text[at - 1] == " " and text[at + 1 : at + 2] == " ":
        out.append(Token("-", "spaced", at, at + 1))
    else:
        out.append(Token(_SIGN_KINDS.get(sign, "W"), sign, at, at + 1))


def _before(out: list[Token], kind: str) -> str:
    """Kind of the token a unit would belong to; table gaps and a bracketed size are passed over."""
    last = next((t.kind for t in reversed(out) if t.kind not in "\ts" and t.value != ",,"), "")
    if last == ")" and kind == "K" and out[0].kind in "NA":
        return "N"
    return last


@lru_cache(maxsize=8192)
def _kind(word: str) -> tuple[str, object]:
    """Kind and meaning of a word; unit words count as units only behind a number."""
    if word in ("T", "t"):
        return "V", UNITS["tbsp" if word == "T" else "tsp"]
    low = word.casefold().replace(NOTHING, "")
    value = NUMBER_WORDS.get(low) or _hyphened(low)
    if value is not None:
        return "N", Number(value, None, word)
    if low in ARTICLES:
        return "A", Number(ARTICLES[low], None, word)
    if low in ("of", "von", "vom", "d'"):
        return "O", low
    if low in ABOUT:
        return "~", low
    if low in HOW_FULL:
        return "H", low
    if low in SOME:
        return "?", low
    if low == "x":
        return "x", low
    unit = COUNT_WORDS.get(low) or MASS_WORDS.get(low) or VOLUME_WORDS.get(low) or unit_named(low)
    if unit is not None and unit.name != "each":
        return _UNIT_KINDS[unit.kind], unit
    return "W", low


def _hyphened(low: str) -> float | None:
    """`three-eighths` as a number."""
    top, dash, bottom = low.partition("-")
    if not dash or top not in NUMBER_WORDS or bottom not in NUMBER_WORDS:
        return None
    return NUMBER_WORDS[top] * NUMBER_WORDS[bottom]


def _word(match: re.Match[str], out: list[Token]) -> Token:
    word = match[0]
    kind, meant = _kind(word)
    if kind in "MVLDTK" and isinstance(meant, Unit) and not _is_unit_here(kind, out):
        return Token("W", word.casefold().replace(NOTHING, ""), match.start(), match.end())
    return Token(kind, meant, match.start(), match.end())


def _is_unit_here(kind: str, out: list[Token]) -> bool:
    """Whether a unit word stands where a unit can: behind a number, or a piece at the start."""
    last = _before(out, kind)
    if last in _BEFORE_UNIT or (last == "-" and len(out) > 1 and out[-2].kind == "N"):
        return True
    if kind == "K" and (not out or out[-1].kind in ",;\t+&"):
        return True
    if kind == "K" and last == "M" and len(out) > 2:
        return out[-3].kind == "N"
    return last == "T" and kind == "T"


def _joined(found: list[Token]) -> list[Token]:
    """Tokens with pairs joined: 1 and 1/2, half a, two dozen, fl oz, a few, 8-inch, 350 ° F."""
    out: list[Token] = []
    for token in found:
        if out and _join(out, token):
            continue
        out.append(token)
    return out


def _join(out: list[Token], token: Token) -> bool:
    last = out[-1]
    pair = last.kind + token.kind
    if (pair == "NA" and _value(last) < 1) or pair == "TT":
        out[-1] = last._replace(end=token.end)
    elif pair in ("A?", "??"):
        out[-1] = token._replace(start=last.start)
    elif pair == "OA" and len(out) > 1 and out[-2].kind == "N" and _value(out[-2]) < 1:
        out[-2:] = [out[-2]._replace(end=token.end)]
    elif token.kind == "N":
        return _join_number(out, token)
    elif token.kind == "W" and last.value in _CUP_KINDS and len(out) > 1 and out[-2].kind in "NAH":
        unit = unit_named(str(token.value))
        if unit is None or unit.name not in ("cup", "glass"):
            return False
        out[-1] = Token("V" if unit.kind == "volume" else "K", unit, last.start, token.end)
    elif token.kind in "MVLK" and last.kind == "-" and len(out) > 1 and out[-2].kind == "N":
        out[-1] = token
    elif token.kind == "W" and token.value in ("dozen", "doz", "dutzend") and last.kind in "NA":
        out[-1] = _number_token(_value(last) * 12, last.start, token.end)
    elif (
        token.kind == "W"
        and token.value in ("oz", "ozs", "ounce", "ounces")
        and last.value in ("fl", "fluid")
    ):
        out[-1] = Token("V", UNITS["floz"], last.start, token.end)
    else:
        return False
    return True


def _join_number(out: list[Token], token: Token) -> bool:
    """Join a number to what stands before it: 1 and 1/2, three quarters, a cup and a half."""
    last, value = out[-1], _value(token)
    if value >= 1 or not isinstance(token.value, Number):
        return False
    is_word = token.value.spelled[-1:].isalpha()
    if last.kind == "A" and is_word:
        if len(out) > 2 and _is_and(out[-2]) and out[-3].kind == "N":
            whole = out[-3]
            out[-3:] = [_number_token(_value(whole) + value, whole.start, token.end)]
        elif len(out) > 3 and _is_and(out[-2]) and out[-3].kind in "MV" and out[-4].kind in "NA":
            out[-4] = _number_token(_value(out[-4]) + value, out[-4].start, out[-4].end)
            out[-3] = out[-3]._replace(end=token.end)
            del out[-2:]
        else:
            out[-1] = token._replace(start=last.start)
    elif (
        _is_and(last) and is_word and len(out) > 2 and out[-2].kind in "MV" and out[-3].kind in "NA"
    ):
        out[-3] = _number_token(_value(out[-3]) + value, out[-3].start, out[-3].end)
        out[-2] = out[-2]._replace(end=token.end)
        del out[-1]
    elif last.kind == "N" and is_word and value in _FRACTION_WORDS:
        out[-1] = _number_token(_value(last) * value, last.start, token.end)
    elif len(out) > 1 and out[-2].kind == "N" and _is_and(last):
        whole = out[-2]
        out[-2:] = [_number_token(_value(whole) + value, whole.start, token.end)]
    else:
        return False
    return True


def _number_token(value: float, start: int, end: int) -> Token:
    return Token("N", Number(value, None, ""), start, end)


def _is_and(token: Token) -> bool:
    return token.kind == "&" or (token.kind == "W" and token.value in ("and", "und"))


def _value(token: Token) -> float:
    return token.value.value if isinstance(token.value, Number) else float("nan")
