"""The nearest blend of a grid: bounds first, then two halves that meet."""

from dataclasses import dataclass

import numpy as np

from krume.design.blending.best import Best
from krume.design.blending.grid import Floats, Grid, Ints
from krume.design.blending.meeting import Meeting
from krume.design.blending.partial import Growth, streamed, whole_list
from krume.design.blending.planes import Planes
from krume.design.blending.sums import Box, LeastSums

GAP = 1e-6 * (1 + 1e-6)
_FINE_GAP = 1e-8
_LIST, _CHUNK = 500_000, 60_000
_SMALL = 100_000
_NEAR = (4_000, 40_000, 400_000, 2_500_000)
_PAIR_COST = 0.3
# A look through a table costs a partial blend for so many sums, and some for itself.
_LOOK_COST, _LOOK_LEAST = 0.004, 10_000
_NARROWING = 14
_POLISH = 400_000.0


@dataclass
class Work:
    """How much may still be looked at; counted, so that equal input gives equal output."""

    left: float
    nodes: int = 0
    is_small: bool = False

    def spend(self, partial: int, pairs: int) -> None:
        """Partial blends tried and pairs compared."""
        self.left -= partial + _PAIR_COST * pairs
        self.nodes += partial + pairs

    def look(self, sums: int) -> None:
        """Sums in a table looked through: many of them are as one partial blend."""
        self.left -= _LOOK_COST * (sums + _LOOK_LEAST)

    def is_enough(self, gap: float) -> bool:
        """Whether to stop at a gap to the bound: what is proven is only polished for a while.

        What is small is looked at to its end, so that of equal blends the same one is told.
        """
        if gap <= GAP and not self.is_small:
            self.left = min(self.left, _POLISH - _POLISH * (gap <= _FINE_GAP))
        return self.left <= 0


def search(grid: Grid, planes: Planes, best: Best, work: Work) -> bool:
    """Find the nearest blend; whether all blends were looked at, or cannot be nearer."""
    box = narrowed(grid, planes, best, Box(grid.low, grid.high), work)
    if box is None:
        return True
    work.is_small = longer_half(grid, box) <= _SMALL
    return meet(grid, planes, best, box, work) if work.is_small else _hard(grid, planes, best, work)


def _hard(grid: Grid, planes: Planes, best: Best, work: Work) -> bool:
    """The same with more planes, and near the best blend first."""
    box = Box(grid.low, grid.high)
    planes = Planes(grid, planes.found, box, is_hard=True)
    for longest in (*_NEAR, None):
        narrower = narrowed(grid, planes, best, box, work)
        if narrower is None:
            return True
        box = narrower
        if longest is None or best.x is None:
            break
        meet(grid, planes, best, _around(grid, best, box, longest), work)
        if work.is_enough(best.squared - planes.bound**2):
            return False
    return meet(grid, planes, best, box, work)


def meet(grid: Grid, planes: Planes, best: Best, box: Box, work: Work) -> bool:
    """Look at all blends of a box; False where it ended before, near enough or out of work."""
    if work.left <= 0:
        return False
    left, right = _halves(grid, box)
    sums = LeastSums(grid, planes.weights, box)
    rest = sums.of_rest([*right, *left], len(right))
    listed = Growth(grid, planes, box, tuple(right), rest)
    parts, place = whole_list(listed, planes.most(best.squared), _LIST)
    work.spend(len(parts), 0)
    if not len(parts):
        return True
    left, right = [*left, *right[place:]], right[:place]
    meeting = Meeting(grid, planes, best, parts, tuple(right))
    rest = sums.of_rest([*left, *right], len(left))
    growth = Growth(grid, planes, box, tuple(left), rest, best.x)
    for tried, chunk in streamed(growth, lambda: planes.most(best.squared), _CHUNK):
        before = meeting.pairs
        if len(chunk):
            meeting.match(chunk, tuple(left))
        work.spend(tried, meeting.pairs - before)
        if work.is_enough(best.squared - planes.bound**2):
            return False
    return True


def longer_half(grid: Grid, box: Box) -> float:
    """How many partial blends the longer of two halves would have at most."""
    sizes = grid.sizes(box.low, box.high).astype(float)
    return max(float(np.prod(sizes[half])) for half in _halves(grid, box))


def _halves(grid: Grid, box: Box) -> tuple[list[int], list[int]]:
    """Two halves of about as many partial blends, the longer one first."""
    sizes = grid.sizes(box.low, box.high)
    halves: tuple[list[int], list[int]] = ([], [])
    lengths = [1.0, 1.0]
    for at in sorted(range(grid.count), key=lambda at: (-sizes[at], at)):
        half = 0 if lengths[0] <= lengths[1] else 1
        halves[half].append(at)
        lengths[half] *= max(float(sizes[at]), 1.0)
    return halves if lengths[0] >= lengths[1] else (halves[1], halves[0])


def _around(grid: Grid, best: Best, box: Box, longest: int) -> Box:
    """The box around the best blend whose longer half is as long as allowed."""
    if best.x is None:
        return box
    wide, found = 0, box
    while wide < grid.steps:
        wider = _cut(grid, best.x, box, wide + 1)
        if longer_half(grid, wider) > longest:
            break
        wide, found = wide + 1, wider
    return found if wide else _cut(grid, best.x, box, 1)


def _cut(grid: Grid, x: Ints, box: Box, wide: int) -> Box:
    low = np.maximum(box.low, x - wide)
    # Where a flour may be left out, its least opens the way to that.
    low = np.where((x == 0) | (low < grid.least), box.low, low)
    return Box(low, np.minimum(box.high, np.maximum(x + wide, low)))


def narrowed(grid: Grid, planes: Planes, best: Best, box: Box, work: Work) -> Box | None:
    """The box without what a plane forbids at its ends; None where nothing is left.

    Once the work is done what was not looked at stays in, so that no blend is lost.
    """
    sums = LeastSums(grid, planes.weights[:_NARROWING], box)
    most = planes.most(best.squared)[:_NARROWING]
    before, after = [sums.none()], [sums.none()]
    for at in range(grid.count):
        before.append(sums.with_flour(before[-1], at))
        after.append(sums.with_flour(after[-1], grid.count - 1 - at))
    low, high = box.low.copy(), box.high.copy()
    for at in range(grid.count):
        ends = _Ends(grid, before[at], after[grid.count - 1 - at], sums.weights[:, at], most, work)
        choices = grid.choices(at, box.low, box.high)
        first = ends.first_open(choices)
        last = ends.first_open(choices[::-1])
        if first is None or last is None:
            return None
        low[at], high[at] = first, last
    return Box(low, high)


class _Ends:
    """Which amounts of one flour no plane forbids, whatever the other flours are."""

    def __init__(
        self, grid: Grid, one: Floats, other: Floats, weights: Floats, most: Floats, work: Work
    ) -> None:
        """Tables of least sums of the flours before it and after it, a plane a row."""
        self._grid, self._one, self._other = grid, one, other
        self._weights, self._most, self._work = weights, most, work
        self._order = list(range(len(most)))

    def first_open(self, amounts: Ints) -> int | None:
        """The first amount that no plane forbids; None where each is forbidden."""
        for amount in amounts.tolist():
            if self._work.left <= 0 or not self._is_forbidden(amount):
                return int(amount)
        return None

    def _is_forbidden(self, amount: int) -> bool:
        """Whether some plane forbids an amount; the plane that did so last is asked first."""
        steps, parts = self._grid.steps - amount, self._grid.most_parts
        used = (parts or 0) - (1 if parts is not None and amount else 0)
        if steps < 0 or used < 0:
            return True
        for place, plane in enumerate(self._order):
            rest = self._one[plane, : used + 1, : steps + 1]
            least = (rest + self._other[plane, used::-1, steps::-1]).min()
            self._work.look((used + 1) * (steps + 1))
            if least + amount * self._weights[plane] > self._most[plane]:
                self._order.insert(0, self._order.pop(place))
                return True
        return False
