"""The calendar file: folded by octets, escaped, and read back the same by another reader."""

from datetime import UTC, datetime, timedelta, timezone

import icalendar
import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.plan import CalendarEvent, calendar_file, folded
from tests.agreement import reads

STAMP = datetime(2027, 6, 10, 8, tzinfo=timezone(timedelta(hours=2)))


def lengths(line: str) -> str:
    return ", ".join(str(len(part.encode())) for part in folded(line))


@pytest.mark.source("rfc-5545", "3.1, R75")
def test_lines_are_folded_at_75_octets_and_no_letter_is_cut() -> None:
    assert reads(lengths("x" * 200), "75, 75, 52")
    assert reads(lengths("DESCRIPTION:" + "ü" * 40), "74, 19")


@given(st.text(max_size=300))
def test_a_folded_line_unfolds_to_itself(line: str) -> None:
    parts = folded(line)
    assert all(len(part.encode("utf-8", "surrogatepass")) <= 75 for part in parts)
    assert parts[0] + "".join(part[1:] for part in parts[1:]) == line


def written(summary: str, description: str = "") -> bytes:
    event = CalendarEvent("1@x", STAMP, STAMP + timedelta(minutes=5), summary, description)
    return calendar_file([event], made_by="test 1", stamp=STAMP)


@pytest.mark.parametrize(
    "words", ["foam and fold: 2 F1", "a; b, c \\ d", "two\nlines", "Grüße, ein ß", "ü" * 90]
)
def test_another_reader_reads_the_same_words(words: str) -> None:
    calendar = icalendar.Calendar.from_ical(written(words, words))
    (event,) = calendar.walk("VEVENT")
    assert str(event["SUMMARY"]) == words
    assert str(event["DESCRIPTION"]) == words


def test_times_are_moments_of_utc() -> None:
    (event,) = icalendar.Calendar.from_ical(written("x")).walk("VEVENT")
    assert event.decoded("DTSTART") == datetime(2027, 6, 10, 6, tzinfo=UTC)
    assert event.decoded("DTEND") - event.decoded("DTSTART") == timedelta(minutes=5)


def test_lines_end_as_the_rule_says_and_the_bytes_are_the_same_each_time() -> None:
    data = written("x")
    assert data == written("x")
    assert data.count(b"\r\n") == data.count(b"\n") > 8
    assert b"\r\nEND:VCALENDAR\r\n" in data
