"""Specific gravity and overrun: printed values, and how they belong together."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.properties import overrun_pct, specific_gravity
from tests.agreement import agrees


@pytest.mark.source("reference-book", "R62, cup of the demo studio")
def test_specific_gravities_are_the_printed_ones() -> None:
    assert agrees(specific_gravity(0.0, water_g=236.6, batter_g=165.6), "0.700")
    assert agrees(specific_gravity(82.0, water_g=318.0, batter_g=195.3), "0.480")


@pytest.mark.source("reference-book", "R63, overrun of the checks")
def test_overruns_are_the_printed_ones() -> None:
    assert agrees(overrun_pct(1005.0, after_g=505.0), "99.0")
    assert agrees(overrun_pct(236.0, after_g=124.0), "90.3")
    assert agrees(100 * (1 - 505 / 1005), "49.8")


@given(before=st.floats(1.0, 2000.0), after=st.floats(1.0, 2000.0))
def test_overrun_is_the_inverse_ratio_of_the_gravities(before: float, after: float) -> None:
    liquid, foam = (specific_gravity(0.0, water_g=1000.0, batter_g=m) for m in (before, after))
    assert overrun_pct(before, after_g=after) == pytest.approx(
        100 * (liquid / foam - 1), rel=1e-9, abs=1e-9
    )


def test_a_cup_that_weighs_less_full_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="cup included"):
        specific_gravity(82.0, water_g=80.0, batter_g=195.0)
    with pytest.raises(OutOfRangeError, match="cup included"):
        specific_gravity(82.0, water_g=318.0, batter_g=82.0)
    with pytest.raises(OutOfRangeError):
        specific_gravity(-1.0, water_g=318.0, batter_g=182.0)
    with pytest.raises(OutOfRangeError):
        overrun_pct(100.0, after_g=0.0)
