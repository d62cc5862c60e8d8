"""`krume.calc.standing_sums`: what a layer carries, and how much water a layer holds."""

import math

import pytest

from krume.base import OutOfRangeError
from krume.build import disc_carries_pa
from krume.calc import run
from krume.keep import sugar_solution_activity


def number(name: str, key: str, **inputs: object) -> float:
    found = run(name, **inputs)[key]
    assert isinstance(found, float)
    return found


def test_what_a_layer_needs_carries_exactly_its_load() -> None:
    found = run("cream-carries", load=674, diameter=19.5, height=10)
    needs, pressure = found["needs_pa"], found["pressure_pa"]
    assert isinstance(needs, float) and isinstance(pressure, float)
    assert disc_carries_pa(needs, diameter_mm=195, height_mm=10) == pytest.approx(pressure)
    assert pressure == pytest.approx(0.674 * 9.80665 / (math.pi / 4 * 0.195**2), rel=1e-9)


def test_nothing_on_it_needs_nothing() -> None:
    assert number("cream-carries", "needs_pa", load=0, diameter=20, height=10) == 0.0


def test_units_of_the_person_are_taken() -> None:
    metric = number("cream-carries", "needs_pa", load=674, diameter=20.32, height=10)
    inches = number("cream-carries", "needs_pa", load="674 g", diameter="8in", height="1 cm")
    assert inches == pytest.approx(metric, rel=1e-9)


def test_an_edge_needs_half_its_weight() -> None:
    found = number("cream-edge", "needs_pa", height=60, density=0.72)
    assert found == pytest.approx(720 * 0.060 * 9.80665 / 2, rel=1e-9)


def test_sugar_holds_the_water_at_which_its_activity_is_that() -> None:
    held = number("water-held", "sugar_g", aw=0.9)
    assert sugar_solution_activity(held / 100) == pytest.approx(0.9, abs=1e-9)


def test_at_no_activity_starch_is_dry_and_of_sugar_nothing_is_said() -> None:
    assert run("water-held", aw=0) == {"starch_g": 0.0, "sugar_g": None}


@pytest.mark.parametrize(
    ("name", "inputs"),
    [
        ("cream-carries", {"load": -1, "diameter": 20, "height": 10}),
        ("cream-carries", {"load": 1, "diameter": 0, "height": 10}),
        ("cream-carries", {"load": 1, "diameter": 20, "height": 0}),
        ("cream-carries", {"load": 1e9, "diameter": 20, "height": 10}),
        ("cream-edge", {"height": -1, "density": 0.7}),
        ("cream-edge", {"height": 10, "density": 20}),
        ("water-held", {"aw": 1.0}),
        ("water-held", {"aw": -0.1}),
    ],
)
def test_what_is_no_layer_and_no_activity_is_refused(name: str, inputs: dict[str, float]) -> None:
    with pytest.raises(OutOfRangeError):
        run(name, **inputs)
