"""The answer of `build`: the torte in the contract's words, every value with its papers."""

from dataclasses import dataclass

from krume.build import (
    Batch,
    BuildFinding,
    EggsNeeded,
    Layer,
    Slice,
    Torte,
    TortePlan,
    cross_section,
    weakest,
)
from krume.usecases.torte.moisture_result import MoistureResult
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
    """The ring it is built in, and what is to spare in it."""

    diameter_cm: float
    height_mm: float | None
    spare_mm: float | None


@dataclass(frozen=True, slots=True)
class BuildRoll:
    """A roll: its turns, its width, and the stretch of the outer face at the very start."""

    turns: float | None
    width_cm: float | None
    bend_strain_pct: float | None


@dataclass(frozen=True, slots=True)
class BuildResult:
    """A torte as it stands. Fillings are without the coat and without what lies on top.

    `trimmed_g` is what is cut away from the baked cakes; `svg` is the section to scale, one unit
    a millimetre, and None while something in it is not known. `standing` and `moisture` are None
    where they were not asked for.
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
    standing: StandingResult | None = None
    moisture: MoistureResult | None = None


def build_result(plan: TortePlan, torte: Torte | None) -> BuildResult:
    """The answer of a torte; without one only what the plan itself says."""
    found = torte or Torte(plan.name or "", "unknown", (), None, None, None)
    known = torte is not None and torte.mass_g is not None
    outline = found.outline
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
    return BuildRing(plan.ring.diameter_cm, torte.ring_height_mm, torte.ring_spare_mm)


def _roll(torte: Torte) -> BuildRoll | None:
    if torte.kind != "roll":
        return None
    return BuildRoll(torte.turns, torte.roll_width_cm, torte.bend_strain_pct)
