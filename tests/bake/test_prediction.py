"""Predictions: intervals, refusals that name the limit, notices that say what was never tested."""

from dataclasses import replace

import pytest

from krume.bake import Bakes, Oven, Prediction, draw, predict, simulate, simulate_many
from krume.base import Infeasible
from tests.bake.cases import BUTTER18, CASES, Case, batter, tin


def _predicted(case: Case) -> Prediction:
    found = predict(case.batter, case.tin, case.oven)
    assert isinstance(found, Prediction)
    return found


TRADE = {
    "sponge20": (34, 40), "roulade": (10, 12), "sheet": (30, 36), "butter18": (46, 52),
    "cupcake": (18, 22), "loaf": (55, 65), "nut22": (26, 32), "chiffon": (42, 48),
}  # fmt: skip


@pytest.mark.source("common-practice", "ranges of the trade, no source")
@pytest.mark.parametrize("case", CASES, ids=lambda c: c.name)
def test_the_middle_of_the_trades_range_lies_inside_the_interval(case: Case) -> None:
    from tests.agreement import agrees

    low, high = TRADE[case.name]
    found = _predicted(case).minutes
    half = (found.high - found.low) / 2
    assert agrees(
        (found.low + found.high) / 2, f"{(low + high) / 2:.1f}", within=f"{half:.1f}",
        why="the interval is the claim",
    )  # fmt: skip


@pytest.mark.parametrize("case", CASES, ids=lambda c: c.name)
def test_minutes_are_whole_at_both_ends_and_checking_starts_at_the_low_one(case: Case) -> None:
    found = _predicted(case)
    assert found.minutes.low == int(found.minutes.low) == found.check_from_min
    assert found.minutes.high == int(found.minutes.high)
    assert found.minutes.low < found.minutes.best < found.minutes.high


def test_a_calibrated_oven_narrows_the_interval() -> None:
    known = replace(BUTTER18.oven, ln_heat_sd=0.07, temp_half_width_c=2.0)
    narrow = predict(BUTTER18.batter, BUTTER18.tin, known)
    wide = _predicted(BUTTER18)
    assert isinstance(narrow, Prediction)
    assert narrow.minutes.high - narrow.minutes.low < 0.75 * (wide.minutes.high - wide.minutes.low)


def test_the_same_question_gets_the_same_answer() -> None:
    assert _predicted(BUTTER18).minutes == _predicted(BUTTER18).minutes


@pytest.mark.parametrize("temp_c", [80.0, 99.9, 300.1, 450.0])
def test_an_oven_outside_the_model_gives_no_minutes(temp_c: float) -> None:
    found = predict(BUTTER18.batter, BUTTER18.tin, Oven(temp_c))
    assert isinstance(found, Infeasible)
    assert found.clashes[0].name == "oven"


def test_batter_above_the_rim_names_both_figures_and_what_fits() -> None:
    found = predict(batter("hazel", 1500), tin("round 20 x 5 cm"), Oven(170))
    assert isinstance(found, Infeasible)
    clash = found.clashes[0]
    assert clash.name == "tin height" and "5 cm" in clash.limit and "9.9" in clash.needs


def test_a_bake_that_never_ends_names_the_rule_it_misses() -> None:
    found = predict(batter("hazel", 540), tin("round 20 x 7 cm"), Oven(101))
    assert isinstance(found, Infeasible)
    assert found.clashes[0].name == "time" and "core" in found.clashes[0].needs


def test_a_stated_core_moves_with_the_boiling_point_at_altitude() -> None:
    low = simulate(BUTTER18.batter, BUTTER18.tin, Oven(165)).core_c
    high = simulate(BUTTER18.batter, BUTTER18.tin, Oven(165, altitude_m=1600)).core_c
    assert low == pytest.approx(97.0)
    assert low - high == pytest.approx(101.38 - 95.99, abs=0.15)


def test_a_core_is_never_asked_closer_than_two_kelvin_to_boiling() -> None:
    bake = simulate(replace(BUTTER18.batter, core_c=101.0), BUTTER18.tin, Oven(165))
    assert bake.core_c == pytest.approx(bake.boiling_c - 2)


@pytest.mark.parametrize(
    ("text", "oven", "code"),
    [
        ("tube 20 x 10 cm hole 6 cm", Oven(165), "tube-unproven"),
        ("round 18 x 7 cm", Oven(230), "oven-unproven"),
        ("round 40 x 7 cm", Oven(165), "depth-unproven"),
        ("round 18 x 7 cm", Oven(165, altitude_m=2600), "altitude-unproven"),
        ("silicone round 18 x 7 cm", Oven(165), "silicone-unproven"),
    ],
)
def test_where_the_model_was_never_tested_it_says_so_and_widens(
    text: str, oven: Oven, code: str
) -> None:
    found = predict(batter("butter", 640), tin(text), oven)
    assert isinstance(found, Prediction)
    assert code in {n.code for n in found.notices}
    assert found.discrepancy == (0.12 if code == "silicone-unproven" else 0.25)


def test_cups_of_a_tray_bake_as_one_cup_of_their_share() -> None:
    tray = simulate(batter("butter", 660), tin("tray 12 x 6.3 x 4 cm"), Oven(175))
    cup = simulate(batter("butter", 55), tin("round 6.3 x 4 cm"), Oven(175))
    assert tray.minutes == pytest.approx(cup.minutes, rel=1e-6)


def test_many_draws_at_once_are_arrays_of_their_length() -> None:
    draws = draw(BUTTER18.batter, BUTTER18.oven, count=8, discrepancy=0.12)
    many = simulate_many(BUTTER18.batter, BUTTER18.tin, BUTTER18.oven, draws)
    assert isinstance(many, Bakes)
    assert many.minutes.shape == (9,) and many.rule_minutes.shape == (9, 3)


def test_a_dense_batter_of_unknown_density_is_baked_without_a_fault() -> None:
    dense = replace(BUTTER18.batter, density_g_ml=0.95, density_measured=False)
    found = predict(dense, tin("dark round 18 x 7 cm"), Oven(165))
    assert isinstance(found, Prediction)
    assert found.stalled == 0
