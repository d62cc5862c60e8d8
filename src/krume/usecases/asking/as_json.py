"""Frozen values as plain JSON values; a number that is none is a fault, never a null."""

from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from datetime import date, datetime, time
from decimal import Decimal
from pathlib import PurePath
from typing import TypeAlias

from krume.base import unturned

Json: TypeAlias = "bool | int | float | str | list[Json] | dict[str, Json] | None"

_DIGITS = 12
"""Significant digits kept: what is beyond them is dust of the binary sum."""


def plain(value: object) -> Json:
    """Plain JSON value of a frozen value; no sign in its texts turns a line round.

    >>> from krume.base import Interval
    >>> plain((Interval(2, 2.5, 3), 7.2 * 3, None))
    [{'low': 2, 'best': 2.5, 'high': 3}, 21.6, None]
    """
    match value:
        case None | bool() | int():
            return value
        case str():
            return unturned(value)
        case float() | Decimal():
            return _number(float(value))
        case datetime() | date() | time():
            return value.isoformat()
        case PurePath():
            return str(value)
        case Mapping():
            return {unturned(str(key)): plain(item) for key, item in value.items()}
        case tuple() | list():
            return [plain(item) for item in value]
        case _ if is_dataclass(value):
            return {field.name: plain(getattr(value, field.name)) for field in fields(value)}
    message = f"{type(value).__name__} has no plain form"
    raise TypeError(message)


def _number(value: float) -> float:
    if value - value != 0:
        message = f"{value} is no number an answer may hold"
        raise ValueError(message)
    return float(f"{value:.{_DIGITS}g}")
