"""Gelatine of another bloom: both rules as printed, and where they agree."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.properties import bloom_swap
from tests.agreement import agrees


@pytest.mark.source("reference-book", "R65, scenario of the ring torte")
@pytest.mark.parametrize(
    ("mass", "old", "new", "root", "ratio"),
    [(10.0, 160.0, 200.0, "8.94", "8.00"), (8.0, 200.0, 160.0, "8.944", "10.0")],
)
def test_both_rules_are_as_printed(
    mass: float, old: float, new: float, root: str, ratio: str
) -> None:
    found = bloom_swap(mass, from_bloom=old, to_bloom=new)
    assert agrees(found.by_root_g, root)
    assert agrees(found.by_ratio_g, ratio)


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
