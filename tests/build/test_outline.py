"""Outlines: areas, coats, and what a tin gives."""

import math

import pytest

from krume.build import Outline
from krume.build.outline import can_be_cut, floor_of, trimmed
from krume.size import Tin
from tests.build.studio import ROUND_20, SHEET


def test_a_square_tin_gives_a_square() -> None:
    floor = floor_of(Tin("", "square", length_cm=20.0))
    assert floor is not None
    assert (floor.length_cm, floor.width_cm, floor.area_cm2) == (20.0, 20.0, 400.0)


@pytest.mark.parametrize(
    "tin",
    [
        Tin("", "ring-mould", diameter_cm=24, hole_cm=10),
        Tin("", "tube", diameter_cm=20),
        Tin("", "round"),
    ],
)
def test_a_tin_without_upright_walls_or_dimensions_gives_no_outline(tin: Tin) -> None:
    assert floor_of(tin) is None


def test_a_rectangle_trims_to_a_square_no_wider_than_its_short_side() -> None:
    floor = floor_of(SHEET)
    assert floor is not None
    assert can_be_cut(floor, 22.86)
    assert not can_be_cut(floor, 23.0)
    assert trimmed(floor, 20.0).area_cm2 == 400.0


def test_a_ring_of_cake_is_not_trimmed_below_its_hole() -> None:
    assert not can_be_cut(Outline(20.0, 6.0), 6.0)
    assert can_be_cut(Outline(20.0, 6.0), 6.1)


def test_a_coat_grows_a_circle_on_both_sides() -> None:
    floor = floor_of(ROUND_20)
    assert floor is not None
    assert floor.grown(0.5).area_cm2 == pytest.approx(math.pi / 4 * 21**2)
    assert Outline(length_cm=30.0, width_cm=20.0).grown(0.5).area_cm2 == 31.0 * 21.0
