"""The drawings in the docs are those that the program draws today."""

import re

import pytest

from krume.build import cross_section, side_view
from tests.build.studio import demo
from tests.house.make_pictures import FOLDER, pictures
from tests.house.source import ROOT

_NUMBER = re.compile(r"\d+(?:\.\d+)?")
_NEAR = 1.5
"""Another machine sums in another order: a line may lie that many pixels beside."""


@pytest.mark.parametrize("name", ["T1", "T2", "T3"])
def test_the_pictures_in_the_docs_are_current(name: str) -> None:
    kept = ROOT / "docs" / "models" / f"section-{name.lower()}.svg"
    drawn = cross_section(demo(name), ident=name.lower())
    assert kept.read_text(encoding="utf-8") == f"{drawn}\n"


@pytest.mark.parametrize("name", ["T1", "T2", "T3"])
def test_the_side_views_in_the_docs_are_current(name: str) -> None:
    kept = ROOT / "docs" / "models" / f"side-{name.lower()}.svg"
    drawn = side_view(demo(name), ident=f"side-{name.lower()}")
    assert kept.read_text(encoding="utf-8") == f"{drawn}\n"


@pytest.fixture(scope="module")
def bakes() -> dict[str, str]:
    return pictures()


@pytest.mark.parametrize(
    "name", ["bake-f1-cuts.svg", "bake-f1-beside.svg", "moisture-t1.svg", "moisture-tart.svg"]
)
def test_the_pictures_of_a_bake_and_of_water_are_current(name: str, bakes: dict[str, str]) -> None:
    kept, drawn = (FOLDER / name).read_text(encoding="utf-8"), bakes[name]
    write = "write them with python -m tests.house.make_pictures"
    assert _NUMBER.sub("0", kept) == _NUMBER.sub("0", drawn), write
    pairs = zip(_NUMBER.findall(kept), _NUMBER.findall(drawn), strict=True)
    assert all(abs(float(a) - float(b)) <= _NEAR for a, b in pairs), write
