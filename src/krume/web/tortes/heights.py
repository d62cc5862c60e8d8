"""Handles on the heights of a torte: what is tried stands in the address, and is kept by a tap."""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from urllib.parse import urlencode

from krume.base import as_text
from krume.usecases import Handle, Heights, HeightsNow

_DIGITS = 2
_MOST_TIMES = 2.0
_MOST_MM = 400.0


@dataclass(frozen=True, slots=True)
class HandleRow:
    """One handle: its field, its words, the figure as typed, and how far its slider goes."""

    field: str
    words: str
    count: int
    value: str
    written: str
    most: str
    is_changed: bool


@dataclass(frozen=True, slots=True)
class HandlesPart:
    """All handles, the way back to what is written, and what would fill the ring."""

    rows: tuple[HandleRow, ...]
    is_changed: bool
    fit: str
    fit_address: str
    wrong: str = ""


def wished_heights(typed: Mapping[str, str]) -> Heights:
    """Heights in what was typed, by line; what is no height is left as it is written.

    >>> wished_heights({"h5": "12,5", "h6": "much", "seen": "2"})
    {5: 12.5}
    """
    found = {int(key[1:]): _mm(value) for key, value in typed.items() if _is_field(key)}
    return {line: value for line, value in found.items() if value is not None}


def _is_field(key: str) -> bool:
    return key[:1] == "h" and key[1:].isascii() and key[1:].isdigit() and len(key) < 6


def _mm(text: str) -> float | None:
    try:
        value = float(text.strip().replace(",", ".").removesuffix("mm"))
    except ValueError:
        return None
    return value if math.isfinite(value) and 0 < value <= _MOST_MM else None


def handles_part(address: str, now: HeightsNow, wrong: str = "") -> HandlesPart:
    """The handles as they are shown."""
    fit = now.fit
    way = "" if fit is None else _address(address, now.handles, {fit.line: fit.height_mm})
    return HandlesPart(
        rows=tuple(_row(each) for each in now.handles),
        is_changed=now.is_changed,
        fit="" if fit is None else fit.text,
        fit_address=way,
        wrong=wrong,
    )


def _row(each: Handle) -> HandleRow:
    return HandleRow(
        field=f"h{each.line}",
        words=each.words,
        count=each.count,
        value=as_text(each.wished_mm, _DIGITS),
        written=as_text(each.height_mm, _DIGITS),
        most=as_text(max(_MOST_TIMES * each.height_mm, each.wished_mm), 0),
        is_changed=each.wished_mm != each.height_mm,
    )


def _address(address: str, handles: Iterable[Handle], more: Heights) -> str:
    said = {f"h{x.line}": as_text(more.get(x.line, x.wished_mm), _DIGITS) for x in handles}
    return f"{address}?{urlencode(said)}#heights"
