"""`krume.usecases.torte.moisture_result`: what the answer of moving water holds."""

from krume.usecases.torte.moisture_result import MoistureResult, MoistureUntil


def test_later_than_was_looked_is_nothing_and_no_zero() -> None:
    assert MoistureUntil(3.0, 78.0, None).high is None


def test_what_is_not_known_says_why_and_has_no_hours() -> None:
    found = MoistureResult(
        None, None, (), (), None, None, None, None, ("a",), "why", "caution", None, None
    )
    assert found.why_not == "why"
    assert found.hours == ()
