"""Floors: real area and depth, and the body that stands for each tin in the sums."""

from dataclasses import replace

import pytest

from krume.bake import depth_cm
from krume.bake.footing import footprint_of
from krume.bake.grid import equivalent_radius_m
from krume.base import InputError
from krume.size import Tin
from tests.bake.cases import batter, tin


def test_a_round_is_itself_and_a_tube_has_its_hole() -> None:
    floor = footprint_of(tin("round 20 x 7 cm"))
    assert (floor.radius_m, floor.hole_radius_m, floor.bend_ratio) == (0.1, 0.0, 1.0)
    tube = footprint_of(tin("tube 20 x 10 cm hole 6 cm"))
    assert tube.radius_m == 0.1
    assert tube.hole_radius_m == 0.03
    mould = footprint_of(replace(tin("tube 20 x 10 cm hole 6 cm"), shape="ring-mould"))
    assert mould.hole_radius_m == 0.03


def test_a_square_and_a_sheet_stand_as_cylinders() -> None:
    assert footprint_of(tin("square 20 x 5 cm")).radius_m == equivalent_radius_m(0.2, 0.2)
    sheet = footprint_of(tin("sheet 33x22.9x2.5 cm"))
    assert sheet.bend_ratio == 1.0
    assert sheet.area_m2 == pytest.approx(0.07557)


def test_a_tin_twice_as_long_as_wide_and_more_bends() -> None:
    assert footprint_of(tin("loaf 21.5x11.5x7 cm")).bend_ratio == 1.0
    assert 0 < footprint_of(tin("loaf 30x11x8 cm")).bend_ratio < 0.5


def test_depth_is_volume_over_the_real_floor_of_one_cup() -> None:
    assert depth_cm(batter("butter", 850), tin("square 20 x 5 cm")) == pytest.approx(2.5)
    tray = depth_cm(batter("butter", 660), tin("tray 12 x 6.3 x 4 cm"))
    assert tray == pytest.approx(depth_cm(batter("butter", 55), tin("round 6.3 x 4 cm")))


def test_a_tin_without_a_size_is_asked_for_it() -> None:
    with pytest.raises(InputError, match="inside size"):
        footprint_of(Tin("a tin", "round"))
