"""A good blend quickly: whole steps near one of fractions, then better by small exchanges."""

from functools import lru_cache
from itertools import combinations

import numpy as np

from krume.design.blending.grid import Floats, Grid, Ints
from krume.design.blending.planes import ROUNDING
from krume.design.blending.relaxing import Relaxed, relaxed

_AMOUNTS = (1, 2, 3, 5, 8)
_MANY_FLOURS = 16
# What a step past a limit weighs against squared distance, so that limits come first.
_HEAVY = 1e4
_GAIN = 1e-14
_USED = 1e-6


def near(grid: Grid, found: Relaxed, low: Ints, high: Ints) -> Ints | None:
    """A blend between two ends near one of fractions; None where it does not hold every limit."""
    start = _rounded(grid, found.x, low, high)
    return None if start is None else _exchanged(grid, start, low, high)


def near_with_fewer(grid: Grid, found: Relaxed, low: Ints, high: Ints) -> Ints | None:
    """The same where only so many flours may be used: the smallest goes, until they are few."""
    high = high.copy()
    for _ in range(grid.count):
        used = np.flatnonzero((found.x > _USED) & (high > 0))
        free = [int(at) for at in used if low[at] == 0]
        if len(used) <= (grid.most_parts or grid.count) or not free:
            break
        high[min(free, key=lambda at: (found.x[at], at))] = 0
        fewer = relaxed(grid, low, high)
        if fewer is None:
            break
        found = fewer
    return near(grid, found, low, high)


def _rounded(grid: Grid, wanted: Floats, low: Ints, high: Ints) -> Ints | None:
    """Whole steps with the right sum, largest remainders up; None where they do not come out."""
    x = np.clip(np.floor(wanted + ROUNDING), low, high).astype(np.int64)
    small = (x > 0) & (x < grid.least)
    x[small] = np.where(wanted[small] >= grid.least / 2, grid.least, low[small])
    x = np.minimum(x, high)
    order = [int(at) for at in np.argsort(x - wanted, kind="stable")]
    for _ in range(2):
        for at in order if x.sum() < grid.steps else order[::-1]:
            x[at] += _towards(grid, int(x[at]), grid.steps - int(x.sum()), low[at], high[at])
        if x.sum() == grid.steps:
            return x
    for at in order:
        if x[at] > 0:
            left = grid.steps - int(x.sum())
            x[at] = np.clip(x[at] + left, max(low[at], grid.least), high[at])
    return x if x.sum() == grid.steps else None


def _towards(grid: Grid, amount: int, left: int, low: int, high: int) -> int:
    """The step of one flour towards the right sum."""
    if left > 0 and amount == 0 and low == 0:
        return grid.least if grid.least <= min(left, high) else 0
    if left > 0:
        return 1 if amount < high else 0
    return -1 if left < 0 and amount > max(low, grid.least) else 0


def _exchanged(grid: Grid, x: Ints, low: Ints, high: Ints) -> Ints | None:
    """The best exchange again and again, until none makes the blend nearer."""
    while True:
        moves = np.vstack([_moves(grid.count, grid.least), _handed_over(x)])
        tried = x + moves
        ok = np.all((tried >= low) & (tried <= high), axis=1)
        ok &= np.all((tried == 0) | (tried >= grid.least), axis=1)
        tried = np.vstack([x, tried[ok]])
        scores = _scores(grid, tried)
        best = int(scores.argmin())
        if scores[best] >= scores[0] - _GAIN:
            return x if _over(grid, x[None])[0] <= 0 else None
        x = tried[best]


def _scores(grid: Grid, tried: Ints) -> Floats:
    missed = tried @ grid.pull - grid.target
    return np.asarray(np.einsum("ij,ij->i", missed, missed) + _HEAVY * _over(grid, tried))


def _over(grid: Grid, tried: Ints) -> Floats:
    """How far each blend is past the limits on several flours."""
    sums = tried @ grid.rows.T
    over = np.maximum(sums - grid.row_high - ROUNDING, 0.0)
    over += np.maximum(grid.row_low - ROUNDING - sums, 0.0)
    total = over.sum(axis=1)
    if grid.most_parts is not None:
        total += np.maximum(np.count_nonzero(tried, axis=1) - grid.most_parts, 0)
    return np.asarray(total)


@lru_cache(maxsize=32)
def _moves(count: int, least: int) -> Ints:
    """Exchanges that keep the sum: of two flours by some steps, of three, and of two pairs."""
    eye = np.eye(count, dtype=np.int64)
    pairs = list(combinations(range(count), 2))
    found = [amount * (eye[a] - eye[b]) for a, b in pairs for amount in sorted({*_AMOUNTS, least})]
    found += [
        eye[a] + eye[b] - 2 * eye[c] for a, b in pairs for c in range(count) if c not in (a, b)
    ]
    if count <= _MANY_FLOURS:
        found += [
            eye[a] + eye[b] - eye[c] - eye[d]
            for (a, b), (c, d) in combinations(pairs, 2)
            if len({a, b, c, d}) == 4
        ]
    if not found:
        return np.zeros((0, count), dtype=np.int64)
    return np.vstack([found, np.negative(found)])


def _handed_over(x: Ints) -> Ints:
    """Exchanges in which one flour takes all of another."""
    eye = np.eye(len(x), dtype=np.int64)
    found = [x[a] * (eye[b] - eye[a]) for a in np.flatnonzero(x) for b in range(len(x)) if a != b]
    return np.array(found, dtype=np.int64).reshape(-1, len(x))
