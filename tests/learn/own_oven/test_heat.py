"""How strong an oven is, by Bayes on a grid: against a closed form, and by its laws."""

import math
from dataclasses import replace

import numpy as np
import pytest

from krume.learn.own_oven.heat import HeatLearnt, learn_heat
from krume.learn.own_oven.model_times import Timed, nodes
from krume.learn.own_oven.records import figure
from tests.learn.own_oven.cakes import PRIOR, bake

SLOPE, LN_MIN, CAKE_SD = -0.6, math.log(35.0), 0.14
LINE = tuple(float(LN_MIN + SLOPE * u) for u in nodes(0.0))


def _timed(
    key: str, minutes: float, *, cake: str = "sponge", least: float | None = None, day: str = ""
) -> Timed:
    """A bake whose model is a straight line, so that the posterior is a normal one."""
    made = replace(bake(key, cake, minutes, day=day))
    return Timed(made, 170.0, minutes if least is None else least, minutes, LINE, CAKE_SD)


def _normal(counts: dict[str, list[float]]) -> tuple[float, float]:
    """Mean and sd of ln heat in closed form, all bakes points and the model a line."""
    precision, pull = 1 / PRIOR.ln_heat_sd**2, 0.0
    for minutes in counts.values():
        n = len(minutes)
        var = CAKE_SD**2 + figure("repeat") ** 2 / n
        mean = sum(math.log(m) for m in minutes) / n - LN_MIN
        precision += SLOPE**2 / var
        pull += SLOPE * mean / var
    return pull / precision, math.sqrt(1 / precision)


@pytest.mark.parametrize(
    "counts",
    [
        {"sponge": [40.0]},
        {"sponge": [40.0, 38.0, 41.0]},
        {"sponge": [40.0], "nut": [33.0], "butter": [37.0, 39.0]},
    ],
)
def test_with_a_straight_model_it_is_the_normal_posterior_in_closed_form(
    counts: dict[str, list[float]],
) -> None:
    made = [
        _timed(f"{cake} {k}", minutes, cake=cake)
        for cake, each in counts.items()
        for k, minutes in enumerate(each)
    ]
    found = learn_heat(made, PRIOR)
    mean, sd = _normal(counts)
    assert found.ln_heat == pytest.approx(mean, abs=1e-3)
    assert found.ln_heat_sd == pytest.approx(sd, rel=5e-3)


def test_the_same_cake_three_times_tells_less_of_the_oven_than_three_cakes() -> None:
    same = learn_heat([_timed(f"b{k}", 40.0) for k in range(3)], PRIOR)
    three = learn_heat([_timed(c, 40.0, cake=c) for c in ("sponge", "nut", "butter")], PRIOR)
    assert three.ln_heat_sd < same.ln_heat_sd < PRIOR.ln_heat_sd


def test_but_it_tells_of_this_cake_as_much_as_its_scatter_allows() -> None:
    found = learn_heat([_timed(f"b{k}", 40.0) for k in range(3)], PRIOR)
    (own,) = found.cakes
    assert own.bakes == 3
    at = LN_MIN + SLOPE * found.ln_heat + own.ln_offset
    # The prior pulls by a hundredth; one more bake scatters by the three's own third beside it.
    assert at == pytest.approx(math.log(40.0), abs=0.01)
    repeat = figure("repeat")
    assert own.ln_sd() == pytest.approx(repeat * math.sqrt(1 + 1 / 3), rel=0.02)
    assert own.ln_slope == pytest.approx(SLOPE, abs=1e-6)


def test_one_bake_narrows_and_moves_towards_it() -> None:
    slow = learn_heat([_timed("slow", 42.0)], PRIOR)
    quick = learn_heat([_timed("quick", 30.0)], PRIOR)
    assert slow.ln_heat < 0 < quick.ln_heat
    assert slow.ln_heat_sd < PRIOR.ln_heat_sd


def test_a_span_tells_less_than_a_moment_in_it_and_a_wide_one_next_to_nothing() -> None:
    point = learn_heat([_timed("a", 38.0)], PRIOR)
    span = learn_heat([_timed("a", 44.0, least=33.0)], PRIOR)
    wide = learn_heat([_timed("a", 150.0, least=5.0)], PRIOR)
    assert point.ln_heat_sd < span.ln_heat_sd < wide.ln_heat_sd
    assert wide.ln_heat_sd == pytest.approx(PRIOR.ln_heat_sd, rel=0.01)


def test_long_enough_speaks_against_a_weak_oven_alone() -> None:
    found = learn_heat([_timed("a", 33.0, least=0.0)], PRIOR)
    assert found.ln_heat > 0.03


def _three(odd_min: float) -> HeatLearnt:
    return learn_heat(
        [_timed("a", 38.0), _timed("b", 40.0, cake="nut"), _timed("odd", odd_min, day="d")], PRIOR
    )


def test_a_bake_the_others_speak_against_is_put_aside_and_moves_nothing() -> None:
    without = learn_heat([_timed("a", 38.0), _timed("b", 40.0, cake="nut")], PRIOR)
    found = _three(90.0)
    assert set(found.odd) == {"odd"}
    assert found.counted == ("a", "b")
    assert found.ln_heat == pytest.approx(without.ln_heat, abs=1e-9)
    assert found.odd["odd"] == pytest.approx(math.log(90 / 38.4), abs=0.05)


def test_one_within_the_limit_counts() -> None:
    assert _three(45.0).odd == {}


def test_the_same_cake_at_twenty_and_at_fifty_minutes_is_named_twice() -> None:
    found = learn_heat([_timed("a", 20.0), _timed("b", 50.0)], PRIOR)
    assert set(found.odd) == {"a", "b"}
    assert found.ln_heat == pytest.approx(0.0, abs=1e-6)
    assert found.ln_heat_sd == pytest.approx(PRIOR.ln_heat_sd, rel=0.01)


def test_a_lone_bake_no_oven_makes_is_put_aside() -> None:
    assert set(learn_heat([_timed("a", 12.0)], PRIOR).odd) == {"a"}


def test_one_that_was_looked_at_again_counts_however_odd() -> None:
    sure = _timed("odd", 90.0, day="d")
    sure = replace(sure, bake=replace(sure.bake, is_sure=True))
    found = learn_heat([_timed("a", 38.0), sure], PRIOR)
    assert "odd" in found.counted


def test_the_curves_are_densities() -> None:
    found = learn_heat([_timed("a", 40.0)], PRIOR)
    step = found.ln_heats[1] - found.ln_heats[0]
    assert sum(found.density) * step == pytest.approx(1.0, abs=0.01)
    assert sum(found.prior_density) * step == pytest.approx(1.0, abs=0.01)
    assert np.argmax(found.density) < len(found.density) // 2
