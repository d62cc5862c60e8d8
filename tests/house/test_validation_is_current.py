"""The table of published values is the one this run made; this test runs last."""

from tests.validation import Run


def test_the_table_of_published_values_is_current(validation_run: Run) -> None:
    assert validation_run.judge(is_whole=validation_run.is_whole()) == ""
