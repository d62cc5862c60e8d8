"""Decision records are numbered without gaps and say what was weighed."""

import re

from tests.house.source import ROOT

RECORDS = sorted((ROOT / "docs" / "decisions").glob("*.md"))


def test_records_are_numbered_without_gaps() -> None:
    numbers = [int(path.name[:4]) for path in RECORDS]
    assert numbers == list(range(1, len(RECORDS) + 1))


def test_a_record_carries_its_number_and_says_context_choice_and_cost() -> None:
    for path in RECORDS:
        text = path.read_text(encoding="utf-8")
        assert text.startswith(f"# {int(path.name[:4])}. "), path.name
        parts = re.findall(r"^\*\*(\w+)\.\*\*", text, flags=re.MULTILINE)
        assert {"Context", "Choice", "Cost"} <= set(parts), path.name
