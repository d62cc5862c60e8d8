"""The least that flours can add to a weighted sum, for every number of steps they may share."""

from dataclasses import dataclass

import numpy as np

from krume.design.blending.grid import Floats, Grid, Ints


@dataclass(frozen=True, slots=True)
class Box:
    """Two ends of the steps of each flour."""

    low: Ints
    high: Ints


class LeastSums:
    """Least sums of some flours, a table per set: [plane, most flours used, steps together].

    Exact by dynamic programming over whole steps: what a convex bound would miss of a flour that
    is used at its least or not at all, and of the most flours used, is in it.
    """

    def __init__(self, grid: Grid, weights: Floats, box: Box) -> None:
        self.grid, self.weights, self.box = grid, weights, box

    def none(self) -> Floats:
        """The table of no flour at all."""
        most = self.grid.most_parts or 0
        table = np.full((len(self.weights), most + 1, self.grid.steps + 1), np.inf)
        table[:, :, 0] = 0.0
        return table

    def with_flour(self, table: Floats, at: int) -> Floats:
        """The table with one flour more."""
        weights, used_from = self.weights[:, at], max(int(self.box.low[at]), self.grid.least)
        used_to = int(self.box.high[at])
        new = table.copy() if self.box.low[at] == 0 else np.full_like(table, np.inf)
        if self.grid.most_parts is None:
            used = _least_with(table[:, 0], weights, used_from, used_to)
            np.minimum(new[:, 0], used, out=new[:, 0])
            return new
        planes, most, steps = table[:, :-1].shape
        flat = table[:, :-1].reshape(planes * most, steps)
        used = _least_with(flat, np.repeat(weights, most), used_from, used_to)
        np.minimum(new[:, 1:], used.reshape(planes, most, steps), out=new[:, 1:])
        return new

    def of_rest(self, flours: list[int], first: int) -> dict[int, Floats]:
        """For each place in a row of flours, up to one: the table of all flours from there on."""
        table = self.none()
        found = {len(flours): table}
        for place in range(len(flours) - 1, 0, -1):
            table = self.with_flour(table, flours[place])
            if place <= first:
                found[place] = table
        return found

    def of_all(self) -> Floats:
        """Each plane's least sum over all whole blends of the box."""
        table = self.none()
        for at in range(self.grid.count):
            table = self.with_flour(table, at)
        return np.asarray(table[:, -1, self.grid.steps])


def _least_with(table: Floats, weights: Floats, used_from: int, used_to: int) -> Floats:
    """Min over x of weight * x + table[steps - x], by a window that doubles."""
    steps = table.shape[1]
    if used_from > min(used_to, steps - 1):
        return np.full_like(table, np.inf)
    ramp = weights[:, None] * np.arange(steps)
    window = np.full_like(table, np.inf)
    window[:, used_from:] = (table - ramp)[:, : steps - used_from]
    wide, width = 1, used_to - used_from + 1
    while wide < width:
        shift = min(wide, width - wide)
        if shift < steps:
            window[:, shift:] = np.minimum(window[:, shift:], window[:, :-shift])
        wide += shift
    return window + ramp
