"""What is drawn where: layers to scale, the gap beside a disc, coats, labels at their layers."""

import re

import pytest

from krume.build.section_shapes import Shapes, shapes, width_mm
from tests.build.studio import demo, torte_of


def boxes(found: Shapes, material: str) -> list[tuple[float, ...]]:
    sides = " ".join(f'{side}="([^"]+)"' for side in ("x", "y", "width", "height"))
    pattern = rf'<rect {sides} fill="url\(#x-{material}\)"'
    return [tuple(float(n) for n in match) for match in re.findall(pattern, found.svg)]


def test_layers_stand_to_scale_from_the_bottom_up_inside_the_coat() -> None:
    found = shapes(demo("T1"), "x")
    assert boxes(found, "coat") == [(0.0, 0.0, 203.0, 66.0)]
    assert boxes(found, "sponge") == [(4.0, 66.0 - 14 - up, 195.0, 14.0) for up in (0, 24, 48)]
    assert boxes(found, "cream") == [(4.0, 66.0 - 24, 195.0, 10.0), (4.0, 66.0 - 48, 195.0, 10.0)]


def test_the_cream_in_the_gap_beside_a_disc_is_drawn() -> None:
    found = shapes(demo("T3"), "x")
    assert (0.0, 48.0, 220.0, 12.0) in boxes(found, "set-cream")
    assert boxes(found, "nut-sponge") == [(5.0, 48.0, 210.0, 12.0), (5.0, 22.0, 210.0, 12.0)]


def test_ganache_stands_inside_the_wall_of_its_shell() -> None:
    (x, y, wide, high), *_ = boxes(shapes(demo("TART"), "x"), "ganache")
    assert (x, wide) == (3.0, 234.0)
    assert y + high == pytest.approx(22.0)
    assert high == pytest.approx(7.68)


@pytest.mark.parametrize("name", ["T1", "T2", "T3", "TART"])
def test_each_layer_has_one_label_that_points_into_the_torte(name: str) -> None:
    torte = demo(name)
    found = shapes(torte, "x")
    assert len(found.marks) == len(torte.layers)
    assert all(0 < mark.x <= mark.leaves <= width_mm(torte) + 1e-9 for mark in found.marks)
    assert [mark.y for mark in found.marks] == sorted(mark.y for mark in found.marks)


def test_the_list_from_the_top_down_is_the_torte_from_the_top_down() -> None:
    words = [mark.words for mark in shapes(demo("T1"), "x").marks]
    assert words[:3] == ["coat, 4 mm", "syrup", "sponge 3"]
    assert words[-1] == "sponge 1"


def test_a_coat_that_leaves_the_top_free_ends_at_the_top() -> None:
    found = shapes(torte_of("1 layer of F1, 20 mm\n5 mm C5 around"), "x")
    assert boxes(found, "coat") == [(0.0, 0.0, 210.0, 20.0)]
