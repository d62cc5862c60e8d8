"""Cooling of plain bodies against the exact series, and the ledger of heat."""

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest
from scipy.optimize import brentq

from krume.bake.cooling.body import (
    Body,
    Course,
    Face,
    Stage,
    Surroundings,
    body_of,
    even_stuff,
)
from krume.bake.cooling.falling import cool_down
from krume.bake.cooling.still_air import Film, still_film
from krume.bake.grid import Cells, Footprint, grid_of
from krume.bake.series import heating_theta

COVERS = ("body",)

K, C, RHO, RADIUS, HEIGHT, FILM = 0.3, 2800.0, 500.0, 0.1, 0.05, 18.0
START, ROOM = 95.0, 20.0


def _around(draws: int = 1, brisk: float = 1.0) -> Surroundings:
    one = np.ones((draws, 1))
    return Surroundings((ROOM + 273.15) * one, 1200.0 * one, brisk * one, activity=0.9)


def _body(cells: Cells, radius: float = RADIUS, height: float = HEIGHT, draws: int = 1) -> Body:
    area = np.pi * radius**2
    grid = grid_of(Footprint(area, radius), cells)
    mass = np.full(draws, RHO * area * height)
    return body_of(grid, even_stuff(K, C), mass_kg=mass, height_m=np.full(draws, height))


def _fall(body: Body, face: Face, side: Face | None, goal_c: float = 22.0) -> Course:
    start = np.full(body.cell_mass.shape, START + 273.15)
    stage = Stage(36000, _around(body.draws), face, face, side)
    return cool_down(body, start, [stage], goal_k=goal_c + 273.15)


def _exact_s(theta: Callable[[float], float], goal_c: float) -> float:
    wanted = (goal_c - ROOM) / (START - ROOM)
    return float(brentq(lambda s: theta(s) - wanted, 1.0, 72000.0))


def _slab(seconds: float) -> float:
    half = HEIGHT / 2
    fourier = K / (RHO * C) * seconds / half**2
    return heating_theta("slab", biot=FILM * half / K, fourier=fourier)


def _cylinder(seconds: float) -> float:
    fourier = K / (RHO * C) * seconds / RADIUS**2
    return heating_theta("cylinder", biot=FILM * RADIUS / K, fourier=fourier)


@pytest.mark.parametrize("goal_c", [60.0, 30.0, 24.0])
def test_a_short_cylinder_is_cold_when_the_series_says(goal_c: float) -> None:
    film = Face(Film(FILM))
    exact = _exact_s(lambda s: _slab(s) * _cylinder(s), goal_c)
    coarse = _fall(_body(Cells()), film, film).reached_s(goal_c + 273.15)
    assert float(coarse[0]) == pytest.approx(exact, rel=0.015)
    fine = _fall(_body(Cells(16, 20)), film, film).reached_s(goal_c + 273.15)
    assert float(fine[0]) == pytest.approx(exact, rel=0.007)


@pytest.mark.parametrize("goal_c", [60.0, 30.0])
def test_a_slab_is_cold_when_the_series_says(goal_c: float) -> None:
    course = _fall(_body(Cells(1, 14), radius=1.0), Face(Film(FILM)), None)
    assert float(course.reached_s(goal_c + 273.15)[0]) == pytest.approx(
        _exact_s(_slab, goal_c), rel=0.01
    )


@pytest.mark.parametrize("goal_c", [60.0, 30.0])
def test_a_long_cylinder_is_cold_when_the_series_says(goal_c: float) -> None:
    closed = Face(Film(0.0))
    course = _fall(_body(Cells(14, 1), height=1.0), closed, Face(Film(FILM)))
    assert float(course.reached_s(goal_c + 273.15)[0]) == pytest.approx(
        _exact_s(_cylinder, goal_c), rel=0.01
    )


@pytest.mark.parametrize("kind", ["plain", "tin", "wet"])
def test_what_leaves_by_the_faces_is_what_body_and_tin_gave(kind: str) -> None:
    faces = {
        "plain": Face(still_film("up", 0.05), 0.9),
        "tin": Face(still_film("up", 0.05), 0.25, layer=0.01, store=1944.0,
                    start_k=np.full((1, 1), 400.0)),
        "wet": Face(still_film("up", 0.05), 0.9, breath=100.0),
    }  # fmt: skip
    course = _fall(_body(Cells()), faces[kind], faces[kind], goal_c=25.0)
    lost, given = float(course.lost_j[-1, 0]), float(course.given_j[-1, 0])
    assert given > 1e5
    assert lost == pytest.approx(given, rel=1e-11)


def test_water_that_leaves_takes_its_heat_along() -> None:
    dry = Face(still_film("up", 0.05), 0.9)
    wet = Face(still_film("up", 0.05), 0.9, breath=100.0)
    slow, fast = (_fall(_body(Cells()), each, each, 30.0) for each in (dry, wet))
    assert float(fast.reached_s(303.15)[0]) < 0.8 * float(slow.reached_s(303.15)[0])
    assert float(slow.water_kg[-1, 0]) == 0.0
    latent_j = 2.4e6 * float(fast.water_kg[-1, 0])
    assert 0.2 * float(fast.lost_j[-1, 0]) < latent_j < 0.8 * float(fast.lost_j[-1, 0])


def test_a_face_that_dries_lets_less_and_less_pass_once_its_wet_skin_is_gone() -> None:
    wet = Face(still_film("up", 0.05), 0.9, breath=0.0)
    skin = replace(wet, drying=7000.0, wet=0.08)
    dry = replace(wet, drying=7000.0)
    left = [float(_fall(_body(Cells()), each, each, 30.0).water_kg[-1, 0])
            for each in (wet, skin, dry)]  # fmt: skip
    assert left[0] > 1.2 * left[1] > 1.2 * left[2] > 0


def test_a_body_as_warm_as_its_room_stays_as_it_is() -> None:
    body, film = _body(Cells()), Face(Film(FILM), 0.9)
    start = np.full(body.cell_mass.shape, ROOM + 273.15)
    course = cool_down(body, start, [Stage(3600, _around(), film, film, film)], goal_k=0.0)
    assert np.abs(course.hottest_k - ROOM - 273.15).max() < 1e-9


def test_one_draw_among_many_is_the_one_alone() -> None:
    film = Face(Film(FILM))
    one = _fall(_body(Cells()), film, film)
    many = _fall(_body(Cells(), draws=3), film, film)
    assert many.hottest_k[-1] == pytest.approx(np.full(3, one.hottest_k[-1, 0]), abs=1e-9)


def test_a_goal_never_reached_is_never_and_the_sum_ends() -> None:
    film = Face(Film(FILM))
    course = _fall(_body(Cells()), film, film, goal_c=15.0)
    assert np.isinf(course.reached_s(15.0 + 273.15)[0])
    assert course.time_s[-1] == pytest.approx(36000.0)


def test_a_second_stage_begins_where_the_first_ends() -> None:
    body, film, weak = _body(Cells()), Face(Film(FILM)), Face(Film(4.0))
    start = np.full(body.cell_mass.shape, START + 273.15)
    stages = [Stage(600, _around(), weak, weak, weak), Stage(36000, _around(), film, film, film)]
    course = cool_down(body, start, stages, goal_k=300.0)
    assert 600.0 in course.time_s
    at_turn = int(np.flatnonzero(course.time_s == 600.0)[0])
    mean = course.mean_k[:, 0]
    before = (mean[at_turn - 1] - mean[at_turn]) / np.diff(course.time_s)[at_turn - 1]
    after = (mean[at_turn] - mean[at_turn + 5]) / (
        course.time_s[at_turn + 5] - course.time_s[at_turn]
    )
    assert after > 2 * before


def test_a_wet_face_near_boiling_stays_a_number() -> None:
    body = _body(Cells(), height=0.012)
    start = np.full(body.cell_mass.shape, 374.5)
    bare = Face(still_film("up", 0.05), 0.9, breath=0.0)
    course = cool_down(body, start, [Stage(900, _around(), bare, bare, bare)], goal_k=300.0)
    assert np.isfinite(course.hottest_k).all()
    assert (np.diff(course.mean_k[:, 0]) < 0).all()
