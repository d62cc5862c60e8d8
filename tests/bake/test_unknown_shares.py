"""Shares of the doubt: exact where they are known, and in a baker's order where they are not."""

from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from scipy.special import ndtri

from krume.bake import Oven, Unknown, drawn, predict, simulate_many, unknowns, unknowns_of
from krume.bake.unknown_shares import _scores, first_order
from krume.base import Infeasible, InputError
from tests.bake.cases import BUTTER18, CASES, Case, tin


@cache
def _butter18() -> tuple[Unknown, ...]:
    return unknowns(BUTTER18.batter, BUTTER18.tin, BUTTER18.oven)


def _strata(count: int, inputs: int, seed: int = 3) -> np.ndarray[tuple[int, ...], np.dtype]:
    rng = np.random.default_rng(seed)
    return np.stack([ndtri((rng.permutation(count) + 0.5) / count) for _ in range(inputs)], axis=1)


def test_shares_of_a_product_are_those_of_its_squared_spreads() -> None:
    weights = np.array([0.4, 0.3, 0.2, 0.1])
    z = _strata(4096, 4)
    share, noise = first_order(z, np.exp(z @ weights))
    assert share == pytest.approx(weights**2 / (weights**2).sum(), abs=0.005)
    assert noise.max() < 0.005


def test_what_two_inputs_do_only_together_is_in_no_share() -> None:
    z = _strata(4096, 3)
    share, _ = first_order(z, z[:, 0] + z[:, 1] * z[:, 2])
    assert share[0] == pytest.approx(0.5, abs=0.08)
    assert share[1:].max() < 0.02


def test_an_outcome_that_never_comes_counts_as_the_last_one() -> None:
    z = _strata(1024, 2)
    late = z[:, 0] + 0.2 * z[:, 1]
    never = np.where(late > np.quantile(late, 0.95), np.inf, late)
    assert first_order(z, never)[0] == pytest.approx(first_order(z, late)[0], abs=0.03)


def test_the_stated_noise_is_as_wide_as_repeats_scatter() -> None:
    found = [
        unknowns(BUTTER18.batter, BUTTER18.tin, BUTTER18.oven, count=128, seed=s) for s in range(5)
    ]
    heat = [next(u for u in each if u.key == "oven-heat") for each in found]
    scatter = float(np.std([u.share for u in heat], ddof=1))
    assert scatter < 4 * heat[0].share_error + 0.01


OVER_ITS_RIM = "loaf"


@pytest.mark.parametrize(
    "case", [c for c in CASES if c.name not in ("chiffon", OVER_ITS_RIM)], ids=lambda c: c.name
)
def test_in_an_oven_never_timed_its_heat_makes_most_of_the_doubt(case: Case) -> None:
    found = unknowns(case.batter, case.tin, case.oven)
    assert found[0].key == "oven-heat" and found[1].key == "model"
    assert 0.4 < found[0].share < 0.75
    assert 0.9 < sum(u.share for u in found) <= 1.0
    assert [u.share for u in found] == sorted((u.share for u in found), reverse=True)


def test_where_a_cake_rises_over_its_rim_what_the_model_leaves_out_makes_as_much() -> None:
    loaf = next(case for case in CASES if case.name == OVER_ITS_RIM)
    high = replace(loaf.tin, height_cm=12.0)
    shares = [
        {u.key: u.share for u in unknowns(loaf.batter, pan, loaf.oven)} for pan in (loaf.tin, high)
    ]
    assert shares[0]["model"] > shares[0]["oven-heat"]
    assert shares[1]["model"] < shares[1]["oven-heat"]


def test_in_a_tube_tin_what_the_model_leaves_out_makes_most_of_it() -> None:
    chiffon = CASES[-1]
    assert unknowns(chiffon.batter, chiffon.tin, chiffon.oven)[0].key == "model"


def test_a_timed_oven_leaves_the_model_first_and_a_cup_not_weighed_comes_forward() -> None:
    timed = replace(BUTTER18.oven, ln_heat_sd=0.07, temp_half_width_c=2.0)
    assert unknowns(BUTTER18.batter, BUTTER18.tin, timed)[0].key == "model"
    guessed = replace(BUTTER18.batter, density_measured=False)
    keys = [u.key for u in unknowns(guessed, BUTTER18.tin, BUTTER18.oven)]
    assert keys.index("density") == 2


def test_only_the_core_rule_that_is_asked_stands_in_the_list() -> None:
    stated = {u.key for u in _butter18()}
    free = replace(BUTTER18.batter, core_c=None)
    below = {u.key for u in unknowns(free, BUTTER18.tin, BUTTER18.oven)}
    assert "core-stated" in stated and "core-below-boiling" not in stated
    assert "core-below-boiling" in below and "core-stated" not in below


def test_every_unknown_says_what_would_narrow_it() -> None:
    for each in _butter18():
        assert each.text.endswith(".") and each.text.count(".") == 2, each.key


def test_what_was_narrowed_already_is_narrowed_in_another_way() -> None:
    timed = replace(BUTTER18.oven, ln_heat_sd=0.12, temp_half_width_c=2.0)
    texts = {u.key: u.text for u in unknowns(BUTTER18.batter, BUTTER18.tin, timed)}
    usual = {u.key: u.text for u in _butter18()}
    assert "another cake" in texts["oven-heat"] and "one bake" in usual["oven-heat"]
    assert "thermometer in the middle" in usual["oven-temperature"]
    assert texts["oven-temperature"] != usual["oven-temperature"]
    assert {k: t for k, t in texts.items() if not k.startswith("oven")} == {
        k: t for k, t in usual.items() if not k.startswith("oven")
    }


def test_knowing_the_first_one_narrows_the_minutes_as_its_share_says() -> None:
    heat = _butter18()[0]
    whole = predict(BUTTER18.batter, BUTTER18.tin, BUTTER18.oven)
    known = predict(BUTTER18.batter, BUTTER18.tin, replace(BUTTER18.oven, ln_heat_sd=0.0))
    assert not isinstance(whole, Infeasible) and not isinstance(known, Infeasible)
    widths = [np.log(p.minutes.high / p.minutes.low) for p in (whole, known)]
    assert widths[1] / widths[0] == pytest.approx(np.sqrt(1 - heat.share), abs=0.05)


def test_draws_already_baked_give_the_same_shares() -> None:
    draws = drawn(BUTTER18.batter, BUTTER18.tin, BUTTER18.oven, count=256)
    minutes = simulate_many(BUTTER18.batter, BUTTER18.tin, BUTTER18.oven, draws).minutes
    assert unknowns_of(BUTTER18.batter, draws, minutes) == _butter18()


def test_where_there_are_no_minutes_there_are_no_shares() -> None:
    assert unknowns(BUTTER18.batter, BUTTER18.tin, Oven(80)) == ()
    assert unknowns(BUTTER18.batter, tin("round 10 x 3 cm"), Oven(165)) == ()


def test_too_few_draws_are_asked_for_more() -> None:
    with pytest.raises(InputError, match="128"):
        unknowns(BUTTER18.batter, BUTTER18.tin, BUTTER18.oven, count=64)


@pytest.mark.parametrize(("field", "key"), [("heat", "oven-heat"), ("factor", "model")])
def test_a_share_is_what_two_sets_of_bakes_have_together_that_share_only_this(
    field: str, key: str
) -> None:
    one, other = (
        drawn(BUTTER18.batter, BUTTER18.tin, BUTTER18.oven, count=768, seed=seed)
        for seed in (21, 22)
    )
    mixed = replace(other, **{field: getattr(one, field)})
    scores = [
        _scores(simulate_many(BUTTER18.batter, BUTTER18.tin, BUTTER18.oven, draws).minutes[1:])
        for draws in (one, mixed)
    ]
    together = float(np.corrcoef(scores[0], scores[1])[0, 1])
    share = next(u.share for u in _butter18() if u.key == key)
    assert together == pytest.approx(share, abs=0.07)
