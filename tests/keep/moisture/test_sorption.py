"""`krume.keep.moisture.sorption`: printed isotherms, and curves that run one way."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.keep import starch_water_g, sugar_solution_activity
from krume.keep.moisture import Curve, moisture_figure
from krume.properties import solution_activity
from tests.agreement import agrees


def one(starch: float, sugars: float) -> Curve:
    return Curve(np.array([starch]), np.array([sugars]))


@pytest.mark.source("wan-2018", "abstract")
def test_the_monolayer_of_one_rice_starch_is_that_of_another() -> None:
    assert agrees(100 * moisture_figure("gab-monolayer"), "7.43")


@pytest.mark.parametrize("ratio", [0.55, 0.8, 1.0, 2.0, 9.0])
def test_a_sugar_phase_is_the_shared_norrish_form(ratio: float) -> None:
    percent = 100 / (1 + ratio)
    assert sugar_solution_activity(ratio) == pytest.approx(
        solution_activity(percent, solute="sucrose"), abs=2e-6
    )


@given(st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_starch_holds_more_where_it_is_damper(one_place: float, other: float) -> None:
    low, high = sorted((one_place, other))
    assert 0 <= starch_water_g(low) <= starch_water_g(high) < 0.4


@given(st.floats(0.001, 2.0), st.floats(0.001, 2.0), st.floats(-6.0, 6.0))
def test_slopes_are_those_of_the_curve(starch: float, sugars: float, y: float) -> None:
    curve, step = one(starch, sugars), 1e-5
    at, more, less = (curve.state(np.array([y + d])) for d in (0.0, step, -step))
    rise = (more.activity - less.activity) / (2 * step)
    assert at.activity_slope == pytest.approx(rise, rel=1e-5, abs=1e-9)
    rise = (more.water - less.water) / (2 * step)
    assert at.water_slope == pytest.approx(rise, rel=1e-5, abs=1e-9)


@given(st.floats(0.001, 2.0), st.floats(0.001, 2.0), st.floats(-6.0, 6.0))
def test_water_and_activity_lead_back_to_where_they_came_from(
    starch: float, sugars: float, y: float
) -> None:
    curve = one(starch, sugars)
    place = np.array([y])
    assert curve.at_water(curve.water(place)) == pytest.approx(place, abs=1e-8)
    assert curve.at_activity(curve.activity(place)) == pytest.approx(place, abs=1e-5)


def test_starch_stands_in_the_curve_by_its_own_form() -> None:
    curve = one(1.0, 0.0)
    y = curve.at_activity(np.array([0.6]))
    assert float(curve.water(y)[0]) == pytest.approx(starch_water_g(0.6), rel=1e-9)


@pytest.mark.parametrize("activity", [-0.1, 1.1, float("nan")])
def test_an_activity_outside_its_range_is_refused(activity: float) -> None:
    with pytest.raises(OutOfRangeError):
        starch_water_g(activity)


@pytest.mark.parametrize("ratio", [0.0, -1.0, float("inf"), float("nan")])
def test_a_solution_without_water_is_refused(ratio: float) -> None:
    with pytest.raises(OutOfRangeError):
        sugar_solution_activity(ratio)
