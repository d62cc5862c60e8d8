"""The bowl a slip lies in: what else belongs there, and whether it is dry and apart."""

import math
from dataclasses import dataclass

from krume.base import NotFoundError
from krume.design.bowls import BOWLS, Share, shares
from krume.design.formula import Line
from krume.design.slip.state import NOISE_G, Slip
from krume.pantry import ingredient

FLOURS = frozenset(("flour", "starch"))
BULK = frozenset(("flour", "starch", "nut", "cocoa"))
_DRY = BULK | {"binder", "leavening", "salt", "sugar"}


@dataclass(frozen=True, slots=True)
class Item:
    """One line's part in a bowl: planned, already there, and whether more can be added."""

    line: int
    plan_g: float
    held_g: float
    is_weighed: bool
    is_closed: bool
    role: str

    @property
    def is_bulk(self) -> bool:
        """Whether it makes up the blend; binder, raising agent and salt only go with it."""
        return self.role in BULK

    @property
    def is_open(self) -> bool:
        """Whether more of it may still go in."""
        return not self.is_closed and self.held_g < self.plan_g - NOISE_G


@dataclass(frozen=True, slots=True)
class Bowl:
    """A bowl with its items; `added` are lines that lie in it beyond what the steps say."""

    key: str
    items: tuple[Item, ...]
    added: tuple[int, ...] = ()

    @property
    def label(self) -> str:
        """The bowl's name on a bench card."""
        return BOWLS.get(self.key, self.key)

    @property
    def plan_g(self) -> float:
        """All of it as planned."""
        return math.fsum(item.plan_g for item in self.items)

    @property
    def flour_plan_g(self) -> float:
        """What 100 % of the blend is: flours and starches, or all where there are none."""
        return self.basis_g(tuple(item.plan_g for item in self.items))

    def basis_g(self, masses_g: tuple[float, ...]) -> float:
        """Flours and starches of these masses of the items, or all where there are none."""
        flour = [m for m, item in zip(masses_g, self.items, strict=True) if item.role in FLOURS]
        return math.fsum(flour) or math.fsum(masses_g)

    @property
    def lines(self) -> frozenset[int]:
        """Lines that have an item here."""
        return frozenset(item.line for item in self.items)

    @property
    def is_blend(self) -> bool:
        """Whether it is a dry blend of two parts or more, which keeps in a jar."""
        return (
            len(self.items) > 1
            and all(item.role in _DRY for item in self.items)
            and any(item.is_bulk for item in self.items)
        )

    @property
    def is_apart(self) -> bool:
        """Whether nothing lies in it but what belongs there."""
        return not self.added

    @property
    def needed(self) -> float:
        """Smallest factor at which nothing in it is too much."""
        return max((item.held_g / item.plan_g for item in self.items if item.plan_g), default=0.0)


@dataclass(frozen=True, slots=True)
class Bowls:
    """All bowls of a formula, and the one a slip lies in; None where it is no blend's."""

    all: tuple[Bowl, ...]
    slip: Bowl | None

    def alone(self, line: int) -> bool:
        """Whether nothing weighed lies in any bowl of a line but the line itself."""
        mine = [bowl for bowl in self.all if line in bowl.lines]
        return all(
            other.line == line or other.held_g <= NOISE_G for bowl in mine for other in bowl.items
        )


def bowls_of(slip: Slip) -> Bowls:
    """Bowls of a formula with what lies in them, in the order of work."""
    found, _ = shares(slip.formula)
    held = _held(slip, found)
    every = tuple(
        Bowl(key, items)
        for key in BOWLS
        if (items := tuple(i for i, share in zip(held, found, strict=True) if share.bowl == key))
    )
    return Bowls(every, _slip_bowl(slip, every))


def _slip_bowl(slip: Slip, every: tuple[Bowl, ...]) -> Bowl | None:
    """The blend most of the slip lies in, with what was said to lie in it too."""
    touched = [bowl for bowl in every if bowl.is_blend and _is_slipped(slip, bowl)]
    if not touched:
        return None
    bowl = max(touched, key=lambda each: each.needed)
    more = tuple(sorted(slip.same_bowl - bowl.lines))
    return Bowl(bowl.key, bowl.items, more)


def _is_slipped(slip: Slip, bowl: Bowl) -> bool:
    wrong = {*slip.over, *slip.short}
    return any(
        item.line in wrong and (item.held_g > item.plan_g + NOISE_G or item.line in slip.short)
        for item in bowl.items
    )


def _held(slip: Slip, found: tuple[Share, ...]) -> tuple[Item, ...]:
    """Items in the order of the shares; a line's grams fill its shares in the order of work."""
    order = list(BOWLS)
    ranked = sorted(range(len(found)), key=lambda n: order.index(found[n].bowl))
    left = {i: slip.held_g(i) for i in range(len(slip.lines))}
    last = {found[n].line: n for n in ranked}
    held: dict[int, float] = {}
    for n in ranked:
        share = found[n]
        plan = share.mass_g or 0.0
        held[n] = left[share.line] if last[share.line] == n else min(plan, left[share.line])
        left[share.line] -= held[n]
    return tuple(_item(slip, share, held[n]) for n, share in enumerate(found))


def _item(slip: Slip, share: Share, held_g: float) -> Item:
    return Item(
        share.line,
        share.mass_g or 0.0,
        held_g,
        held_g > 0 or slip.weighed_g[share.line] is not None,
        share.line in slip.closed,
        role_of(slip.lines[share.line]),
    )


def role_of(line: Line) -> str:
    """What a line is in the pantry; one the pantry does not know is `other`."""
    if line.basis == "egg":
        return "egg"
    try:
        found = None if line.ingredient is None else ingredient(line.ingredient)
    except NotFoundError:
        found = None
    if found is None:
        return "other"
    return "wet" if found.liquid and found.role in _DRY else found.role
