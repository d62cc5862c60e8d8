"""The printed interval holds for eight kitchens in ten: kitchens with a truth of their own.

The whole count (3600 kitchens a world) is printed by `python -m benchmarks.coverage`.
"""

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from benchmarks.coverage import (
    Asked,
    as_drawn,
    asked_cases,
    baked_min,
    coverage,
    dial_off,
    heat_off,
    heavy_tails,
)
from krume.bake import Oven, Prediction, drawn, predict, simulate_many

FEW = (0, 2, 4, 8)


@cache
def _few() -> tuple[Asked, ...]:
    cases = asked_cases()
    return tuple(cases[at] for at in FEW)


def test_eight_kitchens_in_ten_bake_inside_what_is_printed() -> None:
    found = coverage(list(_few()), as_drawn, kitchens=100, seed=900, count=128)
    assert found.kitchens == 400
    assert found.share == pytest.approx(0.80, abs=0.05)
    assert found.before + found.inside + found.after == found.kitchens


def test_ovens_as_weak_as_the_published_hands_are_caught_out_late_not_early() -> None:
    found = coverage(list(_few()), heat_off(-0.20), kitchens=40, seed=1100, count=128)
    assert 0.65 < found.share < 0.82
    assert found.after > 3 * found.before


def test_a_kitchens_truth_is_not_the_draws_of_the_prediction() -> None:
    case = _few()[0]
    truth = drawn(case.batter, case.tin, case.oven, count=40, seed=900)
    assert not np.isin(
        truth.heat[1:], drawn(case.batter, case.tin, case.oven, count=256).heat
    ).any()


def test_heavier_tails_keep_the_spread_and_reach_further() -> None:
    case = _few()[0]
    truth = drawn(case.batter, case.tin, case.oven, count=400, seed=3)
    tailed = heavy_tails(truth)
    own, wide = np.log(truth.heat[1:]), np.log(tailed.heat[1:])
    assert wide.std() == pytest.approx(own.std(), rel=0.12)
    assert np.abs(wide).max() > 1.3 * np.abs(own).max()
    assert np.median(np.abs(wide)) < np.median(np.abs(own))


def test_a_hotter_oven_than_its_dial_bakes_sooner() -> None:
    case = _few()[1]
    hot = baked_min(case, dial_off(10.0), count=16, seed=5)
    assert (hot < baked_min(case, as_drawn, count=16, seed=5)).all()


def test_a_bake_that_never_ends_counts_as_later_than_everything() -> None:
    cool = replace(_few()[0], oven=Oven(118))
    found = predict(cool.batter, cool.tin, cool.oven)
    draws = drawn(cool.batter, cool.tin, cool.oven, count=256)
    minutes = simulate_many(cool.batter, cool.tin, cool.oven, draws).minutes[1:]
    assert isinstance(found, Prediction)
    assert found.stalled == int(np.isinf(minutes).sum()) > 0
    ended = np.quantile(minutes[np.isfinite(minutes)], 0.9)
    assert found.minutes.high > ended
    assert found.minutes.high == np.ceil(np.quantile(minutes, 0.9))
