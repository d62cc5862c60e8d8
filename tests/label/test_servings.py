"""Servings of a cake as allowed fractions, nearest the reference amount."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.label import us_servings
from krume.label.servings import _is_allowed
from tests.agreement import agrees


@pytest.mark.source("us-21-cfr-101-9", "(b)(2)(i): R12")
def test_a_cake_of_1120_g_has_15_slices() -> None:
    found = us_servings(1120.0, reference_g=80.0)
    assert agrees(found.per_container, "15")
    assert agrees(found.serving_g, "74.7")


@pytest.mark.source("us-21-cfr-101-9", "(b)(2)(i): allowed denominators of R12")
def test_the_allowed_denominators_are_the_printed_ones() -> None:
    printed = [2, 3, 4, 5, 6, 8, 9, 10, 12, 15, 16, 18, 20, 24, 27, 30]
    found = [n for n in range(2, 31) if _is_allowed(n)]
    assert agrees(len(found), str(len(printed)))
    assert found == printed


@given(cake=st.floats(100.0, 6000.0), reference=st.sampled_from([55.0, 80.0, 125.0]))
def test_no_allowed_fraction_is_nearer(cake: float, reference: float) -> None:
    found = us_servings(cake, reference_g=reference)
    if cake < 2 * reference:
        assert found.per_container == 1
        return
    allowed = [n for n in range(2, 400) if _is_allowed(n)]
    best = min(abs(cake / n - reference) for n in allowed)
    assert abs(found.serving_g - reference) == pytest.approx(best, abs=1e-9)
    assert found.per_container * found.serving_g == pytest.approx(cake)


@pytest.mark.parametrize(("cake", "reference"), [(0.0, 80.0), (100.0, 0.0), (1e9, 55.0)])
def test_masses_that_cannot_be_are_refused(cake: float, reference: float) -> None:
    with pytest.raises(OutOfRangeError):
        us_servings(cake, reference_g=reference)
