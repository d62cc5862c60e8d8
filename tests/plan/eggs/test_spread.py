"""Grams of eggs lie wider the more there are, and a spare egg makes up for them."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.plan import spread_of


def test_sixty_eggs_by_hand() -> None:
    found = spread_of(60, "eu-m")
    assert (found.mass_g.low, found.mass_g.best, found.mass_g.high) == (2820, 3060, 3300)
    assert found.likely_half_g == pytest.approx(30.98, abs=0.005)
    assert (found.spare_count, found.sure_count) == (1, 5)


def test_yolks_have_their_own_spread() -> None:
    assert spread_of(4, "eu-m", "yolk").likely_half_g == pytest.approx(3.0)


@given(st.integers(1, 500), st.sampled_from(["eu-m", "us-large"]))
def test_the_likely_half_width_goes_by_the_root_and_the_spares_cover_it(n: int, size: str) -> None:
    one, many = spread_of(1, size), spread_of(n, size)
    assert many.likely_half_g == pytest.approx(one.likely_half_g * math.sqrt(n))
    assert many.spare_count * one.mass_g.best >= many.likely_half_g - 1e-6
    assert many.sure_count * one.mass_g.best >= many.mass_g.best - many.mass_g.low - 1e-6
    assert many.spare_count <= many.sure_count
