"""The one door to the clock: the day asked for, else the book's, else the machine's."""

from datetime import UTC, date, datetime, time

from krume.store import Studio


def now(studio: Studio, *, on: date | None = None) -> datetime:
    """Moment a request is judged at, with its offset from UTC.

    A day asked for keeps the hour and the offset of the book's clock.
    """
    moment = studio.today or datetime.now().astimezone()
    if on is None:
        return moment
    hour = moment.timetz() if studio.today else time(tzinfo=moment.tzinfo)
    return datetime.combine(on, hour)


def moment() -> str:
    """The machine's own moment in UTC: what clocks at the bench run by."""
    return datetime.now(UTC).isoformat(timespec="milliseconds")
