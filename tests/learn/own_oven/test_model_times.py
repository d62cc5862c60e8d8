"""The model's minutes of finished bakes, over ovens from weak to strong."""

import math
from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest

from krume.bake import Oven, simulate
from krume.learn.own_oven.model_times import Case, ln_minutes, nodes
from tests.learn.own_oven.cakes import BUTTER, CAKES, SPONGE


def test_each_node_is_the_model_run_with_that_heat() -> None:
    tin = CAKES["sponge"][1]
    (row,) = ln_minutes([Case(SPONGE, tin, Oven(170.0))], 0.0)
    at = nodes(0.0)
    for k in (2, 7, 12):
        alone = simulate(SPONGE, tin, Oven(170.0, heat=math.exp(at[k])))
        assert math.exp(row[k]) == pytest.approx(alone.rule_minutes[0], rel=2e-3)


def test_cakes_of_one_batch_are_each_what_they_are_alone() -> None:
    tin, other = CAKES["sponge"][1], CAKES["butter"][1]
    cases = [
        Case(SPONGE, tin, Oven(170.0)),
        Case(BUTTER, other, Oven(165.0)),
        Case(replace(SPONGE, core_c=90.0), tin, Oven(150.0)),
    ]
    together = ln_minutes(cases, 0.0)
    alone = [ln_minutes([case], 0.0)[0] for case in cases]
    assert np.allclose(together, alone, rtol=0, atol=2e-3)


def test_a_stronger_oven_is_never_slower() -> None:
    (row,) = ln_minutes([Case(SPONGE, CAKES["sponge"][1], Oven(170.0))], 0.0)
    assert all(a > b for a, b in pairwise(row))


def test_what_is_never_done_is_later_than_everything() -> None:
    (row,) = ln_minutes([Case(SPONGE, CAKES["sponge"][1], Oven(101.0))], 0.0)
    assert math.exp(row[0]) > 200
