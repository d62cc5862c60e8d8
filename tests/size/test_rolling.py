"""Rolls: printed turns, diameter and stretch, and the area that a roll keeps."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from krume.base import OutOfRangeError
from krume.size import roll, spiral_length_cm
from tests.agreement import agrees


@pytest.mark.source("reference-book", "R59, R60")
def test_a_roll_of_38_cm_is_the_printed_one() -> None:
    found = roll(38.0, thickness_cm=1.0, cream_cm=0.4, core_cm=0.8)
    assert agrees(found.diameter_cm, "8.38")
    assert agrees(found.diameter_cm / 2, "4.192")
    assert agrees(found.turns, "2.42")
    assert agrees(found.outer_strain_pct, "38.5")


@pytest.mark.source("reference-book", "R60, T2")
def test_stretch_and_the_lemon_roll_are_the_printed_ones() -> None:
    assert agrees(roll(38.0, thickness_cm=1.0, core_cm=1.0).outer_strain_pct, "33.3")
    lemon = roll(22.86, thickness_cm=1.2, cream_cm=0.7)
    assert agrees(lemon.diameter_cm, "7.44")
    assert agrees(lemon.turns, "1.96")


@given(
    length=st.floats(10.0, 100.0),
    thickness=st.floats(0.3, 3.0),
    cream=st.floats(0.0, 2.0),
    core=st.floats(0.0, 3.0),
)
def test_a_roll_keeps_the_area_of_its_section(
    length: float, thickness: float, cream: float, core: float
) -> None:
    found = roll(length, thickness_cm=thickness, cream_cm=cream, core_cm=core)
    section = math.pi * ((found.diameter_cm / 2) ** 2 - core**2)
    assert section == pytest.approx(length * (thickness + cream))


@pytest.mark.parametrize(
    ("name", "value"),
    [("length_cm", 0.0), ("thickness_cm", -1.0), ("cream_cm", -0.1), ("core_cm", math.inf)],
)
def test_a_roll_that_cannot_be_is_refused(name: str, value: float) -> None:
    sizes = {"length_cm": 38.0, "thickness_cm": 1.0, "cream_cm": 0.4, "core_cm": 0.8}
    with pytest.raises(OutOfRangeError) as caught:
        roll(**(sizes | {name: value}))
    assert caught.value.field == name


@given(st.floats(0.0, 3.0), st.floats(0.4, 3.0), st.floats(0.5, 6.0))
def test_a_spiral_is_as_long_as_its_arc_length_integral(
    inner: float, pitch: float, turns: float
) -> None:
    outer = inner + pitch * turns
    a = pitch / (2 * math.pi)
    arc, _ = quad(lambda x: a * math.sqrt(1 + x * x), inner / a, outer / a)
    found = spiral_length_cm(inner, outer_cm=outer, pitch_cm=pitch)
    assert found == pytest.approx(arc, rel=1e-7)


@given(st.floats(15, 60), st.floats(0.6, 1.6), st.floats(0.0, 1.2))
def test_the_cylinder_of_the_sheets_area_is_near_the_exact_spiral(
    length: float, sheet: float, cream: float
) -> None:
    rolled = roll(length, thickness_cm=sheet, cream_cm=cream, core_cm=0.8)
    exact = spiral_length_cm(0.8, outer_cm=rolled.diameter_cm / 2, pitch_cm=sheet + cream)
    if rolled.turns >= 1:
        assert exact == pytest.approx(length, rel=0.02)


@pytest.mark.parametrize(("outer", "pitch"), [(1.0, 0.0), (-1.0, 1.0)])
def test_a_spiral_that_ends_inside_its_start_is_refused(outer: float, pitch: float) -> None:
    with pytest.raises(OutOfRangeError):
        spiral_length_cm(0.0, outer_cm=outer, pitch_cm=pitch)
