"""How tight a limit is for blends at the target: a plane that weighs the limit with the target."""

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import linprog

from krume.design.blending.grid import Floats, Grid
from krume.design.blending.sums import Box

# Weighted sums a row each, over what a blend makes; and where each stands at the target.
Block = tuple[Floats, Floats]

_NO_WEIGHT = 1e-9


def tight_planes(grid: Grid, made: Floats, box: Box) -> list[Block]:
    """For each end of a limit on a sum: the plane that it and the properties made leave room to.

    The linear program least row @ x, x @ pull = made, has prices for the properties and the other
    limits. With these the row becomes a sum whose least value is that of the program, so that
    little is left between it and the end where the limit is tight.
    """
    signs = np.r_[np.ones(len(grid.row_high)), -np.ones(len(grid.row_low))]
    ends = np.r_[grid.row_high, -grid.row_low]
    held = np.flatnonzero(np.isfinite(ends))
    planes = [_tight(grid, made, box, signs, ends, held, int(at)) for at in held]
    return [plane for plane in planes if plane is not None]


def _tight(
    grid: Grid,
    made: Floats,
    box: Box,
    signs: Floats,
    ends: Floats,
    held: NDArray[np.intp],
    at: int,
) -> Block | None:
    others = held[held != at]
    rows = np.vstack([grid.rows, grid.rows]) * signs[:, None]
    found = linprog(
        rows[at],
        A_ub=rows[others] if len(others) else None,
        b_ub=ends[others] if len(others) else None,
        A_eq=np.vstack([grid.pull.T, np.ones(grid.count)]),
        b_eq=np.r_[made, grid.steps],
        bounds=list(zip(box.low.tolist(), box.high.tolist(), strict=True)),
    )
    if found.status != 0:
        return None
    pull = -found.eqlin.marginals[: grid.properties]
    size = float(np.linalg.norm(pull))
    if size < _NO_WEIGHT:
        return None
    weights = np.zeros(len(signs))
    weights[at] = 1.0
    if len(others):
        weights[others] = -found.ineqlin.marginals
    by_row = (weights * signs).reshape(2, -1).sum(axis=0)
    stand = (pull @ grid.target + weights[held] @ ends[held]) / size
    return np.r_[pull, by_row][None] / size, np.array([stand])
