"""What a person writes down of an oven: looks at a thermometer in it, and finished bakes."""

from dataclasses import dataclass
from functools import cache

from krume.bake import Batter
from krume.evidence import figures
from krume.size import Tin

TESTS = ("probe", "skewer", "colour")
SHELVES = ("low", "middle", "high")


@cache
def figure(key: str) -> float:
    """Value of a row of `own_oven.csv`."""
    return figures("own_oven.csv")[key].value


@dataclass(frozen=True, slots=True)
class Reading:
    """Looks at a thermometer in the oven at one dial setting, over the thermostat's cycle.

    `key` says where it is written. `after_min` is since switching on, None is not known.
    `is_sure`: a person looked at it again and it is right, however odd.
    """

    key: str
    dial_c: float
    temps_c: tuple[float, ...]
    fan: bool = False
    shelf: str = "middle"
    after_min: float | None = None
    day: str = ""
    is_sure: bool = False
    status: str = "measured"

    @property
    def mean_c(self) -> float:
        """Mean over the looks."""
        return sum(self.temps_c) / len(self.temps_c)

    @property
    def offset_c(self) -> float:
        """True less dial."""
        return self.mean_c - self.dial_c

    @property
    def rise_c(self) -> float:
        """Last look less first: what is left of warming up, or a part of the cycle."""
        return self.temps_c[-1] - self.temps_c[0]


@dataclass(frozen=True, slots=True)
class FinishedBake:
    """One cake that was baked: what went in, how hot, and when which test called it done.

    `cake` names formula and tin alike for all bakes of one cake. `oven_c` is the true temperature,
    None where only `dial_c` is known. `not_done_min` is the last look at which it was not done.
    `core_c` is what the probe said at `done_min`.
    """

    key: str
    cake: str
    batter: Batter
    tin: Tin
    done_min: float
    test: str
    dial_c: float | None = None
    oven_c: float | None = None
    not_done_min: float | None = None
    core_c: float | None = None
    fan: bool = False
    shelf: str = "middle"
    altitude_m: float = 0.0
    day: str = ""
    is_sure: bool = False
    status: str = "measured"


@dataclass(frozen=True, slots=True)
class Flag:
    """A record that does not count, or not wholly, with the reason in words."""

    key: str
    code: str
    reason: str


@dataclass(frozen=True, slots=True)
class Prior:
    """What is known of ovens before anything is learnt of this one."""

    ln_heat: float
    ln_heat_sd: float
    offset_sd_c: float
    thermometer_sd_c: float
