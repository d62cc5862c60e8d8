"""Amounts of a line: the value, its unit, and what is odd about how it is written."""

import math
from typing import NamedTuple

from krume.base import UNITS, Interval, Unit, as_text
from krume.design.reader.asking import Asking
from krume.design.reader.forms import AmountAt, Shape
from krume.design.reader.settings import limit
from krume.design.reader.tokens import Number, Token

EACH = UNITS["each"]


class Amount(NamedTuple):
    """An amount as written; `value` is None where it cannot be used."""

    value: float | Interval | None
    unit: Unit | None
    start: int
    end: int
    about: bool = False

    @property
    def best(self) -> float | None:
        """The value to plan with: the middle of a range."""
        return self.value.best if isinstance(self.value, Interval) else self.value

    @property
    def grams(self) -> float | None:
        """Grams, where a mass is written."""
        size = self.unit.size if self.unit is not None and self.unit.kind == "mass" else None
        return None if size is None or self.best is None else self.best * size


class Place(NamedTuple):
    """A line's tokens with their shape, and how its numbers are to be taken."""

    found: list[Token]
    shape: Shape
    comma_is_decimal: bool


def amount_at(place: Place, at: AmountAt, asking: Asking) -> Amount:
    """Amount at a place of the shape, with its questions asked."""
    low = _token(place, at.low)
    unit = _unit(place, at)
    last = _token(place, at.last)
    first = place.found[place.shape.places[at.low] - 1] if at.about else low
    start, end = first.start, last.end
    value: float | Interval | None = _checked(low, unit, place, asking)
    if at.high is not None and isinstance(value, float):
        value = _range(value, low, _token(place, at.high), unit, asking)
    return Amount(value, unit, start, end, at.about)


def _token(place: Place, at: int) -> Token:
    return place.found[place.shape.places[at]]


def _unit(place: Place, at: AmountAt) -> Unit | None:
    if at.unit is None:
        return None
    token = _token(place, at.unit)
    if token.kind == "T":
        return UNITS["cup"]
    return token.value if isinstance(token.value, Unit) else None


def _checked(token: Token, unit: Unit | None, place: Place, asking: Asking) -> float | None:
    number = token.value
    if not isinstance(number, Number) or not math.isfinite(number.value):
        asking.ask(
            "not-a-number",
            f"'{asking.source[token.start : token.end]}' is not a number. Type the amount in "
            f"figures.",
        )
        return None
    if number.value > limit("largest-number"):
        asking.ask(
            "number-too-large",
            f"'{number.spelled[:30]}' is more than this reader takes. Type the amount again.",
        )
        return None
    return _one_meaning(token, number, unit, place, asking)


def _one_meaning(
    token: Token, number: Number, unit: Unit | None, place: Place, asking: Asking
) -> float:
    if number.other is None or not place.comma_is_decimal:
        return float(number.value)
    name = f" {unit.name}" if unit else ""
    asking.ask(
        "decimal-comma",
        f"'{number.spelled}{name}': commas are decimals elsewhere in this text, so this is either "
        f"{as_text(number.value)} or {as_text(number.other)}. Which?",
        *(
            (f"{as_text(v)}{name}", asking.edit(token.start, token.end, as_text(v)))
            for v in (number.value, number.other)
        ),
    )
    return float(number.value)


def _range(
    low: float, first: Token, second: Token, unit: Unit | None, asking: Asking
) -> float | Interval | None:
    number = second.value
    high = float(number.value) if isinstance(number, Number) else math.nan
    if not math.isfinite(high) or high > limit("largest-number"):
        asking.ask("number-too-large", "The range ends with no usable number. Type it again.")
        return None
    if low < high:
        _note_middle(low, high, unit, asking)
        return Interval(low, (low + high) / 2, high)
    _ask_range(low, high, first, second, asking)
    return low if low == high else None


def _note_middle(low: float, high: float, unit: Unit | None, asking: Asking) -> None:
    name = f" {unit.name}" if unit else ""
    asking.note(
        "range-middle",
        f"{as_text((low + high) / 2)}{name} used; the range "
        f"{as_text(low)}–{as_text(high)}{name} is kept",
    )


def _ask_range(low: float, high: float, first: Token, second: Token, asking: Asking) -> None:
    def line(text: str) -> str:
        return asking.edit(first.start, second.end, text)

    small, large = as_text(min(low, high)), as_text(max(low, high))
    if low == high:
        asking.ask(
            "range-equal-ends",
            f"The range has equal ends, {small} and {large}. Is {small} meant, or another end?",
            (small, line(small)),
            (f"about {small}", line(f"about {small}")),
        )
        return
    asking.ask(
        "range-backwards",
        f"The range runs backwards, from {large} to {small}. Which is meant?",
        (f"{small}–{large}", line(f"{small}–{large}")),
        (small, line(small)),
        (large, line(large)),
    )
