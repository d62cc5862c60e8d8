"""Whole eggs: nearest counts, make-up, and the factors at which eggs stay whole."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.size import nearest_eggs, whole_factors
from tests.agreement import agrees


@pytest.mark.source("reference-book", "egg-count of the checks")
@pytest.mark.parametrize(
    ("mass_g", "count", "make_up"), [(269.6, "5", "14.6"), (195.8, "4", "−8.2")]
)
def test_counts_and_make_up_are_the_printed_ones(mass_g: float, count: str, make_up: str) -> None:
    found = nearest_eggs(mass_g, each_g=51.0)
    assert agrees(found.count, count)
    assert agrees(found.make_up_g, make_up)


@given(mass=st.floats(0.0, 5000.0), each=st.floats(10.0, 80.0))
def test_make_up_is_at_most_half_an_egg_and_counts_add_up(mass: float, each: float) -> None:
    found = nearest_eggs(mass, each_g=each)
    assert found.count * each + found.make_up_g == pytest.approx(mass, abs=1e-6)
    assert abs(found.make_up_g) <= each / 2 + 1e-6


@pytest.mark.parametrize("count", [0, 1, 2, 7])
def test_an_exact_half_goes_down(count: int) -> None:
    assert nearest_eggs((count + 0.5) * 51.0, each_g=51.0).count == count


@pytest.mark.parametrize(("mass", "each"), [(-1.0, 51.0), (100.0, 0.0), (math.nan, 51.0)])
def test_masses_that_cannot_be_are_refused(mass: float, each: float) -> None:
    with pytest.raises(OutOfRangeError, match="eggs need"):
        nearest_eggs(mass, each_g=each)


@pytest.mark.parametrize(
    ("counts", "near", "factors"),
    [
        ([5.0], 0.768, (0.4, 0.6, 0.8, 1.0)),
        ([4.0, 5.0], 1.6, (1.0, 2.0, 3.0)),
        ([2.0, 4.0], 1.2, (0.5, 1.0, 1.5, 2.0)),
        ([3.0], 0.1, (1 / 3, 2 / 3)),
    ],
)
def test_every_count_is_whole_at_the_factors(
    counts: list[float], near: float, factors: tuple[float, ...]
) -> None:
    found = whole_factors(counts, near=near)
    assert found == pytest.approx(factors)
    for factor in found:
        assert all(abs(c * factor - round(c * factor)) < 1e-6 for c in counts)
