"""Line sweeps against a dense solve, conductances against the series of two half cells."""

import numpy as np
import pytest

from krume.bake.grid import Cells, Footprint, grid_of
from krume.bake.sweeps import added, passed, ring_links, row_links, solved, turn


def _flat(coupling: np.ndarray) -> np.ndarray:
    """Links of each line (…, lines, cells - 1) as they lie: none from a line's last cell."""
    flat: np.ndarray = np.pad(coupling, ((0, 0), (0, 0), (0, 1))).ravel()[:-1]
    return flat


def test_every_line_is_solved_as_if_it_stood_alone() -> None:
    rng = np.random.default_rng(3)
    coupling = rng.uniform(0.1, 1.0, (2, 3, 4))
    diagonal = 3 + rng.uniform(0, 1, (2, 3, 5))
    right = rng.normal(size=(2, 3, 5))
    found = solved(diagonal, _flat(coupling), right, implicit=0.5)
    for b in range(2):
        for j in range(3):
            beside = -0.5 * coupling[b, j]
            full = np.diag(diagonal[b, j]) + np.diag(beside, 1) + np.diag(beside, -1)
            assert found[b, j] == pytest.approx(np.linalg.solve(full, right[b, j]), rel=1e-12)


def test_a_line_that_cannot_be_solved_is_not_a_number() -> None:
    bad = np.full((1, 1, 3), -1.0)
    assert np.isnan(solved(bad, np.ones(2), np.ones((1, 1, 3)), implicit=0.5)).all()


def test_half_cells_conduct_in_series() -> None:
    grid = grid_of(Footprint(0.0, 0.1), Cells(2, 2, 0.0))
    k = np.array([[[0.2, 0.4], [0.2, 0.4]]])
    height = np.array([[0.01, 0.03]])
    ring = ring_links(grid, height, 1 / k)[0]
    assert 1 / ring == pytest.approx((0.025 / 0.2 + 0.025 / 0.4) / (2 * np.pi * 0.05 * 0.01))
    row = row_links(grid, height[:, :, None] / 2 / k)[0, 0, 0]
    assert 1 / row == pytest.approx((0.005 / 0.2 + 0.015 / 0.2) / grid.ring_area[0])


def test_turning_twice_is_nothing() -> None:
    cube = np.arange(24.0).reshape(2, 3, 4)
    assert (turn(turn(cube)) == cube).all()


def _foam() -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    rng = np.random.default_rng(5)
    return (
        rng.uniform(0.1, 0.5, (2, 4, 3)),
        rng.uniform(0.001, 0.01, (2, 4)),
        rng.normal(300, 20, (2, 4, 3)),
    )


def test_no_link_leaves_a_row_at_its_end_or_the_top() -> None:
    grid = grid_of(Footprint(0.0, 0.1, 0.02), Cells(3, 4))
    k, height, _ = _foam()
    rings = np.append(ring_links(grid, height, 1 / k), 0.0).reshape(2, 4, 3)
    assert (rings[:, :, -1] == 0).all() and (rings[:, :, :-1] > 0).all()
    rows = row_links(grid, height[:, :, None] / 2 / k)
    assert (rows[:, -1] == 0).all() and (rows[:, :-1] > 0).all()
    inside, outside = grid.r_centre[1], grid.r_centre[2]
    face = (grid.r_face[2] - inside) / k[1, 2, 1] + (outside - grid.r_face[2]) / k[1, 2, 2]
    assert rings[1, 2, 1] == pytest.approx(2 * np.pi * grid.r_face[2] * height[1, 2] / face)


def test_what_one_cell_gives_its_neighbour_takes() -> None:
    grid = grid_of(Footprint(0.0, 0.1), Cells(3, 4))
    k, height, temp = _foam()
    rings, rows = ring_links(grid, height, 1 / k), row_links(grid, height[:, :, None] / 2 / k)
    flow, total = np.zeros(temp.shape), np.zeros(temp.shape)
    passed(flow, rings, temp, 1)
    passed(flow, rows.reshape(-1)[:-3], temp, 3)
    added(total, rings, 1)
    added(total, rows.reshape(-1)[:-3], 3)
    assert flow.sum(axis=(1, 2)) == pytest.approx(0.0, abs=1e-9)
    at = (0, 1, 1)
    links = (rings[3], rings[4], rows[0, 0, 1], rows[0, 1, 1])
    others = (temp[0, 1, 0], temp[0, 1, 2], temp[0, 0, 1], temp[0, 2, 1])
    exact = sum(g * (t - temp[at]) for g, t in zip(links, others, strict=True))
    assert flow[at] == pytest.approx(exact, rel=1e-12)
    assert total[at] == pytest.approx(sum(links), rel=1e-12)


def test_one_draw_that_cannot_be_solved_leaves_the_others_alone() -> None:
    diagonal, links = np.full((3, 2, 3), 4.0), np.ones(17)
    links[2::3] = 0.0
    right = np.arange(18.0).reshape(3, 2, 3)
    whole = solved(diagonal, links, right, implicit=0.5)
    spoiled = diagonal.copy()
    spoiled[1] = np.nan
    found = solved(spoiled, links, right, implicit=0.5)
    assert np.isnan(found[1]).all()
    assert found[[0, 2]] == pytest.approx(whole[[0, 2]], rel=1e-14)


def test_a_single_cell_is_solved_by_itself() -> None:
    one = np.full((1, 1, 1), 4.0)
    assert solved(one, np.zeros(0), 2 * one, implicit=0.5)[0, 0, 0] == 2.0
