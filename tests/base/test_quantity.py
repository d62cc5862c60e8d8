"""Intervals keep their order and their doubt."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import STATUSES, Interval

numbers = st.floats(-1e6, 1e6)
widths = st.floats(0, 1e6)


@given(numbers, widths)
def test_an_interval_around_a_value_holds_it_in_the_middle(best: float, width: float) -> None:
    interval = Interval.around(best, width)
    assert interval.low <= interval.best <= interval.high
    assert interval.half_width == pytest.approx(width, abs=1e-9)


@given(numbers, widths, st.floats(0, 1e3))
def test_scaling_keeps_the_order_and_scales_the_doubt(
    best: float, width: float, factor: float
) -> None:
    scaled = Interval.around(best, width).times(factor)
    assert scaled.low <= scaled.best <= scaled.high
    assert scaled.half_width == pytest.approx(width * factor, rel=1e-6, abs=1e-6)


def test_the_half_width_of_a_lopsided_interval_is_its_longer_side() -> None:
    assert Interval(1.0, 2.0, 5.0).half_width == 3.0
    assert Interval(-4.0, 2.0, 5.0).half_width == 6.0


def test_the_statuses_are_ten_and_in_order_of_trust() -> None:
    assert len(set(STATUSES)) == len(STATUSES) == 10
    assert (STATUSES[0], STATUSES[-1]) == ("law", "invented")
