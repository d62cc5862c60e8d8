"""`krume.build.standing.bearing`: what lies on what."""

from dataclasses import replace

import pytest

from krume.build.standing.bearing import above_g, bearing_area_cm2, pressure_pa
from tests.build.studio import demo


def test_on_the_highest_cream_of_t1_lie_one_disc_its_syrup_and_the_lid_of_the_coat() -> None:
    torte = demo("T1")
    creams = [at for at, layer in enumerate(torte.layers) if layer.role == "filling"]
    disc, syrup, coat = torte.layers[creams[-1] + 1 :]
    assert coat.outline is not None
    lid = coat.outline.area_cm2 * 0.4 * 0.80
    wanted = (disc.mass_g or 0.0) + (syrup.mass_g or 0.0) + lid
    assert above_g(torte, creams[-1]) == pytest.approx(wanted, rel=1e-9)


def test_on_the_lowest_disc_of_a_ring_lies_all_but_itself() -> None:
    torte = demo("T3")
    wanted = (torte.mass_g or 0.0) - (torte.layers[0].mass_g or 0.0)
    assert above_g(torte, 0) == pytest.approx(wanted, rel=1e-9)


def test_an_unknown_mass_above_leaves_the_load_unknown() -> None:
    torte = demo("T1")
    layers = (*torte.layers[:-1], replace(torte.layers[-1], mass_g=None))
    assert above_g(replace(torte, layers=layers), 0) is None


def test_a_cream_bears_through_the_disc_on_it() -> None:
    torte = demo("T3")
    lower = next(at for at, layer in enumerate(torte.layers) if layer.role == "filling")
    assert bearing_area_cm2(torte, lower) == pytest.approx(346.36, abs=0.01)


def test_pressure_is_weight_over_area() -> None:
    assert pressure_pa(1000.0, 100.0) == pytest.approx(980.665, rel=1e-12)
