"""What is to be made and by when, and what the kitchen can do at once."""

import math
from dataclasses import dataclass
from datetime import datetime

from krume.base import Interval
from krume.plan.usual import usual, usual_min


@dataclass(frozen=True, slots=True)
class PlannedFormula:
    """What a day needs to know of a formula; None is not known.

    `batter_ml` and `white_ml` are the room of one cake in the bowl; `tin` is the tin's own text;
    `use_min` is the clock of a cream once it is folded, `set_h` its hours to set; `cool_min` are a
    cake's own minutes until it is cold, where its text says them. What `is_bought` is used as it
    is, and nobody makes it.
    """

    name: str
    title: str
    family: str | None = None
    batch_g: float | None = None
    bake_min: Interval | None = None
    oven_c: float | None = None
    eggs: float = 0.0
    batter_ml: float | None = None
    white_ml: float | None = None
    tin: str = ""
    use_min: float | None = None
    set_h: float | None = None
    cool_min: Interval | None = None
    is_bought: bool = False


@dataclass(frozen=True, slots=True)
class CreamUse:
    """Grams of a cream one torte takes; `is_last` when it goes on at the end, as coat or top."""

    formula: str
    mass_g: float
    is_last: bool = False


@dataclass(frozen=True, slots=True)
class PlannedTorte:
    """One torte: the cakes it takes, by formula, and the creams.

    `kind` is that of a torte, or `plain` for a cake handed over as it is baked.
    """

    name: str
    title: str
    kind: str
    cakes: tuple[tuple[str, int], ...] = ()
    creams: tuple["CreamUse", ...] = ()


@dataclass(frozen=True, slots=True)
class Promise:
    """An order: when it must stand ready, and how many of which torte."""

    order: str
    ready: datetime
    tortes: tuple[tuple[PlannedTorte, int], ...]


@dataclass(frozen=True, slots=True)
class Kitchen:
    """What the kitchen can do at once; None is no limit that is known.

    `tins` is how many there are of each tin, by the tin's text. Hours are minutes of the day.
    """

    tins_a_load: int
    load_min: int
    recover_min: int
    bowl_ml: float | None = None
    fridge_places: float | None = None
    tins: tuple[tuple[str, int], ...] = ()
    opens_min: int = 0
    begins_min: int = 0
    closes_min: int = 0

    def tins_of(self, tin: str) -> int | None:
        """How many tins of a text there are; None is not known."""
        return dict(self.tins).get(tin)


def usual_kitchen() -> Kitchen:
    """A kitchen of which nothing is said: the rows of the table."""
    return Kitchen(
        tins_a_load=int(usual("tins-a-load").value),
        load_min=usual_min("load-min"),
        recover_min=usual_min("recover-min"),
        opens_min=usual_min("day-opens"),
        begins_min=usual_min("day-begins"),
        closes_min=usual_min("day-closes"),
    )


def cakes_a_load(formula: PlannedFormula, kitchen: Kitchen) -> int:
    """Cakes of a formula that one bowl, one oven and the tins at hand can take at once."""
    most = kitchen.tins_a_load
    tins = kitchen.tins_of(formula.tin)
    if tins is not None:
        most = min(most, max(1, tins))
    room = max(formula.batter_ml or 0.0, formula.white_ml or 0.0)
    if kitchen.bowl_ml is None or room <= 0:
        return most
    fits = int(kitchen.bowl_ml * usual("bowl-share").value / 100 / room)
    return max(1, min(most, fits))


def planned_bake_min(interval: Interval) -> int:
    """Minutes a load is planned in the oven: two thirds of the way from least to most.

    >>> planned_bake_min(Interval(34, 37, 40)), planned_bake_min(Interval(10, 11, 12))
    (38, 12)
    """
    share = usual("bake-share").value / 100
    return math.ceil(interval.low + share * (interval.high - interval.low) - 1e-9)


def batches_made(need_g: float, batch_g: float) -> float:
    """Batches of a cream that are made: a half where that is enough, else whole ones.

    >>> batches_made(447.97, 941.5), batches_made(5376, 941.5), batches_made(1519, 853)
    (0.5, 6.0, 2.0)
    """
    factor = need_g / batch_g
    return 0.5 if factor <= 0.5 + 1e-9 else float(math.ceil(factor - 1e-9))
