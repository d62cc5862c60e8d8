"""Oven air over time: a hot oven, a cold one, the door, a given course."""

import math

import numpy as np
import pytest

from krume.bake import AirCourse, Around, Oven
from krume.bake.around import around_value
from krume.bake.course import course_of

HOT_K = np.array([443.15, 453.15])


def _air(around: Around, minute: float) -> list[float]:
    course = course_of(Oven(170, around=around), HOT_K)
    return [float(k) - 273.15 for k in course.temp_k(np.full(2, 60.0 * minute))]


def test_a_hot_oven_falls_by_its_door_and_comes_back() -> None:
    assert _air(Around(), 0) == pytest.approx([150, 160])
    assert _air(Around(), 60) == pytest.approx([170, 180], abs=1e-4)


def test_a_cold_oven_warms_from_what_it_has() -> None:
    cold = Around(warming_from_c=20.0)
    assert _air(cold, 0) == pytest.approx([20, 20])
    after = around_value("warming") / 60
    assert _air(cold, after) == pytest.approx([170 - 150 / math.e, 180 - 160 / math.e])


def test_each_opened_door_takes_air_from_that_minute_on() -> None:
    around = Around(door_min=(20.0, 25.0))
    assert _air(around, 19.999) == pytest.approx(_air(Around(), 19.999))
    dip = around_value("door-dip-on-the-way")
    assert _air(around, 20)[0] == pytest.approx(_air(Around(), 20)[0] - dip)
    twice = _air(Around(door_min=(20.0,)), 25)[0] - dip
    assert _air(around, 25)[0] == pytest.approx(twice)


def test_a_given_course_is_the_air_with_each_draws_own_shift() -> None:
    course = AirCourse((0.0, 10.0), (100.0, 200.0))
    around = Around(course=course, warming_from_c=20.0, door_min=(5.0,))
    assert _air(around, 5) == pytest.approx([150, 160])
    assert _air(around, 90) == pytest.approx([200, 210])
