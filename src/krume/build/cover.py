"""A cover of marzipan or fondant: how wide it is rolled out, and what is cut away at the foot."""

import math

from krume.base import Clash, as_text
from krume.build.coat import Body
from krume.build.figures import figure
from krume.build.masses import MM_PER_CM, weakest
from krume.build.outline import Outline
from krume.build.plan_lines import Component
from krume.build.solids import cap_arc_cm, round_cm
from krume.build.torte import ComponentFormula, Cover, Layer, Torte


def cover_of(
    body: Body, part: ComponentFormula, component: Component, layer: Layer
) -> tuple[Cover, ...]:
    """What is rolled out for a cover; none while its size is not known."""
    thick = layer.height_mm
    size = _size_cm(body, component.place or "")
    if size is None or thick is None:
        return ()
    across, second = size
    spare = 2 * figure("cover-spare").value
    wide = component.rolled_out_cm or across + (0 if component.place == "around" else spare)
    other = None if second is None else second + (0 if component.place == "around" else spare)
    rolled_g = _grams(wide, other, thick, part.density_g_ml)
    left = None if rolled_g is None or layer.mass_g is None else max(0.0, rolled_g - layer.mass_g)
    status = weakest(part.density_status, figure("cover-spare").status)
    return (Cover(layer.name, component.number, wide, other, thick, rolled_g, left, status),)


def _grams(wide: float, other: float | None, thick_mm: float, g_ml: float | None) -> float | None:
    if g_ml is None:
        return None
    area = math.pi / 4 * wide**2 if other is None else wide * other
    return area * thick_mm / MM_PER_CM * g_ml


def _size_cm(body: Body, place: str) -> tuple[float, float | None] | None:
    """Least size of a cover: a circle's diameter, or two sides of a rectangle."""
    if body.outline is None or body.rim_mm is None:
        return None
    rim = body.rim_mm / MM_PER_CM
    if place == "around":
        return round_cm(body.outline), rim
    hangs = 2 * rim if place == "around and on top" else 0.0
    return _over_cm(body.outline, body.dome_mm / MM_PER_CM, hangs)


def _over_cm(outline: Outline, dome_cm: float, hangs: float) -> tuple[float, float | None]:
    if outline.diameter_cm is None:
        return outline.length_cm + hangs, outline.width_cm + hangs
    return cap_arc_cm(outline.diameter_cm, high_cm=dome_cm) + hangs, None


def cover_clashes(torte: Torte, sheets: dict[int, Component], body_cm: float) -> tuple[Clash, ...]:
    """A cover rolled out smaller than it must be; `body_cm` is the way over the torte."""
    return tuple(
        Clash(
            "the cover", sheets[c.line].read, f"{as_text(body_cm, 1)} cm",
            f"{as_text(c.across_cm, 1)} cm",
            f"The cover is {as_text(c.across_cm, 1)} cm across, and over the torte from foot to "
            f"foot it is {as_text(body_cm, 1)} cm (line {c.line}: {sheets[c.line].read}). Nearest: "
            f"rolled out to {as_text(math.ceil(body_cm), 0)} cm.",
        )
        for c in torte.covers
        if c.line in sheets and c.second_cm is None and c.across_cm < body_cm - 1e-9
    )  # fmt: skip
