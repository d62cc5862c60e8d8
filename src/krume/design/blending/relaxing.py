"""The nearest blend if a scale showed every fraction: a small least-distance problem."""

from dataclasses import dataclass

import numpy as np
from scipy.optimize import nnls

from krume.design.blending.grid import Floats, Grid, Ints

# A little of the distance from the last answer is added to the aim, less each time, because the
# blends at one distance are many and the aim alone does not choose among them.
_STAY = (0.05, 0.01, 0.002, 0.002, 0.0005, 0.0005, 0.0002, 0.0002)
_SETTLED = 1e-11
_IDLE = 1e-9


@dataclass(frozen=True, slots=True)
class Relaxed:
    """A blend of fractions, and what each limit on a sum weighs there (above: positive)."""

    x: Floats
    row_weights: Floats


def relaxed(grid: Grid, low: Ints, high: Ints) -> Relaxed | None:
    """The nearest blend of fractions between two ends; None where the limits leave none.

    Minimises |x @ pull - target|, sum(x) = steps, as a least-distance problem by non-negative
    least squares (Lawson and Hanson), a few times with the last answer as the place to stay near.
    """
    least = np.where(low > 0, np.maximum(low, grid.least), low)
    if np.any(least > high):
        return None
    frame = _frame(grid, least.astype(float), high.astype(float))
    if frame is None:
        return None
    room = (high - least).sum()
    x = least + (high - least) * ((grid.steps - least.sum()) / room if room else 0.0)
    found, last = None, np.inf
    for stay in _STAY:
        found = frame.nearest(x, stay)
        if found is None:
            return None
        x = found.x
        squared = float(np.sum((x @ grid.pull - grid.target) ** 2))
        if last - squared < _SETTLED:
            break
        last = squared
    return found


@dataclass(frozen=True, slots=True)
class _Frame:
    """Limits as walls @ x >= stands, and a frame of the directions that keep the sum."""

    grid: Grid
    walls: Floats
    stands: Floats
    flat: Floats
    centre: Floats
    scale: float

    def nearest(self, x: Floats, stay: float) -> Relaxed | None:
        """One least-distance problem: near the target, and a little near x."""
        grid, count = self.grid, self.grid.count
        pulls = np.vstack([grid.pull.T @ self.flat, stay * self.scale * np.eye(count - 1)])
        q, r = np.linalg.qr(pulls)
        back = self.flat @ np.linalg.inv(r)
        goal = (
            q.T
            @ np.r_[
                grid.target - self.centre @ grid.pull,
                stay * self.scale * (self.flat.T @ (x - self.centre)),
            ]
        )
        walls, stands = self.walls @ back, self.stands - self.walls @ self.centre
        stands -= walls @ goal
        wanted = np.zeros(count)
        wanted[-1] = 1.0
        held, left = nnls(np.vstack([walls.T, stands]), wanted)
        if left < 1e-9:
            return None
        miss = np.vstack([walls.T, stands]) @ held - wanted
        where = self.centre + back @ (goal - miss[:-1] / miss[-1])
        return Relaxed(where, self._row_weights(held / -miss[-1]))

    def _row_weights(self, held: Floats) -> Floats:
        count = self.grid.count
        low, high = np.isfinite(self.grid.row_low), np.isfinite(self.grid.row_high)
        sizes = _sizes(self.grid)
        weights = np.zeros(len(sizes))
        middle = 2 * count + int(low.sum())
        weights[low] -= held[2 * count : middle] / sizes[low]
        weights[high] += held[middle:] / sizes[high]
        return weights


def _sizes(grid: Grid) -> Floats:
    return np.asarray(np.maximum(np.abs(grid.rows).max(axis=1, initial=0.0), 1e-12))


def _frame(grid: Grid, low: Floats, high: Floats) -> _Frame | None:
    count, sizes = grid.count, _sizes(grid)
    below, above = np.isfinite(grid.row_low), np.isfinite(grid.row_high)
    eye = np.eye(count)
    walls = np.vstack(
        [
            eye,
            -eye,
            grid.rows[below] / sizes[below, None],
            -grid.rows[above] / sizes[above, None],
        ]
    )
    stands = np.r_[
        low, -high, grid.row_low[below] / sizes[below], -grid.row_high[above] / sizes[above]
    ]
    flat = np.linalg.qr(np.column_stack([np.ones(count), eye[:, 1:]]))[0][:, 1:]
    centre = np.full(count, grid.steps / count)
    # What the sum alone decides is no wall, and its rounding must not become one.
    idle = np.linalg.norm(walls @ flat, axis=1) < _IDLE
    if np.any(stands[idle] > walls[idle] @ centre + _IDLE * grid.steps):
        return None
    walls[idle], stands[idle] = 0.0, -1.0
    scale = float(np.linalg.norm(grid.pull, axis=0).max()) or 1.0
    return _Frame(grid, walls, stands, flat, centre, scale)
