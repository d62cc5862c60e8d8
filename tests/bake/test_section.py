"""Cuts of the cake: the batter at the door, the same core as the bake's curve, edges that rise."""

import numpy as np
import pytest

from krume.bake import Section, sections, simulate
from krume.base import OutOfRangeError
from tests.bake.cases import BUTTER18, CASES


def test_at_the_door_the_cut_is_the_batter() -> None:
    (cut,) = sections(BUTTER18.batter, BUTTER18.tin, BUTTER18.oven, at_min=[0])
    assert {t for row in cut.temp_c for t in row} == {21.0}
    assert cut.radius_cm[0] == 0 and cut.radius_cm[-1] == pytest.approx(9.0)
    assert cut.height_cm[0] == 0 and cut.height_cm[-1] == pytest.approx(2.96, abs=0.01)
    assert (cut.delta_e, cut.crust_mm) == (0, 0)


def test_a_cut_shows_the_core_of_the_curve_at_that_minute() -> None:
    bake = simulate(BUTTER18.batter, BUTTER18.tin, BUTTER18.oven)
    found = sections(BUTTER18.batter, BUTTER18.tin, BUTTER18.oven, at_min=[12, 30, bake.minutes])
    low = int(np.sum(np.array(found[0].height_cm[:-1]) < 0.85 * found[0].height_cm[-1]))
    for cut in found:
        core = min(t for row in cut.temp_c[: low - 1] for t in row)
        at = np.interp(cut.time_min, bake.curve.time_min, bake.curve.core_c)
        assert core == pytest.approx(at, abs=0.3)
        colour = np.interp(cut.time_min, bake.curve.time_min, bake.curve.colour)
        assert cut.delta_e == pytest.approx(colour, abs=1e-9)


def test_cuts_come_in_the_order_asked_and_grow_and_crust_over_time() -> None:
    late, early = sections(BUTTER18.batter, BUTTER18.tin, BUTTER18.oven, at_min=[50, 20])
    assert (late.time_min, early.time_min) == (50, 20)
    assert late.height_cm[-1] > early.height_cm[-1]
    assert late.crust_mm > early.crust_mm > 0
    assert late.delta_e > early.delta_e > 0


def _edges(index: int) -> Section:
    case = CASES[index]
    return sections(case.batter, case.tin, case.oven, at_min=[5], cells=(4, 5))[0]


def test_a_tube_begins_at_its_hole_and_a_loaf_is_cut_across() -> None:
    assert _edges(7).radius_cm[0] == pytest.approx(3.0)
    assert _edges(6).radius_cm[-1] == pytest.approx(11.5 / 2)


def test_rows_and_rings_are_those_asked() -> None:
    cut = _edges(0)
    assert (len(cut.temp_c), len(cut.temp_c[0])) == (5, 4)
    assert (len(cut.height_cm), len(cut.radius_cm)) == (6, 5)


@pytest.mark.parametrize("minute", [-1.0, 201.0, float("nan")])
def test_a_minute_outside_the_model_is_refused(minute: float) -> None:
    with pytest.raises(OutOfRangeError, match="0 to 200"):
        sections(BUTTER18.batter, BUTTER18.tin, BUTTER18.oven, at_min=[minute])
