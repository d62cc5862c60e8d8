"""What one thing of a torte weighs: pieces by their share of the cake, the rest by volume or area.

A piece of sponge weighs the planned baked mass of the whole cake, times its volume over the volume
of the baked cake. Creams, jelly and coat weigh volume times density; syrup grams per area times
area; a bare mass is that mass.
"""

from dataclasses import dataclass, replace

from krume.base import STATUSES, as_text
from krume.build.materials import Working, working
from krume.build.outline import Outline, floor_of, trimmed
from krume.build.plan_lines import Component
from krume.build.torte import ComponentFormula, Layer
from krume.size import area_cm2

MM_PER_CM = 10.0


@dataclass(frozen=True, slots=True)
class Bed:
    """What something is spread on: its outline, a gap to the ring beside it, and its height.

    `gap_ml` is filled out before the layer itself; `gap_from_mm` is the gap's bottom. `bottom_mm`
    is where the layer begins; None is not known.
    """

    outline: Outline | None
    bottom_mm: float | None
    gap_ml: float = 0.0
    gap_from_mm: float | None = None


def weakest(*statuses: str) -> str:
    """The status least sure of several.

    >>> weakest("derived", "assumed", "declared")
    'assumed'
    """
    return max(statuses, key=STATUSES.index)


def work_of(part: ComponentFormula, component: Component) -> Working:
    """How a component is drawn and called."""
    by_area = component.g_per_cm2 is not None
    if part.is_goods:
        material = "fruit" if part.goods_role == "fruit" else "decoration"
        return Working("", material, " ".join(part.title.split()).casefold())
    return working(part.family, piece=component.piece, by_area=by_area)


def piece_layer(
    part: ComponentFormula, component: Component, number: int, bottom_mm: float | None
) -> Layer:
    """A layer or a flat sheet cut from a baked cake, with its share of the cake's mass."""
    floor = None if part.tin is None else floor_of(part.tin)
    outline = None if floor is None else cut_outline(floor, component)
    volume = _volume_ml(outline, component.height_mm)
    mass, how = _share(part, volume)
    work = work_of(part, component)
    return Layer(
        name=f"{part.title}, {'layer' if component.piece == 'layer' else 'sheet'} {number}",
        of=component.what,
        word=f"{_piece_word(work, component)} {number}",
        role="piece",
        material=work.material,
        line=component.number,
        height_mm=component.height_mm,
        adds_mm=component.height_mm,
        bottom_mm=bottom_mm,
        outline=outline,
        mass_g=mass,
        volume_ml=volume,
        how=how,
        status=weakest(part.baked_status, "derived"),
    )


def cut_outline(floor: Outline, component: Component) -> Outline:
    """Outline of a piece that is cut from a cake."""
    to, wide = component.trimmed_to_cm, component.trimmed_wide_cm
    return trimmed(floor, to, wide, is_disc=component.is_disc)


def _piece_word(work: Working, component: Component) -> str:
    if component.piece == "sheet":
        return "sheet"
    return "disc" if "disc" in component.read.casefold() else work.word.rpartition(" ")[2]


def baked_volume_ml(part: ComponentFormula) -> float | None:
    """Volume of the whole baked cake: tin area times baked height."""
    area = None if part.tin is None else area_cm2(part.tin)
    return None if area is None else _over_area_ml(area, part.baked_height_mm)


def _share(part: ComponentFormula, volume_ml: float | None) -> tuple[float | None, str]:
    whole = baked_volume_ml(part)
    if part.baked_mass_g is None or whole is None or volume_ml is None:
        return None, f"not known: {part.name} does not say how high and heavy it bakes in its tin"
    mass = part.baked_mass_g * volume_ml / whole
    how = f"{as_text(part.baked_mass_g, 1)} g baked × {as_text(volume_ml, 1)} ml of the "
    return mass, f"{how}{as_text(whole, 1)} ml of the cake"


def _volume_ml(outline: Outline | None, height_mm: float | None) -> float | None:
    return None if outline is None else _over_area_ml(outline.area_cm2, height_mm)


def _over_area_ml(area_cm2: float, height_mm: float | None) -> float | None:
    return None if height_mm is None else area_cm2 * height_mm / MM_PER_CM


def spread_layer(
    part: ComponentFormula, component: Component, bed: Bed, mass_g: float | None = None
) -> Layer:
    """A filling or a syrup over its bed; `mass_g` is its share where it goes by a bare mass."""
    work = work_of(part, component)
    blank = Layer(
        name=part.title,
        of=component.what,
        word=work.word,
        role="filling",
        material=work.material,
        line=component.number,
        height_mm=component.height_mm,
        adds_mm=component.height_mm,
        bottom_mm=bed.bottom_mm,
        outline=bed.outline,
        mass_g=None,
        volume_ml=None,
        how="",
        status=part.density_status,
        fills_from_mm=bed.gap_from_mm,
    )
    if component.g_per_cm2 is not None:
        area = None if bed.outline is None else bed.outline.area_cm2
        return soaked(blank, component.g_per_cm2, area)
    if mass_g is not None:
        return by_mass(blank, part, mass_g, bed)
    return by_height(blank, part, bed)


def soaked(layer: Layer, g_per_cm2: float, area_cm2: float | None) -> Layer:
    """A syrup brushed on an area: it soaks in and adds no height."""
    mass = None if area_cm2 is None else g_per_cm2 * area_cm2
    area = "area not known" if area_cm2 is None else f"{as_text(area_cm2, 1)} cm2"
    return replace(
        layer,
        role="syrup",
        height_mm=0.0,
        adds_mm=0.0,
        mass_g=mass,
        how=f"{as_text(g_per_cm2, 3)} g/cm2 × {area}",
        status="derived",
        fills_from_mm=None,
    )


def by_height(layer: Layer, part: ComponentFormula, bed: Bed) -> Layer:
    """A layer of a given height: volume times density."""
    over = _volume_ml(bed.outline, layer.height_mm)
    volume = None if over is None else over + bed.gap_ml
    return weighed(layer, part, volume)


def by_mass(layer: Layer, part: ComponentFormula, mass_g: float, bed: Bed) -> Layer:
    """A bare mass: its height follows from its density."""
    height = None
    volume = None if part.density_g_ml is None else mass_g / part.density_g_ml
    if part.is_goods:
        # Fruit lies loose: its height is measured, and the air between counts as its room.
        height = layer.height_mm
        volume = None if bed.outline is None else _over_area_ml(bed.outline.area_cm2, height)
    elif volume is not None and bed.outline is not None:
        height = max(0.0, volume - bed.gap_ml) / bed.outline.area_cm2 * MM_PER_CM
    how = f"{as_text(mass_g, 1)} g, as the plan says"
    return replace(
        layer, height_mm=height, adds_mm=height, mass_g=mass_g, volume_ml=volume, how=how,
        status="declared",
    )  # fmt: skip


def weighed(layer: Layer, part: ComponentFormula, volume_ml: float | None) -> Layer:
    """A layer with the mass of its volume; unknown stays unknown."""
    if volume_ml is None or part.density_g_ml is None:
        return replace(layer, volume_ml=volume_ml, how=f"not known: {part.name} has no density")
    how = f"{as_text(volume_ml, 1)} ml × {as_text(part.density_g_ml, 3)} g/ml"
    return replace(
        layer,
        volume_ml=volume_ml,
        mass_g=volume_ml * part.density_g_ml,
        how=how,
        status=weakest(part.density_status, "derived"),
    )
