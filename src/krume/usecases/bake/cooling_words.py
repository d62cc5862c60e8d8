"""What a cooling says in a baker's words: a line each, and one short line for the card."""

import math

from krume.bake import Cooling
from krume.base import Interval, as_text

_FINE_TO_MIN = 60
_STEP_MIN = 5


def span_min(minutes: Interval) -> str:
    """Minutes from the earliest to the latest; beyond an hour in steps of five.

    >>> span_min(Interval(74, 93.4, 116)), span_min(Interval(38, 50.0, 66))
    ('70–120 min', '38–70 min')
    """
    low = minutes.low if minutes.low < _FINE_TO_MIN else _STEP_MIN * (minutes.low // _STEP_MIN)
    high = minutes.high
    if high > _FINE_TO_MIN:
        high = _STEP_MIN * math.ceil(high / _STEP_MIN)
    return f"{low:.0f}–{high:.0f} min"


def cooling_lines(found: Cooling, goals_c: dict[str, float]) -> tuple[str, ...]:
    """All that is to be done after the oven, a line each, with the temperature that counts."""
    lines = [*_turning(found), *_rolling(found, goals_c)]
    if found.split_min is not None:
        also = ", or wrap it," if found.split_min == found.wrap_min else ""
        lines.append(
            f"Cut it into layers{also} after {span_min(found.split_min)}, once the middle is at "
            f"{goals_c['split']:.0f} °C or below."
        )
    if found.wrap_min is not None and found.wrap_min != found.split_min:
        lines.append(
            f"Wrap it after {span_min(found.wrap_min)}, once the middle is at "
            f"{goals_c['wrap']:.0f} °C or below. Wrapped warmer it weeps."
        )
    if found.fill_min is not None:
        begin = "Unroll and fill it" if found.way == "rolled" else "Fill it"
        lines.append(
            f"{begin} with a cream after {span_min(found.fill_min)}, once the middle is at "
            f"{goals_c['fill']:.0f} °C or below. Warmer, milk fat softens."
        )
    return tuple(lines)


def _turning(found: Cooling) -> list[str]:
    if found.way == "hung":
        return ["Hang it upside down in its tin at once, and leave it there until it is cut."]
    if found.way == "rack" and found.turned_min:
        return [f"Turn it out after {as_text(found.turned_min, 0)} min."]
    return []


def _rolling(found: Cooling, goals_c: dict[str, float]) -> list[str]:
    begin, end = found.roll_from_min, found.roll_until_min
    if begin is None or end is None:
        return []
    hot, cold = (f"{goals_c[key]:.0f}" for key in ("roll_hottest", "roll_coldest"))
    why = f"the sheet is between {hot} and {cold} °C. Hotter it sticks, colder it cracks."
    window = found.roll_window_min
    if window is None:
        return [f"Turn it out and roll it at once: {why}"]
    return [f"Turn it out at once. Roll it {window[0]} to {window[1]} min after the oven: {why}"]


def own_lines(own: Interval | None) -> tuple[str, ...]:
    """What the formula's own text says of its cooling, which counts before the model."""
    if own is None:
        return ()
    span = f"{own.high:.0f}" if own.low == own.high else f"{own.low:.0f}–{own.high:.0f}"
    return (f"By its own text it is cold after {span} min; a plan takes the late end.",)


def cooling_line(found: Cooling) -> str:
    """The same in one short line for a card; empty where nothing is said."""
    window = found.roll_window_min
    parts = []
    if found.way == "rack" and found.turned_min:
        parts.append(f"turn out after {as_text(found.turned_min, 0)} min")
    if found.way == "rolled" and found.roll_from_min is not None:
        parts.append(
            "roll at once" if window is None else f"roll after {window[0]} to {window[1]} min"
        )
    if found.split_min is not None:
        parts.append(f"cut into layers after {span_min(found.split_min)}")
    if found.fill_min is not None:
        parts.append(f"fill with a cream after {span_min(found.fill_min)}")
    text = "; ".join(parts)
    return f"{text[:1].upper()}{text[1:]}" if text else ""
