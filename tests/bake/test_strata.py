"""Even draws: one a stratum, whatever the seed."""

import numpy as np
import pytest
from scipy.special import ndtr

from krume.bake.strata import even_normal, even_shares


@pytest.mark.parametrize("seed", [0, 7])
def test_every_stratum_has_one_draw_in_its_middle(seed: int) -> None:
    shares = np.sort(even_shares(8, np.random.default_rng(seed)))
    assert shares == pytest.approx((np.arange(8) + 0.5) / 8)


def test_normal_scores_are_those_shares_in_the_same_order() -> None:
    scores = even_normal(64, np.random.default_rng(3))
    assert ndtr(scores) == pytest.approx(even_shares(64, np.random.default_rng(3)))
    assert (np.diff(scores) < 0).any() and (np.diff(scores) > 0).any()
    assert scores.mean() == pytest.approx(0.0, abs=1e-12)


def test_no_draws_are_none() -> None:
    assert even_normal(0, np.random.default_rng(3)).size == 0
