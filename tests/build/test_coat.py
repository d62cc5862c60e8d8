"""Coats: their volume against the closed form, and a thickness that comes from a mass."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.build.coat import Body, coat_ml
from krume.build.outline import Outline
from tests.agreement import agrees
from tests.build.studio import torte_of


def body(across: float, high: float) -> Body:
    outline = Outline(across)
    return Body(outline, high, outline.area_cm2 * high / 10)


@pytest.mark.source("reference-book", "R61")
def test_a_coat_without_a_bottom_has_the_printed_volume() -> None:
    assert agrees(coat_ml(body(20.0, 70.0), 3.0, covers_top=True), "233.9")


@given(st.floats(5, 40), st.floats(5, 200), st.floats(0.1, 20))
def test_a_coat_around_is_a_tube_and_one_on_top_adds_its_disc(
    across: float, high: float, thick: float
) -> None:
    cake = body(across, high)
    around = coat_ml(cake, thick, covers_top=False)
    both = coat_ml(cake, thick, covers_top=True)
    tube = math.pi / 4 * ((across + thick / 5) ** 2 - across**2) * high / 10
    disc = math.pi / 4 * (across + thick / 5) ** 2 * thick / 10
    assert around == pytest.approx(tube, rel=1e-9, abs=1e-6)
    assert both == pytest.approx(tube + disc, rel=1e-9, abs=1e-6)


def test_an_unknown_height_leaves_the_coat_unknown() -> None:
    assert coat_ml(Body(Outline(20.0), None, None), 3.0, covers_top=True) is None


def test_a_coat_by_mass_is_as_thick_as_one_of_that_thickness_weighs() -> None:
    by_height = torte_of("2 layers of F1, 14 mm\n4 mm C5 around and on top")
    coat = by_height.layers[-1]
    assert coat.mass_g is not None
    by_mass = torte_of(f"2 layers of F1, 14 mm\n{coat.mass_g:.6f} g C5 around and on top")
    assert by_mass.layers[-1].height_mm == pytest.approx(4.0, abs=1e-6)
    assert by_mass.height_mm == pytest.approx(by_height.height_mm)


def test_a_coat_around_makes_it_wider_but_no_higher() -> None:
    torte = torte_of("2 layers of F1, 14 mm\n5 mm C5 around")
    assert torte.height_mm == pytest.approx(28.0)
    assert torte.outline is not None
    assert torte.outline.diameter_cm == pytest.approx(21.0)


def test_what_lies_on_the_coat_is_as_wide_as_the_coat() -> None:
    torte = torte_of("1 layer of F1, 14 mm\n5 mm C5 around\n10 mm C4 on top")
    assert torte.layers[-1].volume_ml == pytest.approx(math.pi / 4 * 21**2)


def test_steps_between_layers_of_different_size_are_filled_by_the_coat() -> None:
    even = torte_of("2 layers of F1, 10 mm\n4 mm C5 around and on top")
    stepped = torte_of(
        "1 layer of F1, 10 mm\n1 layer of F1, 10 mm, trimmed to 16 cm\n4 mm C5 around and on top"
    )
    step_ml = math.pi / 4 * (20**2 - 16**2)
    coats = [torte.layers[-1].volume_ml or 0.0 for torte in (even, stepped)]
    assert coats[1] - coats[0] == pytest.approx(step_ml)


def test_a_brushed_coat_weighs_by_its_skin_and_adds_no_height() -> None:
    torte = torte_of("1 layer of F1, 10 mm\n0.1 g/cm2 S1 around and on top")
    skin = math.pi * 20 * 1 + math.pi / 4 * 400
    assert torte.layers[-1].mass_g == pytest.approx(0.1 * skin)
    assert torte.height_mm == pytest.approx(10.0)
