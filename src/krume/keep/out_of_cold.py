"""Hours an order spends out of the cold, from the fridge's door to the last slice."""

import datetime
import re
from dataclasses import dataclass

from krume.keep.rules import room_rules

_COLD_CARRIER = re.compile(
    r"\b(?:cold|cool|chilled|refrigerat\w+)\s+(?:boot|box|bag|van|car|truck|carrier)\b", re.I
)
_NO_FRIDGE = re.compile(r"\b(?:without|no)\s+(?:a\s+)?(?:fridge|refrigerator|cooling)\b", re.I)
_UNTIL = re.compile(r"\b(?:until|till|to)\s+(\d{1,2})[:.](\d{2})\b", re.I)
_HOURS = re.compile(r"(\d+(?:[.,]\d+)?)\s*(?:hours?|h)\b", re.I)


@dataclass(frozen=True, slots=True)
class OutOfCold:
    """What an order's hand-over says of warm hours; None is not said.

    `hours` counts the drive, unless it is cold, and the room without a fridge. `is_within` is
    None where nothing is said: then nothing is shown, and nothing is read as fine.
    """

    drive_h: float | None
    drive_is_cold: bool
    room_h: float | None
    hours: float | None
    limit_h: float
    rule: str
    is_within: bool | None
    latest_end: datetime.time | None
    text: str


def out_of_cold(
    words: str, *, hand_over: datetime.time | None, drive_min: float | None
) -> OutOfCold:
    """Warm hours of a hand-over, counted against the named rule of time without cooling.

    >>> found = out_of_cold(
    ...     "10:30, delivery, room without a fridge until 13:00",
    ...     hand_over=datetime.time(10, 30), drive_min=None,
    ... )
    >>> found.room_h, found.hours, found.is_within
    (2.5, 2.5, True)
    """
    rule = room_rules()[0]
    limit = rule.number_of("hours")
    cold = _COLD_CARRIER.search(words) is not None
    drive = None if drive_min is None else drive_min / 60
    room = _room_h(words, hand_over)
    counted = [part for part in (None if cold else drive, room) if part is not None]
    hours = sum(counted) if counted else (0.0 if cold and drive is not None else None)
    within = None if hours is None else hours <= limit
    return OutOfCold(
        drive_h=drive,
        drive_is_cold=cold,
        room_h=room,
        hours=hours,
        limit_h=limit,
        rule=rule.text("words"),
        is_within=within,
        latest_end=_latest_end(hand_over, limit, 0.0 if cold else drive or 0.0),
        text=_text(hours, limit, cold=cold, drive=drive, room=room),
    )


def _room_h(words: str, hand_over: datetime.time | None) -> float | None:
    warm = _NO_FRIDGE.search(words)
    if warm is None:
        return None
    after = words[warm.end() :]
    if (match := _UNTIL.search(after)) and hand_over is not None:
        end = int(match[1]) + int(match[2]) / 60
        begin = hand_over.hour + hand_over.minute / 60
        return end - begin if end >= begin else end - begin + 24
    if match := _HOURS.search(after):
        return float(match[1].replace(",", "."))
    return None


def _latest_end(
    hand_over: datetime.time | None, limit_h: float, drive_h: float
) -> datetime.time | None:
    """Moment by which the last slice is eaten or cold again, from leaving the fridge."""
    if hand_over is None:
        return None
    minutes = hand_over.hour * 60 + hand_over.minute + round(60 * (limit_h - drive_h))
    return datetime.time(minutes // 60 % 24, minutes % 60)


def _text(
    hours: float | None, limit: float, *, cold: bool, drive: float | None, room: float | None
) -> str:
    if hours is None:
        return (
            "Hours out of the cold: not said. Ask how it travels and whether there is a fridge; "
            "until then it is not shown."
        )
    parts = []
    if drive is not None:
        parts.append(f"drive {drive:.2g} h{' cold, not counted' if cold else ''}")
    if room is not None:
        parts.append(f"room without a fridge {room:.3g} h")
    said = f"Hours out of the cold: {hours:.3g} of {limit:g} ({', '.join(parts)})."
    end = "Local rule decides." if hours <= limit else "Over the limit: it needs a fridge there."
    return f"{said} {end}"
