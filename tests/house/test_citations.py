"""Every source that a test cites is a row of the table of sources."""

from tests.house.source import source_keys
from tests.validation import Run


def test_every_cited_source_has_its_row(validation_run: Run) -> None:
    unknown = {
        (c.test, c.source) for c in validation_run.citations if c.source not in source_keys()
    }
    assert unknown == set()
