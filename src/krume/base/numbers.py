"""Numbers as people write them: fractions, decimal commas, ranges, digits of other scripts."""

import math
import re
import unicodedata
from dataclasses import dataclass

_FRACTION = re.compile(r"^(\d+)\s*/\s*(\d+)$")
_MIXED = re.compile(r"^(\d+)[\s\-&]+(\d+)\s*/\s*(\d+)$")
_GROUPED = re.compile(r"^\d{1,3}(?:[ \u00a0\u2009\u202f'’]\d{3})+(?:[.,]\d+)?$")
_COMMA_GROUP = re.compile(r"^[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?$")
_DOT_GROUP = re.compile(r"^[1-9]\d{0,2}(?:\.\d{3}){2,}(?:,\d+)?$")
_PLAIN = re.compile(r"^\d+(?:[.,]\d+)?$|^[.,]\d+$")


@dataclass(frozen=True, slots=True)
class ReadNumber:
    """A numeral that was read; `other` is a second meaning of the same signs (1,500)."""

    value: float
    other: float | None = None


def plain_digits(text: str) -> str:
    """Text with the digits of any script, vulgar fractions and the fraction slash in plain signs.

    >>> plain_digits("٨٥"), plain_digits("1½"), plain_digits("1⁄2")
    ('85', '1 1/2', '1/2')
    """
    out: list[str] = []
    for sign in text:
        if sign.isdecimal():
            out.append(str(unicodedata.decimal(sign)))
        elif unicodedata.category(sign) == "No" and "⁄" in unicodedata.normalize("NFKC", sign):
            spelled = unicodedata.normalize("NFKC", sign).replace("⁄", "/")
            out.append((" " if out and out[-1][-1:].isdigit() else "") + spelled)
        else:
            out.append({"⁄": "/", "∕": "/", "٫": ".", "٬": ","}.get(sign, sign))
    return "".join(out)


def read_number(text: str, *, comma_is_decimal: bool = False) -> ReadNumber | None:
    """Read one numeral, or None when the text is not one.

    `1,500` is fifteen hundred to some and one and a half to others: where nothing else in a text
    uses decimal commas it is read as 1500 with the other meaning kept, else the other way round.

    >>> read_number("1 1/2").value, read_number("0,25").value, read_number("½").value
    (1.5, 0.25, 0.5)
    >>> read_number("1,500")
    ReadNumber(value=1500.0, other=1.5)
    >>> read_number("NaN") is None
    True
    """
    spelled = plain_digits(text).strip()
    if match := _FRACTION.match(spelled):
        return _ratio(0, *match.groups())
    if match := _MIXED.match(spelled):
        return _ratio(int(match[1]), match[2], match[3])
    if _COMMA_GROUP.match(spelled):
        return _grouped_by_comma(spelled, comma_is_decimal=comma_is_decimal)
    if _DOT_GROUP.match(spelled):
        return _finite(spelled.replace(".", "").replace(",", "."))
    if _GROUPED.match(spelled):
        return _finite(re.sub(r"[^\d.,]", "", spelled).replace(",", "."))
    if _PLAIN.match(spelled):
        return _finite(spelled.replace(",", "."))
    return None


def _ratio(whole: int, top: str, bottom: str) -> ReadNumber | None:
    if len(top) > 12 or len(bottom) > 12 or int(bottom) == 0:
        return None
    return ReadNumber(whole + int(top) / int(bottom))


def _grouped_by_comma(spelled: str, *, comma_is_decimal: bool) -> ReadNumber | None:
    grouped = _finite(spelled.replace(",", ""))
    if grouped is None or spelled.count(",") > 1 or "." in spelled:
        return grouped
    decimal = float(spelled.replace(",", "."))
    if comma_is_decimal:
        return ReadNumber(decimal, grouped.value)
    return ReadNumber(grouped.value, decimal)


def _finite(digits: str) -> ReadNumber | None:
    value = float(digits)
    return ReadNumber(value) if math.isfinite(value) else None


def as_text(value: float, digits: int = 6) -> str:
    """Shortest plain text of a number, at most `digits` significant after the point's rounding.

    >>> as_text(5.0), as_text(0.25), as_text(1195.04, 1)
    ('5', '0.25', '1195')
    """
    text = f"{round(value, digits):.{digits}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
