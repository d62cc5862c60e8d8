"""`krume.build.standing.squeezing`: closed forms against integration and their own limits."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from krume.base import OutOfRangeError
from krume.build.standing.squeezing import disc_carries_pa, edge_needs_pa, strip_carries_pa
from tests.agreement import agrees

SIZES = st.floats(1.0, 500.0)


@given(SIZES, SIZES, st.floats(0.0, 1.0), st.floats(0.0, 1e4))
def test_a_disc_carries_the_integral_of_its_pressure_over_its_face(
    diameter: float, height: float, sticking: float, tau: float
) -> None:
    """From the edge inwards the pressure rises by 2 m tau / h: the shear on both faces."""
    radius = diameter / 2

    def force(r: float) -> float:
        return (math.sqrt(3) * tau + 2 * sticking * tau * (radius - r) / height) * 2 * math.pi * r

    mean = quad(force, 0, radius)[0] / (math.pi * radius**2)
    found = disc_carries_pa(tau, diameter_mm=diameter, height_mm=height, sticking_share=sticking)
    assert found == pytest.approx(mean, rel=1e-9, abs=1e-9)


@given(SIZES, SIZES, st.floats(0.0, 1.0))
def test_a_strip_carries_the_integral_of_its_pressure_over_its_width(
    width: float, height: float, sticking: float
) -> None:
    def pressure(x: float) -> float:
        return 2.0 + 2 * sticking * (width / 2 - x) / height

    mean = quad(pressure, 0, width / 2)[0] / (width / 2)
    found = strip_carries_pa(1.0, width_mm=width, height_mm=height, sticking_share=sticking)
    assert found == pytest.approx(mean, rel=1e-9)


@pytest.mark.source("martinie-2013", "abstract")
def test_a_block_that_slides_freely_yields_at_root_three_times_its_shear() -> None:
    found = disc_carries_pa(1.0, diameter_mm=10.0, height_mm=10.0, sticking_share=0.0)
    assert agrees(found, "1.732")


@given(SIZES, SIZES)
def test_a_thinner_layer_carries_more(diameter: float, height: float) -> None:
    thick = disc_carries_pa(1.0, diameter_mm=diameter, height_mm=height)
    assert disc_carries_pa(1.0, diameter_mm=diameter, height_mm=height / 2) > thick


def test_an_edge_needs_in_proportion_to_its_height() -> None:
    low = edge_needs_pa(height_mm=10.0, density_g_ml=0.7)
    assert edge_needs_pa(height_mm=30.0, density_g_ml=0.7) == (pytest.approx(3 * low, rel=1e-12))


@pytest.mark.parametrize(
    ("tau", "diameter", "height"),
    [(-1.0, 100.0, 10.0), (1.0, 0.0, 10.0), (1.0, 100.0, 0.0), (1.0, 100.0, -3.0),
     (math.nan, 100.0, 10.0), (1.0, math.inf, 10.0)],
)  # fmt: skip
def test_what_is_no_layer_is_refused(tau: float, diameter: float, height: float) -> None:
    with pytest.raises(OutOfRangeError):
        disc_carries_pa(tau, diameter_mm=diameter, height_mm=height)
    with pytest.raises(OutOfRangeError):
        strip_carries_pa(tau, width_mm=diameter, height_mm=height)
