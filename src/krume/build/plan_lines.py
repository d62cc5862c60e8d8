"""The torte plan as typed: which piece or cream goes where, and how much of it."""

from dataclasses import dataclass, field

from krume.build.outline import Outline
from krume.build.plain import PlainLine

PLACES = (
    "on the layer",
    "on each layer",
    "between the layers",
    "on the sheet",
    "in the shell",
    "on top",
    "around",
    "around and on top",
)
PIECES = ("layer", "sheet", "shell", "tier")


@dataclass(frozen=True, slots=True)
class Component:
    """One line of a torte plan; None is not said.

    `what` is the name of a formula. A `piece` (layer, sheet, shell) is baked, a tier is a torte of
    its own; what has no piece is spread, poured or brushed: by `height_mm` over its whole area, by
    `g_per_cm2`, or by `mass_g` each. `count` says how many, `bakes` from how many bakes layers are
    cut. `free_edge_cm` stays uncovered at the far edge of a roll. `waste_pct` of it stays in bag
    and bowl. A cover is rolled out, to `rolled_out_cm` across where that is said.
    """

    read: str
    number: int
    what: str
    count: int | None = 1
    piece: str | None = None
    height_mm: float | None = None
    mass_g: float | None = None
    g_per_cm2: float | None = None
    trimmed_to_cm: float | None = None
    place: str | None = None
    fills_ring: bool = False
    rolled_from: str | None = None
    free_edge_cm: float | None = None
    trimmed_wide_cm: float | None = None
    is_disc: bool = False
    bakes: int | None = None
    waste_pct: float | None = None
    is_domed: bool = False
    is_piped: bool = False
    is_crumb_coat: bool = False
    is_rolled_out: bool = False
    rolled_out_cm: float | None = None


@dataclass(frozen=True, slots=True)
class RingLine:
    """The ring or frame a torte is built in, by its inside dimensions; a frame has two sides."""

    read: str
    diameter_cm: float | None
    height_cm: float | None
    length_cm: float = 0.0
    width_cm: float = 0.0

    @property
    def outline(self) -> Outline:
        """Its inside, seen from above."""
        if self.diameter_cm is not None:
            return Outline(self.diameter_cm)
        return Outline(length_cm=self.length_cm, width_cm=self.width_cm)


@dataclass(frozen=True, slots=True)
class TortePlan:
    """What stands on what, from the bottom up as far as the text says; no sums in it.

    `source_lines` are all lines of the text with what each was taken for.
    """

    name: str | None
    components: tuple[Component, ...] = ()
    ring: RingLine | None = None
    slices: tuple[int, ...] = ()
    keep: str | None = None
    waste_pct: float | None = None
    notes: tuple[str, ...] = ()
    keys: dict[str, str] = field(default_factory=dict)
    source_lines: tuple[PlainLine, ...] = ()


def formula_names(torte: TortePlan) -> tuple[str, ...]:
    """Names of the formulas a torte is made of: pieces, then what goes by height or mass, then
    what goes by area; each once, in the order of the text.
    """
    ordered = sorted((c for c in torte.components if c.piece != "tier"), key=_turn)
    return tuple(dict.fromkeys(component.what for component in ordered))


def tier_names(torte: TortePlan) -> tuple[str, ...]:
    """Names of the tortes that stand on one another as tiers, each once, from the bottom up."""
    return tuple(dict.fromkeys(c.what for c in torte.components if c.piece == "tier"))


def _turn(component: Component) -> int:
    if component.piece is not None:
        return 0
    return 1 if component.g_per_cm2 is None else 2
