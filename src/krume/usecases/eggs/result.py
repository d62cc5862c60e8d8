"""The answer of `eggs`: what to buy and crack, how each formula is filled, what takes the rest."""

from dataclasses import dataclass
from datetime import date

from krume.base import Interval


@dataclass(frozen=True, slots=True)
class EggPacks:
    """Packs of one kind: how many eggs a pack holds, and how many packs."""

    holds: int
    count: int


@dataclass(frozen=True, slots=True)
class EggBuy:
    """Eggs of one size to buy; `over` are eggs of the packs that nothing here wants."""

    size: str
    label: str
    count: int
    packs: tuple[EggPacks, ...]
    over: int


@dataclass(frozen=True, slots=True)
class EggCrack:
    """Eggs of one size to crack: how many go in whole, and the yolks and whites apart."""

    size: str
    label: str
    count: int
    from_house: int
    whole: float
    yolks: float
    whites: float
    text: str


@dataclass(frozen=True, slots=True)
class EggPiece:
    """Eggs, or parts of eggs, of one size in one bowl."""

    size: str
    label: str
    count: float


@dataclass(frozen=True, slots=True)
class EggFilled:
    """Bowls filled one way. `kind` is own, near, weighed or liquid.

    `off_pct` is how far the bowl is from what the formula wants; `sugar_off_g` is sugar to leave
    out of one bowl, because it comes with the yolk.
    """

    kind: str
    bowls: int
    pieces: tuple[EggPiece, ...]
    mass_g: float
    off_pct: float
    liquid: str | None
    liquid_g: float | None
    sugar_off_g: float | None
    text: str


@dataclass(frozen=True, slots=True)
class EggRow:
    """One egg line of a formula, for all its batches; `count` is None where it is in grams.

    `spread_g` goes from all eggs light to all heavy; `likely_half_g` is the half-width where each
    lies by itself. Both None where no egg is cracked for it.
    """

    formula: str
    title: str
    part: str
    batches: float
    count: float | None
    size: str | None
    mass_g: float
    spread_g: Interval | None
    likely_half_g: float | None
    day: date | None
    filled: tuple[EggFilled, ...]
    text: str


@dataclass(frozen=True, slots=True)
class EggPack:
    """Egg out of a pack: what the formulas want, what is in the house, what to buy.

    `saved_g` is what left-over egg could give in its place, treated as `heat_c` says; `buy_g` is
    with none of that: egg from the shell is not pasteurised, and whose cake it is decides.
    """

    name: str
    part: str
    mass_g: float
    saved_g: float
    from_house_g: float
    buy_g: float
    formulas: tuple[str, ...]
    heat_c: float | None = None


@dataclass(frozen=True, slots=True)
class EggLeft:
    """A part of eggs left over: what the request's own formulas take, and what is left then.

    `cold_days` count from the day the eggs are broken; `day` is the order's they are broken for.
    """

    size: str
    part: str
    count: float
    mass_g: float
    taken_g: float
    left_g: float
    cold_days: int
    day: date | None
    text: str


@dataclass(frozen=True, slots=True)
class EggTaker:
    """A formula that takes left-over egg.

    `is_ordered` says it is made anyway; else `batches` more of it are an offer. `more_g` is what
    it wants beside that. `left_g` is what then remains of the part.
    """

    formula: str
    title: str
    part: str
    mass_g: float
    batches: float | None
    more_g: float
    left_g: float
    heat_c: float | None
    is_ordered: bool
    status: str
    text: str


@dataclass(frozen=True, slots=True)
class EggSpread:
    """Shelled grams of all eggs of one size, and spare eggs that make them likely enough.

    `spare` makes up for eggs that each lie by themselves, `sure` for all of them light.
    """

    size: str
    label: str
    count: int
    mass_g: Interval
    likely_half_g: float
    spare: int
    sure: int
    status: str
    text: str


@dataclass(frozen=True, slots=True)
class EggsResult:
    """Eggs of a request: to buy, to crack, into which bowl, what is left and what takes it."""

    of: tuple[str, ...]
    buy: tuple[EggBuy, ...]
    crack: tuple[EggCrack, ...]
    formulas: tuple[EggRow, ...]
    packs: tuple[EggPack, ...]
    left: tuple[EggLeft, ...]
    takers: tuple[EggTaker, ...]
    spread: tuple[EggSpread, ...]
    when_weighed: str
    cautions: tuple[str, ...]
    proven: bool
    within: str = ""


def no_eggs(of: tuple[str, ...]) -> EggsResult:
    """The answer before anything could be counted."""
    return EggsResult(of, (), (), (), (), (), (), (), "", (), proven=False)
