"""The exact search: which grams of the lines that may move bring a variation nearest its parent."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product

from krume.base import InputError

_DUST = 1e-9
_DIGITS = 9
_STEPS_AROUND = 2


@dataclass(frozen=True, slots=True)
class Mover:
    """A line that may move: what a gram of it holds, what it answers for, its bounds.

    `per_g` has one figure for each quantity; `answers` is the place of its own one there.
    """

    name: str
    per_g: tuple[float, ...]
    answers: int
    start_g: float
    most_g: float


@dataclass(frozen=True, slots=True)
class Closed:
    """The masses found, on the scale's grid, and how far each quantity is still off."""

    masses_g: tuple[float, ...]
    remains_g: tuple[float, ...]
    worst: float


@dataclass(frozen=True, slots=True)
class _Search:
    off_g: tuple[float, ...]
    weights_g: tuple[float, ...]
    movers: tuple[Mover, ...]
    step_g: float

    def off(self, counts: Sequence[int]) -> tuple[float, ...]:
        """What is off by each quantity at these multiples of the step."""
        off = list(self.off_g)
        for count, mover in zip(counts, self.movers, strict=True):
            moved = count * self.step_g - mover.start_g
            for at, share in enumerate(mover.per_g):
                off[at] += moved * share
        return tuple(off)

    def score(self, counts: tuple[int, ...]) -> tuple[float, float, float, tuple[int, ...]]:
        """Largest weighed shift that a line answers for, then squares of all, then the move."""
        weighed = [abs(o) / w for o, w in zip(self.off(counts), self.weights_g, strict=True)]
        worst = max(weighed[mover.answers] for mover in self.movers)
        moved = sum(
            abs(count * self.step_g - mover.start_g)
            for count, mover in zip(counts, self.movers, strict=True)
        )
        squares = sum(each * each for each in weighed)
        return round(worst, _DIGITS), round(squares, _DIGITS), round(moved, _DIGITS), counts

    def most(self, at: int) -> int:
        """Highest multiple of the step that a mover may take."""
        return math.floor(self.movers[at].most_g / self.step_g + _DUST)


def close(
    off_g: Sequence[float],
    weights_g: Sequence[float],
    movers: Sequence[Mover],
    step_g: float,
) -> Closed:
    """Masses of the movers that leave the least off, proven over the whole grid.

    First the largest of |off| / weight over the quantities that a mover answers for is made
    least, then the sum of (off / weight)² over all of them, then the grams moved.

    >>> close([-3.7, 0.1], [18.2, 55.0], [Mover("oil", (1.0, 0.0), 0, 0.0, 50.0)], 0.1).masses_g
    (3.7,)
    """
    if step_g <= 0 or min(weights_g) <= 0:
        message = "The scale's step and every weight must be above 0."
        raise InputError(message, field="step_g", got=f"{step_g:g}", want="above 0")
    off = tuple(off_g)
    if not movers:
        return Closed((), off, 0.0)
    search = _Search(off, tuple(weights_g), tuple(movers), step_g)
    counts = _best(search)
    worst = search.score(counts)[0]
    masses = tuple(round(count * step_g, _DIGITS) for count in counts)
    return Closed(masses, search.off(counts), worst)


def _best(search: _Search) -> tuple[int, ...]:
    """Best multiples: a good start bounds where a better one can lie, and all of that is seen."""
    aim = _aim(search)
    start = _descended(search, aim)
    boxes = _boxes(search, aim, search.score(start)[0])
    best = min(
        (search.score(c) for c in _inside(search, boxes, start)), default=search.score(start)
    )
    return min(best, search.score(start))[3]


def _inverse(search: _Search) -> list[list[float]]:
    """Grams of each mover for a gram of each quantity that a mover answers for."""
    size = len(search.movers)
    rows = [
        [mover.per_g[one.answers] for mover in search.movers]
        + [1.0 if at == place else 0.0 for place in range(size)]
        for at, one in enumerate(search.movers)
    ]
    for at in range(size):
        pivot = max(range(at, size), key=lambda place: abs(rows[place][at]))
        if abs(rows[pivot][at]) < _DUST:
            names = ", ".join(mover.name for mover in search.movers)
            message = f"{names} answer for the same thing: leave one of them out."
            raise InputError(message, field="movers", got=names, want="lines that differ")
        rows[at], rows[pivot] = rows[pivot], rows[at]
        rows[at] = [each / rows[at][at] for each in rows[at]]
        for place in (p for p in range(size) if p != at):
            factor = rows[place][at]
            pairs = zip(rows[place], rows[at], strict=True)
            rows[place] = [a - factor * b for a, b in pairs]
    return [row[size:] for row in rows]


def _aim(search: _Search) -> tuple[float, ...]:
    """Masses that would close every quantity answered for, off the grid and without bounds."""
    answered = [search.off_g[mover.answers] for mover in search.movers]
    return tuple(
        mover.start_g - sum(a * b for a, b in zip(row, answered, strict=True))
        for mover, row in zip(search.movers, _inverse(search), strict=True)
    )


def _descended(search: _Search, aim: tuple[float, ...]) -> tuple[int, ...]:
    """A good start: the nearest grid point to the aim, then step by step downhill."""
    counts = tuple(
        min(max(round(mass / search.step_g), 0), search.most(at)) for at, mass in enumerate(aim)
    )
    reach = range(-_STEPS_AROUND, _STEPS_AROUND + 1)
    while True:
        near = (
            tuple(c + d for c, d in zip(counts, moved, strict=True))
            for moved in product(reach, repeat=len(counts))
        )
        allowed = (c for c in near if all(0 <= n <= search.most(at) for at, n in enumerate(c)))
        better = min(allowed, key=search.score)
        if search.score(better) >= search.score(counts):
            return counts
        counts = better


def _boxes(search: _Search, aim: tuple[float, ...], worst: float) -> list[range]:
    """Where a point no worse than `worst` can lie: |x - aim| <= worst · Σ |inverse| · weight."""
    limits = [(worst + _DUST) * search.weights_g[mover.answers] for mover in search.movers]
    found = []
    for at, row in enumerate(_inverse(search)):
        reach = sum(abs(a) * b for a, b in zip(row, limits, strict=True))
        low = math.ceil((aim[at] - reach) / search.step_g - _DUST)
        high = math.floor((aim[at] + reach) / search.step_g + _DUST)
        found.append(range(max(low, 0), min(high, search.most(at)) + 1))
    return found


def _inside(search: _Search, boxes: list[range], start: tuple[int, ...]) -> "list[tuple[int, ...]]":
    """Points of the boxes that can still be as good as the start, cut off as early as seen."""
    worst = search.score(start)[0]
    kept: list[tuple[int, ...]] = [()]
    for at, box in enumerate(boxes):
        grown = ((*point, count) for point in kept for count in box)
        kept = [p for p in grown if _least_worst(search, p, boxes[at + 1 :]) <= worst + _DUST]
    return kept


def _least_worst(search: _Search, point: tuple[int, ...], rest: list[range]) -> float:
    """A shift that every completion of a point has at least."""
    least = 0.0
    for mover in search.movers:
        low = high = search.off_g[mover.answers]
        for at, one in enumerate(search.movers):
            share = one.per_g[mover.answers]
            ends = (point[at], point[at]) if at < len(point) else _ends(rest[at - len(point)])
            moves = sorted(share * (count * search.step_g - one.start_g) for count in ends)
            low, high = low + moves[0], high + moves[1]
        nearest = 0.0 if low <= 0 <= high else min(abs(low), abs(high))
        least = max(least, nearest / search.weights_g[mover.answers])
    return least


def _ends(box: range) -> tuple[int, int]:
    return (box[0], box[-1]) if box else (0, 0)
