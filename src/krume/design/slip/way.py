"""A way out of a slip: grams to add, what the cake becomes, and what it costs."""

from dataclasses import dataclass

from krume.design.balance import Balance
from krume.design.findings import Finding
from krume.design.ratios import Value


@dataclass(frozen=True, slots=True)
class WayLine:
    """One line of a way: in the bowl at the end (`mass_g`), still to add, and as planned.

    `take_out_g` comes back out of a cup it lies alone in. `mark` says what the scale does not
    weigh well. Shares are percent of the blend's flours and starches, None outside a blend.
    """

    line: int
    mass_g: float
    add_g: float
    was_g: float
    share_pct: float | None = None
    was_share_pct: float | None = None
    take_out_g: float = 0.0
    mark: str = ""


@dataclass(frozen=True, slots=True)
class EggPart:
    """Eggs of one line: whole ones, and grams from one more (below 0: left over)."""

    part: str
    count: int
    make_up_g: float
    mass_g: float


@dataclass(frozen=True, slots=True)
class WayEggs:
    """Eggs of the corrected formula: a whole count, and grams from one more (below 0: left over).

    `count` is None where the eggs are not counted; `waste_g` is what stays of an opened egg.
    """

    count: int | None
    size: str | None
    make_up_g: float | None
    mass_g: float | None
    waste_g: float = 0.0
    parts: tuple[EggPart, ...] = ()


@dataclass(frozen=True, slots=True)
class Jar:
    """A dry blend kept apart: its grams, and what the next cake adds to it."""

    mass_g: float
    next_g: float


@dataclass(frozen=True, slots=True)
class WayTin:
    """Where the corrected batter goes: depth and fill in the own tin, and the tin that fits.

    `is_full` holds where it may run over the own tin; `wanted_area_cm2` is the floor on which it
    stands as deep as planned.
    """

    own: str | None
    depth_cm: float | None
    was_depth_cm: float | None
    fill: float | None
    is_full: bool
    wanted_area_cm2: float | None
    fits: str | None
    fits_depth_cm: float | None


@dataclass(frozen=True, slots=True)
class Shift:
    """A figure of the balance before and after, with its usual range; None is unknown."""

    figure: str
    label: str
    before: Value
    after: Value
    low: float
    high: float
    unit: str


@dataclass(frozen=True, slots=True)
class Way:
    """An exact way out of a slip.

    Kinds: `jar`, `leave`, `hold`, `hold-in-band`, `follow`, `scale`, `scale-exact`, `second`,
    `down`, `fresh`, `add`. `card_g` are the lines of the corrected formula, this cake alone;
    `lines` is what to do in the bowls, a jar's grams included. `worst_shift_pct` is in points of
    the blend for a blend, else in percent of a line's ratio to egg, of the grams before they are
    rounded to the scale. `in_band` holds where no figure is further outside than planned, of exact
    grams too; `outside` are those that are, `unknown` the figures nobody knows, of which `in_band`
    says nothing. `findings` are of the grams on the scale.
    `title` is the way in a few words, `text` what to add now and what then.
    """

    kind: str
    factor: float
    lines: tuple[WayLine, ...]
    total_g: float
    card_g: tuple[float | None, ...]
    jar: Jar | None
    eggs: WayEggs
    balance: Balance
    findings: tuple[Finding, ...]
    shifts: tuple[Shift, ...]
    worst_shift_pct: float
    in_band: bool
    waste_g: float
    outside: tuple[Finding, ...] = ()
    unknown: tuple[str, ...] = ()
    tin: WayTin | None = None
    title: str = ""
    then: tuple[str, ...] = ()
    text: str = ""

    @property
    def keeps_size(self) -> bool:
        """Whether this cake stays as large as it was planned."""
        return self.kind in KEEPING

    @property
    def is_of_blend(self) -> bool:
        """Whether it is told in shares of the slip's own bowl; a text may have no line at all."""
        return bool(self.lines) and self.lines[0].share_pct is not None

    @property
    def has_part_egg(self) -> bool:
        """Whether an egg more has to be opened for a part of it."""
        return self.eggs.waste_g > 0

    @property
    def is_overfull(self) -> bool:
        """Whether it may run over its own tin and no other one at hand fits."""
        tin = self.tin
        return tin is not None and tin.fits is None and tin.is_full

    @property
    def adding(self) -> tuple[WayLine, ...]:
        """Lines of which something goes in now."""
        return tuple(line for line in self.lines if line.add_g > 0)


KEEPING = ("jar", "leave", "hold", "hold-in-band", "fresh", "add")
"""Ways after which this cake is as large as planned."""


GROWING = ("follow", "scale", "scale-exact", "second", "down")
"""Ways after which other lines than those of the slip's bowl change too, by the way's factor."""


@dataclass(frozen=True, slots=True)
class Declined:
    """A way that is not offered, and why not."""

    kind: str
    why: str


@dataclass(frozen=True, slots=True)
class Draft:
    """A way before it is rounded and judged, in exact grams.

    `card_g` are the lines of this cake, `end_g` what of each line has gone in at the end, a jar
    included. `bowl_g` are the grams of the slip's bowl at the end by item, where the way is about
    that bowl alone. `jar_factor` times the planned blend goes into the jar.
    """

    kind: str
    factor: float
    card_g: tuple[float | None, ...]
    end_g: tuple[float | None, ...]
    bowl_g: tuple[float, ...] | None = None
    jar_factor: float = 0.0
