"""Line sweeps against a dense solve, conductances against the series of two half cells."""

import numpy as np
import pytest

from krume.bake.grid import Cells, Footprint, grid_of
from krume.bake.sweeps import across, along, sweep, turn


def test_every_line_is_solved_as_if_it_stood_alone() -> None:
    rng = np.random.default_rng(3)
    coupling = rng.uniform(0.1, 1.0, (2, 3, 4))
    diagonal = 3 + rng.uniform(0, 1, (2, 3, 5))
    right = rng.normal(size=(2, 3, 5))
    found = sweep(diagonal, coupling, right, implicit=0.5)
    for b in range(2):
        for j in range(3):
            beside = -0.5 * coupling[b, j]
            full = np.diag(diagonal[b, j]) + np.diag(beside, 1) + np.diag(beside, -1)
            assert found[b, j] == pytest.approx(np.linalg.solve(full, right[b, j]), rel=1e-12)


def test_a_line_that_cannot_be_solved_is_not_a_number() -> None:
    bad = np.full((1, 1, 3), -1.0)
    assert np.isnan(sweep(bad, np.ones((1, 1, 2)), np.ones((1, 1, 3)), implicit=0.5)).all()


def test_half_cells_conduct_in_series() -> None:
    grid = grid_of(Footprint(0.0, 0.1), Cells(2, 2, 0.0))
    k = np.array([[[0.2, 0.4], [0.2, 0.4]]])
    height = np.array([[0.01, 0.03]])
    ring = along(grid, height, k)[0, 0, 0]
    assert 1 / ring == pytest.approx((0.025 / 0.2 + 0.025 / 0.4) / (2 * np.pi * 0.05 * 0.01))
    row = across(grid, height, k)[0, 0, 0]
    assert 1 / row == pytest.approx((0.005 / 0.2 + 0.015 / 0.2) / grid.ring_area[0])


def test_turning_twice_is_nothing() -> None:
    cube = np.arange(24.0).reshape(2, 3, 4)
    assert (turn(turn(cube)) == cube).all()
