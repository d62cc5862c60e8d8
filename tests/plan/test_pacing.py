"""Pace of a chain: printed values, and how parts add up."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.plan import ThreePoint, pace
from tests.agreement import agrees

TASK = st.tuples(st.floats(0, 50), st.floats(0, 50), st.floats(0, 50)).map(
    lambda t: ThreePoint(*sorted(t))
)


@pytest.mark.source("malcolm-1959", "R77")
def test_a_chain_of_three_is_the_printed_one() -> None:
    tasks = [ThreePoint(8, 10, 18), ThreePoint(4, 5, 9), ThreePoint(20, 25, 36)]
    assert agrees(pace(tasks).mean_min, "42.5")
    assert agrees(pace(tasks).sd_min, "3.253")


@given(one=TASK, two=TASK)
def test_means_add_and_spreads_add_in_squares(one: ThreePoint, two: ThreePoint) -> None:
    both, a, b = pace([one, two]), pace([one]), pace([two])
    assert both.mean_min == pytest.approx(a.mean_min + b.mean_min)
    assert both.sd_min**2 == pytest.approx(a.sd_min**2 + b.sd_min**2, abs=1e-9)


@pytest.mark.parametrize("guesses", [(10, 8, 18), (8, 20, 18), (-1, 2, 3)])
def test_guesses_out_of_order_are_refused(guesses: tuple[float, float, float]) -> None:
    with pytest.raises(OutOfRangeError, match="optimistic"):
        pace([ThreePoint(*guesses)])
    with pytest.raises(OutOfRangeError):
        pace([])
