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
class Gel:
    """What sets a cream, of one whole batch; None is not known.

    `key` is gelatine, agar or pectin, `line` its line in the formula. `has_liquid` says whether
    anything is there for a powder to bloom in. Alcohol and water are of all that is in it, spirit
    is what brings the alcohol.
    """

    key: str
    mass_g: float | None
    strength_bloom: float | None
    is_leaf: bool
    line: int
    has_liquid: bool
    alcohol_g: float | None = 0.0
    water_g: float | None = None
    spirit: str = ""
    spirit_g: float = 0.0
    spirit_water_g: float = 0.0


@dataclass(frozen=True, slots=True)
class ComponentFormula:
    """What a torte needs to know of a formula; None is not known.

    `name` is the word the plan uses, `title` the formula's own name; `family` is a key of the
    families. `gelatine_g_kg` is of the finished cream. Masses are of one whole batch. `goods_role`
    is the pantry's role of a thing that no formula makes, such as a fruit or a nut.
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
    goods_role: str | None = None
    gel: Gel | None = None

    @property
    def is_goods(self) -> bool:
        """Whether it is used as it is bought, and no formula makes it."""
        return self.goods_role is not None


@dataclass(frozen=True, slots=True)
class Layer:
    """One thing of a torte, from the bottom up; None is not known.

    `role` is piece, filling, syrup, top, coat or decoration. `adds_mm` is what it adds to the
    torte's height: nothing where it soaks in, lies in a shell or in a roll. `bottom_mm` is where
    it begins, `top_mm` how high a coat reaches. `fills_from_mm` is the bottom of the piece whose
    gap to the ring it fills too. `dome_mm` is how much of its top is a dome. `over_mm` is how high
    a decoration stands over what it lies on, `count` how many of it there are. `how` is its sum in
    words, `status` that of the weakest figure in it.
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
    dome_mm: float = 0.0
    over_mm: float | None = None
    count: int = 1
    top_mm: float | None = None


@dataclass(frozen=True, slots=True)
class Slice:
    """A torte cut into equal slices: grams each, how wide the cut is outside, its plate height.

    `plate_mm` is how high a slice stands on its plate: a slice of a roll lies on its cut.
    """

    count: int
    mass_g: float | None
    arc_cm: float | None
    angle_deg: float | None
    width_mm: float | None
    plate_mm: float | None = None


@dataclass(frozen=True, slots=True)
class Cut:
    """A torte cut into small pieces in rows or rings, as for many guests: how many, grams each.

    `wide_cm` and `deep_cm` are the size of one piece from above; `count` are whole pieces.
    """

    key: str
    words: str
    wide_cm: float
    deep_cm: float
    count: int
    mass_g: float | None
    status: str


@dataclass(frozen=True, slots=True)
class CakeCut:
    """The layers of one baked cake: their heights from the bottom up, and what is left of it.

    `most` layers of the same height could be cut from it.
    """

    of: str
    number: int
    layers_mm: tuple[float, ...]
    high_mm: float
    left_mm: float
    most: int


@dataclass(frozen=True, slots=True)
class Cover:
    """A sheet that is rolled out to lie over a torte: how wide, its grams, what is cut away."""

    name: str
    line: int
    across_cm: float
    second_cm: float | None
    thick_mm: float
    rolled_g: float | None
    cut_away_g: float | None
    status: str


@dataclass(frozen=True, slots=True)
class Skin:
    """The surface of a torte: its top, its side, and both [cm2]."""

    top_cm2: float
    side_cm2: float

    @property
    def whole_cm2(self) -> float:
        """Top and side together."""
        return self.top_cm2 + self.side_cm2


@dataclass(frozen=True, slots=True)
class Tier:
    """One torte of several that stand on one another: where it begins, and what it is by itself."""

    number: int
    name: str
    torte: "Torte"
    bottom_mm: float | None


@dataclass(frozen=True, slots=True)
class Batch:
    """How much of a formula a torte needs, what is made for it, and what is over.

    Of a cake masses are baked and `over_g` is what is cut away; of a cream the batch is as mixed.
    `factor` is what is needed over one batch, `batches` what is made: whole cakes, halves of a
    cream; of goods just what is needed. `waste_g` stays in bag, bowl and on the board, and is
    neither in what is needed nor over.
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
    waste_g: float = 0.0


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
    """A torte with its sums. `kind` is stacked, ring, roll, tart or tiers; None is not known.

    `layers` go from the bottom up and hold everything: their masses add up to `mass_g`.
    `height_mm` is without decorations, which stand `over_mm` above it where that is known.
    `dome_mm` of the height is a dome.
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
    dome_mm: float = 0.0
    over_mm: float | None = None
    skin: Skin | None = None
    cuts: tuple[Cut, ...] = ()
    cakes: tuple[CakeCut, ...] = ()
    covers: tuple[Cover, ...] = ()
    tiers: tuple[Tier, ...] = ()

    @property
    def plate_mm(self) -> float | None:
        """How high it stands with its decorations."""
        return None if self.height_mm is None else self.height_mm + (self.over_mm or 0.0)

    @property
    def can_be_drawn(self) -> bool:
        """Whether every height and outline is known, so that a section can be to scale."""
        known = self.height_mm is not None and self.outline is not None
        return known and all(layer.height_mm is not None for layer in self.layers)

    @property
    def decorations(self) -> tuple[Layer, ...]:
        """What is put on at the end and adds nothing to its height."""
        return tuple(layer for layer in self.layers if layer.role == "decoration")

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
