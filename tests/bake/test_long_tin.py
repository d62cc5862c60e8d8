"""Long tins against the exact product of two slabs: in the middle, over the minutes of a bake."""

from itertools import pairwise

import pytest
from scipy.optimize import brentq

from krume.bake import equivalent_radius_m, heating_theta
from krume.bake.long_tin import bent_theta, body_of_rectangle

# Film, conductivity, diffusivity of a light foam, a middling and a dense batter.
BATTERS = {"foam": (9.0, 0.25, 1.6e-7), "middling": (12.0, 0.3, 1.6e-7), "dense": (18.0, 0.4, 2e-7)}
LONG = [(0.26, 0.11, 0.05), (0.30, 0.11, 0.07), (0.25, 0.10, 0.06), (0.35, 0.10, 0.06)]
LEFT = 0.47  # from 21 to about 97 degC in an oven of 165 degC


def _minutes(name: str, radius: float, bend: float, deep: float) -> float:
    film, k, alpha = BATTERS[name]

    def left(time_s: float) -> float:
        beside = bent_theta(bend, biot=film * radius / k, fourier=alpha * time_s / radius**2)
        return beside * _slab(name, deep, time_s) - LEFT

    return float(brentq(left, 300.0, 40000.0, xtol=1.0)) / 60


def _slab(name: str, side: float, time_s: float) -> float:
    film, k, alpha = BATTERS[name]
    half = side / 2
    return heating_theta("slab", biot=film * half / k, fourier=alpha * time_s / half**2)


def _exact(name: str, length: float, width: float, deep: float) -> float:
    def left(time_s: float) -> float:
        three = (_slab(name, side, time_s) for side in (length, width, deep))
        a, b, c = three
        return a * b * c - LEFT

    return float(brentq(left, 300.0, 40000.0, xtol=1.0)) / 60


@pytest.mark.parametrize("name", BATTERS)
@pytest.mark.parametrize(("length", "width", "deep"), LONG)
def test_a_long_tin_is_within_two_percent_of_the_exact_minutes(
    name: str, length: float, width: float, deep: float
) -> None:
    radius, bend = body_of_rectangle(length, width)
    exact = _exact(name, length, width, deep)
    assert _minutes(name, radius, bend, deep) == pytest.approx(exact, rel=0.02)
    cylinder = _minutes(name, equivalent_radius_m(length, width), 1.0, deep)
    assert abs(cylinder / exact - 1) > 0.03


@pytest.mark.parametrize("name", BATTERS)
@pytest.mark.parametrize(
    ("length", "width", "deep", "most"),
    [(0.20, 0.20, 0.05, 0.001), (0.33, 0.229, 0.025, 0.001), (0.215, 0.115, 0.06, 0.035)],
)
def test_squares_and_sheets_are_exact_as_cylinders_and_a_short_loaf_nearly(
    name: str, length: float, width: float, deep: float, most: float
) -> None:
    radius, bend = body_of_rectangle(length, width)
    assert bend == 1.0
    exact = _exact(name, length, width, deep)
    assert _minutes(name, radius, bend, deep) == pytest.approx(exact, rel=most)


@pytest.mark.parametrize(("biot", "fourier"), [(0.5, 1.0), (5.0, 0.2), (30.0, 0.1)])
def test_bend_nought_is_a_slab_and_bend_one_a_cylinder(biot: float, fourier: float) -> None:
    for bend, shape in ((0.0, "slab"), (1.0, "cylinder")):
        exact = heating_theta(shape, biot=biot, fourier=fourier)
        assert bent_theta(bend, biot=biot, fourier=fourier) == pytest.approx(exact, abs=1e-10)


def test_turned_round_it_is_the_same_and_the_change_is_gradual() -> None:
    assert body_of_rectangle(0.30, 0.11) == pytest.approx(body_of_rectangle(0.11, 0.30))
    bends = [body_of_rectangle(0.1 * ratio, 0.1)[1] for ratio in (1.89, 1.95, 2.05, 2.15, 2.21)]
    assert bends[0] == 1.0
    assert all(low > high for low, high in pairwise(bends))
