"""A plan as a calendar file: RFC 5545, folded at 75 octets, the same bytes for the same plan."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import UTC, datetime

MOST_OCTETS = 75
"""Longest line without its end, by RFC 5545, section 3.1."""


@dataclass(frozen=True, slots=True)
class CalendarEvent:
    """One entry of a calendar; its times have an offset."""

    uid: str
    start: datetime
    end: datetime
    summary: str
    description: str = ""


def calendar_file(events: Iterable[CalendarEvent], *, made_by: str, stamp: datetime) -> bytes:
    """A calendar of events; `stamp` is the moment the plan was made at."""
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", f"PRODID:-//krume//{escaped(made_by)}//EN"]
    lines.append("CALSCALE:GREGORIAN")
    for event in events:
        lines += [
            "BEGIN:VEVENT",
            f"UID:{escaped(event.uid)}",
            f"DTSTAMP:{_moment(stamp)}",
            f"DTSTART:{_moment(event.start)}",
            f"DTEND:{_moment(event.end)}",
            f"SUMMARY:{escaped(event.summary)}",
        ]
        if event.description:
            lines.append(f"DESCRIPTION:{escaped(event.description)}")
        lines.append("END:VEVENT")
    lines.append("END:VCALENDAR")
    return "".join(f"{part}\r\n" for line in lines for part in folded(line)).encode()


def _moment(moment: datetime) -> str:
    return f"{moment.astimezone(UTC):%Y%m%dT%H%M%SZ}"


def escaped(text: str) -> str:
    r"""Text with the signs escaped that have a meaning of their own; no control signs.

    >>> escaped("fold; load, wait\nand look") == r"fold\; load\, wait\nand look"
    True
    """
    plain = text.replace("\r\n", "\n").replace("\r", "\n")
    for sign in ("\\", ";", ","):
        plain = plain.replace(sign, f"\\{sign}")
    plain = plain.replace("\n", "\\n")
    return "".join(sign for sign in plain if sign.isprintable())


def folded(line: str) -> tuple[str, ...]:
    """A line in parts of 75 octets at most; each after the first begins with one blank.

    >>> [len(part.encode()) for part in folded("x" * 200)]
    [75, 75, 52]
    """
    parts, part = [], ""
    for sign in line:
        if len((part + sign).encode()) > MOST_OCTETS:
            parts.append(part)
            part = " "
        part += sign
    return (*parts, part)
