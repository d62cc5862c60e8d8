"""When something was kept."""

from datetime import UTC, datetime

from krume.store.moment import moment


def test_a_moment_is_utc_and_later_ones_sort_after_it() -> None:
    first, second = moment(), moment()
    assert datetime.fromisoformat(first).utcoffset() == datetime.now(UTC).utcoffset()
    assert first <= second
