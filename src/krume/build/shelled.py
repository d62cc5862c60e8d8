"""A tart: one shell used whole, and what is poured into it."""

from dataclasses import replace

from krume.build.coat import Body
from krume.build.decorated import is_decoration
from krume.build.masses import MM_PER_CM, Bed, spread_layer, work_of
from krume.build.outline import Outline, floor_of
from krume.build.outside import put_outside
from krume.build.plan_lines import Component, TortePlan
from krume.build.stack import Stack, Storey
from krume.build.stacked import Parts
from krume.build.torte import ComponentFormula, Layer, Torte, added


def shelled(plan: TortePlan, stack: Stack, parts: Parts) -> Torte:
    """Tart of one shell with its fillings; they stand inside and add no height."""
    (storey,) = stack.storeys
    part = parts[storey.piece.what]
    shell = _shell(part, storey)
    layers: list[Layer] = [shell]
    level = part.baked_thickness_mm
    for spread in storey.on:
        bed = Bed(inside_of(part), level)
        layer = spread_layer(parts[spread.component.what], spread.component, bed, spread.mass_g)
        rise = layer.adds_mm
        level = None if level is None or rise is None else level + rise
        layers.append(replace(layer, adds_mm=0.0))
    body = Body(shell.outline, part.baked_height_mm, None)
    dressed = put_outside(tuple(layers), body, _outside(stack, parts), parts)
    whole, body = dressed.layers, dressed.body
    return Torte(
        name=plan.name or "",
        kind="tart",
        layers=whole,
        outline=shell.outline,
        height_mm=body.height_mm,
        mass_g=added(layer.mass_g for layer in whole),
        dome_mm=body.dome_mm,
        skin=body.skin,
        covers=dressed.covers,
        notices=stack.notices,
        wall_mm=part.baked_thickness_mm,
    )


def _outside(stack: Stack, parts: Parts) -> tuple[Component, ...]:
    """What goes on a tart: a coat lies on its top, because its side is the shell."""
    return tuple(
        c if is_decoration(parts[c.what], c) else replace(c, place="on top") for c in stack.outside
    )


def inside_of(part: ComponentFormula) -> Outline | None:
    """Outline of the hollow of a shell: the tin's, less its wall all around."""
    floor = None if part.tin is None else floor_of(part.tin)
    if floor is None or part.baked_thickness_mm is None:
        return None
    return floor.grown(-part.baked_thickness_mm / MM_PER_CM)


def filled_to_mm(torte: Torte) -> float | None:
    """Height above the ground that the fillings of a tart reach."""
    inside = added(layer.height_mm for layer in torte.layers if layer.role == "filling")
    return None if inside is None or torte.wall_mm is None else torte.wall_mm + inside


def _shell(part: ComponentFormula, storey: Storey) -> Layer:
    work = work_of(part, storey.piece)
    known = part.baked_mass_g is not None
    return Layer(
        name=f"{part.title}, shell",
        of=storey.piece.what,
        word="shell",
        role="piece",
        material=work.material,
        line=storey.piece.number,
        height_mm=part.baked_height_mm,
        adds_mm=part.baked_height_mm,
        bottom_mm=0.0,
        outline=None if part.tin is None else floor_of(part.tin),
        mass_g=part.baked_mass_g,
        volume_ml=None,
        how=f"the whole shell, as {part.name} says" if known else "not known",
        status=part.baked_status,
    )
