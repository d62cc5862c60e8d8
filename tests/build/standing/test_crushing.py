"""`krume.build.standing.crushing`: how far the lowest sponge gives."""

import pytest

from krume.build.standing.crushing import crush
from tests.agreement import agrees
from tests.build.studio import demo


@pytest.mark.source("jhej-38-1063", "abstract")
def test_the_printed_stiffness_bounds_what_the_lowest_disc_gives() -> None:
    found = crush(demo("T1"))
    assert found is not None
    assert agrees(found.load_pa * found.height_mm / found.most_mm * 10 / 1e4, "1")
    assert agrees(found.load_pa * found.height_mm / found.least_mm * 10 / 1e5, "1")


def test_more_on_it_presses_more() -> None:
    tall, low = crush(demo("T3")), crush(demo("T1"))
    assert tall is not None and low is not None
    assert tall.load_pa > low.load_pa
    assert tall.most_mm / tall.height_mm > low.most_mm / low.height_mm


@pytest.mark.parametrize("name", ["T2", "TART"])
def test_a_roll_and_a_tart_have_no_lowest_disc(name: str) -> None:
    assert crush(demo(name)) is None
