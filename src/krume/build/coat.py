"""What goes on top of a torte and around it, in the order of the text."""

from dataclasses import dataclass, replace

from krume.build.masses import MM_PER_CM, Bed, by_mass, soaked, spread_layer, weighed
from krume.build.outline import Outline
from krume.build.plan_lines import Component
from krume.build.solids import body_ml, cap_ml, round_cm, top_cm2
from krume.build.torte import ComponentFormula, Layer, Skin

_HALVINGS = 80
"""Enough to settle a thickness to the last bits of a float."""


@dataclass(frozen=True, slots=True)
class Body:
    """A torte as far as it stands: its outline, its height, and the volume that is in it.

    `dome_mm` of the height is a dome over the whole top.
    """

    outline: Outline | None
    height_mm: float | None
    volume_ml: float | None = None
    dome_mm: float = 0.0

    @property
    def rim_mm(self) -> float | None:
        """Height of the upright wall."""
        return None if self.height_mm is None else self.height_mm - self.dome_mm

    @property
    def skin(self) -> Skin | None:
        """Surface of its top and its side; None while its size is not known."""
        if self.outline is None or self.rim_mm is None:
            return None
        top = top_cm2(self.outline, dome_cm=self.dome_mm / MM_PER_CM)
        return Skin(top, round_cm(self.outline) * self.rim_mm / MM_PER_CM)


def on_top(body: Body, part: ComponentFormula, component: Component) -> tuple[Layer, Body]:
    """A layer over the whole top, and the torte with it; a dome is round and its own height."""
    bed = Bed(body.outline, body.height_mm)
    count = component.count or 1
    height = None if component.height_mm is None else component.height_mm * count
    mass = None if component.mass_g is None else component.mass_g * count
    layer = spread_layer(part, replace(component, height_mm=height), bed, mass)
    if layer.role == "filling":
        layer = replace(layer, role="top")
    if component.is_rolled_out:
        layer = replace(layer, material="cover", word="cover", name=f"{part.title}, cover")
    dome_mm = 0.0
    if component.is_domed:
        layer = _domed(layer, body, part, mass)
        dome_mm = layer.dome_mm
    return layer, Body(
        body.outline,
        _plus(body.height_mm, layer.adds_mm),
        _plus(body.volume_ml, layer.volume_ml if layer.role == "top" else 0.0),
        dome_mm,
    )


def _domed(layer: Layer, body: Body, part: ComponentFormula, mass_g: float | None) -> Layer:
    """A top as the cap of a ball: by its height, or as high as its grams make it."""
    across = None if body.outline is None else body.outline.diameter_cm
    if across is None:
        return replace(layer, mass_g=None, volume_ml=None, height_mm=None, adds_mm=None)
    high_mm = layer.height_mm
    if mass_g is not None:
        high_mm = _dome_mm(across, layer.volume_ml)
    if high_mm is None or high_mm / MM_PER_CM > across / 2:
        return replace(layer, mass_g=None, volume_ml=None, height_mm=None, adds_mm=None)
    layer = replace(layer, height_mm=high_mm, adds_mm=high_mm, dome_mm=high_mm)
    if mass_g is not None:
        return layer
    return weighed(layer, part, cap_ml(across, high_cm=high_mm / MM_PER_CM))


def _dome_mm(across_cm: float, volume_ml: float | None) -> float | None:
    """Height of a dome of a volume, by halving; None where half a ball holds less."""
    if volume_ml is None or cap_ml(across_cm, high_cm=across_cm / 2) < volume_ml:
        return None
    low, high = 0.0, across_cm / 2
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        is_less = cap_ml(across_cm, high_cm=middle) < volume_ml
        low, high = (middle, high) if is_less else (low, middle)
    return high * MM_PER_CM


def around(body: Body, part: ComponentFormula, component: Component) -> tuple[Layer, Body]:
    """A coat around the torte, over its top too where the plan says so, and the torte with it."""
    covers_top = component.place == "around and on top"
    word = _coat_word(component)
    layer = replace(
        spread_layer(part, component, Bed(body.outline, 0.0)),
        role="coat",
        word=word,
        name=f"{part.title}, {word}",
    )
    if component.is_rolled_out:
        layer = replace(layer, material="cover")
    elif layer.material in ("cream", "set-cream", "sponge"):
        layer = replace(layer, material="coat")
    if component.g_per_cm2 is not None:
        brushed = soaked(layer, component.g_per_cm2, _skin_cm2(body, covers_top=covers_top))
        return replace(brushed, role="coat"), body
    return _coated(layer, body, part, component, covers_top=covers_top)


def _coat_word(component: Component) -> str:
    if component.is_rolled_out:
        return "cover"
    return "crumb coat" if component.is_crumb_coat else "coat"


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
    dome_mm = _grown_dome_mm(body, thick_mm, covers_top=covers_top)
    layer = replace(layer, outline=outer, dome_mm=dome_mm)
    height = _plus(body.height_mm, rises_mm)
    layer = replace(layer, top_mm=height)
    return layer, Body(outer, height, _plus(body.volume_ml, layer.volume_ml), dome_mm)


def _grown_dome_mm(body: Body, thick_mm: float | None, *, covers_top: bool) -> float:
    """Height of the dome with a coat on it; a coat around alone leaves the dome as it is."""
    if not body.dome_mm or thick_mm is None:
        return 0.0
    return body.dome_mm + (thick_mm if covers_top else 0.0)


def coat_ml(body: Body, thick_mm: float | None, *, covers_top: bool) -> float | None:
    """Volume of an even coat without a bottom.

    V = A(r + t) (h + t) - V0, and with the top left free V = A(r + t) h - V0. Over a dome the wall
    keeps its height and the dome grows by t in radius and in height: V = V(r + t, h, d + t) - V0.

    Parameters
    ----------
    body : outline A(r), height h, dome d of it and volume V0 of what is coated
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
    if body.outline is None or body.volume_ml is None or body.rim_mm is None:
        return None
    if thick_mm is None:
        return None
    outer = body.outline.grown(thick_mm / MM_PER_CM)
    if not body.dome_mm:
        high_mm = body.rim_mm + (thick_mm if covers_top else 0.0)
        return outer.area_cm2 * high_mm / MM_PER_CM - body.volume_ml
    rim_cm = body.rim_mm / MM_PER_CM
    if covers_top:
        dome_cm = (body.dome_mm + thick_mm) / MM_PER_CM
        return body_ml(outer, high_cm=rim_cm, dome_cm=dome_cm) - body.volume_ml
    cap = body_ml(body.outline, high_cm=0.0, dome_cm=body.dome_mm / MM_PER_CM)
    return outer.area_cm2 * rim_cm + cap - body.volume_ml


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
    skin = body.skin
    if skin is None:
        return None
    return skin.whole_cm2 if covers_top else skin.side_cm2


def _plus(one: float | None, other: float | None) -> float | None:
    return None if one is None or other is None else one + other
