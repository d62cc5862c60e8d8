"""What a bake answers: minutes as an interval, the rule that came last, and the course of it."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from krume.base import Interval
from krume.usecases.bake.around import BakeAround
from krume.usecases.bake.cooling import CoolingResult

if TYPE_CHECKING:
    from krume.bake import Bake


@dataclass(frozen=True, slots=True)
class BakeCurve:
    """The likeliest bake over time: core and top surface."""

    time_min: tuple[float, ...]
    core_c: tuple[float, ...]
    top_c: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class BakeRules:
    """Minutes at which each of the three rules is met in the likeliest bake."""

    core_min: float
    set_min: float
    colour_min: float


def curve_of(bake: "Bake") -> BakeCurve:
    """The course of a bake, as it is answered."""
    return BakeCurve(
        tuple(round(minute, 2) for minute in bake.curve.time_min),
        tuple(round(temp, 1) for temp in bake.curve.core_c),
        tuple(round(temp, 1) for temp in bake.curve.top_c),
    )


def rules_of(bake: "Bake") -> BakeRules:
    """The minutes of its three rules, as they are answered."""
    core, set_, colour = (round(minute, 1) for minute in bake.rule_minutes)
    return BakeRules(core, set_, colour)


@dataclass(frozen=True, slots=True)
class BakeDial:
    """What to set on the studio's own oven for the temperature wanted."""

    set_c: float
    set_f: float
    offset_c: float


@dataclass(frozen=True, slots=True)
class BakeLine:
    """What a usual slip of one line does to the likeliest bake, the rest as it is.

    `baked_mm` goes with the depth by the formula's own planned height; `shows` is false where the
    minutes move by less than the model's own steps in time.
    """

    line: int
    name: str
    part: str | None
    slip_g: float
    slip_from: str
    step_g: float | None
    slip_min: float
    step_min: float | None
    depth_mm: float
    baked_mm: float | None
    loss_pct: float
    share: float
    shows: bool


@dataclass(frozen=True, slots=True)
class BakeRival:
    """What else moves the minutes: `oven` or `density`, off by `half_width` either way."""

    key: str
    half_width: float
    unit: str
    minutes: float


@dataclass(frozen=True, slots=True)
class BakeLines:
    """Every line's slip beside oven and density, the lines that move the minutes most first.

    `share` of a line is its part of the scatter `sd_min` with all lines off at once, by the sum of
    single effects; that sum misses by `miss_min` (root mean square over `runs` bakes).
    """

    lines: tuple[BakeLine, ...]
    rivals: tuple[BakeRival, ...]
    noise_min: float
    sd_min: float
    miss_min: float
    runs: int
    seed: int
    text: str


@dataclass(frozen=True, slots=True)
class BakeBeside:
    """The same batter in a second tin, or otherwise in the same one.

    `sooner_min` is how much sooner it is ready, negative is later: the difference of the same
    draws in both; None is no telling, or not worked out. `name` is what the sentence calls it.
    """

    tin: str
    name: str
    oven_c: float
    fan: bool
    around: BakeAround | None
    minutes: Interval | None
    check_from_min: int | None
    done_by: str
    rules: BakeRules
    core_c: float
    depth_cm: float
    curve: BakeCurve
    sooner_min: Interval | None
    text: str


@dataclass(frozen=True, slots=True)
class BakeUnknown:
    """One thing that is not known: its share (0 to 1) of the scatter of the minutes.

    `then_min` are the minutes that stay where it is known better; None where no kitchen can, or
    where that is not worked out. `narrows` says whether they are fewer than now.
    """

    key: str
    text: str
    share: float
    then_min: Interval | None = None
    narrows: bool = False


@dataclass(frozen=True, slots=True)
class BakeTop:
    """Colour of the top at a minute of the likeliest bake: the model's measure, its word, L*a*b*.

    `screen` is what a screen shows for it, no calibrated print.
    """

    which: str
    minute: float
    delta_e: float
    word: str
    lightness: float
    red: float
    yellow: float
    screen: str


@dataclass(frozen=True, slots=True)
class BakeResult:
    """A batter in a tin in an oven. `minutes` is None where there is no answer.

    `core_c` is the core the bake is done at, `core_from` says whose it is; `own_minutes` are the
    formula's own, `planned_loss_pct` its own plan: label and cost use that one, never the model's.
    `lines` is what each weighing does to it, null where that is not asked. `around` is what stands
    round the tin; `beside` the second tin; `tops` the colour at check-from, likely and latest;
    `unknowns` what makes the doubt, largest first, and `cooling` what comes after the oven, both
    where they are asked for; `picture` the file it was drawn into.
    """

    name: str | None
    tin: str | None
    oven_c: float | None
    fan: bool
    altitude_m: float
    minutes: Interval | None
    check_from_min: int | None
    done_by: str | None
    rules: BakeRules | None
    core_c: float | None
    core_from: str | None
    family_core_c: Interval | None
    boiling_c: float | None
    depth_cm: float | None
    density_g_ml: float | None
    density_status: str
    loss_pct: Interval | None
    planned_loss_pct: float | None
    own_minutes: Interval | None
    curve: BakeCurve | None
    dial: BakeDial | None
    discrepancy: float | None
    draws: int | None
    stalled: int | None
    lines: BakeLines | None = None
    around: BakeAround | None = None
    beside: BakeBeside | None = None
    unknowns: tuple[BakeUnknown, ...] = ()
    tops: tuple[BakeTop, ...] = ()
    cooling: CoolingResult | None = None
    picture: str | None = None
