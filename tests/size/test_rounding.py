"""Rounding to a scale: total kept, ratios closest, nothing rounded away."""

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.size import round_masses

MASSES = st.lists(st.floats(20.0, 300.0), min_size=1, max_size=6)


def worst(exact: list[float], rounded: tuple[float, ...]) -> float:
    return max(abs(r - e) / e for e, r in zip(exact, rounded, strict=True))


@given(exact=MASSES)
def test_the_total_is_the_exact_total_rounded(exact: list[float]) -> None:
    found = round_masses(exact, step_g=1.0)
    assert found.too_fine == (False,) * len(exact)
    assert abs(sum(found.masses_g) - sum(exact)) <= 0.5 + 1e-6


# Amounts that the scale shows exactly are left alone, so they are no rival's to move.
PARTED = st.floats(20.0, 300.0).filter(lambda grams: 0.001 < grams % 1 < 0.999)


@given(exact=st.lists(PARTED, min_size=1, max_size=5))
def test_no_other_rounding_with_that_total_keeps_ratios_closer(exact: list[float]) -> None:
    found = round_masses(exact, step_g=1.0).masses_g
    choices = product(*[(float(int(e)), float(int(e)) + 1) for e in exact])
    rivals = [c for c in choices if abs(sum(c) - sum(found)) < 1e-9]
    assert worst(exact, found) <= min(worst(exact, rival) for rival in rivals) + 1e-9


@given(units=st.lists(st.integers(10, 3000), min_size=1, max_size=8))
def test_what_the_scale_shows_already_is_left_alone(units: list[int]) -> None:
    exact = [unit / 10 for unit in units]
    assert round_masses(exact, step_g=0.1).masses_g == pytest.approx(exact)


@pytest.mark.parametrize(
    ("mass", "step", "kept"),
    [(0.25, 1.0, 0.25), (0.2, 1.0, 0.2), (1.4, 1.0, 1.4), (0.03, 0.1, 0.03)],
)
def test_a_tiny_line_keeps_a_finer_digit(mass: float, step: float, kept: float) -> None:
    found = round_masses([mass, 100.0], step_g=step)
    assert found.masses_g[0] == pytest.approx(kept)
    assert found.too_fine == (True, False)


def test_nothing_stays_nothing() -> None:
    assert round_masses([0.0, 5.0], step_g=1.0).masses_g == (0.0, 5.0)


@given(mass=st.floats(1e-4, 30.0))
def test_no_amount_rounds_to_nothing(mass: float) -> None:
    assert round_masses([mass], step_g=1.0).masses_g[0] > 0


@pytest.mark.parametrize("step", [0.0, -1.0, float("inf")])
def test_a_scale_without_a_step_is_refused(step: float) -> None:
    with pytest.raises(OutOfRangeError, match=r"0\.1"):
        round_masses([1.0], step_g=step)


def test_where_ratios_are_equally_close_the_largest_remainder_goes_up() -> None:
    assert round_masses([32.4, 24.3, 7.3], step_g=1.0).masses_g == (33.0, 24.0, 7.0)
