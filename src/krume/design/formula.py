"""The formula: what a baker's text says, every line of it kept."""

from dataclasses import dataclass, field

from krume.base import Interval
from krume.size import Tin


@dataclass(frozen=True, slots=True)
class Line:
    """One ingredient with its amount, as read from one line of the text.

    `mass_g` is what is planned on; None is unknown. `basis` says how the mass came about:
    `weighed` (a mass was written), `measure` (volume by the pantry's density), `count` (pieces
    by their usual mass), `egg` (count by egg size), `ratio` (tied to another line), `trade`
    (a pinch, a stick) or `unknown`.
    """

    read: str
    number: int
    amount: float | Interval | None
    unit: str | None
    mass_g: float | None
    basis: str
    name: str
    ingredient: str | None
    part: str | None = None
    section: str | None = None
    note: str | None = None
    mass_interval_g: Interval | None = None
    status: str = "declared"
    source: str = ""
    egg_size: str | None = None


@dataclass(frozen=True, slots=True)
class Use:
    """One mention of an ingredient line in a step; `mass_g` None means all of it or what is left.

    `step` and `line` are indexes into `Formula.steps` and `Formula.lines`.
    """

    step: int
    line: int
    mass_g: float | None
    words: str = ""


@dataclass(frozen=True, slots=True)
class OvenLine:
    """The oven as the text says it; later stages of a two-stage bake follow in `stages`."""

    read: str
    temp_c: float | None
    fan: bool | None = None
    temp_interval_c: Interval | None = None
    stages: tuple[tuple[float, float | None], ...] = ()


@dataclass(frozen=True, slots=True)
class BakedLine:
    """The plan for the whole cake, cold, until a bake has been measured."""

    read: str
    height_mm: float | None = None
    mass_g: float | None = None
    thickness_mm: float | None = None
    status: str = "assumed"


@dataclass(frozen=True, slots=True)
class TextLine:
    """A line of the source text and what it was taken for."""

    number: int
    text: str
    kind: str


@dataclass(frozen=True, slots=True)
class Formula:
    """A text with grams that makes one batter, cream or dough.

    `steps` are the step texts; `uses` are the amounts the steps name; `source_lines` are all the
    lines of the text with what each was taken for (name, key, heading, ingredient, step, note,
    blank), so that nothing the person wrote is lost.
    """

    name: str | None
    lines: tuple[Line, ...] = ()
    steps: tuple[str, ...] = ()
    uses: tuple[Use, ...] = ()
    tin: Tin | None = None
    tins: tuple[Tin, ...] = ()
    oven: OvenLine | None = None
    family: str | None = None
    family_basis: str = "unknown"
    makes: str | None = None
    baked: BakedLine | None = None
    eggs_region: str | None = None
    egg_size: str | None = None
    density_g_ml: float | None = None
    core_c: float | None = None
    bake_min: Interval | None = None
    keys: dict[str, str] = field(default_factory=dict)
    source_lines: tuple[TextLine, ...] = ()
