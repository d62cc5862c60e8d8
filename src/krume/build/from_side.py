"""A torte as it stands, seen from the side: its coat or its naked layers, what stands on it."""

import math
from collections.abc import Iterator
from itertools import pairwise

from krume.build.masses import MM_PER_CM
from krume.build.patterns import GRAIN, fill
from krume.build.section_shapes import (
    body_path,
    box,
    bump,
    cut,
    high_mm,
    width_mm,
    worn_places,
)
from krume.build.solids import dome_at
from krume.build.torte import Layer, Tier, Torte

_CUT = 0.4
_SLACK_MM = 1e-6
_SLICE_LINE = f'fill="none" stroke="{GRAIN}" stroke-width=".35" stroke-dasharray="1.6 1.6"'


def from_side(torte: Torte, ident: str) -> Iterator[str]:
    """The torte on its board line; x from its left edge, y downwards from the top."""
    if torte.kind == "roll":
        yield from _roll(torte, ident)
        return
    high = high_mm(torte)
    for tier in torte.tiers or (Tier(1, "", torte, 0.0),):
        yield from _body(torte, tier, high, ident)
    for layer in torte.decorations:
        yield from _worn(layer, torte, high, ident)
    yield from _boards(torte, high)


def long_mm(torte: Torte) -> float:
    """Width of the side view: of a roll its length, else the torte's own."""
    if torte.kind == "roll":
        return (torte.roll_width_cm or 0.0) * MM_PER_CM
    return width_mm(torte)


def _body(whole: Torte, tier: Tier, high: float, ident: str) -> Iterator[str]:
    torte, ground = tier.torte, high - (tier.bottom_mm or 0.0)
    across, tall = width_mm(torte), torte.height_mm or 0.0
    left, top = (width_mm(whole) - across) / 2, ground - tall
    coat = next((x for x in reversed(torte.layers) if _is_coat(x)), None)
    outline = body_path(left, top, across, tall, torte.dome_mm)
    if coat is not None:
        yield f'<path d="{outline}" {fill(coat.material, ident)}/>'
        yield from _over_coat(torte, coat, left, ground, ident)
    else:
        yield from _naked(torte, left, ground, ident)
    yield from _lines(torte, left, top, tall)
    yield f'<path d="{outline}" fill="none" stroke="currentColor" stroke-width=".8"/>'


def _is_coat(layer: Layer) -> bool:
    return layer.role == "coat" and bool(layer.height_mm)


def _over_coat(torte: Torte, coat: Layer, left: float, ground: float, ident: str) -> Iterator[str]:
    """What was put on top after the coat shows over it."""
    after = torte.layers[torte.layers.index(coat) + 1 :]
    for layer in after:
        if layer.role == "top" and layer.height_mm:
            top = ground - (layer.bottom_mm or 0.0) - layer.height_mm
            yield _band(layer, torte, left, top, layer.height_mm, ident)


def _naked(torte: Torte, left: float, ground: float, ident: str) -> Iterator[str]:
    """Each layer as a band; a cream that fills the gap beside a piece hides the piece."""
    if torte.kind == "tart":
        shell = torte.layers[0]
        tall = shell.height_mm or 0.0
        yield _band(shell, torte, left, ground - tall, tall, ident)
    for layer in torte.layers:
        if layer.role in ("piece", "filling", "top") and layer.adds_mm:
            if torte.kind == "tart" and layer.role != "top":
                continue
            top = ground - (layer.bottom_mm or 0.0) - layer.adds_mm
            yield _band(layer, torte, left, top, layer.adds_mm, ident)
    for layer in torte.layers:
        if layer.fills_from_mm is not None and layer.bottom_mm is not None:
            deep = layer.bottom_mm - layer.fills_from_mm + (layer.adds_mm or 0.0)
            top = ground - layer.bottom_mm - (layer.adds_mm or 0.0)
            yield _band(layer, torte, left, top, deep, ident)


def _band(layer: Layer, torte: Torte, left: float, top: float, deep: float, ident: str) -> str:
    own = 0.0 if layer.outline is None else layer.outline.across_cm * MM_PER_CM
    inset = (width_mm(torte) - own) / 2
    if layer.dome_mm:
        line = body_path(left + inset, top, own, deep, layer.dome_mm)
        edge = f'stroke="{GRAIN}" stroke-width="{_CUT}"'
        return f'<path d="{line}" {fill(layer.material, ident)} {edge}/>'
    painted = box(left + inset, top, own, deep, fill(layer.material, ident))
    return painted + cut(left + inset, top, own, deep)


def _lines(torte: Torte, left: float, top: float, tall: float) -> Iterator[str]:
    """Where the knife goes down: the slices that are seen from the front."""
    count = torte.slices[0].count if torte.slices else 0
    across = width_mm(torte)
    if torte.outline is None or torte.outline.diameter_cm is None:
        columns = columns_of(torte, count)
        xs = [left + across * k / columns for k in range(1, columns)] if columns else []
    else:
        angles = [2 * math.pi * k / count for k in range(count)] if count > 1 else []
        front = [angle for angle in angles if math.cos(angle) > 1e-9]
        xs = [left + across / 2 * (1 + math.sin(angle)) for angle in front]
    marks = []
    for x in xs:
        rise = dome_at(x - left - across / 2, across, torte.dome_mm)
        marks.append(f"M{x:.2f} {top + torte.dome_mm - rise:.2f}V{top + tall:.2f}")
    if marks:
        yield f'<path d="{"".join(marks)}" {_SLICE_LINE}/>'


def columns_of(torte: Torte, count: int) -> int:
    """Columns along the longer side, so that pieces of a rectangle are nearest to squares."""
    outline = torte.outline
    if outline is None or outline.diameter_cm is not None or count < 1:
        return 0
    fits = [k for k in range(1, count + 1) if count % k == 0]

    def slimness(columns: int) -> float:
        wide = outline.length_cm / columns
        deep = outline.width_cm / (count // columns)
        return max(wide, deep) / min(wide, deep)

    return min(fits, key=slimness)


def _worn(layer: Layer, torte: Torte, high: float, ident: str) -> Iterator[str]:
    """Decorations around the rim as they are seen from the front; one stands in the middle."""
    if not layer.bottom_mm:
        return
    own = 0.0 if layer.outline is None else layer.outline.across_cm * MM_PER_CM
    for x, y in worn_places(layer, torte):
        if y < -_SLACK_MM:
            # From above the view begins at the back: what is seen here stands below there.
            continue
        sunk = torte.dome_mm - dome_at(math.hypot(x, y), own, torte.dome_mm)
        yield bump(width_mm(torte) / 2 + x, high - layer.bottom_mm + sunk, layer, ident)


def _boards(torte: Torte, high: float) -> Iterator[str]:
    """The thin boards of tiers."""
    for below, above in pairwise(torte.tiers):
        wide, bottom = width_mm(above.torte), above.bottom_mm or 0.0
        deep = bottom - (below.bottom_mm or 0.0) - (below.torte.height_mm or 0.0)
        left = (width_mm(torte) - wide) / 2
        yield box(left, high - bottom, wide, deep, f'fill="{GRAIN}"')


def _roll(torte: Torte, ident: str) -> Iterator[str]:
    """A roll lying along the page, a slice line at each cut."""
    long, tall = long_mm(torte), torte.height_mm or 0.0
    coat = next((x for x in reversed(torte.layers) if x.role == "coat"), torte.layers[0])
    yield box(0.0, 0.0, long, tall, fill(coat.material, ident))
    if torte.slices and torte.slices[0].count > 1:
        count = torte.slices[0].count
        marks = "".join(f"M{long * k / count:.2f} 0V{tall:.2f}" for k in range(1, count))
        yield f'<path d="{marks}" {_SLICE_LINE}/>'
    yield box(0.0, 0.0, long, tall, 'fill="none" stroke="currentColor" stroke-width=".8"')
