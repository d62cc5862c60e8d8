"""What is known of one's ovens, as it is told: offset, heat, the records behind them."""

from dataclasses import dataclass

from krume.base import Interval


@dataclass(frozen=True, slots=True)
class OvenAtDial:
    """What the oven is off at one dial setting: true less dial, and its doubt."""

    dial_c: float
    offset_c: float
    sd_c: float


@dataclass(frozen=True, slots=True)
class OvenFlag:
    """A record that does not count, or not wholly, and why."""

    key: str
    code: str
    reason: str


@dataclass(frozen=True, slots=True)
class OvenShown:
    """One oven with or without its fan, on one shelf; None is not known.

    `offset_c` and `dial_c` are for a true temperature of `at_c`. `offset_from` is readings, or
    studio.toml where only their mean is written down. `drift_c` is by how much it moved from the
    first day to the last. `heat` is over the usual oven's, with the
    four fifths in the middle; `prior_heat` is that before any bake.
    """

    name: str
    fan: bool
    shelf: str
    at_c: float
    offset_c: float | None
    offset_sd_c: float | None
    offset_from: str | None
    dial_c: float | None
    dial_f: float | None
    dials: tuple[OvenAtDial, ...]
    differs: bool
    swing_c: float | None
    drift_c: float | None
    readings: int
    temp_half_width_c: float
    heat: Interval
    prior_heat: Interval
    bakes: int
    statuses: tuple[str, ...]
    flagged: tuple[OvenFlag, ...]
    offset_text: str
    heat_text: str


@dataclass(frozen=True, slots=True)
class OvenRecordShown:
    """One record: its number in the list, what it says, whether it counts and why not.

    `kind` is reading, bake, trial or load; `row` is its row in the table, None elsewhere;
    `off_pct` is how much longer than this oven's heat says a bake that counts took.
    """

    number: int
    oven: str
    kind: str
    key: str
    text: str
    day: str
    status: str
    counts: bool
    reason: str
    row: int | None
    off_pct: float | None


@dataclass(frozen=True, slots=True)
class OvenResult:
    """All that is known of a book's ovens; `done` says what this request wrote down."""

    ovens: tuple[OvenShown, ...]
    records: tuple[OvenRecordShown, ...]
    done: str
