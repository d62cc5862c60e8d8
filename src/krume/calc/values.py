"""Values as people type them: a number with or without its unit, a list, yes or no."""

import math
import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from krume.base import InputError, as_text, plain_digits, read_number
from krume.calc.units import in_unit, measure_named, wrong_unit

_QUANTITY = re.compile(
    r"^\s*(?P<sign>[+-]?)\s*"
    r"(?P<number>\d{1,3}(?: \d{3})+(?:[.,]\d+)?|\d+\s+\d+\s*/\s*\d+|\d+\s*/\s*\d+"
    r"|\d[\d.,'’]*(?:e[+-]?\d+)?|[.,]\d+)"
    r"\s*-?\s*(?P<unit>[^\d\s+-][^+]*)?$",
    re.IGNORECASE,
)
_SCIENTIFIC = re.compile(r"^\d+(?:\.\d+)?e[+-]?\d{1,3}$", re.IGNORECASE)
_YES = frozenset({"yes", "y", "true", "1", "ja", "on"})
_NO = frozenset({"no", "n", "false", "0", "nein", "off"})
UNKNOWN = frozenset({"?", "unknown", "none", "null"})
_MOST_ITEMS = 2000


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number and the unit it was written with; the unit is empty for a bare number.

    `exact` keeps the digits as typed, for limits that are met exactly.
    """

    value: float
    unit: str
    exact: Decimal


def quantity(raw: object, *, field: str) -> Quantity:
    """Read one number with or without a unit.

    >>> quantity("8in", field="diameter")
    Quantity(value=8.0, unit='in', exact=Decimal('8'))
    >>> quantity("-12", field="offset").value, quantity("1 1/2 cups", field="value").unit
    (-12.0, 'cups')
    """
    if isinstance(raw, bool) or not isinstance(raw, int | float | str | Decimal | Fraction):
        raise _no_number(raw, field)
    if isinstance(raw, str):
        return _from_text(raw, field)
    value = float(raw)
    if not math.isfinite(value):
        raise _no_number(raw, field)
    exact = raw if isinstance(raw, Decimal) else Decimal(repr(value))
    return Quantity(value, "", exact)


def _from_text(text: str, field: str) -> Quantity:
    spelled = plain_digits(text).replace("\u2212", "-").replace("\u00a0", " ")
    match = _QUANTITY.match(spelled)
    if match is None:
        raise _no_number(text, field)
    exact = _decimal(match["number"], text, field)
    signed = -exact if match["sign"] == "-" else exact
    return Quantity(float(signed), (match["unit"] or "").strip(), signed)


def _decimal(digits: str, text: str, field: str) -> Decimal:
    if _SCIENTIFIC.match(digits):
        return Decimal(digits)
    read = read_number(digits)
    if read is None:
        raise _no_number(text, field)
    if read.other is not None:
        one, two = as_text(read.value), as_text(read.other)
        raise InputError(
            f"'{text}' can mean {one} or {two}. Type it without a comma.",
            field=field, got=text, want=f"{one} or {two}",
        )  # fmt: skip
    plain = digits.replace(",", ".")
    return Decimal(plain) if re.fullmatch(r"\d*\.?\d+", plain) else Decimal(repr(read.value))


def _no_number(raw: object, field: str) -> InputError:
    shown = str(raw)[:60]
    return InputError(
        f"'{shown}' is no number for {field}. Type digits, for example 12.5, with a unit or "
        "without.",
        field=field, got=shown, want="a number",
    )  # fmt: skip


def number(raw: object, *, field: str, unit: str, difference: bool = False) -> float:
    """A number in the unit the sum wants; amounts of one kind may be added by `+`.

    >>> number("1 cup + 2 tbsp", field="value", unit="ml")
    266.1617660625
    """
    if isinstance(raw, str) and "+" in raw.strip()[1:] and "e+" not in raw.casefold():
        parts = [part for part in raw.split("+") if part.strip()]
        return math.fsum(number(p, field=field, unit=unit, difference=difference) for p in parts)
    read = quantity(raw, field=field)
    if not read.unit:
        return read.value
    if not unit or measure_named(unit) is None:
        raise wrong_unit(field, read.value, read.unit, unit)
    return in_unit(read.value, read.unit, unit, field=field, difference=difference)


def items(raw: object, *, field: str, marks: str = ",;") -> list[object]:
    """A list: a text with commas, or a Python list."""
    if isinstance(raw, str):
        parts = re.split(f"[{re.escape(marks)}]", raw.strip().strip("[]()"))
        found: list[object] = [part.strip() for part in parts if part.strip()]
    elif isinstance(raw, Sequence) or (isinstance(raw, Iterable) and not isinstance(raw, dict)):
        found = list(raw)
    else:
        found = [raw]
    if not found or len(found) > _MOST_ITEMS:
        shown = "nothing" if not found else f"{len(found)} items"
        raise InputError(
            f"{field} needs a list of 1 to {_MOST_ITEMS} items; here is {shown}. "
            "Separate them by commas.",
            field=field, got=shown, want="a list",
        )  # fmt: skip
    return found


def yes_no(raw: object, *, field: str) -> bool:
    """Yes or no, as a word or as a truth value."""
    if isinstance(raw, bool):
        return raw
    word = str(raw).strip().casefold()
    if word in _YES or word in _NO:
        return word in _YES
    raise InputError(
        f"'{raw}' is neither yes nor no. Type {field}=yes or {field}=no.",
        field=field, got=str(raw), want="yes or no",
    )  # fmt: skip


def is_unknown(raw: object) -> bool:
    """Whether a value says that it is not known."""
    return raw is None or (isinstance(raw, str) and raw.strip().casefold() in UNKNOWN)
