"""The best blend so far, and which of two that are as near is told."""

from collections.abc import Iterable

import numpy as np
from numpy.typing import NDArray

from krume.design.blending.grid import Grid, Ints
from krume.design.blending.planes import ROUNDING, TIE


class Best:
    """Keeps the nearest blend: of two as near, the one of fewer flours, then of earlier names.

    Blends of exactly the flours of one in `told` do not count; flours are bits.
    """

    def __init__(self, grid: Grid, told: Iterable[int] = ()) -> None:
        self.grid = grid
        self.told = np.array(sorted(told), dtype=np.int64)
        self.squared = np.inf
        self.x: Ints | None = None

    def counts(self, used: Ints) -> NDArray[np.bool_]:
        """Which sets of flours were not told yet."""
        return ~np.isin(used, self.told)

    def offer(self, x: Ints) -> None:
        """Keep a blend that holds every limit, if it is better."""
        if not self._may_be(x):
            return
        squared = self.grid.squared(x)
        if squared < self.squared - TIE or (squared <= self.squared + TIE and self._goes_first(x)):
            self.squared, self.x = min(squared, self.squared), x.copy()

    def _may_be(self, x: Ints) -> bool:
        grid = self.grid
        sums = grid.rows @ x
        used = x > 0
        return bool(
            x.sum() == grid.steps
            and np.all((x >= grid.low) & (x <= grid.high))
            and np.all(~used | (x >= grid.least))
            and np.all((sums <= grid.row_high + ROUNDING) & (sums >= grid.row_low - ROUNDING))
            and (grid.most_parts is None or used.sum() <= grid.most_parts)
            and self.counts(np.array([bits(x)]))[0]
        )

    def _goes_first(self, x: Ints) -> bool:
        return self.x is None or _order(x) < _order(self.x)


def bits(x: Ints) -> int:
    """The flours used, a bit each."""
    return sum(1 << int(at) for at in np.flatnonzero(x))


def _order(x: Ints) -> tuple[int, ...]:
    return int(np.count_nonzero(x)), *(-int(amount) for amount in x)
