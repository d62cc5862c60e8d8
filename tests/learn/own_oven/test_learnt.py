"""One oven as a whole: its offset, its heat, its places, what is named and left out."""

import math
from dataclasses import replace

import numpy as np
import pytest

from krume.bake import Oven, Prediction, predict, simulate
from krume.learn import (
    FinishedBake,
    OvenLearnt,
    Reading,
    learn_oven,
    offset_said,
    oven_figure,
    same_cake,
)
from tests.learn.own_oven.cakes import CAKES, PRIOR, bake

READINGS = (Reading("r1", 160.0, (148.0, 152.0, 144.0)), Reading("r2", 200.0, (187.0, 189.0)))
FINE = (9, 12)
WEAK = 0.85


def _truth(cake: str, *, heat: float = WEAK) -> float:
    """Minutes to the core in an oven of a known heat, on a finer grid than the learning uses."""
    batter, tin = CAKES[cake]
    return simulate(batter, tin, Oven(170.0, heat=heat), cells=FINE).rule_minutes[0]


@pytest.fixture(scope="module")
def weak() -> OvenLearnt:
    """Three bakes in an oven 15 % weak, their minutes and cores read with noise."""
    rng = np.random.default_rng(5)
    made = []
    for k, cake in enumerate(("sponge", "nut", "sponge")):
        minutes = _truth(cake) * math.exp(float(rng.normal(0, 0.04)))
        core = round(95.0 + float(rng.normal(0, 0.5)), 1)
        made.append(bake(f"b{k}", cake, float(round(minutes)), core_c=core, day=f"day {k}"))
    return learn_oven((), made, PRIOR)


def test_after_three_bakes_the_minutes_hold_the_truth_and_are_far_narrower(
    weak: OvenLearnt,
) -> None:
    batter, tin = CAKES["sponge"]
    before = predict(batter, tin, Oven(170.0, temp_half_width_c=2.0))
    oven = Oven(170.0, heat=math.exp(weak.ln_heat), ln_heat_sd=weak.ln_heat_sd)
    now = predict(batter, tin, oven)
    assert isinstance(before, Prediction) and isinstance(now, Prediction)
    again = same_cake(
        weak, "sponge", batter_g=batter.mass_g, oven_c=170.0, model_min=now.bake.minutes
    )
    assert again is not None
    assert again.bakes == 2
    assert again.minutes.low <= _truth("sponge") <= again.minutes.high
    width = again.minutes.high - again.minutes.low
    assert width < (before.minutes.high - before.minutes.low) * 2 / 3


def test_another_cake_in_that_oven_is_narrower_too_and_holds_the_truth(weak: OvenLearnt) -> None:
    batter, tin = CAKES["butter"]
    now = predict(batter, tin, weak.oven(Oven(170.0), PRIOR))
    before = predict(batter, tin, Oven(170.0))
    assert isinstance(now, Prediction) and isinstance(before, Prediction)
    assert now.minutes.low <= _truth("butter") <= now.minutes.high
    ratio = math.log(now.minutes.high / now.minutes.low) / math.log(
        before.minutes.high / before.minutes.low
    )
    assert ratio < 0.9


def test_the_heat_is_found_within_its_doubt(weak: OvenLearnt) -> None:
    assert abs(weak.ln_heat - math.log(WEAK)) < weak.ln_heat_sd
    assert weak.ln_heat < 0
    assert weak.ln_heat_sd < PRIOR.ln_heat_sd
    assert (weak.bakes, weak.flagged) == (3, ())


def test_what_is_learnt_of_the_heat_is_not_doubted_again_as_temperature(weak: OvenLearnt) -> None:
    usual = Oven(170.0, temp_half_width_c=5.0)
    own = weak.oven(usual, PRIOR)
    left = weak.ln_heat_sd / PRIOR.ln_heat_sd
    assert (own.heat, own.ln_heat_sd) == (math.exp(weak.ln_heat), weak.ln_heat_sd)
    assert own.temp_half_width_c == pytest.approx(5.0 * left)
    assert own.temp_half_width_c < 3.0


def test_at_another_temperature_the_dial_may_be_off_otherwise(weak: OvenLearnt) -> None:
    halves = [
        weak.oven(Oven(temp, temp_half_width_c=5.0), PRIOR).temp_half_width_c
        for temp in (170.0, 190.0, 230.0, 290.0)
    ]
    assert halves == sorted(halves)
    assert halves[1] == pytest.approx(math.hypot(halves[0], 20 * oven_figure("offset-slope")))
    assert halves[-1] == 5.0


def test_an_oven_nobody_timed_keeps_all_its_doubt() -> None:
    usual = Oven(170.0)
    assert learn_oven((), (), PRIOR).oven(usual, PRIOR) == usual


def test_without_records_nothing_is_known() -> None:
    found = learn_oven((), (), PRIOR)
    assert (found.offset, found.heat, found.bakes) == (None, None, 0)
    assert (found.ln_heat, found.ln_heat_sd) == (0.0, 0.25)
    assert found.temp_sd_c(170.0, PRIOR) == 5.0


def test_readings_win_over_the_summary_and_the_summary_stands_in_for_them() -> None:
    said = offset_said(-20.0, at_dial_c=160.0, readings=3, spread_c=4.0, prior=PRIOR)
    with_readings = learn_oven(READINGS, (), PRIOR, said=said)
    assert with_readings.offset is not None
    assert with_readings.offset.at(160.0) == pytest.approx(-12.0, abs=0.2)
    assert learn_oven((), (), PRIOR, said=said).offset is said


def test_readings_with_the_fan_stand_in_for_those_without_but_wider() -> None:
    fan = tuple(replace(r, fan=True) for r in READINGS)
    here, there = learn_oven(READINGS, (), PRIOR), learn_oven(fan, (), PRIOR)
    assert here.offset is not None and there.offset is not None
    assert there.offset.at(160.0) == here.offset.at(160.0)
    assert there.offset.sd_c(160.0) > here.offset.sd_c(160.0) + 1
    assert here.carried == () and len(there.carried) == 1


def _bakes(**changes: object) -> tuple[FinishedBake, ...]:
    made = (bake("a", "sponge", 40.0), bake("b", "nut", 36.0))
    return tuple(replace(each, **changes) for each in made)  # type: ignore[arg-type]


def test_bakes_with_the_fan_say_nothing_of_the_oven_without_it() -> None:
    found = learn_oven((), _bakes(fan=True), PRIOR)
    assert (found.bakes, found.ln_heat_sd) == (0, PRIOR.ln_heat_sd)
    assert learn_oven((), _bakes(fan=True), PRIOR, fan=True).bakes == 2


def test_bakes_of_another_shelf_stand_in_but_wider() -> None:
    here, there = learn_oven((), _bakes(), PRIOR), learn_oven((), _bakes(shelf="low"), PRIOR)
    # What a low shelf does itself is the model's: the heat that is left is another.
    assert there.ln_heat != here.ln_heat
    assert abs(there.ln_heat - here.ln_heat) < 0.2
    assert here.ln_heat_sd < there.ln_heat_sd <= PRIOR.ln_heat_sd
    assert there.carried == ("its heat from bakes on the low shelf",)
    assert same_cake(there, "sponge", batter_g=540.0, oven_c=170.0, model_min=36.0) is None


def test_an_odd_bake_is_named_with_what_the_others_say() -> None:
    made = (*_bakes(), bake("c", "sponge", 95.0, day="other"))
    (flag,) = learn_oven((), made, PRIOR).flagged
    assert (flag.key, flag.code) == ("c", "bake-odd")
    assert flag.reason.startswith("95 min is ")
    assert "longer than what the others say (about 40 min)" in flag.reason


def test_two_that_contradict_are_both_named_so() -> None:
    made = (bake("a", "sponge", 20.0), bake("b", "sponge", 50.0))
    flags = learn_oven((), made, PRIOR).flagged
    assert [flag.key for flag in flags] == ["a", "b"]
    assert all("neither counts" in flag.reason for flag in flags)


def test_a_lone_odd_bake_is_held_against_the_usual_oven() -> None:
    (flag,) = learn_oven((), (bake("a", "sponge", 12.0),), PRIOR).flagged
    assert "shorter than in the usual oven" in flag.reason


def test_a_reading_written_twice_counts_once() -> None:
    found = learn_oven((READINGS[0], replace(READINGS[0], key="again")), (), PRIOR)
    assert found.offset is not None
    assert found.offset.readings == 3
    assert [flag.code for flag in found.flagged] == ["reading-twice"]
