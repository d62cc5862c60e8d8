"""Gelatine of another bloom: both rules as printed, and where they agree."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.properties import bloom_swap
from tests.agreement import agrees


@pytest.mark.source("reference-book", "R65")
def test_both_rules_are_as_printed() -> None:
    found = bloom_swap(10.0, from_bloom=160.0, to_bloom=200.0)
    assert agrees(found.by_root_g, "8.94")
    assert agrees(found.by_ratio_g, "8.00")


def test_a_weaker_gelatine_takes_more_by_either_rule() -> None:
    """8 g of 200 bloom as 160: the root of 8 x 10 is 8.944, and 8 x 200 / 160 is 10."""
    found = bloom_swap(8.0, from_bloom=200.0, to_bloom=160.0)
    assert found.by_root_g == pytest.approx(math.sqrt(80))
    assert found.by_ratio_g == pytest.approx(10.0)


@given(mass=st.floats(0.0, 100.0), old=st.floats(50.0, 350.0), new=st.floats(50.0, 350.0))
def test_the_root_rule_moves_less_than_the_ratio_rule(mass: float, old: float, new: float) -> None:
    found = bloom_swap(mass, from_bloom=old, to_bloom=new)
    low, high = sorted((mass, found.by_ratio_g))
    assert low - 1e-9 <= found.by_root_g <= high + 1e-9


@pytest.mark.parametrize(("old", "new"), [(0.0, 200.0), (200.0, 400.0)])
def test_a_bloom_number_that_cannot_be_is_refused(old: float, new: float) -> None:
    with pytest.raises(OutOfRangeError, match="packet"):
        bloom_swap(10.0, from_bloom=old, to_bloom=new)
    with pytest.raises(OutOfRangeError):
        bloom_swap(-1.0, from_bloom=200.0, to_bloom=200.0)
