"""What an option says, in a baker's words: depth first, then eggs and grams."""

from krume.base import as_text
from krume.size.request import SizedEggs, SizeOption

_MM_BELOW_CM = 2.0


def length_text(length_cm: float) -> str:
    """A depth as it is said: in mm when thin, else in cm, one decimal.

    >>> length_text(1.15), length_text(3.333)
    ('11.5 mm', '3.3 cm')
    """
    if length_cm < _MM_BELOW_CM:
        return f"{as_text(round(length_cm * 10, 6), 1)} mm"
    return f"{length_cm:.1f} cm"


def option_text(option: SizeOption, *, wanted_cm: float | None, before_g: float | None) -> str:
    """One line that a person can choose by."""
    depth = _depth_words(option.depth_cm, wanted_cm)
    if option.kind == "as-is":
        return f"Change nothing{_colon(depth)}."
    head = _head(option)
    grams = _gram_words(option.total_g, before_g)
    return f"{head}{_colon(', '.join(part for part in (depth, grams) if part))}."


def _colon(words: str) -> str:
    return f": {words}" if words else ""


def _head(option: SizeOption) -> str:
    factor = f"x {as_text(option.factor, 3)}"
    if not option.eggs:
        return f"Everything {factor}"
    words = [_egg_words(eggs) for eggs in option.eggs]
    eggs = " and ".join(words) if option.kind == "whole" else ", ".join(words)
    return f"{eggs}, everything {factor}"


def _egg_words(eggs: SizedEggs) -> str:
    noun = "egg" if eggs.part == "whole" else eggs.part
    counted = f"{eggs.count} {noun}{'' if eggs.count == 1 else 's'}"
    over = round(eggs.make_up_g, 1)
    if over > 0 and eggs.count == 0:
        return f"{as_text(over, 1)} g of one {noun}"
    if over > 0:
        return f"{counted} + {as_text(over, 1)} g of one more"
    if over < 0:
        return f"{counted} less {as_text(-over, 1)} g"
    return counted


def _depth_words(depth_cm: float | None, wanted_cm: float | None) -> str:
    if depth_cm is None:
        return ""
    shown = length_text(depth_cm)
    if wanted_cm is None:
        return f"{shown} deep"
    before = length_text(wanted_cm)
    if shown == before:
        return f"{shown} deep, as wanted"
    if before.split()[1] == shown.split()[1]:
        return f"{shown} deep instead of {before.split()[0]}"
    return f"{shown} deep instead of {before}"


def _gram_words(total_g: float | None, before_g: float | None) -> str:
    if total_g is None or before_g is None:
        return ""
    change = round(total_g - before_g)
    if change == 0:
        return ""
    return f"{abs(change)} g {'more' if change > 0 else 'less'} batter"
