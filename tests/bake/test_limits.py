"""Limits that give no minutes, and what widens the doubt: each said in a notice of its own."""

from dataclasses import replace

import pytest

from krume.bake import AirCourse, Around, Oven, Prediction, discrepancy_of, predict
from krume.bake.around import around_value
from krume.bake.parameters import value
from krume.base import Infeasible
from tests.bake.cases import BUTTER18, batter, tin


def _predicted(around: Around, text: str = "round 18 x 7 cm") -> Prediction:
    oven = Oven(165, around=around)
    found = predict(BUTTER18.batter, tin(text), oven, count=32)
    assert isinstance(found, Prediction)
    return found


AROUNDS = [
    (Around(jacket="wrapped"), "jacket-wrapped", "doubt-wrapped"),
    (Around(under="tray"), "under-tray", "doubt-tray"),
    (Around(under="insulated"), "under-insulated", "doubt-insulated"),
    (Around(under="stone"), "under-stone", "doubt-stone"),
    (Around(rack="low"), "rack-off-middle", "doubt-rack"),
    (Around(rack="high"), "rack-off-middle", "doubt-rack"),
    (Around(warming_from_c=20.0), "oven-warming", "doubt-warming"),
    (Around(door_min=(20.0,)), "door-opened", "doubt-door"),
    (Around(course=AirCourse((0.0, 10.0), (120.0, 165.0))), "air-given", "doubt-course"),
]


@pytest.mark.parametrize(("around", "code", "row"), AROUNDS, ids=[a[1] for a in AROUNDS])
def test_what_was_never_compared_is_said_and_widens_the_doubt(
    around: Around, code: str, row: str
) -> None:
    found = _predicted(around)
    (said,) = [n for n in found.notices if n.code == code]
    assert said.text.endswith("It was never compared with a bake. Wider doubt.")
    wide = (value("discrepancy") ** 2 + around_value(row) ** 2) ** 0.5
    assert found.discrepancy == pytest.approx(wide, rel=1e-12)


def test_doubts_of_several_surroundings_add_as_squares() -> None:
    both = Oven(165, around=Around(jacket="wrapped", under="stone", door_min=(9.0, 19.0)))
    found = discrepancy_of(BUTTER18.batter, BUTTER18.tin, both)
    rows = ("doubt-wrapped", "doubt-stone", "doubt-door", "doubt-door")
    squares = value("discrepancy") ** 2 + sum(around_value(row) ** 2 for row in rows)
    assert found == pytest.approx(squares**0.5, rel=1e-12)


def test_in_water_the_stand_under_the_tin_is_not_said() -> None:
    assert discrepancy_of(
        BUTTER18.batter, BUTTER18.tin, Oven(165, around=Around(jacket="water", under="stone"))
    ) == pytest.approx((value("discrepancy") ** 2 + around_value("doubt-water") ** 2) ** 0.5)


def test_a_core_near_boiling_is_not_met_in_water_and_the_reason_is_named() -> None:
    oven = Oven(165, around=Around(jacket="water"))
    found = predict(BUTTER18.batter, BUTTER18.tin, oven, count=16)
    assert isinstance(found, Infeasible)
    assert "water" in found.clashes[0].needs and "core" in found.clashes[0].needs


def test_a_plain_bake_has_no_notice_of_its_surroundings() -> None:
    codes = {n.code for n in _predicted(Around()).notices}
    assert codes == {"minutes-are-a-range"}


def test_a_cake_that_rises_over_its_rim_is_said_and_doubted_more() -> None:
    low = _predicted(Around(), "round 18 x 4 cm")
    assert "rises-over-rim" in {n.code for n in low.notices}
    assert low.discrepancy == value("discrepancy-rim")
    high = _predicted(Around())
    assert "rises-over-rim" not in {n.code for n in high.notices}
    assert high.discrepancy == value("discrepancy")
    wide = (low.minutes.high - low.minutes.low) / (high.minutes.high - high.minutes.low)
    assert wide > 1.03
    assert low.bake.minutes == high.bake.minutes


def test_a_ring_mould_is_a_tube_and_as_doubtful() -> None:
    mould = replace(tin("tube 20 x 10 cm hole 6 cm"), shape="ring-mould", height_cm=None)
    found = predict(batter("butter", 900), mould, Oven(165), count=16)
    assert isinstance(found, Prediction)
    assert "tube-unproven" in {n.code for n in found.notices}
    assert found.discrepancy == value("discrepancy-wide")
