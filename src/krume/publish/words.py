"""Numbers and words as a sheet prints them."""

from decimal import ROUND_HALF_UP, Decimal

from krume.base import Interval, as_text

# Narrow and unbreakable: a number never parts at the end of a line.
_THIN = "\u202f"
_DASH = "–"


def grouped(text: str) -> str:
    r"""A plain number with a thin space in its thousands.

    >>> grouped("1195.5") == "1\u202f195.5", grouped("999")
    (True, '999')
    """
    whole, dot, rest = text.partition(".")
    sign, digits = ("-", whole[1:]) if whole.startswith("-") else ("", whole)
    groups = [digits[max(0, end - 3) : end] for end in range(len(digits), 0, -3)]
    return sign + _THIN.join(reversed(groups)) + dot + rest


def grams(value: float) -> str:
    """A mass as it is weighed out: two places at most, and only where they are exact.

    >>> grams(87.5), grams(0.25), grams(26.666667), grams(0.0333333)
    ('87.5', '0.25', '26.7', '0.033')
    """
    if abs(value - round(value, 2)) < 1e-6:
        return grouped(as_text(value, 2))
    if value < 1:
        return as_text(value, 2 if value >= 0.1 else 3)
    return grouped(as_text(value, 1))


def shown(value: float, step_g: float) -> str:
    """What a scale with this step shows; a half step is shown as the step above.

    >>> shown(70.25, 0.1), shown(144.0, 0.1), shown(92.7, 1.0), shown(0.5, 1.0)
    ('70.3', '144', '93', '1')
    """
    step = Decimal(str(step_g))
    steps = (Decimal(str(round(value, 6))) / step).quantize(Decimal(1), rounding=ROUND_HALF_UP)
    return grouped(as_text(float(steps * step), 3))


def span(interval: Interval) -> str:
    """An interval with an en dash, a settled value as one number.

    >>> span(Interval(34, 37, 40)), span(Interval(30, 30, 30))
    ('34–40', '30')
    """
    low, high = as_text(interval.low, 1), as_text(interval.high, 1)
    return low if low == high else f"{low}{_DASH}{high}"


def listed(words: tuple[str, ...]) -> str:
    """Words joined by commas, each once, in order.

    >>> listed(("egg", "milk", "egg"))
    'egg, milk'
    """
    return ", ".join(dict.fromkeys(words))
