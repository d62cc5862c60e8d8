"""How many cakes go into one load, how long they bake, how many batches are made."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import Interval
from krume.plan import batches_made, planned_bake_min, usual_kitchen
from krume.plan.work import cakes_a_load
from tests.plan.kitchens import FORMULAS, kitchen

F1 = FORMULAS["F1"]


def test_two_cakes_fit_the_bowl_and_four_do_not() -> None:
    assert cakes_a_load(F1, kitchen()) == 2
    assert cakes_a_load(F1, replace(kitchen(), tins_a_load=4)) == 2


def test_a_small_bowl_or_a_single_tin_makes_the_load_smaller() -> None:
    assert cakes_a_load(F1, replace(kitchen(), bowl_ml=2000.0)) == 1
    assert cakes_a_load(F1, replace(kitchen(), tins=((F1.tin, 1),))) == 1
    assert cakes_a_load(F1, replace(kitchen(), bowl_ml=None, tins=(), tins_a_load=3)) == 3


@pytest.mark.parametrize(
    ("low", "high", "minutes"), [(34, 40, 38), (10, 12, 12), (26, 30, 29), (20, 20, 20)]
)  # fmt: skip
def test_a_bake_is_planned_two_thirds_of_the_way(low: float, high: float, minutes: int) -> None:
    assert planned_bake_min(Interval(low, (low + high) / 2, high)) == minutes


@given(st.floats(1.0, 1e5), st.floats(1.0, 1e4))
def test_the_batches_made_are_enough_and_less_than_one_too_many(need: float, batch: float) -> None:
    made = batches_made(need, batch)
    assert made * batch >= need * (1 - 1e-6)
    assert made == 0.5 or (made - 1) * batch < need
    assert made == 0.5 or made == int(made)


def test_a_kitchen_of_which_nothing_is_said_takes_the_rows() -> None:
    found = usual_kitchen()
    assert (found.opens_min, found.begins_min, found.closes_min) == (360, 450, 1260)
    assert found.fridge_places is None and found.tins_a_load == 1
