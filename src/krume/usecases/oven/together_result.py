"""What several loads in one oven answer: the minutes of each, who is last, and why."""

from dataclasses import dataclass

from krume.base import Interval


@dataclass(frozen=True, slots=True)
class TogetherLoad:
    """One load beside the others; minutes count from its own door, `in_min` from the first.

    `alone_min` is what it takes as the only tin. Over the bake the air is `air_c` lower than then,
    `door_c` of it for the door; `heat_pct` less heat reaches the tin where others stand round it.
    All three are None where nothing was worked out.
    `back_min` is when the air is back near its setting, None where it is not before it is done.
    `wants_c` is the formula's own oven, where it differs from the one it stands in.
    """

    formula: str
    name: str | None
    tin: str | None
    tins: int
    in_min: float
    rack: str
    check_from_min: float | None
    minutes: Interval | None
    alone_min: Interval | None
    later_min: float | None
    air_c: float | None
    door_c: float | None
    heat_pct: float | None
    back_min: float | None
    wants_c: float | None
    text: str


@dataclass(frozen=True, slots=True)
class TogetherResult:
    """All loads in one oven, in the order asked; `last` is the one out last, counted from 1.

    `oven_kwh` is from the first door to the last load out; `warming_kwh` is heating it up before.
    """

    oven_c: float | None
    fan: bool
    tins: int
    loads: tuple[TogetherLoad, ...]
    last: int | None
    oven_kwh: float | None
    warming_kwh: float | None
    text: str
