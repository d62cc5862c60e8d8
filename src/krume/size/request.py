"""What the size job is asked and what it answers, in plain values: masses, eggs, tins, depth."""

from dataclasses import dataclass

from krume.base import Notice, Problem
from krume.size.factor import Factors
from krume.size.tin import Tin

EGGS = ("whole", "any")


@dataclass(frozen=True, slots=True)
class SizeLine:
    """One line of what is scaled; `key` names it in the answer.

    `kind` is `flour` (starches too), `binder`, `egg` or `other`. `egg_each_g` is the shelled mass
    of one egg of that size, or of its yolk or white, where the line is counted in eggs.
    """

    key: str
    mass_g: float | None
    kind: str = "other"
    name: str = ""
    egg_each_g: float | None = None
    egg_size: str = ""
    egg_part: str = "whole"


@dataclass(frozen=True, slots=True)
class SizeRequest:
    """Lines to scale, from which tin into which, and what is wished.

    `own` None: the formula names no tin. Several `targets` are filled to one depth.
    `density_g_ml` is the batter's; `rise` is baked height over batter depth where it is known.
    `depth_cm` None keeps the depth of the own tin. `eggs` is `whole` or `any`; `step_g` is what
    the person's scale shows.
    """

    lines: tuple[SizeLine, ...]
    targets: tuple[Tin, ...]
    own: Tin | None = None
    density_g_ml: float | None = None
    rise: float | None = None
    depth_cm: float | None = None
    eggs: str = "whole"
    step_g: float = 0.1


@dataclass(frozen=True, slots=True)
class Aim:
    """The depth and the factor that are wanted, and the batter's volume at factor 1."""

    factor: float | None
    depth_cm: float | None
    own_depth_cm: float | None
    batter_ml: float | None
    total_g: float | None


@dataclass(frozen=True, slots=True)
class SizedLine:
    """One line's new mass; None where it had none."""

    key: str
    mass_g: float | None


@dataclass(frozen=True, slots=True)
class SizedEggs:
    """Eggs of one line: whole count, and grams from one more (negative: weigh that much out)."""

    key: str
    count: int
    size: str
    part: str
    mass_g: float
    make_up_g: float


@dataclass(frozen=True, slots=True)
class SizeOption:
    """One way to size the batter, with what it costs in depth and grams.

    `kind` is `as-is` (nothing changes), `whole` (whole eggs) or `exact` (the wanted depth).
    `fill` is batter over tin before it rises; `shares_g` is the batter for each target tin.
    """

    kind: str
    factor: float
    lines: tuple[SizedLine, ...]
    eggs: tuple[SizedEggs, ...]
    total_g: float | None
    depth_cm: float | None
    fill: float | None
    shares_g: tuple[float, ...]
    text: str
    notices: tuple[Notice, ...] = ()


@dataclass(frozen=True, slots=True)
class Fit:
    """The size job's answer, best option first; `problems` are what keeps it from answering."""

    factor: Factors
    wanted_factor: float | None
    wanted_depth_cm: float | None
    own_depth_cm: float | None
    options: tuple[SizeOption, ...]
    problems: tuple[Problem, ...] = ()
    notices: tuple[Notice, ...] = ()
