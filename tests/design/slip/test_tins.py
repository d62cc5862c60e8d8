"""Where a batter of another size goes."""

import pytest

from krume.design.slip.tins import way_tin
from krume.size import Tin, read_tin
from tests.design.slip.demo import slip_of


def _tin(text: str) -> Tin:
    found = read_tin(text, where="tin").value
    assert found is not None
    return found


TINS = tuple(map(_tin, ("round 22 x 5 cm", "round 18 x 7 cm", "ring 22 x 6 cm")))


def test_depth_stands_beside_the_planned_one() -> None:
    found = way_tin(slip_of("F2", {}, density_g_ml=0.48), 519 * 1.2)
    assert found is not None
    assert found.was_depth_cm == pytest.approx(3.44, abs=0.005)
    assert found.depth_cm == pytest.approx(3.442 * 1.2, abs=0.005)
    assert found.fill == pytest.approx(0.59, abs=0.005)
    assert not found.is_full
    assert found.wanted_area_cm2 == pytest.approx(314.16 * 1.2, abs=0.05)


def test_the_tin_that_keeps_the_depth_is_named_and_a_ring_without_floor_is_none() -> None:
    found = way_tin(slip_of("F2", {}, density_g_ml=0.48, tins=TINS), 519 * 1.2)
    assert found is not None
    assert found.fits == "round 22 x 5 cm"


def test_no_tin_at_hand_is_said_and_a_full_one_too() -> None:
    found = way_tin(slip_of("F2", {}, density_g_ml=0.48, tins=TINS), 519 * 2)
    assert found is not None
    assert found.fits is None
    assert found.is_full


def test_the_own_tin_written_another_way_is_no_other_tin() -> None:
    same = (_tin("round 20 x 7 cm, greased"),)
    found = way_tin(slip_of("F2", {}, density_g_ml=0.48, tins=same), 519 * 1.05)
    assert found is not None
    assert found.fits == found.own == "round 20 x 7 cm"


def test_without_a_density_or_with_a_lined_tin_nothing_is_said() -> None:
    assert way_tin(slip_of("F2", {}), 600) is None
    assert way_tin(slip_of("F7", {}, density_g_ml=1.25), 500) is None
