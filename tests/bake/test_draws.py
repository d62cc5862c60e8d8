"""Draws: the nominal bake first, equal seeds equal, doubt as wide as its row says."""

import numpy as np
import pytest

from krume.bake import Oven, draw, nominal
from tests.bake.cases import BUTTER18


def test_the_first_draw_is_the_nominal_bake() -> None:
    many = draw(BUTTER18.batter, BUTTER18.oven, count=32, discrepancy=0.12)
    base = nominal(BUTTER18.batter, BUTTER18.oven)
    for name in base.__dataclass_fields__:
        assert getattr(many, name)[0] == pytest.approx(getattr(base, name)[0]), name
        assert len(getattr(many, name)) == 33, name


def test_equal_seeds_give_equal_draws_and_others_do_not() -> None:
    one, same = (draw(BUTTER18.batter, Oven(165), count=16, discrepancy=0.1) for _ in range(2))
    other = draw(BUTTER18.batter, Oven(165), count=16, discrepancy=0.1, seed=8)
    assert (one.heat == same.heat).all()
    assert not (one.heat == other.heat).all()


def test_the_doubt_about_an_oven_is_as_wide_as_said() -> None:
    many = draw(BUTTER18.batter, Oven(165, ln_heat_sd=0.25), count=512, discrepancy=0.12)
    assert np.log(many.heat[1:]).std() == pytest.approx(0.25, rel=0.02)
    assert np.log(many.factor[1:]).std() == pytest.approx(0.12, rel=0.02)
    assert many.oven_k[1:].std() == pytest.approx(5.0, rel=0.02)
    assert many.crust_diffusion.max() <= 0.045
