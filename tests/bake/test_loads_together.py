"""Several loads in one oven: nothing changes for a lone tin, and all orderings hold."""

import math
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from krume.bake import (
    AirCourse,
    Around,
    Oven,
    OvenBox,
    OvenLoad,
    Prediction,
    Together,
    loads_together,
    oven_box,
    predict,
    together,
)
from krume.base import Infeasible, InputError
from tests.bake.cases import CASES, batter, tin

SPONGE = OvenLoad(CASES[0].batter, CASES[0].tin)
ROLL = OvenLoad(CASES[2].batter, CASES[2].tin)
OVEN, BOX, SHUT = Oven(170), oven_box(), replace(oven_box(), door_fall_k=0.0)


@cache
def _of(*loads: OvenLoad, oven: Oven = OVEN, box: OvenBox = BOX, count: int = 4) -> Together:
    found = together(loads, oven, box, count=count)
    assert isinstance(found, Together)
    return found


def _likely(found: Together, place: int = 0) -> float:
    prediction = found.loads[place].prediction
    return prediction.bake.minutes if isinstance(prediction, Prediction) else math.inf


def test_a_lone_tin_bakes_as_without_all_this_to_the_digit() -> None:
    found = _of(SPONGE, count=64)
    plain = predict(SPONGE.batter, SPONGE.tin, OVEN, count=64)
    assert found.loads[0].prediction == plain
    assert (found.loads[0].course, found.loads[0].short_k) == (None, 0.0)
    assert (found.loads[0].heat_factor, found.last) == (1.0, 0)


def test_a_load_that_goes_in_when_the_other_is_out_changes_nothing() -> None:
    found = _of(ROLL, replace(ROLL, in_min=60.0), oven=Oven(190))
    assert [each.short_k for each in found.loads] == pytest.approx([0, 0], abs=1e-3)
    alone = _likely(_of(ROLL, oven=Oven(190)))
    assert [_likely(found, place) for place in (0, 1)] == pytest.approx([alone] * 2, rel=1e-4)
    assert found.last == 1


@pytest.mark.parametrize("seed", range(4))
def test_more_tins_are_later_and_a_late_load_delays_less_than_one_at_once(seed: int) -> None:
    mass, temp = (360, 400, 440, 380)[seed], (165, 180, 195, 190)[seed]
    load = replace(ROLL, batter=batter("roulade", mass, colour="pale"))
    oven, late = Oven(temp), replace(load, in_min=(3.0, 5.0, 4.0, 6.0)[seed])
    alone = _likely(_of(load, oven=oven, box=SHUT))
    two = _likely(_of(load, load, oven=oven, box=SHUT))
    later = _likely(_of(load, late, oven=oven, box=SHUT))
    more = _likely(_of(load, replace(load, tins=2), oven=oven, box=SHUT))
    assert alone < later < two < more


@pytest.mark.parametrize("fan", [False, True])
def test_less_power_is_later_down_to_an_oven_that_never_gets_there(fan: bool) -> None:
    load, oven = replace(ROLL, tins=2), Oven(190, fan=fan)
    found = [_of(load, oven=oven, box=oven_box(power_w=p)) for p in (2300, 1200, 700, 500)]
    minutes = [_likely(each) for each in found]
    assert minutes == sorted(minutes)
    assert minutes[0] < minutes[-1]
    assert not found[0].loads[0].notices
    (notice,) = found[-1].loads[0].notices
    assert notice.code == "oven-weak"
    assert notice.text.startswith("The air never comes back above ")
    assert notice.text.endswith("the oven is too weak for 2 tins like this.")


def test_a_hopeless_oven_is_answered_and_a_strong_one_is_never_called_weak() -> None:
    many = (replace(SPONGE, tins=4), replace(ROLL, tins=3, in_min=5.0))
    hopeless = _of(*many, oven=Oven(210), box=oven_box(power_w=300), count=0)
    assert all(each.notices for each in hopeless.loads)
    assert min(load.back_c for load in hopeless.loads) >= BOX.room_c
    strong = _of(*many, oven=Oven(210), count=0)
    assert not any(each.notices for each in strong.loads)
    early = replace(SPONGE, out_min=0.2)
    assert not _of(early, ROLL, count=0).loads[0].notices


def test_a_heavier_or_colder_neighbour_holds_the_air_lower() -> None:
    light = _of(SPONGE, ROLL, box=SHUT).loads[0].short_k
    heavy = replace(ROLL, batter=replace(ROLL.batter, mass_g=600))
    cold = replace(ROLL, batter=replace(ROLL.batter, temp_c=5))
    assert _of(SPONGE, heavy, box=SHUT).loads[0].short_k > light
    assert _of(SPONGE, cold, box=SHUT).loads[0].short_k > light


def test_the_door_for_a_late_load_is_counted_and_told_apart() -> None:
    late = replace(ROLL, in_min=10.0)
    shut, opened = _of(SPONGE, late, box=SHUT).loads[0], _of(SPONGE, late).loads[0]
    assert shut.door_k == 0
    assert opened.door_k > 0
    assert opened.short_k == pytest.approx(shut.short_k + opened.door_k, rel=0.1)
    assert _likely(_of(SPONGE, late)) > _likely(_of(SPONGE, late, box=SHUT))
    assert _of(SPONGE, replace(ROLL, in_min=0.5)).loads[0].door_k < opened.door_k


def test_without_draws_the_likely_minutes_are_those_with_them() -> None:
    late = replace(ROLL, in_min=4.0)
    plain, drawn = _of(ROLL, late, count=0), _of(ROLL, late)
    for place in (0, 1):
        assert plain.loads[place].prediction is None
        assert plain.loads[place].likely_min == pytest.approx(_likely(drawn, place), rel=0.03)
        assert plain.loads[place].later_factor > 1
        assert plain.loads[place].later_ln > 0
    assert plain.last == drawn.last == 1


def test_a_third_pass_moves_no_minute_by_much(monkeypatch: pytest.MonkeyPatch) -> None:
    loads = (SPONGE, replace(ROLL, in_min=4.0), replace(SPONGE, in_min=9.0))
    twice = together(loads, OVEN, BOX, count=0)
    monkeypatch.setattr(loads_together, "_PASSES", 3)
    thrice = together(loads, OVEN, BOX, count=0)
    assert isinstance(twice, Together)
    assert isinstance(thrice, Together)
    for one, other in zip(twice.loads, thrice.loads, strict=True):
        assert one.likely_min == pytest.approx(other.likely_min, rel=0.02)


def test_a_load_that_came_out_early_leaves_its_neighbour_sooner_done() -> None:
    whole, early = _of(SPONGE, SPONGE), _of(SPONGE, replace(SPONGE, out_min=8.0))
    assert 1 < early.loads[0].later_factor < whole.loads[0].later_factor


def test_who_is_last_is_named_by_the_clock() -> None:
    assert _of(SPONGE, replace(ROLL, in_min=5.0)).last == 0
    assert _of(SPONGE, replace(ROLL, in_min=40.0)).last == 1


def test_the_doubt_of_the_oven_widens_the_minutes_beside_the_own_doubt() -> None:
    known = Oven(170, ln_heat_sd=0.07, temp_half_width_c=2.0)
    alone, four = (
        _of(SPONGE, oven=known, count=64),
        _of(replace(SPONGE, tins=4), oven=known, count=64),
    )
    spans = []
    for found in (alone, four):
        prediction = found.loads[0].prediction
        assert isinstance(prediction, Prediction)
        spans.append(prediction.minutes.high / prediction.minutes.low)
    assert spans[1] > spans[0]


def test_more_tins_than_the_oven_takes_are_refused_with_both_figures() -> None:
    two = oven_box(tins_most=2)
    found = together([replace(SPONGE, tins=2), SPONGE], OVEN, two, count=0)
    assert isinstance(found, Infeasible)
    (clash,) = found.clashes
    assert (clash.name, clash.needs, clash.has) == ("oven", "room for 3", "room for 2 tins")
    later = together([replace(SPONGE, tins=2), replace(SPONGE, in_min=90)], OVEN, two, count=0)
    assert isinstance(later, Together)


def test_a_batter_above_its_rim_is_refused_for_its_load_alone() -> None:
    full = OvenLoad(CASES[0].batter, tin("round 20 x 2 cm"))
    found = _of(ROLL, full)
    assert isinstance(found.loads[0].prediction, Prediction)
    assert isinstance(found.loads[1].prediction, Infeasible)
    assert found.last is None


@pytest.mark.parametrize(
    "around",
    [Around(warming_from_c=60.0), Around(door_min=(5.0,)), Around(course=AirCourse((0,), (170,)))],
)
def test_an_oven_that_warms_or_is_opened_on_the_way_is_not_worked_out(around: Around) -> None:
    with pytest.raises(InputError, match="an oven that is hot, and shut but to load it"):
        together([SPONGE], replace(OVEN, around=around), BOX)
    with pytest.raises(InputError, match="an oven that is hot"):
        together([replace(SPONGE, around=around)], OVEN, BOX)
    with pytest.raises(InputError, match="Name at least one load"):
        together([], OVEN, BOX)


def test_the_air_begins_at_its_setting_and_the_energy_is_loss_and_heat_and_door() -> None:
    found = _of(ROLL, replace(ROLL, in_min=4.0), oven=Oven(190))
    assert found.time_min[0] == 0
    assert found.air_c[0] == pytest.approx(190)
    assert min(found.air_c) < 170
    minutes = _likely(found, 1) + 4
    loss = BOX.loss_w_k * (190 - BOX.room_c) * minutes * 60 / 3.6e6
    assert loss < found.heater_kwh < loss + 0.25


TABLE = {
    "alone": ((SPONGE,), BOX),
    "a second at once": ((replace(SPONGE, tins=2),), BOX),
    "a second 10 min later": ((SPONGE, replace(SPONGE, in_min=10.0)), BOX),
    "a second 20 min later": ((SPONGE, replace(SPONGE, in_min=20.0)), BOX),
    "four at once": ((replace(SPONGE, tins=4),), BOX),
    "two at once, heaters of 500 W": ((replace(SPONGE, tins=2),), oven_box(power_w=500)),
}


@pytest.mark.pin
@pytest.mark.parametrize("case", TABLE)
def test_the_table_of_the_page_holds(case: str) -> None:
    page = Path(__file__).parents[2] / "docs" / "models" / "several-tins.md"
    rows = [line.split("|")[1:-1] for line in page.read_text("utf-8").splitlines() if "|" in line]
    row = next(row for row in rows if row[0].strip() == case)
    minutes, lower, less = (float(cell.split("(")[0]) for cell in row[1:])
    loads, box = TABLE[case]
    found = _of(*loads, box=box, count=0).loads[0]
    assert found.likely_min == pytest.approx(minutes, abs=0.75)
    assert found.short_k == pytest.approx(lower, abs=0.75)
    assert 100 * (1 - found.heat_factor) == pytest.approx(less, abs=0.75)
