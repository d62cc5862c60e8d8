"""Blends of some of the flours, many at once, dropped as soon as no rest makes them better."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from krume.design.blending.grid import Floats, Grid, Ints
from krume.design.blending.planes import Planes
from krume.design.blending.sums import Box

_SAMPLE = 1500
_WORTH = 0.02


@dataclass(frozen=True, slots=True)
class Partial:
    """Partial blends: their steps together, flours used (a bit each), what they make, amounts."""

    steps: Ints
    used: Ints
    makes: Floats
    amounts: NDArray[np.int16]

    def __len__(self) -> int:
        return len(self.steps)

    def some(self, which: slice | NDArray[np.intp]) -> "Partial":
        """Some of them."""
        return Partial(self.steps[which], self.used[which], self.makes[which], self.amounts[which])


def nothing(grid: Grid) -> Partial:
    """The one blend of no flour."""
    return Partial(
        np.zeros(1, dtype=np.int64),
        np.zeros(1, dtype=np.int64),
        np.zeros((1, grid.makes.shape[1])),
        np.zeros((1, 0), dtype=np.int16),
    )


@dataclass(frozen=True, slots=True)
class Growth:
    """How partial blends grow flour by flour, and what the flours still open can add at least."""

    grid: Grid
    planes: Planes
    box: Box
    flours: tuple[int, ...]
    rest: dict[int, Floats]
    near: Ints | None = None

    def choices(self, place: int) -> Ints:
        """The steps that the flour at a place may have."""
        return self.grid.choices(self.flours[place], self.box.low, self.box.high)

    def grown(self, parts: Partial, place: int, most: Floats) -> Partial:
        """Each partial blend with each amount of the next flour, as far as it can still do."""
        at, choices = self.flours[place], self.choices(place)
        which = np.repeat(np.arange(len(parts)), len(choices))
        amount = np.tile(choices, len(parts))
        steps = parts.steps[which] + amount
        # The first plane's table is infinite where the rest cannot have the steps left.
        rest = self.rest[place + 1]
        used = parts.used[which] | np.where(amount > 0, 1 << at, 0)
        left = self._left(used)
        open_steps = self.grid.steps - steps
        keep = np.flatnonzero((open_steps >= 0) & (left >= 0))
        keep = keep[np.isfinite(rest[0, left[keep], open_steps[keep]])]
        which, amount = which[keep], amount[keep]
        makes = parts.makes[which] + amount[:, None] * self.grid.makes[at]
        kept = self._kept(makes, rest, left[keep], open_steps[keep], most)
        keep, which = keep[kept], which[kept]
        amounts = np.column_stack([parts.amounts[which], amount[kept].astype(np.int16)])
        return Partial(steps[keep], used[keep], makes[kept], amounts)

    def _left(self, used: Ints) -> Ints:
        if self.grid.most_parts is None:
            return np.zeros(len(used), dtype=np.int64)
        return self.grid.most_parts - np.bitwise_count(used).astype(np.int64)

    def _kept(
        self, makes: Floats, rest: Floats, left: Ints, open_steps: Ints, most: Floats
    ) -> NDArray[np.intp]:
        """Which partial blends no plane forbids; planes that forbid few are not asked for all."""
        kept = np.arange(len(makes))
        asked = np.flatnonzero(np.isfinite(most))
        if len(makes) > 2 * _SAMPLE:
            sample = kept[:: len(makes) // _SAMPLE]
            over = (
                makes[sample] @ self.planes.mixes[asked].T
                > most[asked] - rest[asked[:, None], left[sample], open_steps[sample]].T
            )
            asked = asked[_worthwhile(over)]
        for plane in asked:
            mix = self.planes.mixes[plane]
            room = most[plane] - rest[plane, left[kept], open_steps[kept]]
            kept = kept[makes[kept] @ mix <= room]
        return kept


def _worthwhile(over: NDArray[np.bool_]) -> list[int]:
    """Planes in the order of how many samples each forbids that the ones before it do not."""
    open_samples = over
    chosen: list[int] = []
    floor = max(_WORTH * len(over), 1)
    while True:
        counts = open_samples.sum(axis=0)
        best = int(counts.argmax()) if counts.size else 0
        if not counts.size or counts[best] < floor:
            return chosen
        chosen.append(best)
        open_samples = open_samples[~open_samples[:, best]]


def whole_list(growth: Growth, most: Floats, cap: int) -> tuple[Partial, int]:
    """All partial blends of the first flours, as many flours as keep the list short."""
    parts, place = nothing(growth.grid), 0
    while place < len(growth.flours) and len(parts) * len(growth.choices(place)) <= cap:
        parts = growth.grown(parts, place, most)
        place += 1
    return parts, place


def streamed(
    growth: Growth, most: Callable[[], Floats], chunk: int
) -> Iterator[tuple[int, Partial]]:
    """Partial blends of all flours in chunks, the ones nearest to a known blend first.

    Each comes with how many were tried since the last.
    """
    tried = 0
    stack: list[tuple[int, Partial]] = [(0, nothing(growth.grid))]
    while stack:
        place, parts = stack.pop()
        if place == len(growth.flours):
            yield tried, parts
            tried = 0
            continue
        size = max(chunk // len(growth.choices(place)), 1)
        if len(parts) > size:
            stack.append((place, parts.some(slice(size, None))))
            parts = parts.some(slice(0, size))
        tried += len(parts) * len(growth.choices(place))
        grown = growth.grown(parts, place, most())
        if len(grown):
            stack.append((place + 1, _nearest_first(growth, grown, place + 1)))
    yield tried, nothing(growth.grid).some(slice(0, 0))


def _nearest_first(growth: Growth, parts: Partial, place: int) -> Partial:
    if growth.near is None:
        return parts
    away = np.abs(parts.amounts - growth.near[list(growth.flours[:place])]).sum(axis=1)
    return parts.some(np.argsort(away, kind="stable"))
