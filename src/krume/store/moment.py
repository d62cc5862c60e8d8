"""The machine's clock: when something was kept, and by which minute or day an answer was made."""

from datetime import UTC, datetime

from krume.store.reads import note

DAY, MINUTE = ("clock", "day"), ("clock", "minute")
"""How closely an answer looks at the clock."""

_SHAPES: dict[tuple[str, ...], str] = {DAY: "%Y-%m-%d", MINUTE: "%Y-%m-%d %H:%M %z"}


def moment() -> str:
    """Now, as UTC ISO text to the millisecond."""
    return datetime.now(UTC).isoformat(timespec="milliseconds")


def clock_now() -> datetime:
    """Now on the wall, with its offset from UTC."""
    return datetime.now(UTC).astimezone()


def note_clock(kind: tuple[str, ...]) -> None:
    """An answer looks at the clock: it holds for that day, or that minute."""
    note(kind, mark_of_clock(kind))


def mark_of_clock(kind: tuple[str, ...]) -> str:
    """The day or the minute it is."""
    return clock_now().strftime(_SHAPES[kind])
