"""How figures are set for a person: digits, thousands, intervals, band strips."""

from krume.base import Interval, as_text

THIN = "\u2009"


def number(value: float | None, digits: int = 1) -> str:
    r"""A number with thousands set apart; unknown is a word.

    >>> number(1194.94), number(5.0), number(None)
    ('1\u2009194.9', '5', 'unknown')
    """
    if value is None:
        return "unknown"
    whole, point, rest = as_text(abs(value), digits).partition(".")
    groups: list[str] = []
    while len(whole) > 3:
        groups.insert(0, whole[-3:])
        whole = whole[:-3]
    sign = "-" if value < 0 and (whole, rest) != ("0", "") else ""
    return sign + THIN.join([whole, *groups]) + point + rest


def amount(value: float | Interval | None, digits: int = 1) -> str:
    """A number, or the two ends of one that is not settled.

    >>> amount(Interval(30, 34, 50)), amount(None)
    ('30–50', 'unknown')
    """
    if isinstance(value, Interval):
        return span(value.low, value.high, digits)
    return number(value, digits)


def fixed(value: float | None, digits: int = 1) -> str:
    """A number with all its digits after the point, for columns.

    >>> fixed(5.0), fixed(None)
    ('5.0', 'unknown')
    """
    return "unknown" if value is None else f"{value:.{digits}f}"


def span(low: float | None, high: float | None, digits: int = 2) -> str:
    """Two ends of a range; one end alone says which.

    >>> span(30, 50), span(16, 16), span(None, 60), span(12, None)
    ('30–50', '16', 'at most 60', 'at least 12')
    """
    if low is None:
        return f"at most {number(high, digits)}"
    if high is None:
        return f"at least {number(low, digits)}"
    ends = (number(low, digits), number(high, digits))
    return ends[0] if ends[0] == ends[1] else "\N{EN DASH}".join(ends)


def strip(value: float, low: float, high: float, width: int = 24) -> str:
    """A band as a strip: the usual range is its middle half, the value stands on it.

    >>> strip(40, 30, 50)
    '      [-----*----]      '
    >>> strip(100, 30, 50)
    '      [----------]     *'
    """
    quarter = width // 4
    signs = [" "] * quarter + ["[", *"-" * (width - 2 * quarter - 2), "]"] + [" "] * quarter
    share = (value - low) / (high - low) if high > low else 0.5
    place = quarter + round(share * (width - 2 * quarter - 1))
    signs[min(max(place, 0), width - 1)] = "*"
    return "".join(signs)
