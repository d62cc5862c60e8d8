"""The same cake once more: when it is the same, and what its own bakes make of the minutes."""

import pytest

from krume.learn import OvenLearnt, learn_oven, same_cake
from tests.learn.own_oven.cakes import PRIOR, bake


@pytest.fixture(scope="module")
def learnt() -> OvenLearnt:
    made = [bake(f"b{k}", "sponge", minutes, day=str(k)) for k, minutes in enumerate((40.0, 41.0))]
    return learn_oven((), made, PRIOR)


@pytest.mark.parametrize(
    ("cake", "batter_g", "oven_c", "is_same"),
    [
        ("sponge", 540.0, 170.0, True),
        ("sponge", 580.0, 175.0, True),
        ("nut", 540.0, 170.0, False),
        ("sponge", 620.0, 170.0, False),
        ("sponge", 540.0, 190.0, False),
    ],
)
def test_it_is_the_same_within_a_tenth_of_its_mass_and_some_degrees(
    learnt: OvenLearnt, cake: str, batter_g: float, oven_c: float, is_same: bool
) -> None:
    found = same_cake(learnt, cake, batter_g=batter_g, oven_c=oven_c, model_min=36.0)
    assert (found is not None) == is_same


def test_its_minutes_are_about_those_it_took(learnt: OvenLearnt) -> None:
    from krume.bake import Oven, simulate
    from tests.learn.own_oven.cakes import CAKES

    batter, tin = CAKES["sponge"]
    heat = 2.718281828**learnt.ln_heat
    model = simulate(batter, tin, Oven(170.0, heat=heat)).rule_minutes[0]
    found = same_cake(learnt, "sponge", batter_g=540.0, oven_c=170.0, model_min=model)
    assert found is not None
    assert found.minutes.best == pytest.approx(40.5, abs=0.7)
    assert found.minutes.low == int(found.minutes.low) < 40 < 41 < found.minutes.high
    assert found.bakes == 2


def test_it_goes_with_the_model_where_the_mass_is_a_little_other(learnt: OvenLearnt) -> None:
    less, more = (
        same_cake(learnt, "sponge", batter_g=540.0, oven_c=170.0, model_min=m) for m in (36.0, 39.6)
    )
    assert less is not None and more is not None
    assert more.minutes.best == pytest.approx(1.1 * less.minutes.best, rel=1e-9)


def test_an_oven_without_bakes_knows_no_cake() -> None:
    empty = learn_oven((), (), PRIOR)
    assert same_cake(empty, "sponge", batter_g=540.0, oven_c=170.0, model_min=36.0) is None
