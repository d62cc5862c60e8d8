"""The table of published values is the one this run made; this test runs last."""

import os

from tests.validation import PAGE, Run


def test_the_table_of_published_values_is_current(validation_run: Run) -> None:
    if os.environ.get("KRUME_WRITE_DOCS") == "1":
        assert validation_run.is_whole(), "the page is written by a run of all tests"
        assert validation_run.failed == [], "the page is not written: cited tests failed before"
        PAGE.write_text(validation_run.page(), encoding="utf-8")
    kept = PAGE.read_text(encoding="utf-8")
    advice = "stale: KRUME_WRITE_DOCS=1 python3 run.py test"
    if validation_run.is_whole():
        assert kept == validation_run.page(), advice
    else:
        assert set(validation_run.lines()) <= set(kept.splitlines()), advice
