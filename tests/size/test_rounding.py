"""Rounding to a scale: total kept, ratios closest, nothing rounded away."""

from itertools import product
from math import ceil, floor

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.size import round_masses, worst_line_error

MASSES = st.lists(st.floats(20.0, 300.0), min_size=1, max_size=6)


@given(exact=MASSES)
def test_the_total_is_the_exact_total_rounded(exact: list[float]) -> None:
    found = round_masses(exact, step_g=1.0)
    assert found.too_fine == (False,) * len(exact)
    assert abs(sum(found.masses_g) - sum(exact)) <= 0.5 + 1e-6


@given(exact=st.lists(st.floats(20.0, 300.0), min_size=1, max_size=4))
def test_no_other_whole_grams_with_that_total_keep_ratios_closer(exact: list[float]) -> None:
    found = round_masses(exact, step_g=1.0).masses_g
    near = [[float(int(e)) + step for step in (-2, -1, 0, 1, 2, 3)] for e in exact]
    rivals = [c for c in product(*near) if abs(sum(c) - sum(found)) < 1e-9]
    best = min(worst_line_error(exact, rival) for rival in rivals)
    assert worst_line_error(exact, found) == pytest.approx(best, abs=1e-9)


@given(exact=st.lists(st.floats(1.0, 300.0), min_size=1, max_size=5))
def test_going_only_up_or_down_by_one_step_is_never_closer(exact: list[float]) -> None:
    found = round_masses(exact, step_g=1.0)
    kept = [at for at, is_fine in enumerate(found.too_fine) if not is_fine]
    plain, ours = [exact[at] for at in kept], [found.masses_g[at] for at in kept]
    either = [sorted({float(floor(e)), float(ceil(e))}) for e in plain]
    former = [c for c in product(*either) if abs(sum(c) - sum(ours)) < 1e-9]
    best = min((worst_line_error(plain, c) for c in former), default=float("inf"))
    assert worst_line_error(plain, ours) <= best + 1e-9


@given(exact=MASSES)
def test_a_ratio_of_two_lines_is_off_by_no_more_than_both_their_errors(
    exact: list[float],
) -> None:
    found = round_masses(exact, step_g=1.0).masses_g
    worst = worst_line_error(exact, found)
    most = (1 + worst) / (1 - worst) + 1e-9
    for (e1, r1), (e2, r2) in product(zip(exact, found, strict=True), repeat=2):
        assert 1 / most <= (r1 / r2) / (e1 / e2) <= most


@given(
    milligrams=st.lists(st.integers(1000, 300_000), min_size=1, max_size=6),
    factor=st.sampled_from([0.1, 0.5, 2.0, 28.0, 1000.0]),
)
def test_other_units_of_mass_and_step_give_the_same_steps(
    milligrams: list[int], factor: float
) -> None:
    exact = [mass / 1000 for mass in milligrams]
    here = round_masses(exact, step_g=1.0)
    there = round_masses([mass * factor for mass in exact], step_g=factor)
    assert there.too_fine == here.too_fine
    assert there.masses_g == pytest.approx([mass * factor for mass in here.masses_g])


@given(exact=MASSES)
def test_rounding_what_is_rounded_changes_nothing(exact: list[float]) -> None:
    once = round_masses(exact, step_g=0.5).masses_g
    assert round_masses(once, step_g=0.5).masses_g == once


def test_a_heavy_line_moves_by_two_steps_where_light_ones_would_be_hurt() -> None:
    exact = [5.4] * 5 + [1000.0]
    found = round_masses(exact, step_g=1.0).masses_g
    assert found == (5.0, 5.0, 5.0, 5.0, 5.0, 1002.0)
    assert worst_line_error(exact, found) == pytest.approx(0.4 / 5.4)


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


@pytest.mark.parametrize("mass", [-1.0, float("inf"), float("nan")])
def test_an_amount_no_scale_can_show_is_refused(mass: float) -> None:
    with pytest.raises(OutOfRangeError, match="0 or more"):
        round_masses([40.0, mass], step_g=1.0)


@pytest.mark.parametrize("step", [0.0, -1.0, float("inf")])
def test_a_scale_without_a_step_is_refused(step: float) -> None:
    with pytest.raises(OutOfRangeError, match=r"0\.1"):
        round_masses([1.0], step_g=step)


def test_where_no_line_would_be_hurt_the_largest_remainder_goes_up() -> None:
    assert round_masses([32.4, 24.3, 7.3], step_g=1.0).masses_g == (33.0, 24.0, 7.0)
