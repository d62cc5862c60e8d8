"""Two halves of a blend meet: for each partial blend, the ones of the other flours that fit it."""

import numpy as np
from numpy.typing import NDArray

from krume.design.blending.best import Best
from krume.design.blending.grid import Floats, Grid, Ints
from krume.design.blending.partial import Partial
from krume.design.blending.planes import ROUNDING, TIE, Planes

_AT_ONCE = 400_000
_TIES = 200
# A cell starts at an even number, and what lies in it follows within the next one.
_EVEN = 2.0


class Meeting:
    """One half as a sorted list, in which the fits of the other half are looked up.

    A fit has the steps that are missing, and lies near along two axes: the cell says where along
    the first, the order within it where along the second.
    """

    def __init__(
        self, grid: Grid, planes: Planes, best: Best, parts: Partial, flours: tuple[int, ...]
    ) -> None:
        self.grid, self.planes, self.best = grid, planes, best
        self.parts, self.flours = parts, flours
        self.pairs = 0
        self.width = np.inf
        self.cut = planes.bound > 0.2 * np.sqrt(best.squared) and np.isfinite(best.squared)
        self.first_mix, self.second_mix = self._axes()
        self._measure()

    def _axes(self) -> tuple[Floats, Floats]:
        """Along the slope where the bound cuts off most; else where the half spreads most."""
        count = self.grid.properties
        made = self.parts.makes[:, :count]
        spread = np.atleast_2d(np.cov(made.T)) if len(made) > 1 else np.eye(count)
        square = np.eye(count)
        if self.cut and self.planes.slope is not None:
            square -= np.outer(self.planes.slope, self.planes.slope)
        axes = np.linalg.svd(square @ spread @ square)[2]
        blank = np.zeros(self.grid.makes.shape[1] - count)
        if self.cut:
            # Square to the slope, or nothing at all where there is no such axis.
            return self.planes.mixes[0], np.r_[square @ axes[0], blank]
        return np.r_[axes[0], blank], np.r_[axes[min(1, count - 1)], blank]

    def _measure(self) -> None:
        self.first, self.second = (
            self.parts.makes @ self.first_mix,
            self.parts.makes @ self.second_mix,
        )
        self.first_from, self.second_from = self.first.min(), self.second.min()
        self.first_span = float(np.ptp(self.first)) + ROUNDING
        self.second_span = float(np.ptp(self.second)) + ROUNDING

    def _window(self) -> tuple[float, float, float]:
        """Where the first axis is looked at, from the target, and half widths of both."""
        radius = float(np.sqrt(self.best.squared + TIE))
        if not np.isfinite(radius):
            wide = float(np.abs(self.grid.makes).max() * self.grid.steps)
            wide = 2 * (wide + float(np.linalg.norm(self.grid.target)))
            return 0.0, wide, wide
        if not self.cut:
            return 0.0, radius + ROUNDING, radius + ROUNDING
        bound = min(self.planes.bound, radius)
        half = (radius - bound) / 2 + ROUNDING
        return bound + half, 1.001 * half, float(np.sqrt(radius**2 - bound**2)) + ROUNDING

    def _sort(self, width: float) -> None:
        self.width, self.cell = width, 2 * width
        self.cells = int(self.first_span / self.cell) + 1
        cell = ((self.first - self.first_from) / self.cell).astype(np.int64)
        keys = (
            self._key(self.parts.steps, cell) + (self.second - self.second_from) / self.second_span
        )
        order = np.argsort(keys, kind="stable")
        self.keys, self.parts = keys[order], self.parts.some(order)
        self.first, self.second = self.first[order], self.second[order]

    def _key(self, steps: Ints, cell: Ints) -> Floats:
        return (steps * self.cells + cell).astype(float) * _EVEN

    def match(self, left: Partial, flours: tuple[int, ...]) -> None:
        """Offer every better blend that has one of the left partial blends in it."""
        away, width, aside = self._window()
        if width < self.width / 2:
            self._sort(width)
        which, start, count = self._found(left, away, width, aside)
        ends = np.cumsum(count)
        at = 0
        while at < len(count):
            done = ends[at - 1] if at else 0
            to = max(int(np.searchsorted(ends, done + _AT_ONCE, side="right")), at + 1)
            pick = slice(at, to)
            self._compare(left, flours, which[pick], start[pick], count[pick])
            at = to

    def _found(
        self, left: Partial, away: float, width: float, aside: float
    ) -> tuple[NDArray[np.intp], NDArray[np.intp], NDArray[np.intp]]:
        """Runs of the sorted half: for which left one, where they start, how many."""
        stand = self._stand()
        first = stand[0] + away - left.makes @ self.first_mix - self.first_from
        second = stand[1] - left.makes @ self.second_mix - self.second_from
        low = np.clip((second - aside) / self.second_span, 0.0, 1.1)
        high = np.clip((second + aside) / self.second_span, -0.1, 1.0)
        from_cell = np.floor((first - width) / self.cell).astype(np.int64)
        # Looked up in the order in which they lie, they are found several times faster.
        order = np.argsort(self._key(self.grid.steps - left.steps, from_cell) + low)
        first, low, high, from_cell = first[order], low[order], high[order], from_cell[order]
        open_steps = self.grid.steps - left.steps[order]
        to_cell = np.floor((first + width) / self.cell).astype(np.int64)
        found = []
        for cell in (from_cell, from_cell + 1, from_cell + 2):
            ok = (cell <= to_cell) & (cell >= 0) & (cell < self.cells) & (low <= high)
            which = np.flatnonzero(ok)
            keys = self._key(open_steps[which], cell[which])
            start = np.searchsorted(self.keys, keys + low[which] - ROUNDING, side="left")
            end = np.searchsorted(self.keys, keys + high[which] + ROUNDING, side="right")
            some = end > start
            found.append((order[which[some]], start[some], (end - start)[some]))
        which, start, count = (np.concatenate(each) for each in zip(*found, strict=True))
        return which, start, count

    def _stand(self) -> tuple[float, float]:
        count = self.grid.properties
        second = float(self.second_mix[:count] @ self.grid.target)
        if self.cut:
            return float(self.planes.stands[0]), second
        return float(self.first_mix[:count] @ self.grid.target), second

    def _compare(
        self,
        left: Partial,
        flours: tuple[int, ...],
        which: NDArray[np.intp],
        start: NDArray[np.intp],
        count: NDArray[np.intp],
    ) -> None:
        total = int(count.sum())
        self.pairs += total
        before = np.repeat(np.cumsum(count) - count, count)
        mine = np.arange(total) - before + np.repeat(start, count)
        theirs = np.repeat(which, count)
        makes = self.parts.makes[mine] + left.makes[theirs]
        missed = makes[:, : self.grid.properties] - self.grid.target
        squared = np.einsum("ij,ij->i", missed, missed)
        near = np.flatnonzero(squared <= self.best.squared + TIE)
        near = near[self._kept(makes[near], self.parts.used[mine[near]] | left.used[theirs[near]])]
        if len(near):
            nearest = near[squared[near] <= squared[near].min() + TIE][:_TIES]
            for at in nearest:
                x = np.zeros(self.grid.count, dtype=np.int64)
                x[list(self.flours)] = self.parts.amounts[mine[at]]
                x[list(flours)] = left.amounts[theirs[at]]
                self.best.offer(x)

    def _kept(self, makes: Floats, used: Ints) -> NDArray[np.bool_]:
        """Which pairs hold the limits on sums, and use flours that were not told yet."""
        grid, sums = self.grid, makes[:, self.grid.properties :]
        kept = np.all(
            (sums <= grid.row_high + ROUNDING) & (sums >= grid.row_low - ROUNDING), axis=1
        )
        if grid.most_parts is not None:
            kept &= np.bitwise_count(used) <= grid.most_parts
        return np.asarray(kept & self.best.counts(used))
