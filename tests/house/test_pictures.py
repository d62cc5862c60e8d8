"""The drawings in the docs are those that the program draws today."""

import pytest

from krume.build import cross_section
from tests.build.studio import demo
from tests.house.source import ROOT


@pytest.mark.parametrize("name", ["T1", "T3"])
def test_the_pictures_in_the_docs_are_current(name: str) -> None:
    kept = ROOT / "docs" / "models" / f"section-{name.lower()}.svg"
    drawn = cross_section(demo(name), ident=name.lower())
    assert kept.read_text(encoding="utf-8") == f"{drawn}\n"
