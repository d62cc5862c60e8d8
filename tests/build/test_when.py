"""Dates and clock times as people write them."""

import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.build.when import read_clock, read_date


@pytest.mark.parametrize(
    ("words", "days"),
    [
        ("Saturday 2027-06-12", ["2027-06-12"]),
        ("12 June 2027", ["2027-06-12"]),
        ("June 12th, 2027", ["2027-06-12"]),
        ("12.06.2027", ["2027-06-12"]),
        ("12/06/27", ["2027-06-12", "2027-12-06"]),
        ("Sat 12/06/27", ["2027-06-12"]),
        ("25/12/2027", ["2027-12-25"]),
        ("12/25/2027", ["2027-12-25"]),
        ("31/02/27", []),
        ("2027-13-01", []),
    ],
)
def test_a_date_is_read_in_all_the_ways_it_may_be_meant(words: str, days: list[str]) -> None:
    found = read_date(words)
    assert found is not None
    assert [day.isoformat() for day in found.candidates] == days


def test_words_without_a_date_have_none() -> None:
    assert read_date("next Saturday") is None
    assert read_date("12 Fish 2027") is None


def test_a_weekday_that_is_not_the_dates_own_is_seen() -> None:
    found = read_date("Sunday 2027-06-12")
    assert found is not None
    assert not found.agrees


@pytest.mark.parametrize(
    ("words", "clock"),
    [
        ("14:00, pick-up", "14:00"),
        ("at 9.30", "09:30"),
        ("2 pm", "14:00"),
        ("12 am", "00:00"),
        ("10:30 p.m.", "22:30"),
        ("14 h", "14:00"),
        ("14 Uhr", "14:00"),
    ],
)
def test_a_clock_time_is_read(words: str, clock: str) -> None:
    found = read_clock(words)
    assert found is not None
    assert found.strftime("%H:%M") == clock


@pytest.mark.parametrize("words", ["24:00", "25:10", "13 pm", "noon", "14", "10:75"])
def test_a_time_no_clock_shows_is_none(words: str) -> None:
    assert read_clock(words) is None


@given(st.dates(datetime.date(1900, 1, 1), datetime.date(2100, 1, 1)))
def test_every_day_written_in_full_is_read_back(day: datetime.date) -> None:
    for words in (f"{day:%A} {day.isoformat()}", f"{day.day} {day:%B} {day.year}"):
        found = read_date(words)
        assert found is not None
        assert found.candidates == (day,)
        assert found.agrees
