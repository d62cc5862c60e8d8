"""Rolls: printed turns, diameter and stretch, and the area that a roll keeps."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.size import roll
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
