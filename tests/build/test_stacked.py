"""Tortes of layers: the gap to the ring, rectangles and rings of cake."""

import math

import pytest

from krume.base import Infeasible
from krume.build import build_torte
from krume.size import Tin
from tests.build.studio import C2, F1, PARTS, demo, plan_of, torte_of

TUBE = Tin("tube 20 x 10 cm, hole 6 cm", "tube", diameter_cm=20.0, height_cm=10.0, hole_cm=6.0)


def test_cream_filled_out_to_the_ring_takes_the_gap_beside_its_disc() -> None:
    creams = [layer for layer in demo("T3").layers if layer.of == "C2"]
    gap_ml = math.pi / 4 * (22**2 - 21**2) * 1.2
    over_ml = math.pi / 4 * 22**2 * 1.4
    assert [layer.volume_ml for layer in creams] == pytest.approx([gap_ml + over_ml] * 2)
    assert [layer.fills_from_mm for layer in creams] == [0.0, 26.0]


def test_everything_in_a_full_ring_adds_up_to_the_ring() -> None:
    inside = [layer.volume_ml or 0.0 for layer in demo("T3").layers if layer.role != "syrup"]
    assert sum(inside) == pytest.approx(math.pi / 4 * 22**2 * 6)


def test_a_gap_nobody_fills_is_told() -> None:
    read = build_torte(
        plan_of(
            "A\nRing: 22 x 6 cm\n\n2 layers of F4, 12 mm, trimmed to 21 cm\n9 mm C2 on each layer"
        ),
        PARTS,
    )
    assert not isinstance(read, Infeasible)
    notice = read.value.notices[0]
    assert notice.code == "gap-empty"
    assert "5 mm beside 2" in notice.text


def test_a_ring_without_a_height_is_asked_with_the_height_it_needs() -> None:
    read = build_torte(plan_of("A\nRing: 22 cm\n\n2 layers of F4, 12 mm\n9 mm C2 on top"), PARTS)
    assert not isinstance(read, Infeasible)
    (problem,) = read.problems
    assert (problem.code, problem.where, problem.read) == (
        "ring-height-missing", "line 2", "Ring: 22 cm",
    )  # fmt: skip
    assert problem.options[0].line == "Ring: 22 x 3.3 cm"
    assert read.value.mass_g is not None


def test_layers_of_a_rectangle_are_as_large_as_the_sheet() -> None:
    torte = torte_of("2 sheets of F3, 12 mm\n10 mm C2 between the layers")
    cream = torte.layers[1]
    assert cream.mass_g == pytest.approx(33.02 * 22.86 * 1.0 * 0.72)
    assert torte.outline is not None
    assert torte.outline.diameter_cm is None


def test_a_layer_of_a_ring_of_cake_leaves_its_hole_out() -> None:
    from dataclasses import replace

    tube = replace(F1, tin=TUBE)
    layer = torte_of("1 layer of F1, 25 mm", F1=tube).layers[0]
    assert layer.mass_g == pytest.approx(482.0 / 2)
    assert layer.outline is not None
    assert layer.outline.area_cm2 == pytest.approx(math.pi / 4 * (20**2 - 6**2))


def test_a_filling_by_mass_is_as_high_as_its_volume_over_its_area() -> None:
    cream = torte_of("1 layer of F1, 14 mm\n144 g C2 on the layer").layers[1]
    assert C2.density_g_ml is not None
    assert cream.height_mm == pytest.approx(144 / C2.density_g_ml / (math.pi * 100) * 10)


def test_layers_say_where_they_lie() -> None:
    names = [layer.name for layer in demo("T1").layers]
    assert names[0] == "Orl hazel sponge, layer 1"
    assert "Vanilla custard cream, between layers 2 and 3" in names
    assert "Lemon syrup, on layer 3" in names
