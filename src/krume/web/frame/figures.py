"""Numbers as pages set them: the figure heavy, its unit small, its doubt beside it."""

from collections.abc import Callable
from datetime import date, datetime, time

from krume.base import Interval, as_text

_THIN = "\u202f"
_UNITS = (
    ("_kg_m3", "kg/m³"), ("_w_mk", "W/(m K)"), ("_j_kgk", "J/(kg K)"), ("_cm2", "cm²"),
    ("_mg", "mg"), ("_ml", "ml"), ("_cm", "cm"), ("_mm", "mm"), ("_pct", "%"), ("_ppm", "mg/kg"),
    ("_kcal", "kcal"), ("_kj", "kJ"), ("_min", "min"), ("_pa", "Pa"), ("_g", "g"), ("_c", "°C"),
    ("_f", "°F"), ("_h", "h"), ("_s", "s"),
)  # fmt: skip
"""Unit of a figure by the end of its name, the longest end first."""


def grouped(value: float, digits: int = 1) -> str:
    """A number with thin spaces between its thousands, zeros at the end left out.

    >>> grouped(1194.9), grouped(50.0), grouped(-0.25, 2)
    ('1\u202f194.9', '50', '-0.25')
    """
    text = as_text(value, digits)
    whole, dot, rest = text.partition(".")
    sign, whole = ("-", whole[1:]) if whole.startswith("-") else ("", whole)
    parts = [whole[max(0, end - 3) : end] for end in range(len(whole), 0, -3)]
    return sign + _THIN.join(reversed(parts)) + dot + rest


def amount(value: float | Interval | None, digits: int = 1) -> str:
    """A value as read aloud: a number, a span with its ends, or the word for not known.

    >>> amount(None), amount(Interval(34.0, 37.0, 40.0))
    ('not known', '34–40')
    """
    if value is None:
        return "not known"
    if isinstance(value, Interval):
        low, high = grouped(value.low, digits), grouped(value.high, digits)
        return low if low == high else f"{low}–{high}"
    return grouped(value, digits)


def day_words(day: date | None) -> str:
    """A day in words.

    >>> day_words(date(2027, 6, 10)), day_words(None)
    ('Thursday 10 June', 'day not said')
    """
    return "day not said" if day is None else f"{day:%A} {day.day} {day:%B}"


def hour_words(at: time | datetime | None) -> str:
    """An hour as it stands on a clock.

    >>> hour_words(time(9, 5)), hour_words(None)
    ('9:05', 'hour not said')
    """
    return "hour not said" if at is None else f"{at.hour}:{at.minute:02d}"


def unit_of(name: str) -> str:
    """Unit that a figure's name ends in; nothing where it has none.

    >>> unit_of("dial_c"), unit_of("area_cm2"), unit_of("word")
    ('°C', 'cm²', '')
    """
    return next((unit for end, unit in _UNITS if name.endswith(end)), "")


def column_words(name: str) -> str:
    """Name of a table's column as it is read.

    >>> column_words("last_stroke_to_door_min"), column_words("word")
    ('last stroke to door, min', 'word')
    """
    end = next((end for end, _ in _UNITS if name.endswith(end)), "")
    words = name.removesuffix(end).replace("_", " ")
    return f"{words}, {unit_of(name)}" if end else words


FILTERS: dict[str, Callable[..., str]] = {
    "amount": amount,
    "grouped": grouped,
    "column_words": column_words,
    "day_words": day_words,
    "hour_words": hour_words,
}
"""What templates call them."""
