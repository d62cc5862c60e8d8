"""What is put on at the end: decorations by count, fruit, what is piped; they add no height."""

from dataclasses import replace

from krume.base import Notice, as_text
from krume.build.coat import Body
from krume.build.masses import Bed, spread_layer
from krume.build.plan_lines import Component
from krume.build.torte import ComponentFormula, Layer

_OUTSIDE = ("on top", "around", "around and on top")


def is_decoration(part: ComponentFormula, component: Component) -> bool:
    """Whether a line is put on at the end: piped, or bought and not spread between layers."""
    if component.piece is not None or component.place not in _OUTSIDE:
        return False
    return component.is_piped or part.is_goods


def decoration(body: Body, part: ComponentFormula, component: Component) -> Layer:
    """Decorations by their grams each; over what they lie on they stand as high as is written."""
    count = component.count or 1
    blank = spread_layer(part, replace(component, height_mm=None), Bed(body.outline, None))
    mass_g = None if component.mass_g is None else component.mass_g * count
    bare = mass_g is None or part.density_g_ml is None
    return replace(
        blank,
        name=_name(part, component),
        word=f"{count} × {blank.word}" if count > 1 else blank.word,
        role="decoration",
        height_mm=0.0,
        adds_mm=0.0,
        bottom_mm=0.0 if component.place == "around" else body.height_mm,
        mass_g=mass_g,
        volume_ml=None if bare else (mass_g or 0.0) / (part.density_g_ml or 1.0),
        how=_how(component, mass_g),
        status="declared",
        fills_from_mm=None,
        over_mm=None if component.place == "around" else component.height_mm,
        count=count,
    )


def _name(part: ComponentFormula, component: Component) -> str:
    how = ", piped" if component.is_piped else ""
    return f"{part.title}{how}, {component.place}"


def _how(component: Component, mass_g: float | None) -> str:
    if mass_g is None:
        return "not known: how heavy one of them is was not said"
    if (component.count or 1) == 1:
        return f"{as_text(mass_g, 1)} g, as the plan says"
    return f"{component.count} × {as_text(component.mass_g or 0.0, 2)} g, as the plan says"


def stands_over_mm(layers: tuple[Layer, ...]) -> float | None:
    """How high the highest decoration stands over the top; None while one of them is not known."""
    on_it = [x for x in layers if x.role == "decoration" and x.bottom_mm != 0.0]
    known = [x.over_mm for x in on_it if x.over_mm is not None]
    return max(known, default=0.0) if len(known) == len(on_it) else None


def height_notice(layers: tuple[Layer, ...]) -> tuple[Notice, ...]:
    """Notice that names the decorations whose height nobody wrote: the box needs it."""
    worn = (x for x in layers if x.role == "decoration")
    found = [x for x in worn if x.over_mm is None and x.bottom_mm != 0.0]
    return tuple(
        Notice(
            "decoration-height",
            f"How high {each.word} stands is not written, so it is in no height: type such as "
            "“, 15 mm high” behind it.",
            f"line {each.line}",
        )
        for each in found
    )
