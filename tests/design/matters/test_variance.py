"""Shares of variance against functions whose shares are known in closed form."""

from typing import Any

import numpy as np
import pytest
from scipy import stats

from krume.design.matters.variance import Array, indices

A, B = 7.0, 0.1


def ishigami(points: Array) -> Array:
    """The sum sin x1 + a sin^2 x2 + b x3^4 sin x1 on -pi..pi (Ishigami and Homma 1990)."""
    x = np.pi * (2 * points[:, :, 0] - 1)
    value = np.sin(x[:, 0]) * (1 + B * x[:, 2] ** 4) + A * np.sin(x[:, 1]) ** 2
    out: Array = value[:, None]
    return out


# Integrals over -pi..pi: sin^2 is 1/2 in the mean, sin^4 3/8, x^4 pi^4/5, x^8 pi^8/9.
ALONE = np.array([0.5 * (1 + B * np.pi**4 / 5) ** 2, A**2 / 8, 0.0])
TOGETHER = B**2 * np.pi**8 * (1 / 18 - 1 / 50)
WHOLE = ALONE.sum() + TOGETHER


def test_the_function_of_ishigami_has_its_known_shares() -> None:
    found = indices(ishigami, inputs=3, count=2048, repeats=8, seed=1)
    with_others = ALONE + np.array([TOGETHER, 0, TOGETHER])
    assert found.first[:, 0] == pytest.approx(ALONE / WHOLE, abs=0.01)
    assert found.total[:, 0] == pytest.approx(with_others / WHOLE, abs=0.01)
    assert found.variance[0] == pytest.approx(WHOLE, rel=0.01)
    assert found.mean[0] == pytest.approx(A / 2, rel=0.01)
    assert found.runs == 8 * 2048 * 5


def test_the_closed_form_is_the_one_in_use() -> None:
    alone, together = ALONE / WHOLE, TOGETHER / WHOLE
    assert alone == pytest.approx([0.3139, 0.4424, 0.0], abs=5e-5)
    assert together == pytest.approx(0.2437, abs=5e-5)


def test_the_error_that_is_told_is_about_the_error_that_is_made() -> None:
    found = indices(ishigami, inputs=3, count=256, repeats=8, seed=2)
    with_others = (ALONE + np.array([TOGETHER, 0, TOGETHER])) / WHOLE
    off = np.abs(found.total_of_all - with_others)
    assert (off <= 5 * found.total_error + 1e-3).all()
    assert (found.total_error < 0.05).all()


def test_a_sum_shares_by_the_squares_of_its_factors() -> None:
    factors = np.array([1.0, 2.0, 3.0])
    found = indices(lambda p: p[:, :, 0] @ factors[:, None], inputs=3, seed=3)
    assert found.first[:, 0] == pytest.approx(factors**2 / 14, abs=0.005)
    assert found.total[:, 0] == pytest.approx(factors**2 / 14, abs=0.005)


def test_an_input_of_two_axes_is_one_input() -> None:
    # Uniform parts of reach 1 and 2 against one of reach 3: (1 + 4) / 14 and 9 / 14.
    reach = np.array([[1.0, 2.0], [3.0, 0.0]])
    found = indices(lambda p: (p * reach).sum(axis=(1, 2))[:, None], inputs=2, axes=2, seed=4)
    assert found.total[:, 0] == pytest.approx([5 / 14, 9 / 14], abs=0.01)


def test_several_outputs_together_share_by_their_variances() -> None:
    # Outputs 3 x1 and 4 x2: nothing is shared, and 9 + 16 is 25.
    found = indices(lambda p: p[:, :, 0] * np.array([3.0, 4.0]), inputs=2, seed=5)
    assert found.total_of_all == pytest.approx([9 / 25, 16 / 25], abs=0.01)
    assert found.first == pytest.approx(np.eye(2), abs=0.01)


def test_an_output_that_does_not_vary_has_no_shares() -> None:
    found = indices(lambda p: np.ones((len(p), 1)), inputs=2, count=16, seed=6)
    assert found.total_of_all == pytest.approx([0, 0])


def test_equal_seeds_give_equal_shares() -> None:
    first, again = (indices(ishigami, inputs=3, count=64, seed=7) for _ in range(2))
    other = indices(ishigami, inputs=3, count=64, seed=8)
    assert (first.total == again.total).all()
    assert (first.total != other.total).any()


def test_another_program_finds_the_same_shares() -> None:
    def model(x: Array) -> Array:
        return ishigami(((x / np.pi + 1) / 2).T[:, :, None])[:, 0]

    even: Any = stats.uniform(loc=-np.pi, scale=2 * np.pi)
    theirs = stats.sobol_indices(func=model, n=4096, dists=[even] * 3, rng=9)
    ours = indices(ishigami, inputs=3, count=2048, seed=9)
    assert ours.total[:, 0] == pytest.approx(theirs.total_order, abs=0.02)
    assert ours.first[:, 0] == pytest.approx(theirs.first_order, abs=0.02)
