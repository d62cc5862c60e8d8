"""What a blend is asked to be, what it may hold, and what came of it."""

from dataclasses import dataclass
from typing import Literal

LimitKind = Literal["share", "property", "stock", "least-part", "parts", "price", "total"]


@dataclass(frozen=True, slots=True)
class BlendLimit:
    """A limit on the share of some flours together, in % of the blend, ends included."""

    name: str
    members: tuple[int, ...]
    low_pct: float | None = None
    high_pct: float | None = None


@dataclass(frozen=True, slots=True)
class PropertyLimit:
    """A limit on what the blend holds of something, in g per 100 g, ends included.

    `composition` has one number per flour: it may be a property that the target does not name.
    """

    name: str
    composition: tuple[float, ...]
    low: float | None = None
    high: float | None = None


@dataclass(frozen=True, slots=True)
class BlendTask:
    """Flours at hand, what their blend is to come near, and every limit on it.

    `composition` has a row per flour, in g per 100 g, a number per property. A flour that is used
    weighs `least_part_g` or more; `most_g` is the stock of each flour, None where there is enough.
    """

    names: tuple[str, ...]
    composition: tuple[tuple[float, ...], ...]
    properties: tuple[str, ...]
    target: tuple[float, ...]
    total_g: float
    step_g: float = 1.0
    limits: tuple[BlendLimit, ...] = ()
    most_g: tuple[float | None, ...] | None = None
    least_part_g: float = 0.0
    most_parts: int | None = None
    price_per_kg: tuple[float, ...] | None = None
    most_price_per_kg: float | None = None
    property_limits: tuple[PropertyLimit, ...] = ()


@dataclass(frozen=True, slots=True)
class BlendFit:
    """A blend in whole steps: how far it is from the target, and how near any blend could come.

    `bound` is a distance that no blend within the limits goes below. `proven` says that it lies
    within 1e-6 of the squared `distance`.
    """

    masses_g: tuple[float, ...]
    got: tuple[float, ...]
    distance: float
    proven: bool
    bound: float
    nodes: int


@dataclass(frozen=True, slots=True)
class ClashingLimit:
    """One of the limits that cannot hold together.

    `value` is what was given and `loosened` the nearest value to it that leaves an answer while
    all other limits stay; None where this limit alone cannot do it. Both are in `unit`. `place`
    is the limit's place in the task: of a share or property limit in its tuple, of a stock the
    flour's.
    """

    kind: LimitKind
    name: str
    side: Literal["low", "high", "exact"]
    value: float
    unit: str
    loosened: float | None
    place: int | None = None
