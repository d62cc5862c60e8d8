"""Conductances between cells, and the line sweeps that solve a step."""

import numpy as np
from scipy.linalg.lapack import dptsv

from krume.bake.grid import Array, Grid


def along(grid: Grid, height: Array, conduction: Array) -> Array:
    """Conductance between neighbouring rings, (draws, rows, rings - 1)."""
    face, centre = grid.r_face[1:-1], grid.r_centre
    left = (face - centre[:-1]) / conduction[:, :, :-1]
    right = (centre[1:] - face) / conduction[:, :, 1:]
    between: Array = 2 * np.pi * face * height[:, :, None] / (left + right)
    return between


def across(grid: Grid, height: Array, conduction: Array) -> Array:
    """Conductance between neighbouring rows, (draws, rows - 1, rings)."""
    low = height[:, :-1, None] / 2 / conduction[:, :-1]
    high = height[:, 1:, None] / 2 / conduction[:, 1:]
    between: Array = grid.ring_area / (low + high)
    return between


def turn(array: Array) -> Array:
    """Rows and rings of every draw exchanged."""
    return np.ascontiguousarray(array.transpose(0, 2, 1))


def sweep(diagonal: Array, coupling: Array, right: Array, *, implicit: float) -> Array:
    """Solve every line of every draw in one call: laid end to end with zero couplings between.

    A draw whose lines cannot be solved is not a number in the answer; the others are solved.
    """
    beside = np.zeros_like(diagonal)
    beside[:, :, :-1] = -implicit * coupling
    solved, fault = _ended(diagonal, beside, right)
    if fault and len(diagonal) > 1:
        return np.concatenate(
            [
                sweep(diagonal[k : k + 1], coupling[k : k + 1], right[k : k + 1], implicit=implicit)
                for k in range(len(diagonal))
            ]
        )
    return np.full(right.shape, np.nan) if fault else solved


def _ended(diagonal: Array, beside: Array, right: Array) -> tuple[Array, bool]:
    _, _, solved, fault = dptsv(diagonal.ravel(), beside.ravel()[:-1], right.ravel())
    # One line that is not a number spoils those laid before and after it.
    return solved.reshape(right.shape), fault != 0 or not bool(np.isfinite(solved).all())
