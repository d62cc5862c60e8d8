"""Moments as a person types them beside a fridge: 22:30, or 2027-06-09 22:30."""

from datetime import datetime, timedelta

from krume.base import InputError
from krume.build import read_clock, read_date


def last_moment(words: str, now: datetime, *, field: str) -> datetime:
    """The last such moment that is not after now.

    >>> from datetime import UTC
    >>> now = datetime(2027, 6, 10, 8, 0, tzinfo=UTC)
    >>> last_moment("22:30", now, field="since").isoformat()
    '2027-06-09T22:30:00+00:00'
    """
    moment, has_day = _moment(words, now, field)
    if not has_day and moment > now:
        moment -= timedelta(days=1)
    if moment > now:
        text = f"“{words}” is later than now, {now:%Y-%m-%d %H:%M}. Type a moment that is past."
        raise InputError(text, field=field, got=words, want=f"up to {now:%Y-%m-%d %H:%M}")
    return moment


def next_moment(words: str, after: datetime, *, field: str) -> datetime:
    """The first such moment that is not before another.

    >>> from datetime import UTC
    >>> since = datetime(2027, 6, 9, 22, 30, tzinfo=UTC)
    >>> next_moment("06:10", since, field="until").isoformat()
    '2027-06-10T06:10:00+00:00'
    """
    moment, has_day = _moment(words, after, field)
    if not has_day and moment < after:
        moment += timedelta(days=1)
    if moment < after:
        text = f"“{words}” is before {after:%Y-%m-%d %H:%M}, when it stopped. Type a later moment."
        raise InputError(text, field=field, got=words, want=f"from {after:%Y-%m-%d %H:%M}")
    return moment


def _moment(words: str, near: datetime, field: str) -> tuple[datetime, bool]:
    clock, day = read_clock(words.replace("T", " ")), read_date(words.replace("T", " "))
    if clock is None or (day is not None and len(day.candidates) != 1):
        text = (
            f"“{words}” is no moment. Type an hour, 22:30, or a day and an hour, 2027-06-09 22:30."
        )
        raise InputError(text, field=field, got=words, want="22:30, or 2027-06-09 22:30")
    date = near.date() if day is None else day.candidates[0]
    return datetime.combine(date, clock, near.tzinfo), day is not None
