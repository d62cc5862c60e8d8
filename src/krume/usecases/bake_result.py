"""What a bake answers: minutes as an interval, the rule that came last, and the course of it."""

from dataclasses import dataclass

from krume.base import Interval


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
class BakeResult:
    """A batter in a tin in an oven. `minutes` is None where there is no answer.

    `core_c` is the core the bake is done at, `core_from` says whose it is; `own_minutes` are the
    formula's own, `planned_loss_pct` its own plan: label and cost use that one, never the model's.
    `lines` is what each weighing does to it, null where that is not asked.
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
