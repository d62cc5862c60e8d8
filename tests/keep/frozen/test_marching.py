"""Marching: heat is kept to round-off, Plank's slab is met, finer cells change little."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from krume.bake import heating_theta
from krume.keep.frozen import matter_of
from krume.keep.frozen.marching import March, Round, SteadyAir, march
from krume.keep.frozen.matter import Matter
from tests.agreement import agrees

CREAM = {
    "water": 0.55, "protein": 0.05, "fat": 0.17, "carbohydrate": 0.21, "fibre": 0.01, "ash": 0.01,
}  # fmt: skip
NONE = np.zeros(1)
ONE = np.ones(1)


def flat(latent_j_kg: float, k: float, heat: float = 2000.0, freezing: float = -1.0) -> Matter:
    """Even stuff that melts within a tenth of a degree."""
    axis = np.arange(-60.0, 60.0, 0.01)
    melted = np.clip((axis - freezing) / 0.1 + 1.0, 0.0, 1.0)
    return Matter(axis, heat * (axis + 60) + latent_j_kg * melted, np.full_like(axis, k),
                  1 - melted, 1000.0, freezing)  # fmt: skip


def slab(matter: Matter, *, thick_m: float, film: float, air_c: float, start_c: float,
         goal_c: float, rows: int) -> tuple[March, float]:  # fmt: skip
    """A disc so wide and with such a rim that only its faces count; hours to the goal."""
    shut = np.full(1, 1e9)
    body = Round(100.0, thick_m, NONE, shut, NONE)
    course = march(
        matter, body, SteadyAir(np.full(1, air_c)), start_c=start_c, film_w_m2k=np.full(1, film),
        scale=ONE, until_s=1e7, enough=lambda t: bool((t <= goal_c).all()), cells=(rows, 1),
    )  # fmt: skip
    return course, float(course.when_s("warmest_c", goal_c, rising=False)[0])


@pytest.mark.source("plank-1941", "slab: P 1/2, R 1/8")
def test_a_slab_at_its_freezing_point_takes_the_time_of_planks_equation() -> None:
    latent, k, film, thick, air = 250_000.0, 1.2, 20.0, 0.05, -21.0
    matter = flat(latent, k, heat=500.0)
    _, seconds = slab(
        matter, thick_m=thick, film=film, air_c=air, start_c=-1.0, goal_c=-1.6, rows=12
    )
    plank = 1000 * latent / (-1.05 - air) * (thick / (2 * film) + thick**2 / (8 * k))
    why = "Plank leaves out the heat of the ice, here made small"
    assert agrees(seconds / plank, "1.00", within="0.06", why=why)


def test_without_ice_a_slab_follows_the_exact_series() -> None:
    k, film, thick = 0.3, 15.0, 0.06
    matter = flat(0.0, k, heat=3000.0)
    body = Round(100.0, thick, NONE, np.full(1, 1e9), NONE)
    course = march(
        matter, body, SteadyAir(np.full(1, 0.0)), start_c=20.0, film_w_m2k=np.full(1, film),
        scale=ONE, until_s=7200.0, enough=lambda _: False, cells=(31, 1),
    )  # fmt: skip
    half = thick / 2
    fourier = k / (1000 * 3000) * course.time_s[-1] / half**2
    theta = heating_theta("slab", biot=film * half / k, fourier=fourier)
    assert course.warmest_c[-1, 0] / 20.0 == pytest.approx(theta, rel=0.01)


@settings(max_examples=8, deadline=None)
@given(st.floats(3.0, 12.0), st.floats(1.0, 8.0), st.floats(-30.0, 15.0), st.floats(-20.0, 15.0))
def test_what_comes_in_is_what_the_body_gains(
    radius: float, height: float, air: float, start: float
) -> None:
    matter = matter_of(CREAM, density_kg_m3=800.0, freezing_c=-2.5)
    body = Round(radius / 100, height / 100, NONE, NONE, np.full(1, 0.05))
    course = march(
        matter, body, SteadyAir(np.full(1, air)), start_c=start, film_w_m2k=np.full(1, 8.0),
        scale=ONE, until_s=7200.0, enough=lambda _: False,
    )  # fmt: skip
    scale = abs(course.gained_j[0]) + 1.0
    assert math.isclose(course.taken_j[0], course.gained_j[0], abs_tol=1e-9 * scale)
    ends = sorted((air, start))
    assert ends[0] - 0.05 <= course.coldest_c.min()
    assert course.warmest_c.max() <= ends[1] + 0.05


def test_coarse_cells_are_within_four_percent_of_fine_ones() -> None:
    matter = matter_of(CREAM, density_kg_m3=560.0, freezing_c=-2.6)
    body = Round(0.1015, 0.066, NONE, NONE, np.full(1, 0.05))

    def hours(cells: tuple[int, int]) -> float:
        course = march(
            matter, body, SteadyAir(np.full(1, -18.0)), start_c=5.0, film_w_m2k=np.full(1, 8.0),
            scale=ONE, until_s=1e6, enough=lambda t: bool((t <= -10).all()), cells=cells,
        )  # fmt: skip
        return float(course.when_s("warmest_c", -10.0, rising=False)[0]) / 3600

    assert hours((4, 3)) == pytest.approx(hours((8, 6)), rel=0.04)
