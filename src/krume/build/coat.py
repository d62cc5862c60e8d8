"""What goes on top of a torte and around it, in the order of the text."""

from dataclasses import dataclass, replace

from krume.build.masses import MM_PER_CM, Bed, by_mass, soaked, spread_layer, weighed
from krume.build.outline import Outline
from krume.build.plan_lines import Component
from krume.build.torte import ComponentFormula, Layer

_HALVINGS = 80
"""Enough to settle a thickness to the last bits of a float."""


@dataclass(frozen=True, slots=True)
class Body:
    """A torte as far as it stands: its outline, its height, and the volume that is in it."""

    outline: Outline | None
    height_mm: float | None
    volume_ml: float | None


def on_top(body: Body, part: ComponentFormula, component: Component) -> tuple[Layer, Body]:
    """A layer over the whole top, and the torte with it."""
    bed = Bed(body.outline, body.height_mm)
    count = component.count or 1
    height = None if component.height_mm is None else component.height_mm * count
    mass = None if component.mass_g is None else component.mass_g * count
    layer = spread_layer(part, replace(component, height_mm=height), bed, mass)
    if layer.role == "filling":
        layer = replace(layer, role="top")
    return layer, Body(
        body.outline,
        _plus(body.height_mm, layer.adds_mm),
        _plus(body.volume_ml, layer.volume_ml if layer.role == "top" else 0.0),
    )


def around(body: Body, part: ComponentFormula, component: Component) -> tuple[Layer, Body]:
    """A coat around the torte, over its top too where the plan says so, and the torte with it."""
    covers_top = component.place == "around and on top"
    layer = replace(
        spread_layer(part, component, Bed(body.outline, 0.0)),
        role="coat",
        word="coat",
        name=f"{part.title}, coat",
    )
    if layer.material in ("cream", "set-cream", "sponge"):
        layer = replace(layer, material="coat")
    if component.g_per_cm2 is not None:
        brushed = soaked(layer, component.g_per_cm2, _skin_cm2(body, covers_top=covers_top))
        return replace(brushed, role="coat"), body
    return _coated(layer, body, part, component, covers_top=covers_top)


def _coated(
    layer: Layer, body: Body, part: ComponentFormula, component: Component, *, covers_top: bool
) -> tuple[Layer, Body]:
    count = component.count or 1
    thick_mm = None if component.height_mm is None else component.height_mm * count
    if component.mass_g is not None:
        mass = component.mass_g * count
        layer = by_mass(layer, part, mass, Bed(None, 0.0))
        thick_mm = _thickness_mm(body, layer.volume_ml, covers_top=covers_top)
    else:
        layer = weighed(layer, part, coat_ml(body, thick_mm, covers_top=covers_top))
    rises_mm = thick_mm if covers_top else 0.0
    layer = replace(layer, height_mm=thick_mm, adds_mm=rises_mm)
    outer = None
    if body.outline is not None and thick_mm is not None:
        outer = body.outline.grown(thick_mm / MM_PER_CM)
    layer = replace(layer, outline=outer)
    height = _plus(body.height_mm, rises_mm)
    return layer, Body(outer, height, _plus(body.volume_ml, layer.volume_ml))


def coat_ml(body: Body, thick_mm: float | None, *, covers_top: bool) -> float | None:
    """Volume of an even coat without a bottom.

    V = A(r + t) (h + t) - V0, and with the top left free V = A(r + t) h - V0

    Parameters
    ----------
    body : outline A(r), height h and volume V0 of what is coated
    thick_mm : t, thickness of the coat [mm]
    covers_top : whether the top is coated too

    Returns
    -------
    volume [ml]; None where the body or the thickness is not known

    Valid for
    ---------
    Upright walls and an even coat; steps between layers of different size are filled out.

    Source
    ------
    `mathematics`, solid geometry

    Examples
    --------
    >>> body = Body(Outline(20.0), 70.0, Outline(20.0).area_cm2 * 7.0)
    >>> round(coat_ml(body, 3.0, covers_top=True), 1)
    233.9
    """
    if body.outline is None or body.height_mm is None or body.volume_ml is None:
        return None
    if thick_mm is None:
        return None
    outer = body.outline.grown(thick_mm / MM_PER_CM)
    high_mm = body.height_mm + (thick_mm if covers_top else 0.0)
    return outer.area_cm2 * high_mm / MM_PER_CM - body.volume_ml


def _thickness_mm(body: Body, volume_ml: float | None, *, covers_top: bool) -> float | None:
    """Thickness of a coat of a volume: the inverse of `coat_ml`, by halving."""
    if volume_ml is None or coat_ml(body, 0.0, covers_top=covers_top) is None:
        return None
    low, high = 0.0, 1.0
    while (coat_ml(body, high, covers_top=covers_top) or 0.0) < volume_ml:
        high *= 2
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        is_less = (coat_ml(body, middle, covers_top=covers_top) or 0.0) < volume_ml
        low, high = (middle, high) if is_less else (low, middle)
    return high


def _skin_cm2(body: Body, *, covers_top: bool) -> float | None:
    if body.outline is None or body.height_mm is None:
        return None
    wall = _round_cm(body.outline) * body.height_mm / MM_PER_CM
    return wall + (body.outline.area_cm2 if covers_top else 0.0)


def _round_cm(outline: Outline) -> float:
    from math import pi

    if outline.diameter_cm is not None:
        return pi * outline.diameter_cm
    return 2 * (outline.length_cm + outline.width_cm)


def _plus(one: float | None, other: float | None) -> float | None:
    return None if one is None or other is None else one + other
