"""The day comes from the request, else the book, else the machine."""

from datetime import UTC, date, datetime, timedelta, timezone

from krume.store import Studio
from krume.usecases.asking.clock import now

DEMO = Studio(today=datetime(2027, 6, 10, 8, tzinfo=timezone(timedelta(hours=2))))


def test_the_books_clock_stands_still() -> None:
    assert now(DEMO).isoformat() == "2027-06-10T08:00:00+02:00"


def test_a_day_asked_for_keeps_the_books_hour_and_offset() -> None:
    assert now(DEMO, on=date(2027, 7, 1)).isoformat() == "2027-07-01T08:00:00+02:00"


def test_without_a_books_clock_a_day_asked_for_begins_at_midnight() -> None:
    moment = now(Studio(), on=date(2027, 7, 1))
    assert moment.replace(tzinfo=None) == datetime(2027, 7, 1)  # noqa: DTZ001 - compares the wall
    assert moment.utcoffset() is not None


def test_without_either_the_machines_clock_is_asked() -> None:
    before = datetime.now(UTC)
    assert before <= now(Studio()) <= datetime.now(UTC)
