"""The heat a load takes: it is what warms batter and tin and what its water takes along."""

import math
from dataclasses import replace

import numpy as np
import pytest

from krume.bake import simulate
from krume.bake.heat_taken import heat_taken
from krume.bake.parameters import value
from tests.bake.cases import BUTTER18, CASES


def test_heat_by_done_is_between_its_sensible_least_and_most() -> None:
    # 2.4 to 3.2 kJ/kgK from 21 to between core and boiling, water at 2257 kJ/kg, and a light tin.
    case = BUTTER18
    found = heat_taken(case.batter, case.tin, case.oven)
    bake = simulate(case.batter, case.tin, case.oven)
    lost_j = case.batter.mass_g / 1000 * bake.loss_pct / 100 * value("latent-heat")
    least = 0.64 * 2400 * (97 - 21) + lost_j
    most = 0.64 * 3200 * (102 - 21) + lost_j + 2000 * 0.06 * 144
    assert least < found.heat_j[-1] < most
    assert found.done_min == pytest.approx(bake.minutes, rel=1e-9)
    assert found.time_min[-1] == pytest.approx(bake.minutes, rel=1e-9)


def test_heat_rises_from_nothing_and_fastest_while_it_is_cold() -> None:
    found = heat_taken(CASES[0].batter, CASES[0].tin, CASES[0].oven)
    assert found.heat_j[0] == 0
    assert (np.diff(found.heat_j) >= 0).all()
    early, late = found.by(np.array([5.0, found.done_min - 5.0]))
    assert early > found.heat_j[-1] - late
    assert found.by(np.array([-3.0, 500.0])).tolist() == [0.0, found.heat_j[-1]]


def test_a_load_taken_out_early_takes_no_more_than_until_then() -> None:
    whole = heat_taken(CASES[0].batter, CASES[0].tin, CASES[0].oven)
    early = heat_taken(CASES[0].batter, CASES[0].tin, CASES[0].oven, out_min=12.0)
    assert math.isinf(early.done_min)
    assert early.time_min[-1] == 12.0
    assert early.heat_j[-1] == pytest.approx(float(whole.by(np.array([12.0]))[0]), rel=1e-6)


def test_two_cups_take_twice_the_heat_of_one() -> None:
    cup = CASES[5]
    one = heat_taken(cup.batter, cup.tin, cup.oven)
    two = heat_taken(
        replace(cup.batter, mass_g=2 * cup.batter.mass_g), replace(cup.tin, count=2), cup.oven
    )
    assert two.heat_j[-1] == pytest.approx(2 * one.heat_j[-1], rel=1e-9)
