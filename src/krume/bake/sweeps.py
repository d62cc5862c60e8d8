"""Conductances between cells, and the line sweeps that solve a step."""

import numpy as np
from scipy.linalg.lapack import dptsv

from krume.bake.grid import Array, Grid


def ring_links(grid: Grid, height: Array, resistivity: Array) -> Array:
    """Conductance of every cell to the next in its row, as they lie; none from a row's last."""
    face = grid.ring_face[1:].copy()
    face[-1] = 0.0
    way = (resistivity * grid.outward).ravel()[:-1] + (resistivity * grid.inward).ravel()[1:]
    links: Array = (face * height[:, :, None]).ravel()[:-1] / way
    return links


def row_links(grid: Grid, half: Array) -> Array:
    """Conductance of every cell to the one above it, (draws, rows, rings); none from the top.

    `half` is the resistance of half a row for each area, (draws, rows, rings).
    """
    links = np.zeros(half.shape)
    np.divide(grid.ring_area, half[:, :-1] + half[:, 1:], out=links[:, :-1])
    return links


def added(total: Array, links: Array, apart: int) -> None:
    """Add each link to both of its cells, which lie so far apart."""
    flat = total.reshape(-1)
    flat[:-apart] += links
    flat[apart:] += links


def passed(total: Array, links: Array, temp: Array, apart: int) -> None:
    """Add what each link passes to the cooler of its cells, and take it from the warmer."""
    here, flat = temp.reshape(-1), total.reshape(-1)
    flow = links * (here[apart:] - here[:-apart])
    flat[:-apart] += flow
    flat[apart:] -= flow


def turn(array: Array) -> Array:
    """Rows and rings of every draw exchanged."""
    return np.ascontiguousarray(array.transpose(0, 2, 1))


def solved(diagonal: Array, links: Array, right: Array, *, implicit: float) -> Array:
    """Solve every line of every draw in one call: laid end to end, no link from one to the next.

    A draw whose lines cannot be solved is not a number in the answer; the others are solved.
    """
    if right.size == 1:
        return right / diagonal
    _, _, found, fault = dptsv(diagonal.ravel(), links * -implicit, right.ravel())
    # One line that is not a number spoils those laid before and after it.
    if not fault and np.isfinite(found.sum()):
        answer: Array = found.reshape(right.shape)
        return answer
    if len(diagonal) == 1:
        return np.full(right.shape, np.nan)
    size = right[0].size
    parts = [
        solved(diagonal[k : k + 1], links[k * size : (k + 1) * size - 1], right[k : k + 1],
               implicit=implicit)
        for k in range(len(diagonal))
    ]  # fmt: skip
    return np.concatenate(parts)
