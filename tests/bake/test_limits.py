"""Limits that give no minutes, and what widens the doubt: each said in a notice of its own."""

import re
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from krume.bake import (
    AirCourse,
    Around,
    Batter,
    Oven,
    Prediction,
    Track,
    depth_cm,
    discrepancy_of,
    is_core_capped,
    predict,
)
from krume.bake.around import around_value
from krume.bake.limits import never
from krume.bake.parameters import value
from krume.bake.state import Outcome
from krume.base import Infeasible, as_text
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
    assert found.clashes[0].said.startswith("The likeliest bake is never done: in 200 minutes the ")
    assert found.clashes[0].said.endswith("take less of it or none (--jacket none).")


def _said(made: Batter, pan: str, oven: Oven, count: int = 16) -> str:
    found = predict(made, tin(pan), oven, count=count)
    assert isinstance(found, Infeasible)
    (clash,) = found.clashes
    return clash.said


@pytest.mark.parametrize(
    ("temp_c", "has"), [(99.9, "99.9"), (99.996, "99.996"), (95.0, "95"), (300.4, "300.4")]
)
def test_an_oven_out_of_range_is_not_rounded_into_it(temp_c: float, has: str) -> None:
    assert _said(BUTTER18.batter, "round 18 x 7 cm", Oven(temp_c)) == (
        f"An oven of {has} °C is not known to the model. Name one of 100 to 300 °C."
    )


def test_what_stands_over_the_rim_is_said_with_what_fits() -> None:
    made = batter("butter", 1200)
    assert _said(made, "round 18 x 4 cm", Oven(165)) == (
        "1200 g stands 5.5 cm deep in a tin of 4 cm; 865 g fit."
    )
    depth = depth_cm(made, tin("round 18 x 4 cm"))
    pan = replace(tin("round 18 x 4 cm"), height_cm=depth - 1e-3)
    found = predict(made, pan, Oven(165), count=16)
    assert isinstance(found, Infeasible)
    deep, high = re.findall(r"([\d.]+) cm", found.clashes[0].said)
    assert float(deep) > float(high)


def test_a_bake_that_is_never_done_is_told_from_draws_that_are_not() -> None:
    rules = np.array([[150.0, 30.0, 60.0], [np.inf, 30.0, 60.0], [np.inf, 30.0, 60.0]])
    track = Track((1.0, 2.0), (20.0, 90.2), (20.0, 99.0), (0.0, 1.0), (0.0, 0.1))
    few = Outcome(rules, np.zeros(3), 101.0, 95.0, track, 0.05, 3)
    assert never(few, Oven(110)).said == (
        "More than a tenth of the draws are never done, though the likeliest bake is: in 200 "
        "minutes the core does not get to 95 °C. No minutes are given."
    )
    none = replace(few, minutes=rules[1:])
    assert never(none, Oven(110)).said == (
        "The likeliest bake is never done: in 200 minutes the core does not get to 95 °C, it gets "
        "to 90 °C. No minutes are given."
    )
    unset = replace(few, minutes=np.array([[50.0, np.inf, 60.0]]))
    assert "egg and starch do not set all through." in never(unset, Oven(110)).said


@pytest.mark.parametrize(
    ("core_c", "altitude_m", "code"),
    [(97.0, 0.0, None), (97.0, 1600.0, "core-moved"), (120.0, 0.0, "core-capped")],
)
def test_a_core_that_is_not_the_formulas_own_is_said(
    core_c: float, altitude_m: float, code: str | None
) -> None:
    found = predict(
        batter("butter", 640, core_c=core_c),
        BUTTER18.tin,
        Oven(165, altitude_m=altitude_m),
        count=16,
    )
    assert isinstance(found, Prediction)
    said = [n for n in found.notices if n.code.startswith("core-")]
    assert [n.code for n in said] == ([] if code is None else [code])
    for notice in said:
        for figure in (core_c, found.core_c, found.bake.boiling_c):
            assert f"{as_text(figure, 1)} °C" in notice.text
    assert is_core_capped(found.core_c, found.bake.boiling_c) == (code == "core-capped")


def test_no_batter_loses_more_than_its_water() -> None:
    for made, pan, oven in (
        (batter("hazel", 100), "round 20 x 7 cm", Oven(170)),
        (BUTTER18.batter, "round 18 x 7 cm", Oven(165, altitude_m=5000.0)),
    ):
        found = predict(made, tin(pan), oven, count=64)
        assert isinstance(found, Prediction)
        assert found.loss_pct.high <= 100 * made.water
        assert found.loss_pct.low <= found.loss_pct.best <= found.loss_pct.high


def test_a_plain_bake_has_no_notice_of_its_surroundings() -> None:
    codes = {n.code for n in _predicted(Around()).notices}
    assert codes == {"minutes-are-a-range"}


def test_a_cake_that_rises_over_its_rim_is_said_and_doubted_more() -> None:
    low = _predicted(Around(), "round 18 x 4 cm")
    (over,) = [n.text for n in low.notices if n.code == "rises-over-rim"]
    # How high a cake gets is no promise: only the rim's own figure is told.
    assert re.findall(r"[\d.]+ cm", over) == ["4 cm"]
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


@pytest.mark.parametrize(("row", "beyond"), [("compared-coldest", -1), ("compared-hottest", 1)])
def test_the_doubt_widens_past_the_ovens_of_the_rows_and_not_at_them(row: str, beyond: int) -> None:
    at, past = (Oven(value(row) + by) for by in (0, beyond))
    pan = tin("round 18 x 7 cm")
    assert discrepancy_of(BUTTER18.batter, pan, at) == value("discrepancy")
    assert discrepancy_of(BUTTER18.batter, pan, past) == value("discrepancy-wide")


@pytest.mark.parametrize("row", ["oven-coldest", "oven-hottest"])
def test_an_oven_past_the_rows_has_no_minutes(row: str) -> None:
    beyond = -1 if row == "oven-coldest" else 1
    found = predict(BUTTER18.batter, BUTTER18.tin, Oven(value(row) + beyond), count=8)
    assert isinstance(found, Infeasible) and found.clashes[0].name == "oven"
    assert f"{value('oven-coldest'):g} to {value('oven-hottest'):g} °C" in found.clashes[0].needs


def test_the_page_names_what_was_compared_as_the_rows_have_it() -> None:
    page = (Path(__file__).parents[2] / "docs" / "models" / "bake.md").read_text(encoding="utf-8")
    thin, deep = (10 * value(f"compared-{end}") for end in ("thinnest", "deepest"))
    cold, hot = (value(f"compared-{end}") for end in ("coldest", "hottest"))
    assert f"batter under {thin:g} or over {deep:g} mm, ovens outside {cold:g}–{hot:g} °C" in page
    assert f"above {value('plain-altitude-most'):g} m." in page
    least, most = value("oven-coldest"), value("oven-hottest")
    assert f"an oven outside {least:g}–{most:g} °C" in page
