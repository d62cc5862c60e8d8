"""Two oven temperatures with one stroke between them: `180/160 C`, without the fan and with it."""

import re

from krume.base import as_text
from krume.design.reader.asking import Asking
from krume.design.reader.ovenclauses import is_left
from krume.design.reader.settings import limit

_FAN = r"(?:fan|convection|umluft|heißluft|heissluft)\b"
_SLASHED = re.compile(
    r"(?<![\d.,/])(?P<one>\d{3})\s*/\s*(?P<other>\d{3})(?![\d/])(?P<unit>\s*(?:"
    r"(?:(?:°|deg(?:rees?|\.)?|grad)\s*)?(?:c(?:elsius)?|f(?:ahrenheit)?)\b|°|grad\b))?"
    rf"(?:\s*(?:{_FAN}|\([^)]*\b{_FAN}[^)]*\)))?",
    re.IGNORECASE,
)


def ask_which(source: str, text: str, asking: Asking, *, keyed: bool) -> bool:
    """Ask which of two temperatures was baked with; whether that is asked.

    >>> ask_which("180/160 C", "180/160 C", (asking := Asking("180/160 C")), keyed=True)
    True
    >>> [option.line for option in asking.problems[0].options]
    ['180 C', 'fan 160 C', '160 C']
    """
    for match in _SLASHED.finditer(text):
        if (match["unit"] or keyed) and not is_left(text, match, keyed=keyed):
            return _asks(source, match, asking)
    return False


def _asks(source: str, match: re.Match[str], asking: Asking) -> bool:
    high, low = sorted((float(match["one"]), float(match["other"])), reverse=True)
    is_f = "f" in (match["unit"] or "").casefold()
    is_hot, is_cool = (
        is_f or high > limit("fahrenheit-from"),
        is_f or low > limit("fahrenheit-from"),
    )
    apart = abs((high - 32) / 1.8 - low)
    if is_hot and not is_cool and apart <= limit("temperatures-agree"):
        return False
    one, other = (f"{as_text(c)} {'F' if f else 'C'}" for c, f in ((high, is_hot), (low, is_cool)))
    answers = (one, f"fan {other}", other) if is_hot == is_cool else (one, other)
    why = ", most often without the fan and with it" if is_hot == is_cool else ""
    asking.ask(
        "oven-temp-conflict",
        f"{match[0].strip()} is two temperatures{why}. Which did you bake with?",
        *((each, asking.edit(*match.span(), each)) for each in answers),
        read=source,
    )
    return True
