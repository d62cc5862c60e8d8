"""Cream of a ring: what the pieces leave of it, counted another way."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from krume.base import Infeasible, OutOfRangeError
from krume.build import Inset, Outline, filled


@given(
    st.floats(10, 40), st.floats(0.3, 1.0), st.floats(2, 20), st.integers(0, 3), st.floats(1, 60)
)
def test_cream_is_what_is_left_level_by_level(
    ring: float, share: float, thick: float, count: int, spare: float
) -> None:
    disc = Outline(ring * share)
    high = count * thick + spare
    found = filled(Outline(ring), high_mm=high, pieces=[Inset(disc, thick, count)])
    assert not isinstance(found, Infeasible)
    beside, _ = quad(lambda r: 2 * math.pi * r * count * thick / 10, ring * share / 2, ring / 2)
    above = math.pi / 4 * ring**2 * spare / 10
    assert found.cream_ml == pytest.approx(beside + above, rel=1e-6, abs=1e-6)


def test_the_demo_ring_wants_what_its_torte_says() -> None:
    found = filled(Outline(22.0), high_mm=52.0, pieces=[Inset(Outline(21.0), 12.0, 2)])
    assert not isinstance(found, Infeasible)
    assert found.cream_ml * 0.72 == pytest.approx(824.7, abs=0.05)


def test_pieces_that_do_not_go_in_are_named_with_what_would() -> None:
    wide = filled(Outline(20.0), high_mm=60.0, pieces=[Inset(Outline(21.0), 12.0)])
    high = filled(Outline(20.0), high_mm=20.0, pieces=[Inset(Outline(19.0), 12.0, 2)])
    assert isinstance(wide, Infeasible) and "trim the piece to 20 cm" in wide.clashes[0].said
    assert isinstance(high, Infeasible) and "2.4 cm and more" in high.clashes[0].said


def test_a_ring_without_height_is_refused() -> None:
    with pytest.raises(OutOfRangeError):
        filled(Outline(20.0), high_mm=0.0)
