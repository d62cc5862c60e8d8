"""What the slip job answers: what lies in the bowl, and the ways out of it."""

from dataclasses import dataclass

from krume.base import Interval
from krume.design import Band, Finding, Rescue, Slip, Way, WayLine, bands
from krume.usecases.sheets.result import SheetFile


@dataclass(frozen=True, slots=True)
class SlipHeld:
    """A line that was weighed or is at its end: planned, in the bowl, and how far over."""

    ingredient: str | None
    name: str
    part: str | None
    line: int
    planned_g: float | None
    weighed_g: float | None
    over_g: float | None
    is_closed: bool


@dataclass(frozen=True, slots=True)
class SlipTakeBack:
    """A line over its plan with nothing else in its cup: so much can be spooned back."""

    name: str
    mass_g: float


@dataclass(frozen=True, slots=True)
class SlipBowl:
    """The blend a slip lies in; `added` lies in it beyond what the steps say."""

    name: str
    lines: tuple[str, ...]
    added: tuple[str, ...]
    planned_g: float


@dataclass(frozen=True, slots=True)
class SlipLine:
    """A line of a way: grams in the bowl at the end, still to add, and as planned.

    Shares are percent of the blend's flours and starches. `take_out_g` comes back out of a cup it
    lies alone in; `mark` says what the scale does not weigh well.
    """

    ingredient: str | None
    name: str
    part: str | None
    mass_g: float
    add_g: float
    was_g: float
    share_pct: float | None
    was_share_pct: float | None
    take_out_g: float
    mark: str


@dataclass(frozen=True, slots=True)
class SlipCardLine:
    """A line of the corrected formula, this cake alone."""

    ingredient: str | None
    name: str
    part: str | None
    mass_g: float | None
    was_g: float | None


@dataclass(frozen=True, slots=True)
class SlipEggs:
    """Eggs of the corrected formula: whole ones, and what is needed (or left, below 0) beside."""

    count: int | None
    size: str | None
    make_up_g: float | None
    mass_g: float | None
    left_over_g: float


@dataclass(frozen=True, slots=True)
class SlipFinding:
    """A figure of the corrected formula outside its band."""

    code: str
    value: float | Interval
    low: float
    high: float
    status: str
    text: str


@dataclass(frozen=True, slots=True)
class SlipShift:
    """A figure before and after, with its usual range; None is unknown."""

    figure: str
    before: float | Interval | None
    after: float | Interval | None
    low: float
    high: float
    unit: str


@dataclass(frozen=True, slots=True)
class SlipTin:
    """Where a batter of another size goes."""

    own: str | None
    depth_cm: float | None
    was_depth_cm: float | None
    fill: float | None
    fits: str | None
    fits_depth_cm: float | None
    wanted_area_cm2: float | None


@dataclass(frozen=True, slots=True)
class SlipOption:
    """One exact way out; `worst_shift_pct` is in the unit that `shift_basis` names.

    `in_band` is None where a figure with a usual range is not known; `unknown` names those.
    """

    kind: str
    title: str
    text: str
    factor: float
    lines: tuple[SlipLine, ...]
    total_g: float
    jar_g: float | None
    jar_next_g: float | None
    eggs: SlipEggs
    percent: dict[str, float | Interval | None]
    sugar_per_egg: float | Interval | None
    findings: tuple[SlipFinding, ...]
    shifts: tuple[SlipShift, ...]
    worst_shift_pct: float
    shift_basis: str
    in_band: bool | None
    unknown: tuple[str, ...]
    keeps_size: bool
    waste_g: float
    tin: SlipTin | None
    card: tuple[SlipCardLine, ...]


@dataclass(frozen=True, slots=True)
class SlipDeclined:
    """A way that does not exist here, and why not."""

    kind: str
    why: str


@dataclass(frozen=True, slots=True)
class SlipBand:
    """A usual range the ways are held against."""

    figure: str
    label: str
    low: float
    high: float
    unit: str
    basis: str
    status: str
    source: str


@dataclass(frozen=True, slots=True)
class SlipSpoilt:
    """Whites with yolk in them: what to have instead, and where the spoilt ones may go."""

    whites: int
    white_g: float
    eggs_to_have: int
    formulas: tuple[str, ...]
    text: str


@dataclass(frozen=True, slots=True)
class SlipResult:
    """What lies where, and the ways out: at most three options, best first, `more` the rest.

    `not_yet` are lines that come before the slip and were not said to be in the bowl.
    """

    name: str | None
    in_bowl: tuple[SlipHeld, ...]
    not_yet: tuple[str, ...]
    take_back: tuple[SlipTakeBack, ...]
    bowl: SlipBowl | None
    step_g: float
    options: tuple[SlipOption, ...]
    more: tuple[SlipOption, ...]
    declined: tuple[SlipDeclined, ...]
    bands: tuple[SlipBand, ...]
    spoilt: SlipSpoilt | None
    chosen: str | None
    files: tuple[SheetFile, ...]

    @property
    def ways(self) -> tuple[SlipOption, ...]:
        """All ways, best first."""
        return (*self.options, *self.more)


def slip_result(found: Rescue, *, is_settled: bool, spoilt: SlipSpoilt | None) -> SlipResult:
    """The answer for a rescue; while a question is open it holds no ways."""
    slip = found.slip
    family = found.plan.family
    return SlipResult(
        name=slip.formula.name,
        in_bowl=tuple(
            _held(slip, n)
            for n in range(len(slip.lines))
            if slip.weighed_g[n] is not None or n in slip.closed
        ),
        not_yet=tuple(slip.lines[n].name for n in _passed_over(found)),
        take_back=tuple(
            SlipTakeBack(slip.lines[n].name, slip.held_g(n) - (slip.plan_g(n) or 0.0))
            for n in found.alone
        ),
        bowl=_bowl(found),
        step_g=slip.step_g,
        options=tuple(_option(found, way) for way in found.options) if is_settled else (),
        more=tuple(_option(found, way) for way in found.more) if is_settled else (),
        declined=tuple(SlipDeclined(each.kind, each.why) for each in found.declined),
        bands=() if family is None else tuple(_band(each) for each in bands(family)),
        spoilt=spoilt,
        chosen=None,
        files=(),
    )


def _held(slip: Slip, line: int) -> SlipHeld:
    found = slip.lines[line]
    weighed = slip.weighed_g[line]
    over = None if weighed is None or found.mass_g is None else round(weighed - found.mass_g, 6)
    return SlipHeld(
        ingredient=found.ingredient,
        name=found.name,
        part=found.part,
        line=found.number,
        planned_g=found.mass_g,
        weighed_g=weighed,
        over_g=over,
        is_closed=line in slip.closed,
    )


def _passed_over(found: Rescue) -> list[int]:
    """Lines of the bowl that come before the last weighed one, and were not said to be in it."""
    items = () if found.bowl is None else found.bowl.items
    last = max((n for n, item in enumerate(items) if item.is_weighed), default=-1)
    return [item.line for item in items[:last] if not item.is_weighed and not item.is_closed]


def _bowl(found: Rescue) -> SlipBowl | None:
    bowl = found.bowl
    if bowl is None:
        return None
    names = found.slip.lines
    return SlipBowl(
        bowl.label,
        tuple(names[item.line].name for item in bowl.items),
        tuple(names[n].name for n in bowl.added),
        bowl.plan_g,
    )


def _option(found: Rescue, way: Way) -> SlipOption:
    slip = found.slip
    in_points = found.bowl is not None and way.is_of_blend
    return SlipOption(
        kind=way.kind,
        title=way.title,
        text=way.text,
        factor=way.factor,
        lines=tuple(_line(slip, line) for line in way.lines),
        total_g=way.total_g,
        jar_g=None if way.jar is None else way.jar.mass_g,
        jar_next_g=None if way.jar is None else way.jar.next_g,
        eggs=SlipEggs(
            way.eggs.count, way.eggs.size, way.eggs.make_up_g, way.eggs.mass_g, way.eggs.waste_g
        ),
        percent=way.balance.percent,
        sugar_per_egg=way.balance.sugar_per_egg,
        findings=tuple(_finding(each) for each in way.findings),
        shifts=tuple(
            SlipShift(s.figure, s.before, s.after, s.low, s.high, s.unit) for s in way.shifts
        ),
        worst_shift_pct=way.worst_shift_pct,
        shift_basis="points of the blend" if in_points else "percent of a line's ratio to egg",
        in_band=None if way.in_band and way.unknown else way.in_band,
        unknown=way.unknown,
        keeps_size=way.keeps_size,
        waste_g=way.waste_g,
        tin=_tin(way),
        card=tuple(
            SlipCardLine(line.ingredient, line.name, line.part, mass, line.mass_g)
            for line, mass in zip(slip.lines, way.card_g, strict=True)
        ),
    )


def _line(slip: Slip, line: WayLine) -> SlipLine:
    found = slip.lines[line.line]
    return SlipLine(
        ingredient=found.ingredient,
        name=found.name,
        part=found.part,
        mass_g=line.mass_g,
        add_g=line.add_g,
        was_g=line.was_g,
        share_pct=line.share_pct,
        was_share_pct=line.was_share_pct,
        take_out_g=line.take_out_g,
        mark=line.mark,
    )


def _finding(found: Finding) -> SlipFinding:
    return SlipFinding(found.code, found.value, found.low, found.high, found.status, found.text)


def _tin(way: Way) -> SlipTin | None:
    tin = way.tin
    if tin is None:
        return None
    return SlipTin(
        own=tin.own,
        depth_cm=tin.depth_cm,
        was_depth_cm=tin.was_depth_cm,
        fill=tin.fill,
        fits=tin.fits,
        fits_depth_cm=tin.fits_depth_cm,
        wanted_area_cm2=tin.wanted_area_cm2,
    )


def _band(found: Band) -> SlipBand:
    return SlipBand(
        found.quantity, found.label, found.low, found.high, found.unit, found.basis,
        found.status, found.source,
    )  # fmt: skip
