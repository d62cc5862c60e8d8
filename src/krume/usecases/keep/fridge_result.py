"""The answer of `fridge`: what is kept of what stood in it, and which orders stop."""

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True, slots=True)
class FridgePart:
    """One component of what stood in it: keep, discard or not-shown, and by whose rule.

    `opens` is what would settle it where it is not shown; `why` is why it needs the cold, or not.
    A component of a torte that is thrown away goes with it: `stands_in` names such tortes.
    """

    name: str
    title: str
    verdict: str
    needs_cold: bool
    text: str
    opens: str
    rule: str
    whose: str
    status: str
    source: str
    why: str
    why_status: str
    why_source: str
    stands_in: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class FridgeThing:
    """A torte, a cream or a cake that stood in it: the verdict of its hardest component."""

    name: str
    title: str
    kind: str
    verdict: str
    by: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class FridgeGrams:
    """Grams of a formula for what is made anew; None is not known."""

    name: str
    mass_g: float | None


@dataclass(frozen=True, slots=True)
class FridgeRemake:
    """What is made anew for an order: how many, of which formulas, minutes of work and in the cold.

    `work_min` is None where the minutes of an oven are not known.
    """

    name: str
    title: str
    count: int
    formulas: tuple[FridgeGrams, ...]
    work_min: float | None
    wait_min: float


@dataclass(frozen=True, slots=True)
class FridgeOrder:
    """An order that has some of it: whether it stops, and by when what must be begun anew.

    `begin_by` is None where nothing is to be made, or the time it takes or is due is not known;
    `is_late` says that this moment is past.
    """

    name: str
    title: str
    customer: str
    ready: datetime | None
    verdict: str
    stops: bool
    remake: tuple[FridgeRemake, ...]
    begin_by: datetime | None
    is_late: bool
    text: str


@dataclass(frozen=True, slots=True)
class FridgeRule:
    """What the rule of a place says, and whose rule it is."""

    place: str
    whose: str
    words: str
    status: str
    source: str
    page: str


@dataclass(frozen=True, slots=True)
class FridgeResult:
    """A fridge that was off: hours, readings, and what follows. None is not known.

    `verdict` is the hardest of all that stood in it. `until` is None while it is not cold again;
    hours then run to the moment of asking.
    """

    since: datetime | None
    until: datetime | None
    hours: float | None
    door: str
    air_c: float | None
    product_c: float | None
    before_c: float | None
    verdict: str
    things: tuple[FridgeThing, ...]
    components: tuple[FridgePart, ...]
    orders: tuple[FridgeOrder, ...]
    rules: tuple[FridgeRule, ...]
    missing: tuple[str, ...]
    cautions: tuple[str, ...]
