"""Rectangular tins: sides in order, rims, squares."""

import pytest

from krume.size import Tin
from krume.size.asking import Asking
from krume.size.rectangle_tin import rectangle_tin
from krume.size.sizes import Sizes


def shaped(shape: str, *groups: list[float], **labels: float) -> tuple[Tin | None, Asking]:
    asking = Asking("typed", "tin")
    sizes = Sizes("cm", groups=[list(group) for group in groups], labels=labels)
    return rectangle_tin(shape, sizes, asking, Tin("typed", shape)), asking


def test_the_longer_side_is_the_length() -> None:
    tin, _ = shaped("sheet", [23.0], [33.0], [5.0])
    assert tin is not None
    assert (tin.length_cm, tin.width_cm, tin.height_cm) == (33.0, 23.0, 5.0)


def test_flared_sides_are_rim_then_bottom() -> None:
    tin, _ = shaped("loaf", [23.0, 20.0], [13.0, 10.0], [7.0])
    assert tin is not None
    assert (tin.top_length_cm, tin.top_width_cm, tin.length_cm, tin.width_cm) == (23, 13, 20, 10)


def test_a_square_needs_one_side() -> None:
    tin, _ = shaped("square", [20.0])
    assert tin is not None
    assert (tin.length_cm, tin.width_cm, tin.height_cm) == (20.0, 20.0, None)


@pytest.mark.parametrize(
    ("shape", "groups", "code"),
    [
        ("loaf", [[30.0]], "tin-side-missing"),
        ("sheet", [[30.0], [20.0], [5.0], [4.0]], "tin-order"),
        ("sheet", [[30.0, 28.0], [20.0], [5.0]], "tin-order"),
        ("loaf", [[7.0], [6.0], [20.0]], "tin-order"),
        ("loaf", [[20.0, 23.0], [10.0, 13.0], [7.0]], "tin-rim-narrow"),
        ("square", [[9.0], [13.0]], "tin-order"),
    ],
)
def test_unclear_sides_are_asked(shape: str, groups: list[list[float]], code: str) -> None:
    tin, asking = shaped(shape, *groups)
    assert tin is None
    assert asking.problems[0].code == code


def test_a_named_depth_may_be_larger_than_the_sides() -> None:
    tin, _ = shaped("loaf", [7.0], [6.0], height=20.0)
    assert tin is not None and tin.height_cm == 20.0
