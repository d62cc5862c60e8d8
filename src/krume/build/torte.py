"""The torte as it stands: layers from the bottom up, with heights, masses and their papers."""

from collections.abc import Iterable
from dataclasses import dataclass

from krume.base import Notice
from krume.build.outline import Outline
from krume.size import Tin


@dataclass(frozen=True, slots=True)
class EggUse:
    """Eggs of one batch of a formula: how many of which size, and which part of them."""

    size: str
    part: str
    count: float


@dataclass(frozen=True, slots=True)
class ComponentFormula:
    """What a torte needs to know of a formula; None is not known.

    `name` is the word the plan uses, `title` the formula's own name; `family` is a key of the
    families. `gelatine_g_kg` is of the finished cream. Masses are of one whole batch.
    """

    name: str
    title: str
    family: str | None = None
    total_g: float | None = None
    tin: Tin | None = None
    baked_height_mm: float | None = None
    baked_mass_g: float | None = None
    baked_thickness_mm: float | None = None
    baked_status: str = "assumed"
    density_g_ml: float | None = None
    density_status: str = "assumed"
    gelatine_g_kg: float | None = None
    eggs: tuple[EggUse, ...] = ()


@dataclass(frozen=True, slots=True)
class Layer:
    """One thing of a torte, from the bottom up; None is not known.

    `role` is piece, filling, syrup, top or coat. `adds_mm` is what it adds to the torte's height:
    nothing where it soaks in, lies in a shell or in a roll. `bottom_mm` is where it begins.
    `fills_from_mm` is the bottom of the piece whose gap to the ring it fills too. `how` is its
    sum in words, `status` that of the weakest figure in it.
    """

    name: str
    of: str
    word: str
    role: str
    material: str
    line: int
    height_mm: float | None
    adds_mm: float | None
    bottom_mm: float | None
    outline: Outline | None
    mass_g: float | None
    volume_ml: float | None
    how: str
    status: str
    fills_from_mm: float | None = None


@dataclass(frozen=True, slots=True)
class Slice:
    """A torte cut into equal slices: grams each, and how wide the cut is outside."""

    count: int
    mass_g: float | None
    arc_cm: float | None
    angle_deg: float | None
    width_mm: float | None


@dataclass(frozen=True, slots=True)
class Batch:
    """How much of a formula a torte needs, what is made for it, and what is over.

    Of a cake masses are baked and `over_g` is what is cut away; of a cream the batch is as mixed.
    `factor` is what is needed over one batch, `batches` what is made: whole cakes, halves of a
    cream.
    """

    name: str
    title: str
    kind: str
    needed_g: float | None
    batch_g: float | None
    factor: float | None
    batches: float | None
    made_g: float | None
    over_g: float | None


@dataclass(frozen=True, slots=True)
class BuildFinding:
    """Something unusual in how a torte is built; it says unusual, never wrong."""

    code: str
    where: str
    value: float
    low: float | None
    high: float | None
    unit: str
    status: str
    text: str


@dataclass(frozen=True, slots=True)
class EggsLeft:
    """A part of eggs that is left over, in grams shelled."""

    size: str
    part: str
    count: float
    mass_g: float
    status: str


@dataclass(frozen=True, slots=True)
class EggsNeeded:
    """Eggs to crack, by size, and the parts left over."""

    cracked: dict[str, int]
    left: tuple[EggsLeft, ...]


@dataclass(frozen=True, slots=True)
class Torte:
    """A torte with its sums. `kind` is stacked, ring, roll or tart; None is not known.

    `layers` go from the bottom up and hold everything: their masses add up to `mass_g`.
    `filling_g` is without the coat and without what lies on top.
    """

    name: str
    kind: str
    layers: tuple[Layer, ...]
    outline: Outline | None
    height_mm: float | None
    mass_g: float | None
    slices: tuple[Slice, ...] = ()
    batches: tuple[Batch, ...] = ()
    eggs: EggsNeeded = EggsNeeded({}, ())
    findings: tuple[BuildFinding, ...] = ()
    notices: tuple[Notice, ...] = ()
    ring_height_mm: float | None = None
    ring_spare_mm: float | None = None
    turns: float | None = None
    bend_strain_pct: float | None = None
    roll_width_cm: float | None = None
    wall_mm: float | None = None

    @property
    def can_be_drawn(self) -> bool:
        """Whether every height and outline is known, so that a section can be to scale."""
        known = self.height_mm is not None and self.outline is not None
        return known and all(layer.height_mm is not None for layer in self.layers)

    def sum_g(self, role: str) -> float | None:
        """Grams of all layers of a role; None when one of them is not known."""
        return added(layer.mass_g for layer in self.layers if layer.role == role)


def added(values: Iterable[float | None]) -> float | None:
    """Sum of numbers; None when one of them is not known.

    >>> added([1.0, 2.5]), added([1.0, None]), added([])
    (3.5, None, 0.0)
    """
    total = 0.0
    for value in values:
        if value is None:
            return None
        total += value
    return total
