"""What a scale can still add."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.design.slip.step import reached


def test_what_is_there_in_full_takes_no_part_in_the_rounding() -> None:
    found = reached([26.0, 10.4, 10.4, 10.4], [26.0, 0, 0, 0], step_g=1.0)
    assert found[0].mass_g == 26.0
    assert sum(row.mass_g for row in found) == 57.0


def test_less_than_a_step_is_not_added_to_what_lies_there() -> None:
    (found,) = reached([40.04], [40.0], step_g=0.1)
    assert (found.mass_g, found.add_g, found.mark) == (40.0, 0.0, "")


def test_a_small_amount_that_is_still_to_come_is_marked_and_never_lost() -> None:
    (found,) = reached([0.04], [0.0], step_g=0.1)
    assert found.add_g == pytest.approx(0.04)
    assert "premix" in found.mark


def test_an_amount_between_two_steps_says_finer_scale() -> None:
    (found,) = reached([0.25], [0.0], step_g=0.1)
    assert found.add_g == pytest.approx(0.25)
    assert "finer" in found.mark


def test_grams_between_the_steps_in_the_bowl_are_kept_and_steps_added() -> None:
    (found,) = reached([52.0], [40.04], step_g=0.1)
    assert found.add_g == pytest.approx(12.0)
    assert found.mass_g == pytest.approx(52.04)


@given(st.lists(st.floats(1, 200), min_size=1, max_size=6), st.sampled_from((0.1, 0.5, 1.0)))
def test_the_sum_is_kept_to_the_step(exact: list[float], step_g: float) -> None:
    found = reached(exact, [0.0] * len(exact), step_g=step_g)
    marked = sum(bool(row.mark) for row in found)
    total = math.fsum(row.mass_g for row in found)
    assert abs(total - math.fsum(exact)) <= step_g * (0.5 + marked / 2) + 1e-6
