"""Neighbours on the shelf: more of them, nearer and longer take more; alone nothing is taken."""

from dataclasses import replace

import pytest

from krume.bake import Around, OvenLoad, oven_box
from krume.bake.crowding import covered, crowding, overlap
from krume.bake.oven_air import oven_air_value
from tests.bake.cases import CASES, tin

BOX = oven_box()
ONE = OvenLoad(CASES[0].batter, CASES[0].tin)


def _factor(*loads: OvenLoad, fan: bool = False) -> float:
    return crowding(0, loads, BOX, [34.0] * len(loads), fan=fan).factor


def test_alone_nothing_is_taken_and_nothing_is_in_doubt() -> None:
    found = crowding(0, [ONE], BOX, [34.0], fan=False)
    assert (found.factor, found.ln_sd) == (1.0, 0.0)


def test_a_tin_covers_its_outer_circle() -> None:
    assert covered(ONE, BOX) == pytest.approx(314.159 / (46 * 36), rel=1e-5)
    tube = replace(ONE, tin=tin("tube 20 x 10 cm hole 6 cm"))
    assert covered(tube, BOX) == pytest.approx(covered(ONE, BOX), rel=1e-9)


def test_two_tins_of_one_load_are_two_loads_of_one_tin() -> None:
    assert _factor(replace(ONE, tins=2)) == pytest.approx(_factor(ONE, ONE), rel=1e-12)


def test_more_tins_take_more_and_six_lie_in_what_is_reported_of_a_full_oven() -> None:
    found = [_factor(replace(ONE, tins=n)) for n in (1, 2, 3, 4, 6)]
    assert found == sorted(found, reverse=True)
    assert 0.6 <= found[-1] <= 0.8


def test_a_wider_gap_another_shelf_and_the_fan_take_less() -> None:
    touching = _factor(replace(ONE, gap_cm=0.0), ONE)
    apart = _factor(replace(ONE, gap_cm=oven_air_value("gap-open")), ONE)
    assert touching < _factor(ONE, ONE) < apart
    assert apart < _factor(ONE, replace(ONE, around=Around(rack="low"))) < 1
    assert _factor(ONE, ONE) < _factor(ONE, ONE, fan=True) < 1


def test_a_load_counts_by_the_share_of_the_bake_it_is_there() -> None:
    later = replace(ONE, in_min=17.0)
    assert overlap(ONE, 34.0, later, 34.0) == pytest.approx(0.5)
    assert overlap(ONE, 34.0, replace(ONE, in_min=34.0), 34.0) == 0
    assert overlap(ONE, 34.0, replace(ONE, out_min=3.4), 34.0) == pytest.approx(0.1)
    assert _factor(ONE, ONE) < _factor(ONE, later) < _factor(ONE, replace(ONE, in_min=40.0)) == 1
