"""Vapour pressure, air pressure and boiling points against printed values."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.properties import boiling_point_c, pressure_at_altitude_pa, vapour_pressure_pa
from tests.agreement import agrees

FOOT_M = 0.3048


@pytest.mark.source("iapws-if97", "table 35")
def test_vapour_pressure_meets_the_check_values_of_its_release() -> None:
    assert agrees(vapour_pressure_pa(300 - 273.15) / 1e6, "0.00353658941")
    assert agrees(vapour_pressure_pa(500 - 273.15) / 1e6, "2.63889776")


@pytest.mark.source("reference-book", "R71")
@pytest.mark.parametrize(
    ("temp_c", "printed"),
    [(20.0, "2339.2"), (25.0, "3169.7"), (60.0, "19946"), (95.0, "84609")],
)
def test_vapour_pressures_are_the_printed_ones(temp_c: float, printed: str) -> None:
    assert agrees(vapour_pressure_pa(temp_c), printed)


@pytest.mark.source("reference-book", "R33")
@pytest.mark.parametrize(
    ("feet", "boils", "pressure"),
    [(5000.0, "94.90", "84307"), (10_000.0, "89.81", "69682"), (0.0, "99.97", "101325")],
)
def test_water_boils_where_it_is_printed(feet: float, boils: str, pressure: str) -> None:
    air = pressure_at_altitude_pa(feet * FOOT_M)
    assert agrees(air, pressure)
    assert agrees(boiling_point_c(air), boils)


@pytest.mark.source("reference-book", "bake model, checks of boiling points")
@pytest.mark.parametrize(
    ("altitude", "sugar", "printed"),
    [(0.0, 0.0, "99.9743"), (0.0, 50.0, "101.7977"), (1600.0, 0.0, "94.6496"),
     (1600.0, 50.0, "96.4191")],
)  # fmt: skip
def test_syrup_boils_where_the_bake_model_says(altitude: float, sugar: float, printed: str) -> None:
    found = boiling_point_c(pressure_at_altitude_pa(altitude), sugar_pct=sugar)
    assert agrees(found, printed)


@pytest.mark.source("reference-book", "bake model, pressure at 1600 m")
def test_pressure_at_1600_m_is_the_printed_one() -> None:
    assert agrees(pressure_at_altitude_pa(1600.0), "83523.5")


@given(pressure=st.floats(25_000.0, 150_000.0))
def test_at_its_boiling_point_water_has_the_pressure_of_the_air(pressure: float) -> None:
    assert vapour_pressure_pa(boiling_point_c(pressure)) == pytest.approx(pressure, rel=1e-10)


@given(altitude=st.floats(-400.0, 4000.0), climb=st.floats(10.0, 1000.0))
def test_higher_up_water_boils_sooner(altitude: float, climb: float) -> None:
    low, high = (pressure_at_altitude_pa(a) for a in (altitude, altitude + climb))
    assert boiling_point_c(high) < boiling_point_c(low)


def test_outside_its_range_it_refuses() -> None:
    for call, value in (
        (vapour_pressure_pa, -5.0), (vapour_pressure_pa, 400.0),
        (pressure_at_altitude_pa, 20_000.0), (boiling_point_c, 1000.0),
    ):  # fmt: skip
        with pytest.raises(OutOfRangeError):
            call(value)
