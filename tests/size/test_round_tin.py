"""Round tins: rim and bottom, depth, hole, half torus, cups."""

import pytest

from krume.size import Tin
from krume.size.asking import Asking
from krume.size.round_tin import round_tin
from krume.size.sizes import Sizes


def shaped(
    shape: str, *groups: list[float], water: float | None = None, **labels: float
) -> tuple[Tin | None, Asking]:
    asking = Asking("typed", "tin")
    sizes = Sizes("cm", groups=[list(group) for group in groups], labels=labels)
    return round_tin(shape, sizes, asking, Tin("typed", shape, water_ml=water)), asking


def test_the_rim_stands_first() -> None:
    tin, _ = shaped("round", [24.0, 22.0], [7.0])
    assert tin is not None
    assert (tin.top_cm, tin.diameter_cm, tin.height_cm) == (24.0, 22.0, 7.0)


def test_equal_rim_and_bottom_are_straight_walls() -> None:
    tin, _ = shaped("round", [24.0, 24.0], [7.0])
    assert tin is not None and tin.top_cm is None


def test_named_rim_and_bottom_stand_before_the_order() -> None:
    tin, _ = shaped("tube", top=25.0, bottom=23.0, height=9.0, hole=6.0)
    assert tin is not None
    assert (tin.top_cm, tin.diameter_cm, tin.hole_cm) == (25.0, 23.0, 6.0)
    one, _ = shaped("round", [22.0], top=24.0)
    assert one is not None and (one.top_cm, one.diameter_cm) == (24.0, 22.0)


@pytest.mark.parametrize(
    ("shape", "groups", "labels", "code"),
    [
        ("round", [[6.0], [20.0]], {}, "tin-order"),
        ("round", [[20.0], [5.0], [3.0]], {}, "tin-order"),
        ("round", [[20.0]], {"hole": 3.0}, "tin-hole-shape"),
        ("tube", [[20.0]], {}, "tin-hole-missing"),
        ("tube", [[20.0]], {"hole": 20.0}, "tin-hole-wide"),
        ("round", [[22.0, 24.0]], {}, "tin-rim-narrow"),
        ("ring-mould", [[24.0], [6.0]], {"hole": 10.0}, "tin-half-torus"),
        ("tray", [[20.0]], {}, "tin-shape-missing"),
        ("ring", [], {}, "tin-size-missing"),
    ],
)
def test_unclear_numbers_are_asked(
    shape: str, groups: list[list[float]], labels: dict[str, float], code: str
) -> None:
    tin, asking = shaped(shape, *groups, **labels)
    assert tin is None
    assert asking.problems[0].code == code


def test_a_tube_weighed_with_water_needs_no_hole() -> None:
    tin, asking = shaped("tube", [22.0], water=2000.0)
    assert tin is not None and tin.hole_cm is None
    assert asking.problems == []


def test_a_depth_near_half_a_torus_is_taken() -> None:
    tin, _ = shaped("ring-mould", [24.0], hole=10.0, height=3.6)
    assert tin is not None and tin.height_cm == 3.6
