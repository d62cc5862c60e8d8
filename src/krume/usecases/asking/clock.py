"""The one door to the clock: the day asked for, else the book's, else the machine's."""

from datetime import UTC, date, datetime, time

from krume.store import (
    DAY,
    MINUTE,
    NEVER,
    Book,
    Studio,
    clock_now,
    note,
    note_clock,
    studio_of,
)


def now(studio: Studio, *, on: date | None = None) -> datetime:
    """Moment a request is judged at, with its offset from UTC.

    A day asked for keeps the hour and the offset of the book's clock.
    """
    if studio.today is None:
        note_clock(MINUTE)
    return _now(studio, on)


def today(book: Book, *, on: date | None = None) -> date:
    """Day a request is judged on."""
    studio = studio_of(book)
    if studio.today is None and on is None:
        note_clock(DAY)
    return _now(studio, on).date()


def _now(studio: Studio, on: date | None) -> datetime:
    moment = studio.today or clock_now()
    if on is None:
        return moment
    hour = moment.timetz() if studio.today else time(tzinfo=moment.tzinfo)
    return datetime.combine(on, hour)


def moment() -> str:
    """The machine's own moment in UTC: what clocks at the bench run by."""
    note(("moment",), NEVER)
    return datetime.now(UTC).isoformat(timespec="milliseconds")
