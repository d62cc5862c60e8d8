"""Shapes that are not named, or have no formula: told by the sides, or asked."""

import pytest

from krume.size import read_tin, tin_text
from krume.size.asking import Asking
from krume.size.measures import measures
from krume.size.shape_naming import shape_by_sides, unused_words
from krume.size.sizes import Sizes


@pytest.mark.parametrize(
    ("groups", "shape"),
    [
        ([[33.0], [23.0]], "sheet"),
        ([[20.0], [20.0]], "square"),
        ([[23.0], [13.0], [7.0]], "loaf"),
        ([[20.0], [6.0]], None),
        ([[20.0]], None),
        ([], None),
    ],
)
def test_sides_tell_a_rectangle_and_nothing_else(
    groups: list[list[float]], shape: str | None
) -> None:
    asking = Asking("typed", "tin")
    assert shape_by_sides(Sizes("cm", groups=groups), measures("typed"), asking) == shape
    assert bool(asking.problems) == (shape is None)


@pytest.mark.parametrize(
    ("typed", "lines"),
    [
        ("oval 25 x 18 cm", ["round 21.2 cm"]),
        ("a heart-shaped tin 20 cm", ["square 20 cm"]),
        ("two 8- or 9-inch layer tins", ["2 x round 8 in", "2 x round 9 in"]),
        ("3 x 15 cm round", ["round 15 x 3 cm", "round 3 cm, 15 cm high", "3 x round 15 cm"]),
        ("6-inch cake tins x 3", ["3 x round 6 in", "3 x square 6 in"]),
        ("glass 8in dish, not greased", ["glass round 8 in, not greased",
                                         "glass square 8 in, not greased"]),
    ],
)  # fmt: skip
def test_options_keep_count_material_and_grease(typed: str, lines: list[str]) -> None:
    assert [option.line for option in read_tin(typed).problems[0].options] == lines


def test_an_oval_weighed_with_water_needs_no_formula() -> None:
    read = read_tin("oval round dish, 1500 ml")
    assert read.value is not None
    assert tin_text(read.value) == "round, 1500 ml water"


@pytest.mark.parametrize(
    ("typed", "canonical"),
    [
        ("a 20cm/8in deep round cake tin", "round 20 cm"),
        ("33 x 23cm/13 x 9in Swiss roll tin", "sheet 33 x 23 cm"),
        ("1 round tin 20 cm", "round 20 cm"),
        ('10" angel food tin with 4" tube', "tube 25.4 cm, hole 10.16 cm"),
        ("12-hole muffin tin, 7 cm", "tray 12 x 7 cm"),
    ],
)
def test_words_beside_a_number_are_not_its_measure(typed: str, canonical: str) -> None:
    read = read_tin(typed)
    assert read.value is not None, read.problems
    assert tin_text(read.value) == canonical


def test_words_of_no_use_are_told() -> None:
    assert unused_words(measures("my blue tin 20 cm round")) == ["blue"]
