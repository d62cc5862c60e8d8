"""The oven's page in a real browser: its own sums are the library's, and it wants no script."""

from datetime import datetime, timedelta

import pytest
from playwright.sync_api import Page

from krume.usecases import Asked, Load
from krume.usecases.oven import oven as oven_module
from krume.usecases.oven.oven import oven_view
from tests.web.bench.slip_module import call

START = datetime.fromisoformat("2027-06-10T08:00:00+00:00")
LOAD = Load("one", 1, "F1", "", START.isoformat(), None, 170.0, 182.0, 25.0, 34.0, 46.0)


def test_minutes_run_as_the_library_says_them(page: Page, monkeypatch: pytest.MonkeyPatch) -> None:
    def held(_: Asked, *, at: str) -> tuple[Load, ...]:
        assert at
        return (LOAD,)

    monkeypatch.setattr(oven_module, "loads_now", held)
    asked, many, wanted = Asked(), [], []
    for second in range(0, 3600, 77):
        now = START + timedelta(seconds=second)
        found = oven_view(asked, at=now.isoformat()).next
        until = datetime.fromisoformat(found.until)
        many.append([now.timestamp() * 1000, until.timestamp() * 1000, found.kind])
        wanted.append(found.minutes)
    assert call(page, "oven-minutes.js", "minutesOf", many) == wanted


def test_the_clock_goes_on_past_midnight(page: Page) -> None:
    many = [["9:58", 3], ["23:59", 2], ["10:05", 0]]
    assert call(page, "oven-minutes.js", "clockOf", many) == ["10:01", "0:01", "10:05"]
