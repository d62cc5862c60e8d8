"""Hours out of the cold: what is said is counted, what is not said is not shown."""

from datetime import time

import pytest

from krume.keep import out_of_cold


def test_a_cold_boot_counts_no_hours() -> None:
    found = out_of_cold(
        "14:00, pick-up, cold boot, 35 minutes' drive", hand_over=time(14), drive_min=35
    )
    assert (found.hours, found.is_within, found.drive_is_cold) == (0.0, True, True)


def test_drive_and_room_add_up() -> None:
    found = out_of_cold(
        "10:30, room without a fridge until 13:00", hand_over=time(10, 30), drive_min=45
    )
    assert found.hours == pytest.approx(3.25)
    assert found.is_within is True
    assert found.latest_end == time(13, 45)


def test_over_the_limit_is_said() -> None:
    found = out_of_cold("no fridge for 5 hours", hand_over=time(9), drive_min=None)
    assert (found.room_h, found.is_within) == (5.0, False)
    assert "Over the limit" in found.text


def test_nothing_said_is_not_shown_and_never_within() -> None:
    found = out_of_cold("", hand_over=None, drive_min=None)
    assert (found.hours, found.is_within, found.latest_end) == (None, None, None)
    assert "not shown" in found.text


def test_a_room_until_after_midnight_counts_past_it() -> None:
    found = out_of_cold("without a fridge until 1:00", hand_over=time(22), drive_min=None)
    assert found.room_h == pytest.approx(3.0)
