"""The ways to fill one bowl: its own eggs, whole eggs of other sizes, eggs weighed out, a pack."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import combinations

from krume.plan.eggs.rules import liquid_words
from krume.plan.eggs.wanting import Bowl, EggNeed, EggStock, each_g

_DUST = 1e-9


@dataclass(frozen=True, slots=True)
class Filling:
    """One way to fill a bowl.

    `kind` is own (the formula's own eggs), near (whole eggs of other sizes, close enough),
    weighed (the last egg in part, to the gram) or liquid (a pack). `pieces` are eggs, or their
    parts, by size; `off_g` is how far the bowl is from what it wants; `liquid` is the place of the
    pack in the stock.
    """

    kind: str
    pieces: tuple[tuple[str, float], ...]
    mass_g: float
    off_g: float = 0.0
    liquid: int | None = None

    def of(self, size: str) -> float:
        """Eggs, or parts of eggs, of a size."""
        return sum(count for key, count in self.pieces if key == size)


def sizes_for(need: EggNeed, stock: EggStock) -> tuple[str, ...]:
    """Sizes a need may be filled from: the house's, and its own from the shop, else the shop's.

    Another size is bought only where the shop does not have the formula's own.
    """
    house = [size for size, count in stock.house if count > 0]
    if stock.shop is None or need.size in stock.shop:
        bought = [] if need.size is None else [need.size]
    else:
        bought = list(stock.shop)
    return tuple(sorted({*house, *bought}))


def fillings(bowl: Bowl, stock: EggStock) -> tuple[Filling, ...]:
    """Every way to fill a bowl, its own eggs first; at most two sizes go into one bowl."""
    need = bowl.need
    sizes = sizes_for(need, stock)
    found = [*_own(bowl, sizes)]
    others = sizes if not stock.is_plain else ()
    for pair in [*((size,) for size in others), *combinations(others, 2)]:
        found += _mixed(bowl, pair, stock.near_enough_fraction)
    found += _liquid(bowl, stock)
    return tuple(dict.fromkeys(found))


def _own(bowl: Bowl, sizes: Iterable[str]) -> Iterator[Filling]:
    need = bowl.need
    if need.size is not None and bowl.count is not None and need.size in sizes:
        yield Filling("own", ((need.size, bowl.count),), bowl.mass_g)


def _mixed(bowl: Bowl, pair: tuple[str, ...], near_fraction: float) -> Iterator[Filling]:
    """Whole eggs close enough, and eggs weighed out; all of both sizes where there are two."""
    if pair == (bowl.need.size,):
        return
    masses = [each_g(size, bowl.need.part) for size in pair]
    for counts in _counts(bowl.mass_g, near_fraction, masses):
        mass = sum(n * m for n, m in zip(counts, masses, strict=True))
        off = mass - bowl.mass_g
        if all(counts) and abs(off) <= bowl.mass_g * near_fraction + _DUST:
            pieces = tuple(zip(pair, map(float, counts), strict=True))
            yield Filling("near", pieces, mass, abs(off))
        yield from _weighed(bowl, pair, counts, masses)


def _counts(mass_g: float, near_fraction: float, masses: list[float]) -> Iterator[tuple[int, ...]]:
    """Counts of one or two sizes that are near, or one egg short."""
    most_g = mass_g * (1 + near_fraction) + _DUST
    least_g = min(mass_g * (1 - near_fraction), mass_g - max(masses)) - _DUST
    *firsts, last_g = masses
    for first in range(int(most_g // firsts[0]) + 1 if firsts else 1):
        taken_g = first * sum(firsts)
        low = max(0, math.ceil((least_g - taken_g) / last_g))
        high = int((most_g - taken_g) // last_g)
        yield from ((first, n) if firsts else (n,) for n in range(low, high + 1))


def _weighed(
    bowl: Bowl, pair: tuple[str, ...], counts: tuple[int, ...], masses: list[float]
) -> Iterator[Filling]:
    """The counts and a part of one more egg, to the gram."""
    short = bowl.mass_g - sum(n * m for n, m in zip(counts, masses, strict=True))
    for index, mass in enumerate(masses):
        if _DUST < short < mass - _DUST:
            more = [float(n) for n in counts]
            more[index] += short / mass
            if all(more):
                yield Filling("weighed", tuple(zip(pair, more, strict=True)), bowl.mass_g)


def _liquid(bowl: Bowl, stock: EggStock) -> Iterator[Filling]:
    need = bowl.need
    if liquid_words(need.part, need.family) is None:
        return
    for index, liquid in enumerate(stock.liquids):
        if liquid.part == need.part and liquid.sugar_g(need.mass_g) <= need.sugar_g + _DUST:
            yield Filling("liquid", (), bowl.mass_g, liquid=index)
