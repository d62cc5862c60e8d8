"""An oven's offset from looks at a thermometer in it."""

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.learn import OffsetLearnt, Reading, learn_offset, offset_said
from tests.learn.own_oven.cakes import PRIOR


def _learnt(*readings: Reading) -> OffsetLearnt:
    found, flags = learn_offset(readings, PRIOR)
    assert found is not None
    assert flags == ()
    return found


def test_at_one_setting_the_offset_is_the_mean_of_the_looks_less_the_dial() -> None:
    found = _learnt(Reading("r", 160.0, (148.0, 152.0, 144.0)))
    assert found.at(160.0) == pytest.approx(-12.0, abs=1e-9)
    assert found.dial_for(148.0) == pytest.approx(160.0, abs=1e-9)
    assert (found.readings, found.swing_c) == (3, 4.0)


def test_more_looks_over_the_cycle_make_it_surer_but_never_surer_than_the_thermometer() -> None:
    looks = (148.0, 152.0, 144.0)
    few = _learnt(Reading("r", 160.0, looks))
    many = _learnt(*(Reading(f"r{k}", 160.0, looks * 4) for k in range(20)))
    assert PRIOR.thermometer_sd_c < many.sd_c(160.0) < few.sd_c(160.0)
    assert many.sd_c(160.0) == pytest.approx(2.0, abs=0.2)


def test_a_wilder_thermostat_leaves_a_wider_doubt() -> None:
    calm = _learnt(Reading("r", 160.0, (147.0, 148.0, 149.0, 148.0)))
    wild = _learnt(Reading("r", 160.0, (130.0, 166.0, 133.0, 163.0)))
    assert calm.at(160.0) == wild.at(160.0) == -12.0
    assert wild.sd_c(160.0) > 1.5 * calm.sd_c(160.0)


def test_between_two_settings_it_is_interpolated_and_beyond_them_the_doubt_grows() -> None:
    found = _learnt(
        *(Reading(f"a{k}", 150.0, (138.0, 140.0, 136.0)) for k in range(4)),
        *(Reading(f"b{k}", 210.0, (206.0, 208.0, 204.0)) for k in range(4)),
    )
    assert found.at(150.0) < found.at(180.0) < found.at(210.0)
    assert found.at(180.0) == pytest.approx(-8.0, abs=0.1)
    assert found.differs
    assert found.sd_c(180.0) < found.sd_c(210.0) < found.sd_c(260.0)


def test_two_settings_that_agree_do_not_differ() -> None:
    found = _learnt(Reading("a", 150.0, (138.0,)), Reading("b", 210.0, (199.0,)))
    assert not found.differs


def test_dial_and_true_temperature_are_inverse_of_one_another() -> None:
    found = _learnt(Reading("a", 150.0, (138.0,)), Reading("b", 210.0, (206.0,)))
    for true in (120.0, 170.0, 230.0):
        dial = found.dial_for(true)
        assert dial + found.at(dial) == pytest.approx(true, abs=1e-9)


@pytest.mark.parametrize(
    "cold",
    [
        Reading("cold", 160.0, (140.0, 141.0), after_min=12.0),
        Reading("cold", 160.0, (110.0, 125.0, 139.0)),
    ],
)
def test_a_reading_of_an_oven_still_warming_up_is_named_and_does_not_count(cold: Reading) -> None:
    warm = Reading("warm", 160.0, (148.0, 147.0))
    found, (flag,) = learn_offset((cold, warm), PRIOR)
    assert found is not None
    assert found.at(160.0) == pytest.approx(-12.5, abs=1e-9)
    assert (flag.key, flag.code) == ("cold", "warming-up")
    assert "warming up" in flag.reason


def test_looks_that_rise_long_after_switching_on_are_part_of_the_cycle() -> None:
    _, flags = learn_offset((Reading("r", 160.0, (140.0, 148.0, 155.0), after_min=60.0),), PRIOR)
    assert flags == ()


def test_a_reading_far_from_the_others_is_named_and_not_averaged_away() -> None:
    good = [Reading(f"r{k}", 160.0, (148.0 + k,)) for k in range(3)]
    found, (flag,) = learn_offset((*good, Reading("odd", 160.0, (185.0,))), PRIOR)
    assert found is not None
    assert found.at(160.0) == pytest.approx(-11.0, abs=1e-9)
    assert (flag.key, flag.code) == ("odd", "reading-odd")
    assert "36 °C above" in flag.reason


def test_of_two_readings_that_contradict_neither_counts_and_both_are_named() -> None:
    two = (Reading("a", 160.0, (148.0,)), Reading("b", 160.0, (180.0,)))
    found, flags = learn_offset(two, PRIOR)
    assert found is None
    assert [flag.key for flag in flags] == ["a", "b"]
    sure, (flag,) = learn_offset((replace(two[0], is_sure=True), two[1]), PRIOR)
    assert sure is not None and flag.key == "b"


def test_who_has_only_the_mean_gets_it_with_the_doubt_of_its_spread() -> None:
    said = offset_said(-12.0, at_dial_c=160.0, readings=6, spread_c=4.0, prior=PRIOR)
    assert said.at(160.0) == -12.0
    # Half a spread of 4 evenly over the cycle, six looks, a day's 2 K, a thermometer's 2 K.
    assert said.sd_c(160.0) == pytest.approx(math.sqrt(16 / 3 / 6 + 4 + 4), abs=1e-9)
    assert said.sd_c(220.0) > said.sd_c(160.0)


@given(st.floats(-40, 40), st.lists(st.floats(-5, 5), min_size=1, max_size=6))
def test_an_offset_moves_with_what_was_read(shift: float, wander: list[float]) -> None:
    here, _ = learn_offset((Reading("r", 160.0, tuple(150 + w for w in wander)),), PRIOR)
    there, _ = learn_offset((Reading("r", 160.0, tuple(150 + shift + w for w in wander)),), PRIOR)
    if here is not None and there is not None:
        assert there.at(160.0) - here.at(160.0) == pytest.approx(shift, abs=1e-6)
        assert there.sd_c(160.0) == pytest.approx(here.sd_c(160.0), abs=1e-6)


def _months(*means: float) -> OffsetLearnt:
    days = (f"2027-0{month}-03" for month in range(1, 10))
    return _learnt(
        *(Reading(day, 160.0, (m - 2, m + 2), day=day) for day, m in zip(days, means, strict=False))
    )


def test_an_oven_that_moved_over_months_says_by_how_much() -> None:
    moved = _months(148.0, 150.5, 153.0, 155.5, 158.0).drift_c
    assert moved == pytest.approx(10.0, abs=0.5)
    assert _months(148.0, 150.0, 147.0, 149.0, 148.0).drift_c is None


def test_a_few_days_say_nothing_of_drift() -> None:
    week = [Reading(f"r{k}", 160.0, (146.0 + 2 * k,), day=f"2027-06-0{k}") for k in range(1, 7)]
    assert _learnt(*week).drift_c is None
