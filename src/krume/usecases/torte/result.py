"""The answer of `build`: the torte in the contract's words, every value with its papers."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from krume.build import (
    Batch,
    BuildFinding,
    CakeCut,
    ComponentFormula,
    Cover,
    Cut,
    EggsNeeded,
    GelUse,
    Layer,
    Said,
    Skin,
    Slice,
    Tier,
    Torte,
    TortePlan,
    cross_section,
    gels,
    said_of,
    side_view,
    weakest,
)
from krume.usecases.torte.moisture_result import MoistureResult
from krume.usecases.torte.order import BuildOrder, build_order
from krume.usecases.torte.standing_result import StandingResult


@dataclass(frozen=True, slots=True)
class BuildLayer:
    """One thing of the torte, from the bottom up; masses of all of them add up to the torte's.

    `adds_mm` is what it adds to the torte's height; `how` is its sum; None is not known.
    """

    name: str
    of: str
    role: str
    material: str
    line: int
    height_mm: float | None
    adds_mm: float | None
    bottom_mm: float | None
    area_cm2: float | None
    volume_ml: float | None
    mass_g: float | None
    status: str
    how: str


@dataclass(frozen=True, slots=True)
class BuildRing:
    """The ring or frame it is built in, and what is to spare in it."""

    diameter_cm: float | None
    height_mm: float | None
    spare_mm: float | None
    length_cm: float | None = None
    width_cm: float | None = None


@dataclass(frozen=True, slots=True)
class BuildRoll:
    """A roll: its turns, its width, and the stretch of the outer face at the very start."""

    turns: float | None
    width_cm: float | None
    bend_strain_pct: float | None


@dataclass(frozen=True, slots=True)
class BuildTier:
    """One tier: where it begins, and what it is by itself."""

    number: int
    name: str
    title: str
    bottom_mm: float | None
    height_mm: float | None
    diameter_cm: float | None
    mass_g: float | None


@dataclass(frozen=True, slots=True)
class BuildResult:
    """A torte as it stands. Fillings are without the coat and without what lies on top.

    `trimmed_g` is what is cut away from the baked cakes; `svg` is the section to scale, one unit
    a millimetre, and None while something in it is not known; `side_svg` is the whole torte from
    the side and from above. `plate_mm` is the height with decorations. `standing` and `moisture`
    are None where they were not asked for.
    """

    name: str | None
    kind: str
    height_mm: float | None
    diameter_cm: float | None
    mass_g: float | None
    status: str
    layers: tuple[BuildLayer, ...]
    sponge_g: float | None
    cream_g: float | None
    syrup_g: float | None
    coat_g: float | None
    top_g: float | None
    trimmed_g: float | None
    slices: tuple[Slice, ...]
    batches: tuple[Batch, ...]
    eggs: EggsNeeded
    findings: tuple[BuildFinding, ...]
    ring: BuildRing | None
    roll: BuildRoll | None
    turns: float | None
    keep: str | None
    notes: tuple[str, ...]
    svg: str | None
    side_svg: str | None = None
    length_cm: float | None = None
    width_cm: float | None = None
    decoration_g: float | None = None
    dome_mm: float = 0.0
    plate_mm: float | None = None
    surface: Skin | None = None
    cuts: tuple[Cut, ...] = ()
    cakes: tuple[CakeCut, ...] = ()
    covers: tuple[Cover, ...] = ()
    gels: tuple[GelUse, ...] = ()
    tiers: tuple[BuildTier, ...] = ()
    said: Said | None = None
    order: BuildOrder | None = None
    standing: StandingResult | None = None
    moisture: MoistureResult | None = None


_NO_PARTS: Mapping[str, ComponentFormula] = MappingProxyType({})


def build_result(
    plan: TortePlan,
    torte: Torte | None,
    parts: Mapping[str, ComponentFormula] = MappingProxyType({}),
) -> BuildResult:
    """The answer of a torte; without one only what the plan itself says."""
    found = torte or Torte(plan.name or "", "unknown", (), None, None, None)
    known = torte is not None and torte.mass_g is not None
    outline = found.outline
    sides = None if outline is None or outline.diameter_cm is not None else outline
    used = gels(found.batches, parts) if parts else ()
    return BuildResult(
        name=plan.name,
        kind=found.kind,
        height_mm=found.height_mm,
        diameter_cm=None if outline is None else outline.diameter_cm,
        mass_g=found.mass_g,
        status=torte_status(found) if known else "unknown",
        layers=tuple(_layer(layer) for layer in found.layers),
        sponge_g=_sum(torte, "piece"),
        cream_g=_sum(torte, "filling"),
        syrup_g=_sum(torte, "syrup"),
        coat_g=_sum(torte, "coat"),
        top_g=_sum(torte, "top"),
        trimmed_g=_trimmed(torte),
        slices=found.slices,
        batches=found.batches,
        eggs=found.eggs,
        findings=found.findings,
        ring=_ring(plan, found),
        roll=_roll(found),
        turns=found.turns,
        keep=plan.keep,
        notes=plan.notes,
        svg=cross_section(found) if torte is not None and found.can_be_drawn else None,
        side_svg=side_view(found) if torte is not None and found.can_be_drawn else None,
        length_cm=None if sides is None else sides.length_cm,
        width_cm=None if sides is None else sides.width_cm,
        decoration_g=_sum(torte, "decoration"),
        dome_mm=found.dome_mm,
        plate_mm=found.plate_mm,
        surface=found.skin,
        cuts=found.cuts,
        cakes=found.cakes,
        covers=found.covers,
        gels=used,
        tiers=tuple(_tier(each) for each in found.tiers),
        said=None if torte is None else said_of(found, used),
        order=build_order(found, parts) if parts and torte is not None else None,
    )


def _tier(tier: Tier) -> BuildTier:
    torte = tier.torte
    return BuildTier(
        number=tier.number,
        name=tier.name,
        title=" ".join(torte.name.split()),
        bottom_mm=tier.bottom_mm,
        height_mm=torte.height_mm,
        diameter_cm=None if torte.outline is None else torte.outline.diameter_cm,
        mass_g=torte.mass_g,
    )


def torte_status(torte: Torte) -> str:
    """Status of a torte: that of its weakest layer."""
    return weakest(*(layer.status for layer in torte.layers)) if torte.layers else "derived"


def _layer(layer: Layer) -> BuildLayer:
    return BuildLayer(
        name=layer.name,
        of=layer.of,
        role=layer.role,
        material=layer.material,
        line=layer.line,
        height_mm=layer.height_mm,
        adds_mm=layer.adds_mm,
        bottom_mm=layer.bottom_mm,
        area_cm2=None if layer.outline is None else layer.outline.area_cm2,
        volume_ml=layer.volume_ml,
        mass_g=layer.mass_g,
        status=layer.status if layer.mass_g is not None else "unknown",
        how=layer.how,
    )


def _sum(torte: Torte | None, role: str) -> float | None:
    return None if torte is None or torte.mass_g is None else torte.sum_g(role)


def _trimmed(torte: Torte | None) -> float | None:
    if torte is None:
        return None
    over = [batch.over_g for batch in torte.batches if batch.kind == "cake"]
    known = [grams for grams in over if grams is not None]
    return sum(known) if len(known) == len(over) else None


def _ring(plan: TortePlan, torte: Torte) -> BuildRing | None:
    if plan.ring is None:
        return None
    ring, high, spare = plan.ring, torte.ring_height_mm, torte.ring_spare_mm
    if ring.diameter_cm is not None:
        return BuildRing(ring.diameter_cm, high, spare)
    return BuildRing(None, high, spare, ring.length_cm, ring.width_cm)


def _roll(torte: Torte) -> BuildRoll | None:
    if torte.kind != "roll":
        return None
    return BuildRoll(torte.turns, torte.roll_width_cm, torte.bend_strain_pct)
