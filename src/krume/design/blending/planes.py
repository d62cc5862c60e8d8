"""Planes that no better blend lies beyond: along the way to the target, and along each limit."""

from itertools import product

import numpy as np

from krume.design.blending.grid import Floats, Grid
from krume.design.blending.relaxing import Relaxed
from krume.design.blending.sums import Box, LeastSums
from krume.design.blending.tightness import Block, tight_planes

# Differences that are only the rounding of floats: of a sum, and of a squared distance.
ROUNDING = 1e-9
TIE = 1e-12
_AROUND = 8
_FEW = 3


class Planes:
    """Weighted sums of the flours' steps, each with the most that a better blend can have.

    The first is the slope at the nearest blend of fractions, with its limits: its least sum over
    whole blends is the `bound` on the distance. Then come the limits themselves, then directions
    in which a better blend stays near the target.
    """

    def __init__(self, grid: Grid, found: Relaxed, box: Box, *, is_hard: bool = False) -> None:
        self.grid, self.found = grid, found
        self.bound = 0.0
        self.slope: Floats | None = None
        made = found.x @ grid.pull - grid.target
        distance = float(np.linalg.norm(made))
        blocks = [_row_planes(grid), _directions(grid, box, made, distance)]
        if is_hard:
            blocks[1:1] = tight_planes(grid, found.x @ grid.pull, box)
        if distance > ROUNDING:
            self.slope = made / distance
            blocks.insert(0, _slope_plane(grid, self.slope, found.row_weights / distance))
        self.mixes = np.vstack([mixes for mixes, _ in blocks])
        self.stands = np.concatenate([stands for _, stands in blocks])
        self.weights = self.mixes @ grid.makes.T
        self.units = self.mixes[:, : grid.properties]
        self.is_distance = np.any(self.units != 0.0, axis=1)
        if self.slope is not None:
            least = LeastSums(grid, self.weights[:1], box).of_all()
            self.bound = max(float(least[0] - self.stands[0]), 0.0)

    def most(self, squared: float) -> Floats:
        """The most each sum may be in a blend at least as near as a squared distance.

        Such blends make a ball around the target, cut by the bound along the slope.
        """
        if not np.isfinite(squared):
            return np.where(self.is_distance, np.inf, self.stands + ROUNDING)
        radius = float(np.sqrt(squared + TIE))
        reach = np.where(self.is_distance, radius, 0.0)
        if self.slope is not None and self.bound > 0.0:
            floor = min(self.bound, radius)
            along = self.units @ self.slope
            aside = np.sqrt(np.maximum(1.0 - along**2, 0.0))
            rim = floor * along + np.sqrt(max(radius**2 - floor**2, 0.0)) * aside
            reach = np.where(self.is_distance & (along < floor / radius), rim, reach)
        return self.stands + reach + ROUNDING


def _slope_plane(grid: Grid, slope: Floats, row_weights: Floats) -> Block:
    ends = np.where(row_weights > 0, grid.row_high, grid.row_low)
    ends = np.where(row_weights == 0.0, 0.0, ends)
    stand = slope @ grid.target + row_weights @ ends
    return np.r_[slope, row_weights][None], np.array([stand])


def _row_planes(grid: Grid) -> Block:
    zeros = np.zeros((len(grid.row_low), grid.properties))
    rows = np.column_stack([zeros, np.eye(len(grid.row_low))])
    high, low = np.isfinite(grid.row_high), np.isfinite(grid.row_low)
    return np.vstack([rows[high], -rows[low]]), np.r_[grid.row_high[high], -grid.row_low[low]]


def _directions(grid: Grid, box: Box, made: Floats, distance: float) -> Block:
    """Directions spread so that each cuts the reach of the flours about as much."""
    count = grid.properties
    reach = (grid.pull - grid.pull.mean(axis=0)) * np.maximum(box.high - box.low, 0.3)[:, None]
    _, sizes, axes = np.linalg.svd(reach, full_matrices=False)
    axes = axes[sizes > ROUNDING * max(sizes[0], ROUNDING)]
    sizes = sizes[: len(axes)]
    most = _FEW if count <= _FEW else 2
    signs = [
        np.array(s)
        for s in product((-1, 0, 1), repeat=len(axes))
        if 0 < np.count_nonzero(s) <= most
    ]
    signs.sort(key=np.count_nonzero)
    spread = [(s / sizes) @ axes for s in signs]
    if distance > ROUNDING:
        spread = _across(reach, made / distance) + spread
    units = np.array([each / np.linalg.norm(each) for each in spread]).reshape(-1, count)
    mixes = np.column_stack([units, np.zeros((len(units), len(grid.row_low)))])
    return mixes, units @ grid.target


def _across(reach: Floats, slope: Floats) -> list[Floats]:
    """Directions square to the slope: around it, where there are three properties."""
    count = len(slope)
    square = np.eye(count) - np.outer(slope, slope)
    axes = np.linalg.svd(reach @ square)[2][: count - 1]
    if count != _FEW:
        return [sign * axis for axis in axes for sign in (1.0, -1.0)]
    turns = np.arange(_AROUND) * 2 * np.pi / _AROUND
    return [np.cos(turn) * axes[0] + np.sin(turn) * axes[1] for turn in turns]
