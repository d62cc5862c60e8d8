"""The torte plan as typed: which piece or cream goes where, and how much of it."""

from dataclasses import dataclass, field

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
PIECES = ("layer", "sheet", "shell")


@dataclass(frozen=True, slots=True)
class Component:
    """One line of a torte plan; None is not said.

    `what` is the name of a formula. A `piece` (layer, sheet, shell) is baked; what has no piece is
    spread, poured or brushed: by `height_mm` over its whole area, by `g_per_cm2`, or by `mass_g`
    each. `count` says how many. `free_edge_cm` stays uncovered at the far edge of a roll.
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


@dataclass(frozen=True, slots=True)
class RingLine:
    """The ring a torte is built in, by its inside dimensions."""

    read: str
    diameter_cm: float
    height_cm: float | None


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
    notes: tuple[str, ...] = ()
    keys: dict[str, str] = field(default_factory=dict)
    source_lines: tuple[PlainLine, ...] = ()


def formula_names(torte: TortePlan) -> tuple[str, ...]:
    """Names of the formulas a torte is made of: pieces, then what goes by height or mass, then
    what goes by area; each once, in the order of the text.
    """
    ordered = sorted(torte.components, key=_turn)
    return tuple(dict.fromkeys(component.what for component in ordered))


def _turn(component: Component) -> int:
    if component.piece is not None:
        return 0
    return 1 if component.g_per_cm2 is None else 2
