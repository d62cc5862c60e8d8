"""Numbers as pages set them: the figure heavy, its unit small, its doubt beside it."""

from collections.abc import Callable

from krume.base import Interval, as_text

_THIN = "\u202f"


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


FILTERS: dict[str, Callable[..., str]] = {"amount": amount, "grouped": grouped}
"""What templates call them."""
