"""The oven as one lump: heat in equals heat out and heat kept, and what a test bake takes."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from krume.bake import oven_air_figures, oven_box, warming_kwh
from krume.bake.oven_air import (
    AIR_STEP_S,
    OvenBox,
    box_draws,
    oven_air,
    oven_air_half_width,
    oven_air_value,
)
from krume.bake.parameters import value
from krume.base import DataError
from tests.agreement import agrees

STEPS = 720
KJ_PER_KWH = 3600.0


def _taken(watts: float) -> np.ndarray:
    return watts * AIR_STEP_S * np.arange(STEPS + 1, dtype=np.float64)


def test_every_figure_says_what_it_is_of_and_how_sure_it_is() -> None:
    for key, figure in oven_air_figures().items():
        assert figure.basis, key
        assert figure.status in ("assumed", "from memory", "published"), key


@settings(max_examples=25)
@given(
    set_c=st.floats(120, 230),
    watts=st.floats(0, 1500),
    power_w=st.floats(300, 3000),
    door=st.floats(0, 40),
)
def test_what_the_heaters_give_is_lost_taken_or_kept(
    set_c: float, watts: float, power_w: float, door: float
) -> None:
    draws = box_draws(oven_box(power_w=power_w), count=3)
    air = oven_air(draws, set_c, _taken(watts), [(20.0, door)])
    given_j = air.heater_w.sum(axis=1) * AIR_STEP_S
    lost = air.loss_w.sum(axis=1) * AIR_STEP_S + draws.heat_j_k * door
    kept = -draws.heat_j_k * air.short_k[:, -1]
    assert given_j == pytest.approx(lost + kept + watts * AIR_STEP_S * STEPS, rel=1e-9, abs=1)


@settings(max_examples=25)
@given(set_c=st.floats(120, 230), watts=st.floats(0, 1500), power_w=st.floats(300, 3000))
def test_more_heat_taken_or_less_power_never_lifts_the_air(
    set_c: float, watts: float, power_w: float
) -> None:
    plain = oven_air(box_draws(oven_box(power_w=power_w)), set_c, _taken(watts), ())
    more = oven_air(box_draws(oven_box(power_w=power_w)), set_c, _taken(1.2 * watts), ())
    weaker = oven_air(box_draws(oven_box(power_w=0.8 * power_w)), set_c, _taken(watts), ())
    assert (more.short_k >= plain.short_k - 1e-9).all()
    assert (weaker.short_k >= plain.short_k - 1e-9).all()
    assert (plain.heater_w <= power_w + 1e-9).all()


def test_after_the_door_the_air_comes_back_as_the_bake_model_has_it() -> None:
    air = oven_air(box_draws(oven_box()), 170.0, _taken(0), [(0.0, value("door-dip"))])
    tau = value("door-recovery")
    wanted = value("door-dip") * np.exp(-60 * air.time_min[1:] / tau)
    assert air.short_k[0, 1:] == pytest.approx(wanted, abs=0.25)


def test_a_steady_load_holds_the_air_as_far_down_as_the_thermostat_answers() -> None:
    box = oven_box()
    air = oven_air(box_draws(box), 170.0, _taken(100), ())
    assert air.short_k[0, -1] == pytest.approx(
        100 * value("door-recovery") / box.heat_j_k, rel=1e-3
    )


def test_loads_hold_the_air_no_further_down_than_the_band_while_the_heaters_can() -> None:
    band = oven_air_value("thermostat-band")
    strong = oven_air(box_draws(oven_box()), 170.0, _taken(1500), ())
    assert strong.short_k[0].max() == pytest.approx(band)
    assert (strong.heater_w <= oven_box().power_w).all()
    weak = oven_air(box_draws(oven_box()), 170.0, _taken(2500), ())
    assert weak.short_k[0, -1] > 3 * band
    assert weak.heater_w[0, -1] == oven_box().power_w


def test_an_oven_that_cannot_hold_its_setting_comes_to_rest_under_it() -> None:
    box = oven_box(power_w=300)
    air = oven_air(box_draws(box), 170.0, np.zeros(20 * STEPS + 1), ())
    rest = box.room_c + 300 / box.loss_w_k
    assert 170 - air.short_k[0, -1] == pytest.approx(rest, abs=0.1)
    assert math.isinf(warming_kwh(box, 170.0))


@pytest.mark.source("eu-oven-sheets", "energy consumption per cycle, five sheets, 0.76 to 1.10")
def test_a_test_bake_of_a_wet_brick_takes_what_the_sheets_say() -> None:
    box: OvenBox = oven_box()
    set_c = box.room_c + oven_air_value("brick-rise")
    warming_s = (
        -box.heat_j_k
        / box.loss_w_k
        * math.log(1 - oven_air_value("brick-rise") * box.loss_w_k / box.power_w)
    )
    steps = round((60 * oven_air_value("brick-minutes") - warming_s) / AIR_STEP_S)
    taken = np.linspace(0, 1000 * oven_air_value("brick-heat"), steps + 1)
    air = oven_air(box_draws(box), set_c, taken, ())
    kwh = warming_kwh(box, set_c) + float(air.heater_kwh()[0])
    assert agrees(kwh, "0.93", within="0.17", why="five sheets of ovens of 40 to 73 litres")


def test_draws_begin_with_the_box_itself_and_known_power_has_no_doubt() -> None:
    draws = box_draws(oven_box(power_w=1800), count=64)
    assert len(draws) == 65
    assert draws.heat_j_k[0] == oven_air_value("oven-heat")
    assert set(draws.power_w.tolist()) == {1800.0}
    assert len(set(box_draws(oven_box(), count=64).power_w.tolist())) > 60
    spread = np.std(np.log(draws.loss_w_k[1:]))
    asked = oven_air_half_width("oven-loss") / oven_air_value("oven-loss")
    assert spread == pytest.approx(asked, rel=0.05)


def test_a_doubt_that_its_row_does_not_give_is_never_taken_for_none() -> None:
    with pytest.raises(DataError, match=r"oven_air\.csv, row same-door"):
        oven_air_half_width("same-door")
