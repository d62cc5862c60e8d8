"""A torte seen from above, cut into its slices; one slice stands out, with its grams."""

import math
from collections.abc import Iterator

from krume.build.from_side import columns_of
from krume.build.masses import MM_PER_CM
from krume.build.patterns import GRAIN, fill
from krume.build.section_shapes import worn_places
from krume.build.torte import Layer, Tier, Torte

_KNIFE = f'fill="none" stroke="{GRAIN}" stroke-width=".5"'
_MOST_MARKS = 120


def deep_mm(torte: Torte) -> float:
    """Depth of the view from above; a roll has none, it looks as from the side."""
    if torte.kind == "roll" or torte.outline is None:
        return 0.0
    across = torte.outline.diameter_cm
    return (torte.outline.width_cm if across is None else across) * MM_PER_CM


def from_above(torte: Torte, ident: str) -> Iterator[str]:
    """The torte about its middle, x to the right and y downwards."""
    tiers = torte.tiers or (Tier(1, "", torte, 0.0),)
    for index, tier in enumerate(tiers):
        above = tiers[index + 1].torte if index + 1 < len(tiers) else None
        yield from _tier(tier.torte, above, ident)
    for layer in (x for x in torte.decorations if x.bottom_mm):
        yield from _worn(layer, torte, ident)


def _tier(torte: Torte, above: Torte | None, ident: str) -> Iterator[str]:
    outline = torte.outline
    if outline is None:
        return
    paint = fill(_top_material(torte), ident)
    edge = 'stroke="currentColor" stroke-width=".8"'
    if outline.diameter_cm is None:
        long, wide = outline.length_cm * MM_PER_CM, outline.width_cm * MM_PER_CM
        place = f'x="{-long / 2:.2f}" y="{-wide / 2:.2f}" width="{long:.2f}" height="{wide:.2f}"'
        yield f"<rect {place} {paint} {edge}/>"
        yield from _rows(torte, long, wide)
        return
    radius = outline.diameter_cm / 2 * MM_PER_CM
    yield f'<circle r="{radius:.2f}" {paint} {edge}/>'
    if torte.kind == "tart":
        yield from _tart(torte, radius, ident)
    inner = _inner_mm(torte, above)
    yield from _wedges(torte, radius, inner)
    if outline.hole_cm:
        hole = outline.hole_cm / 2 * MM_PER_CM
        yield f'<circle r="{hole:.2f}" class="d-paper" fill="#fff" {edge}/>'


def _inner_mm(torte: Torte, above: Torte | None) -> float:
    """How far in the knife is seen: to the middle, to a hole, or to the tier above."""
    hole = 0.0 if torte.outline is None else torte.outline.hole_cm / 2 * MM_PER_CM
    if above is None or above.outline is None:
        return hole
    return above.outline.across_cm / 2 * MM_PER_CM


def _top_material(torte: Torte) -> str:
    """What is seen on top: the last coat over it or the highest layer."""
    for layer in reversed(torte.layers):
        if layer.role == "top" or (layer.role == "coat" and layer.adds_mm):
            return layer.material
    inside = [x for x in torte.layers if x.role in ("piece", "filling")]
    return inside[-1].material if inside else "coat"


def _tart(torte: Torte, radius: float, ident: str) -> Iterator[str]:
    """The rim of a shell around what lies in it."""
    wall = torte.wall_mm or 0.0
    shell = torte.layers[0].material
    rim = f"M{-radius:.2f} 0a{radius:.2f} {radius:.2f} 0 1 0 {2 * radius:.2f} 0"
    rim += f"a{radius:.2f} {radius:.2f} 0 1 0 {-2 * radius:.2f} 0z"
    inside = radius - wall
    rim += f"M{-inside:.2f} 0a{inside:.2f} {inside:.2f} 0 1 0 {2 * inside:.2f} 0"
    rim += f"a{inside:.2f} {inside:.2f} 0 1 0 {-2 * inside:.2f} 0z"
    edge = f'stroke="{GRAIN}" stroke-width=".4"'
    yield f'<path d="{rim}" fill-rule="evenodd" {fill(shell, ident)} {edge}/>'


def _wedges(torte: Torte, radius: float, inner: float) -> Iterator[str]:
    count = torte.slices[0].count if torte.slices else 0
    if count < 2:
        return
    marks = []
    for k in range(count):
        x, y = math.sin(2 * math.pi * k / count), -math.cos(2 * math.pi * k / count)
        marks.append(f"M{x * inner:.2f} {y * inner:.2f}L{x * radius:.2f} {y * radius:.2f}")
    yield _knife("".join(marks))
    yield _first_wedge(count, radius, inner)


def _knife(path: str) -> str:
    """Lines of the knife, light beneath so that they are seen on what is dark."""
    light = f'<path d="{path}" fill="none" stroke="#fff" stroke-width="1.3" stroke-opacity=".55"/>'
    return f'{light}<path d="{path}" {_KNIFE}/>'


def _first_wedge(count: int, radius: float, inner: float) -> str:
    """The slice that is told: right of the top, its edge heavier."""
    turn = 2 * math.pi / count
    x, y = math.sin(turn), -math.cos(turn)
    large = 1 if count == 1 else 0
    path = (
        f"M0 {-inner:.2f}V{-radius:.2f}A{radius:.2f} {radius:.2f} 0 {large} 1 "
        f"{x * radius:.2f} {y * radius:.2f}L{x * inner:.2f} {y * inner:.2f}"
    )
    back = f"A{inner:.2f} {inner:.2f} 0 {large} 0 0 {-inner:.2f}" if inner else "z"
    return f'<path d="{path}{back}" fill="none" stroke="{GRAIN}" stroke-width="1.2"/>'


def _rows(torte: Torte, long: float, wide: float) -> Iterator[str]:
    count = torte.slices[0].count if torte.slices else 0
    columns = columns_of(torte, count)
    if count < 2 or not columns:
        return
    rows = count // columns
    marks = [
        f"M{long * (k / columns - 0.5):.2f} {-wide / 2:.2f}v{wide:.2f}" for k in range(1, columns)
    ]
    marks += [f"M{-long / 2:.2f} {wide * (k / rows - 0.5):.2f}h{long:.2f}" for k in range(1, rows)]
    yield _knife("".join(marks))
    place = f'x="{long * (0.5 - 1 / columns):.2f}" y="{-wide / 2:.2f}" '
    size = f'width="{long / columns:.2f}" height="{wide / rows:.2f}"'
    yield f'<rect {place}{size} fill="none" stroke="{GRAIN}" stroke-width="1.2"/>'


def _worn(layer: Layer, torte: Torte, ident: str) -> Iterator[str]:
    """Decorations in a ring near the rim, as many as there are; loose ones lie all over."""
    across = 0.0 if layer.outline is None else layer.outline.across_cm * MM_PER_CM
    if not across or layer.count > _MOST_MARKS:
        return
    size = min(6.0, max(2.0, across * 0.5 / max(layer.count, 8)))
    paint = f'{fill(layer.material, ident)} stroke="{GRAIN}" stroke-width=".4"'
    for x, y in worn_places(layer, torte):
        yield f'<circle cx="{x:.2f}" cy="{y:.2f}" r="{size:.2f}" {paint}/>'
