"""The answer of how many eggs to crack, and a second look at it by plainer arithmetic."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from krume.plan.eggs.filling import Filling
from krume.plan.eggs.rules import cold_days
from krume.plan.eggs.wanting import Bowl, EggStock

_DUST = 1e-6


@dataclass(frozen=True, slots=True)
class Filled:
    """Bowls of one kind and the way they are filled, `times` of them that way."""

    bowl: Bowl
    filling: Filling
    times: int


@dataclass(frozen=True, slots=True)
class Cracked:
    """Eggs of one size cracked for one day: whole ones, and yolks and whites used of any day."""

    size: str
    day: int
    count: int


@dataclass(frozen=True, slots=True)
class Loose:
    """A part of eggs that is left over, of one size and one day, in eggs."""

    size: str
    part: str
    day: int
    count: float


@dataclass(frozen=True, slots=True)
class Cracking:
    """Every bowl filled, the eggs cracked for it, and what must be bought.

    `bought` is by size; `liquid_g` is what each pack of the stock gives, in grams of egg.
    """

    filled: tuple[Filled, ...]
    cracked: tuple[Cracked, ...]
    bought: Mapping[str, int]
    liquid_g: tuple[float, ...]
    proven: bool

    def count_of(self, size: str) -> int:
        """Eggs of a size that are cracked."""
        return sum(each.count for each in self.cracked if each.size == size)

    @property
    def sizes(self) -> tuple[str, ...]:
        """Sizes that are cracked."""
        return tuple(sorted({each.size for each in self.cracked if each.count}))

    def used(self, size: str, part: str, day: int | None = None) -> float:
        """Eggs, or parts, of a size that go into the bowls of a day, or of all days."""
        return sum(
            each.times * each.filling.of(size)
            for each in self.filled
            if each.bowl.need.part == part and day in (None, each.bowl.need.day)
        )

    @property
    def days(self) -> tuple[int, ...]:
        """Days of the bowls, the first first."""
        return tuple(sorted({each.bowl.need.day for each in self.filled}))


def left_over(answer: Cracking) -> tuple[Loose, ...]:
    """What is left of the eggs cracked; the oldest loose parts are used first.

    A whole egg of which a bowl took a part is left as whole egg.
    """
    found: list[Loose] = []
    for size in answer.sizes:
        apart = {day: _apart(answer, size, day) for day in answer.days}
        lots = {
            part: dict(_after_use(answer, size, part, apart) or {}) for part in ("white", "yolk")
        }
        for day in answer.days:
            beaten = _beaten(answer, size, day, lots)
            for part in ("white", "yolk"):
                lots[part][day] -= beaten
            rows = (("white", lots["white"][day]), ("yolk", lots["yolk"][day]), ("whole", beaten))
            found += [Loose(size, part, day, n) for part, n in rows if n > _DUST]
    return tuple(found)


def _apart(answer: Cracking, size: str, day: int) -> float:
    """Eggs of a day that are not used whole."""
    count = sum(c.count for c in answer.cracked if (c.size, c.day) == (size, day))
    return count - answer.used(size, "whole", day)


def _beaten(answer: Cracking, size: str, day: int, lots: Mapping[str, dict[int, float]]) -> float:
    whole = answer.used(size, "whole", day)
    part = math.ceil(whole - _DUST) - whole
    return max(0.0, min(part, lots["white"][day], lots["yolk"][day]))


def _after_use(
    answer: Cracking, size: str, part: str, apart: Mapping[int, float]
) -> dict[int, float] | None:
    """What is left of each day's loose parts; None where a day wants more than has kept."""
    left = dict(apart)
    for day in answer.days:
        want = answer.used(size, part, day)
        for made in answer.days:
            if made <= day <= made + cold_days(part):
                taken = min(left[made], want)
                left[made] -= taken
                want -= taken
        if want > _DUST:
            return None
    return left


def cracking_faults(
    answer: Cracking, wanted: Sequence[Bowl], stock: EggStock, shop: Sequence[str]
) -> tuple[str, ...]:
    """What is wrong with an answer, by counting it over again; empty where it holds."""
    found = [*_bowl_faults(answer, wanted)]
    for size in answer.sizes:
        if answer.count_of(size) > stock.in_house(size) + answer.bought.get(size, 0):
            found.append(f"more {size} are cracked than there are")
        if answer.bought.get(size, 0) > 0 and size not in shop:
            found.append(f"{size} is bought, and the shop has none")
        apart = {day: _apart(answer, size, day) for day in answer.days}
        if min(apart.values()) < -_DUST:
            found.append(f"{size}: more whole eggs are used than are cracked")
        found += [
            f"{size}: more {part}s are used than are cracked"
            for part in ("yolk", "white")
            if _after_use(answer, size, part, apart) is None
        ]
    for index, liquid in enumerate(stock.liquids):
        if liquid.mass_g is not None and answer.liquid_g[index] > liquid.mass_g + _DUST:
            found.append(f"more {liquid.name} is used than there is")
    return tuple(found)


def _bowl_faults(answer: Cracking, wanted: Sequence[Bowl]) -> list[str]:
    found = []
    for bowl in wanted:
        ways = [each for each in answer.filled if each.bowl == bowl]
        if sum(each.times for each in ways) < bowl.times:
            found.append(f"a bowl of {bowl.need.formula} is not filled")
        found += [
            f"a bowl of {bowl.need.formula} has other grams than it says"
            for each in ways
            if abs(each.filling.mass_g - bowl.mass_g) > each.filling.off_g + _DUST
        ]
    return found
