"""Factors between tins: the printed ones, and the laws of a ratio."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.size import Tin, area_cm2, read_tin, tin_factor
from krume.size.factor import total_of
from tests.agreement import agrees


def tin(text: str) -> Tin:
    read = read_tin(text)
    assert read.value is not None
    return read.value


@pytest.mark.source("reference-book", "R58")
@pytest.mark.parametrize(
    ("own", "target", "printed"),
    [("round 20", "round 24", "1.4400"), ("round 20", "square 20", "1.2732")],
)
def test_factor_by_area_is_the_printed_one(own: str, target: str, printed: str) -> None:
    assert agrees(tin_factor(tin(own), tin(target)).by_area, printed)


@pytest.mark.source("reference-book", "F2 into round 8 x 3 in")
def test_f2_into_eight_inches_has_both_printed_factors() -> None:
    found = tin_factor(tin("round 20 x 7 cm"), tin("round 8in x 3in"))
    assert agrees(found.by_area, "1.0323")
    assert agrees(found.by_volume, "1.1237")


def test_a_missing_depth_leaves_the_factor_by_volume_unknown() -> None:
    found = tin_factor(tin("round 20 cm"), tin("round 24 x 7 cm"))
    assert found.by_volume is None
    assert found.by_area == pytest.approx(1.44)


def test_two_tins_count_together() -> None:
    half = tin("round 20 x 7 cm")
    assert tin_factor(half, (half, half)).by_area == pytest.approx(2.0)
    assert tin_factor(half, (half, half)).by_volume == pytest.approx(2.0)
    assert total_of(area_cm2, ()) is None
    assert total_of(area_cm2, (half, Tin("", "tube"))) is None


@given(a=st.floats(5.0, 50.0), b=st.floats(5.0, 50.0))
def test_there_and_back_is_one(a: float, b: float) -> None:
    one, two = (Tin("", "square", length_cm=s, width_cm=s, height_cm=5.0) for s in (a, b))
    there, back = tin_factor(one, two), tin_factor(two, one)
    assert (there.by_area or 0) * (back.by_area or 0) == pytest.approx(1.0)
    assert (there.by_volume or 0) * (back.by_volume or 0) == pytest.approx(1.0)
