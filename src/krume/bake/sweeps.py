"""Conductances between cells, and the line sweeps that solve a step."""

import numpy as np
from scipy.linalg.lapack import dptsv

from krume.bake.grid import Array, Grid


def ring_links(grid: Grid, height: Array, resistivity: Array) -> Array:
    """Conductance between neighbouring rings, (draws, rows, rings - 1)."""
    way = grid.to_low * resistivity[:, :, :-1] + grid.to_high * resistivity[:, :, 1:]
    between: Array = grid.ring_face[1:-1] * height[:, :, None] / way
    return between


def row_links(grid: Grid, half: Array) -> Array:
    """Conductance between neighbouring rows, (draws, rows - 1, rings).

    `half` is the resistance of half a row for each area, (draws, rows, rings).
    """
    between: Array = grid.ring_area / (half[:, :-1] + half[:, 1:])
    return between


def along(grid: Grid, height: Array, conduction: Array) -> Array:
    """Conductance between neighbouring rings from the cells' conductivities."""
    return ring_links(grid, height, 1 / conduction)


def across(grid: Grid, height: Array, conduction: Array) -> Array:
    """Conductance between neighbouring rows from the cells' conductivities."""
    return row_links(grid, height[:, :, None] / 2 / conduction)


def turn(array: Array) -> Array:
    """Rows and rings of every draw exchanged."""
    return np.ascontiguousarray(array.transpose(0, 2, 1))


def sweep(diagonal: Array, coupling: Array, right: Array, *, implicit: float) -> Array:
    """Solve every line of every draw in one call: laid end to end with zero couplings between.

    A draw whose lines cannot be solved is not a number in the answer; the others are solved.
    """
    if right.size == 1:
        return right / diagonal
    beside = np.zeros(right.shape)
    np.multiply(coupling, -implicit, out=beside[:, :, :-1])
    _, _, solved, fault = dptsv(diagonal.ravel(), beside.ravel()[:-1], right.ravel())
    # One line that is not a number spoils those laid before and after it.
    if not fault and np.isfinite(solved.sum()):
        found: Array = solved.reshape(right.shape)
        return found
    if len(diagonal) == 1:
        return np.full(right.shape, np.nan)
    each = (slice(k, k + 1) for k in range(len(diagonal)))
    parts = [sweep(diagonal[k], coupling[k], right[k], implicit=implicit) for k in each]
    return np.concatenate(parts)
