"""Temperatures in the units a person reads: °C, °F, or both beside one another."""

from krume.base.numbers import as_text
from krume.base.quantity import Interval

HEAT_UNITS = ("c", "f", "both")
"""What a studio may say of its units: Celsius, Fahrenheit, or both."""

_DASH = "\N{EN DASH}"


def fahrenheit(temp_c: float) -> float:
    """A temperature in °F.

    >>> fahrenheit(170.0)
    338.0
    """
    return temp_c * 9 / 5 + 32


def heat(temp_c: float | Interval, units: str | None, digits: int = 0) -> tuple[str, str]:
    """A temperature as a figure and what stands behind it; nothing said is °C.

    `digits` are those of °C; °F is written in whole degrees.

    >>> heat(170.0, None), heat(170.0, "f"), heat(170.0, "both")
    (('170', '°C'), ('338', '°F'), ('170', '°C, 338 °F'))
    """
    celsius, other = _span(temp_c, digits), _span(_in_fahrenheit(temp_c), 0)
    if units == "f":
        return other, "°F"
    return celsius, f"°C, {other} °F" if units == "both" else "°C"


def heat_text(temp_c: float | Interval, units: str | None, digits: int = 0) -> str:
    """A temperature in words.

    >>> heat_text(Interval(93.0, 94.5, 96.0), "both")
    '93–96 °C, 199–205 °F'
    """
    return " ".join(heat(temp_c, units, digits))


def _in_fahrenheit(temp_c: float | Interval) -> float | Interval:
    if isinstance(temp_c, Interval):
        return Interval(*(fahrenheit(each) for each in (temp_c.low, temp_c.best, temp_c.high)))
    return fahrenheit(temp_c)


def _span(value: float | Interval, digits: int) -> str:
    if isinstance(value, Interval):
        return f"{as_text(value.low, digits)}{_DASH}{as_text(value.high, digits)}"
    return as_text(value, digits)
