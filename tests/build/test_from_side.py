"""The torte from the side: knife lines where slices begin, a naked torte in bands."""

import math
import re

import pytest

from krume.build.from_side import columns_of, from_side, long_mm
from tests.build.studio import demo, torte_of


def lines_at(drawing: str) -> list[float]:
    """Places of the knife lines [mm]."""
    (path,) = re.findall(r'<path d="([^"]+)" [^>]*stroke-dasharray="1.6 1.6"', drawing)
    return [float(x) for x in re.findall(r"M(\S+) ", path)]


def test_the_knife_goes_down_where_the_slices_of_a_round_torte_begin() -> None:
    torte = demo("T1")
    half = 203 / 2
    want = [half * (1 + math.sin(math.radians(a))) for a in (0, 30, 60, -60, -30)]
    assert sorted(lines_at("".join(from_side(torte, "x")))) == pytest.approx(sorted(want), abs=0.01)


def test_a_roll_is_as_long_as_its_width_and_has_a_line_at_each_cut() -> None:
    torte = demo("T2")
    assert long_mm(torte) == pytest.approx(330.2)
    assert len(lines_at("".join(from_side(torte, "x")))) == 11


def test_a_coated_torte_hides_its_layers_and_a_naked_one_shows_them() -> None:
    coated = "".join(from_side(demo("T1"), "x"))
    naked = "".join(from_side(demo("T3"), "x"))
    assert "url(#x-coat)" in coated and "x-sponge" not in coated
    assert {"x-jelly", "x-set-cream"} <= set(re.findall(r"url\(#([^)]+)\)", naked))


def test_pieces_of_a_rectangle_are_nearest_to_squares() -> None:
    torte = torte_of("1 sheet of F3, 12 mm")
    assert [columns_of(torte, n) for n in (12, 6, 7, 1)] == [4, 3, 7, 1]
    assert columns_of(demo("T1"), 12) == 0
