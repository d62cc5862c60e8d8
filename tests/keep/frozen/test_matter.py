"""What freezes: where ice begins, how much of it there is, and what heat it takes."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.keep.frozen import freezing_point_c, matter_of
from tests.agreement import agrees

WATER = {
    "water": 1.0, "protein": 0.0, "fat": 0.0, "carbohydrate": 0.0, "fibre": 0.0, "ash": 0.0,
}  # fmt: skip
CREAM = {
    "water": 0.6, "protein": 0.04, "fat": 0.16, "carbohydrate": 0.19, "fibre": 0.0, "ash": 0.01,
}  # fmt: skip


@pytest.mark.source("codata-2018", "freezing point of water, -1.86 K for a mole in a kilogram")
def test_a_mole_in_a_kilogram_of_water_freezes_where_every_table_says() -> None:
    moles = 1000 / 18.01528
    why = "activities are rounded"
    assert agrees(freezing_point_c(moles / (moles + 1.0)), "-1.86", within="0.03", why=why)
    assert agrees(freezing_point_c(1.0), "0.00")


@given(st.floats(0.71, 0.99), st.floats(0.001, 0.01))
def test_drier_freezes_colder(activity: float, more: float) -> None:
    assert freezing_point_c(activity) < freezing_point_c(activity + more)


def test_nearly_pure_water_takes_its_heat_of_melting() -> None:
    found = matter_of(WATER, density_kg_m3=999.0, freezing_c=-0.01)
    taken = found.heat_at(0.0) - found.heat_at(-20.0)
    assert taken == pytest.approx(333_600 + 20 * 2062, rel=0.005)


@settings(max_examples=60)
@given(st.floats(-8.0, -0.5), st.floats(300.0, 1100.0))
def test_heat_always_rises_with_temperature_and_ice_never_exceeds_the_water(
    freezing_c: float, density: float
) -> None:
    found = matter_of(CREAM, density_kg_m3=density, freezing_c=freezing_c)
    assert np.all(np.diff(found.heat_j_kg) > 0)
    assert found.ice_fraction.max() <= CREAM["water"]
    assert found.ice_fraction.min() == 0.0
    assert np.all(np.diff(found.ice_fraction) <= 1e-12)
    round_trip = found.temp_c(np.array([found.heat_at(-12.34)]))
    assert round_trip[0] == pytest.approx(-12.34, abs=0.01)


def test_pores_conduct_less_and_ice_more() -> None:
    dense = matter_of(CREAM, density_kg_m3=1000.0, freezing_c=-2.0)
    light = matter_of(CREAM, density_kg_m3=400.0, freezing_c=-2.0)
    at = np.array([-18.0, 5.0])
    assert np.all(light.conduction(at) < dense.conduction(at))
    assert dense.conduction(at)[0] > 2 * dense.conduction(at)[1]


@pytest.mark.parametrize("activity", [0.5, 1.1])
def test_an_activity_of_no_cream_is_refused(activity: float) -> None:
    with pytest.raises(OutOfRangeError):
        freezing_point_c(activity)


def test_a_density_of_none_is_refused() -> None:
    with pytest.raises(OutOfRangeError):
        matter_of(CREAM, density_kg_m3=0.0, freezing_c=-2.0)
