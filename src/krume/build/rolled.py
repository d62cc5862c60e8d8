"""A roll: the sheet with its cream by area, the roll's diameter by the area it keeps."""

import math
from dataclasses import dataclass, replace

from krume.build.coat import Body
from krume.build.decorated import decoration, is_decoration
from krume.build.masses import MM_PER_CM, Bed, by_mass, piece_layer, spread_layer, weighed
from krume.build.outline import Outline
from krume.build.plan_lines import Component, TortePlan
from krume.build.stack import Stack
from krume.build.stacked import Parts
from krume.build.torte import ComponentFormula, Layer, Skin, Torte, added
from krume.size import Roll, roll


@dataclass(frozen=True, slots=True)
class Sides:
    """The side of a sheet that is rolled up, and the width of the roll."""

    length_cm: float
    width_cm: float


def rolled(plan: TortePlan, stack: Stack, parts: Parts) -> Torte:
    """Roll of one sheet with what lies on it, and what is spread around it."""
    (storey,) = stack.storeys
    sheet = piece_layer(parts[storey.piece.what], storey.piece, 1, None)
    sides = _sides(sheet.outline, storey.piece)
    layers = [replace(sheet, name=sheet.name.rpartition(" ")[0], word="sheet", adds_mm=0.0)]
    for spread in storey.on:
        bed = Bed(_covered(sides, spread.component), None)
        layer = spread_layer(parts[spread.component.what], spread.component, bed, spread.mass_g)
        layers.append(replace(layer, adds_mm=0.0))
    sums = None if sides is None else _roll_sum(sides, layers)
    across = None if sums is None else sums.diameter_cm
    for component in stack.outside:
        part = parts[component.what]
        if is_decoration(part, component):
            high = None if across is None else across * MM_PER_CM
            layers.append(decoration(Body(None, high, None), part, component))
            continue
        coat, across = _coat(part, component, across, sides)
        layers.append(coat)
    return Torte(
        name=plan.name or "",
        kind="roll",
        layers=tuple(layers),
        outline=None if across is None else Outline(across),
        height_mm=None if across is None else across * MM_PER_CM,
        mass_g=added(layer.mass_g for layer in layers),
        notices=stack.notices,
        skin=_skin(across, sides),
        turns=None if sums is None else sums.turns,
        bend_strain_pct=None if sums is None else sums.outer_strain_pct,
        roll_width_cm=None if sides is None else sides.width_cm,
    )


def _skin(across_cm: float | None, sides: Sides | None) -> Skin | None:
    """Surface of a lying roll: both its ends for the top, and its round for the side."""
    if across_cm is None or sides is None:
        return None
    return Skin(math.pi / 2 * across_cm**2, math.pi * across_cm * sides.width_cm)


def _sides(outline: Outline | None, piece: Component) -> Sides | None:
    """Begun at the long side, a roll is as wide as that side and rolls up the short one.

    A round cake has no sides to roll from.
    """
    if outline is None or outline.diameter_cm is not None:
        return None
    long, short = outline.length_cm, outline.width_cm
    return Sides(short, long) if piece.rolled_from == "long" else Sides(long, short)


def _covered(sides: Sides | None, component: Component) -> Outline | None:
    if sides is None:
        return None
    covered = sides.length_cm - (component.free_edge_cm or 0.0)
    return Outline(length_cm=sides.width_cm, width_cm=covered)


def _roll_sum(sides: Sides, layers: list[Layer]) -> Roll | None:
    heights = [layer.height_mm for layer in layers if layer.role != "syrup"]
    thick, cream = heights[0], added(heights[1:])
    if thick is None or cream is None:
        return None
    return roll(sides.length_cm, thickness_cm=thick / MM_PER_CM, cream_cm=cream / MM_PER_CM)


def _coat(
    part: ComponentFormula, component: Component, across_cm: float | None, sides: Sides | None
) -> tuple[Layer, float | None]:
    """A coat around a lying roll, its ends left free, and the diameter with it."""
    blank = replace(
        spread_layer(part, component, Bed(None, None)), role="coat", word="coat", material="coat",
        name=f"{part.title}, coat",
    )  # fmt: skip
    count = component.count or 1
    if component.mass_g is not None:
        coat = by_mass(blank, part, component.mass_g * count, Bed(None, None))
        thick = _thickness_cm(across_cm, sides, coat.volume_ml)
    else:
        thick = None if component.height_mm is None else component.height_mm * count / MM_PER_CM
        coat = weighed(blank, part, _coat_ml(across_cm, sides, thick))
    outer = None if thick is None or across_cm is None else across_cm + 2 * thick
    thick_mm = None if thick is None else thick * MM_PER_CM
    return replace(coat, height_mm=thick_mm, adds_mm=thick_mm), outer


def _coat_ml(across_cm: float | None, sides: Sides | None, thick_cm: float | None) -> float | None:
    if across_cm is None or sides is None or thick_cm is None:
        return None
    return math.pi * thick_cm * (across_cm + thick_cm) * sides.width_cm


def _thickness_cm(
    across_cm: float | None, sides: Sides | None, volume_ml: float | None
) -> float | None:
    if across_cm is None or sides is None or volume_ml is None:
        return None
    radius = across_cm / 2
    return math.sqrt(radius**2 + volume_ml / (math.pi * sides.width_cm)) - radius
