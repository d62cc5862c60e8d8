"""What formulas want of eggs, and what there is of them: in the house and in the shop."""

import math
from dataclasses import dataclass

from krume.pantry import egg_size

PARTS = ("whole", "yolk", "white")


@dataclass(frozen=True, slots=True)
class EggNeed:
    """One egg line of a formula, for all its batches.

    `size` and `count` are the formula's own eggs for one batch; both None where it is written in
    grams. `mass_g` is what one batch wants without shells. `day` is a day's number: yolks and
    whites of one day may serve a later one for as long as they keep. `sugar_g` is what one batch
    has of sugar, from which that of a sugared yolk is taken off.
    """

    formula: str
    part: str
    mass_g: float
    batches: float = 1.0
    size: str | None = None
    count: float | None = None
    family: str | None = None
    day: int = 0
    sugar_g: float = 0.0

    @property
    def total_g(self) -> float:
        """Grams of all batches."""
        return self.mass_g * self.batches


@dataclass(frozen=True, slots=True)
class Liquid:
    """Egg out of a pack: pasteurised, or a yolk with sugar in it.

    `mass_g` is what there is of the pack's content; None is as much as is wanted, from the shop.
    `sugar_pct` is the sugar in it.
    """

    part: str
    mass_g: float | None
    sugar_pct: float = 0.0

    @property
    def name(self) -> str:
        """What it is called on a list."""
        word = "sugared" if self.sugar_pct else "pasteurised"
        return f"{word} {'whole egg' if self.part == 'whole' else self.part}"

    def pack_g(self, egg_g: float) -> float:
        """Grams of the pack's content that hold so much egg."""
        return egg_g / (1 - self.sugar_pct / 100)

    def sugar_g(self, egg_g: float) -> float:
        """Grams of sugar that come with so much egg."""
        return self.pack_g(egg_g) - egg_g


@dataclass(frozen=True, slots=True)
class EggStock:
    """Eggs in the house by size, sizes the shop has, and liquids.

    `shop` None is the sizes that the formulas name. `near_enough_fraction` is how far whole eggs
    of other sizes may weigh from what a bowl wants.
    """

    house: tuple[tuple[str, int], ...] = ()
    shop: tuple[str, ...] | None = None
    liquids: tuple[Liquid, ...] = ()
    near_enough_fraction: float = 0.0

    @property
    def is_plain(self) -> bool:
        """Whether nothing is said of house or shop: every formula gets its own eggs."""
        return not self.house and self.shop is None and not self.liquids

    def in_house(self, size: str) -> int:
        """Eggs of a size that are there."""
        return sum(count for key, count in self.house if key == size)


@dataclass(frozen=True, slots=True)
class Bowl:
    """Bowls that are filled alike: `times` batches of a need, or the part of one that is left."""

    need: EggNeed
    times: int
    mass_g: float
    count: float | None


def bowls(need: EggNeed) -> tuple[Bowl, ...]:
    """Whole batches of a need together, and the part of a batch by itself.

    >>> [(b.times, b.mass_g) for b in bowls(EggNeed("C1", "yolk", 87.5, 1.5, "eu-m", 5.0))]
    [(1, 87.5), (1, 43.75)]
    """
    whole = math.floor(need.batches + 1e-9)
    rest = round(need.batches - whole, 9)
    found = []
    for times, share in ((whole, 1.0), (1, rest)):
        if times > 0 and share > 0:
            count = None if need.count is None else need.count * share
            found.append(Bowl(need, times, need.mass_g * share, count))
    return tuple(found)


def each_g(size: str, part: str) -> float:
    """Planning mass of one egg of a size, or of its part."""
    return egg_size(size).part_g(part).best
