"""Moments beside a fridge: an hour means the nearest one that fits."""

from datetime import UTC, datetime

import pytest

from krume.base import InputError
from krume.usecases.keep.moments import last_moment, next_moment

NOW = datetime(2027, 6, 10, 8, 0, tzinfo=UTC)


def test_an_hour_that_is_still_to_come_today_was_yesterday() -> None:
    assert last_moment("22:30", NOW, field="since").day == 9
    assert last_moment("07:30", NOW, field="since").day == 10
    assert last_moment("08:00", NOW, field="since") == NOW


def test_an_hour_before_it_stopped_is_the_next_day() -> None:
    since = last_moment("22:30", NOW, field="since")
    assert next_moment("06:00", since, field="until").day == 10
    assert next_moment("23:00", since, field="until").day == 9


def test_a_day_and_an_hour_as_a_form_sends_them() -> None:
    found = last_moment("2027-06-08T21:15", NOW, field="since")
    assert (found.day, found.hour, found.minute) == (8, 21, 15)


@pytest.mark.parametrize("words", ["", "soon", "25:00", "2027-02-30 10:00", "03/04/27 10:00"])
def test_what_is_no_single_moment_is_refused(words: str) -> None:
    with pytest.raises(InputError, match="is no moment"):
        last_moment(words, NOW, field="since")
