"""What is inside a section: layers with their marks, and where each label points.

Units are millimetres of cake; x runs from the left edge of the torte, y downwards from its top.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from krume.base import as_text
from krume.build import spiral
from krume.build.masses import MM_PER_CM
from krume.build.patterns import GRAIN, SYRUP_DEPTH_MM, fill
from krume.build.shelled import filled_to_mm
from krume.build.solids import ball_radius_cm, dome_at
from krume.build.torte import Layer, Torte

_CUT = 0.4
_MARK_INSET = 7.0
_LABEL_STEP = 8
_UNKNOWN_BUMP = 6.0
"""A decoration whose height nobody wrote is drawn so high, and broken."""
_WIDEST_BUMP = 14.0


@dataclass(frozen=True, slots=True)
class Mark:
    """Where the label of a layer points, where its line leaves the torte, and its words."""

    layer: Layer
    x: float
    y: float
    leaves: float
    words: str


@dataclass(frozen=True, slots=True)
class Shapes:
    """The torte as drawn: its marks, its labels from the top down, and heights to write."""

    svg: str
    marks: tuple[Mark, ...]
    spans: tuple[tuple[float, float], ...]
    materials: tuple[str, ...]


def width_mm(torte: Torte) -> float:
    """Width of the section: the diameter, or the longer side."""
    return 0.0 if torte.outline is None else torte.outline.across_cm * MM_PER_CM


def high_mm(torte: Torte) -> float:
    """Height of the drawing: the torte's with its decorations, or the ring's above it."""
    over = max((x.over_mm or _UNKNOWN_BUMP for x in torte.decorations if x.bottom_mm), default=0.0)
    return max((torte.height_mm or 0.0) + over, torte.ring_height_mm or 0.0)


def reach_of(layer: Layer, torte: Torte) -> float:
    """How far off the middle decorations stand, as a share of the width: each kind in its ring."""
    worn = [x for x in torte.decorations if x.bottom_mm and x.count > 1]
    return 0.39 - 0.12 * worn.index(layer) if layer in worn else 0.39


def worn_places(layer: Layer, torte: Torte) -> list[tuple[float, float]]:
    """Where decorations stand from above, about the middle [mm]: in a ring, or along the sides."""
    outline = layer.outline
    if outline is None or layer.count == 1:
        return [(0.0, 0.0)] * min(1, layer.count)
    reach = max(0.05, reach_of(layer, torte))
    steps = [(k + 0.5) / layer.count for k in range(layer.count)]
    if outline.diameter_cm is not None:
        radius = outline.diameter_cm * MM_PER_CM * reach
        turns = [2 * math.pi * step for step in steps]
        return [(radius * math.sin(turn), -radius * math.cos(turn)) for turn in turns]
    long, wide = (2 * reach * MM_PER_CM * side for side in (outline.length_cm, outline.width_cm))
    return [_along(step * 2 * (long + wide), long, wide) for step in steps]


def _along(way: float, long: float, wide: float) -> tuple[float, float]:
    """A point so far along the edge of a rectangle about its middle, from the top left."""
    if way < long:
        return way - long / 2, -wide / 2
    if way < long + wide:
        return long / 2, way - long - wide / 2
    if way < 2 * long + wide:
        return long / 2 - (way - long - wide), wide / 2
    return -long / 2, wide / 2 - (way - 2 * long - wide)


def shapes(torte: Torte, ident: str) -> Shapes:
    """Shapes of a torte of any kind."""
    if torte.kind == "roll":
        return _roll(torte, ident)
    found = list(_tart(torte, ident) if torte.kind == "tart" else _layers(torte, ident))
    marks = sorted(_marks(torte), key=lambda mark: mark.y)
    used = tuple(dict.fromkeys(layer.material for layer in torte.layers))
    return Shapes("".join(found), tuple(marks), tuple(_spans(torte)), used)


def box(x: float, y: float, wide: float, high: float, paint: str) -> str:
    """A rectangle in plain decimals."""
    return f'<rect x="{x:.2f}" y="{y:.2f}" width="{wide:.2f}" height="{high:.2f}" {paint}/>'


def cut(x: float, y: float, wide: float, high: float, line: float = _CUT) -> str:
    """The edge of a cut."""
    return box(x, y, wide, high, f'fill="none" stroke="{GRAIN}" stroke-width="{line}"')


def _width_of(layer: Layer) -> float:
    return 0.0 if layer.outline is None else layer.outline.across_cm * MM_PER_CM


def _left_of(layer: Layer, torte: Torte) -> float:
    return (width_mm(torte) - _width_of(layer)) / 2


def _layers(torte: Torte, ident: str) -> Iterator[str]:
    """Coats first, then what fills gaps, then each layer on its own; syrup into its piece."""
    high = high_mm(torte)
    for layer in reversed(torte.layers):
        if layer.role == "coat":
            top = layer.top_mm or 0.0
            deep = top - (layer.bottom_mm or 0.0)
            yield _framed(layer, torte, high - top, deep, ident)
    for layer in torte.layers:
        if layer.fills_from_mm is not None and layer.bottom_mm is not None:
            deep = layer.bottom_mm - layer.fills_from_mm
            yield _painted(replace(layer, dome_mm=0.0), torte, high - layer.bottom_mm, deep, ident)
    for layer in torte.layers:
        is_inside = layer.role in ("piece", "filling", "top")
        if is_inside and layer.height_mm is not None:
            top = (layer.bottom_mm or 0.0) + layer.height_mm
            yield _framed(layer, torte, high - top, layer.height_mm, ident)
    for layer in torte.layers:
        if layer.role == "syrup":
            yield _soaked(layer, torte, high - (layer.bottom_mm or 0.0), ident)
    for layer in torte.decorations:
        yield from _stands(layer, torte, high, ident)
    yield from _boards(torte, high)
    yield from _hole(torte)


def _stands(layer: Layer, torte: Torte, high: float, ident: str) -> Iterator[str]:
    """Decorations where the section cuts them: at both edges, or in the middle where there is one.

    One whose height nobody wrote is drawn broken.
    """
    if not layer.bottom_mm:
        return
    across, ground = _width_of(layer) or width_mm(torte), high - layer.bottom_mm
    reach = 0.0 if layer.count == 1 else across * max(0.05, reach_of(layer, torte))
    sunk = torte.dome_mm - dome_at(reach, across, torte.dome_mm)
    for side in (0.0,) if layer.count == 1 else (-1.0, 1.0):
        yield bump(width_mm(torte) / 2 + side * reach, ground + sunk, layer, ident)


def bump(x: float, ground: float, layer: Layer, ident: str) -> str:
    """One decoration: as high as it stands, or broken where that is not known."""
    tall = layer.over_mm or _UNKNOWN_BUMP
    half = min(tall, _WIDEST_BUMP) * 0.62
    line = (
        f"M{x - half:.2f} {ground:.2f}q0 {-tall:.2f} {half:.2f} {-tall:.2f}t{half:.2f} {tall:.2f}z"
    )
    dash = "" if layer.over_mm else 'stroke-dasharray="1.2 1"'
    edge = f'stroke="{GRAIN}" stroke-width="{_CUT}" {dash}'
    return f'<path d="{line}" {fill(layer.material, ident)} {edge}/>'


def _boards(torte: Torte, high: float) -> Iterator[str]:
    """The boards of tiers, and the supports that carry them, broken because they are hidden."""
    for below, above in pairwise(torte.tiers):
        outline, bottom = above.torte.outline, above.bottom_mm
        if outline is None or bottom is None:
            continue
        wide = outline.across_cm * MM_PER_CM
        board = bottom - ((below.bottom_mm or 0.0) + (below.torte.height_mm or 0.0))
        left = (width_mm(torte) - wide) / 2
        yield box(left, high - bottom, wide, board, f'fill="{GRAIN}"')
        foot, top = high - (below.bottom_mm or 0.0), high - bottom + board
        posts = "".join(f"M{left + wide * at:.2f} {top:.2f}V{foot:.2f}" for at in (0.2, 0.8))
        yield (
            f'<path d="{posts}" fill="none" stroke="{GRAIN}" stroke-width="1" '
            'stroke-dasharray="3 2"/>'
        )


def body_path(left: float, top: float, wide: float, deep: float, dome: float) -> str:
    """Path of an upright body with a dome on it, closed; y runs down."""
    if dome <= 0:
        return f"M{left:.2f} {top:.2f}h{wide:.2f}v{deep:.2f}h{-wide:.2f}z"
    ball = ball_radius_cm(wide, dome)
    return (
        f"M{left:.2f} {top + dome:.2f}A{ball:.2f} {ball:.2f} 0 0 1 {left + wide:.2f} "
        f"{top + dome:.2f}v{max(0.0, deep - dome):.2f}h{-wide:.2f}z"
    )


def _painted(layer: Layer, torte: Torte, y: float, deep: float, ident: str) -> str:
    left, wide = _left_of(layer, torte), _width_of(layer)
    if layer.dome_mm:
        line = body_path(left, y, wide, deep, layer.dome_mm)
        return f'<path d="{line}" {fill(layer.material, ident)}/>'
    return box(left, y, wide, deep, fill(layer.material, ident))


def _framed(layer: Layer, torte: Torte, y: float, deep: float, ident: str) -> str:
    left, wide = _left_of(layer, torte), _width_of(layer)
    edge = cut(left, y, wide, deep)
    if layer.dome_mm:
        line = body_path(left, y, wide, deep, layer.dome_mm)
        edge = f'<path d="{line}" fill="none" stroke="{GRAIN}" stroke-width="{_CUT}"/>'
    return _painted(layer, torte, y, deep, ident) + edge


def _soaked(layer: Layer, torte: Torte, y: float, ident: str) -> str:
    """Syrup as falling strokes over the top millimetres of what it soaks."""
    x, wide = _left_of(layer, torte) + 0.2, _width_of(layer) - 0.4
    tint = box(x, y + 0.2, wide, SYRUP_DEPTH_MM, 'class="m-syrup" fill="#eec565" opacity="0.6"')
    return tint + box(x, y + 0.2, wide, SYRUP_DEPTH_MM, fill("syrup", ident))


def _hole(torte: Torte) -> Iterator[str]:
    outline = torte.outline
    if outline is None or not outline.hole_cm:
        return
    wide = outline.hole_cm * MM_PER_CM
    x = (width_mm(torte) - wide) / 2
    yield box(x, 0.0, wide, high_mm(torte), 'class="d-paper" fill="#fff"')
    yield cut(x, 0.0, wide, high_mm(torte))


def _tart(torte: Torte, ident: str) -> Iterator[str]:
    shell, wall = torte.layers[0], torte.wall_mm or 0.0
    wide, high = width_mm(torte), high_mm(torte)
    rim = high - (shell.height_mm or 0.0)
    inner = f"M{wide - wall:.2f} {rim:.2f}V{high - wall:.2f}H{wall:.2f}V{rim:.2f}"
    outline = f"M0 {rim:.2f}V{high:.2f}H{wide:.2f}V{rim:.2f}H{wide - wall:.2f}V{high - wall:.2f}"
    level = wall
    for layer in torte.layers[1:]:
        if layer.role in ("filling", "top"):
            bottom = layer.bottom_mm if layer.bottom_mm is not None else level
            deep = layer.height_mm or 0.0
            yield _framed(layer, torte, high - bottom - deep, deep, ident)
            level = bottom + deep
        if layer.role == "syrup":
            yield _soaked(layer, torte, high - (layer.bottom_mm or 0.0), ident)
    yield f'<path d="{outline}H{wall:.2f}V{rim:.2f}z" {fill(shell.material, ident)}/>'
    yield f'<path d="{inner}" fill="none" stroke="{GRAIN}" stroke-width="{_CUT}"/>'
    for layer in torte.decorations:
        yield from _stands(layer, torte, high, ident)


def _marks(torte: Torte) -> Iterator[Mark]:
    high, wide = high_mm(torte), width_mm(torte)
    for layer in torte.layers:
        x, y = _place(layer, torte, high)
        words = layer.word
        if layer.role == "coat":
            words = f"{layer.word}, {as_text(layer.height_mm or 0.0, 1)} mm"
        yield Mark(layer, x, y, (wide + _width_of(layer)) / 2 if torte.tiers else wide, words)


def _place(layer: Layer, torte: Torte, high: float) -> tuple[float, float]:
    """A point inside a layer, near its right edge."""
    bottom, height = layer.bottom_mm or 0.0, layer.height_mm or 0.0
    right = _left_of(layer, torte) + _width_of(layer)
    if layer.role == "syrup":
        return right - _MARK_INSET, high - bottom + SYRUP_DEPTH_MM / 2
    if layer.role == "decoration":
        across = _width_of(layer) or width_mm(torte)
        reach = 0.0 if layer.count == 1 else across * max(0.05, reach_of(layer, torte))
        sunk = torte.dome_mm - dome_at(reach, across, torte.dome_mm)
        tall = layer.over_mm or _UNKNOWN_BUMP
        return width_mm(torte) / 2 + reach, high - bottom + sunk - tall / 2
    top = high - (layer.top_mm or 0.0) + layer.dome_mm
    if layer.role == "coat" and layer.adds_mm and not layer.dome_mm:
        return right - _MARK_INSET, top + layer.adds_mm / 2
    if layer.role == "coat":
        return right - height / 2, top + SYRUP_DEPTH_MM
    if layer.dome_mm:
        return (right + _left_of(layer, torte)) / 2, high - bottom - height * 0.25
    if torte.kind == "tart" and layer.role == "piece":
        return right - (torte.wall_mm or 0.0) / 2, high - height * 0.72
    return right - _MARK_INSET, high - bottom - height / 2


def _spans(torte: Torte) -> Iterator[tuple[float, float]]:
    """Bottom and height of what has a height on the rule, from the bottom up."""
    if torte.kind == "tart":
        wall, level = torte.wall_mm or 0.0, filled_to_mm(torte)
        yield 0.0, wall
        if level is not None and level > wall:
            yield wall, level - wall
        return
    if torte.tiers:
        yield from ((tier.bottom_mm or 0.0, tier.torte.height_mm or 0.0) for tier in torte.tiers)
        return
    reached = 0.0
    for layer in torte.layers:
        if layer.adds_mm:
            yield reached, layer.adds_mm
            reached += layer.adds_mm


def _roll(torte: Torte, ident: str) -> Shapes:
    """A roll: cream in a circle, and in it the band of the sheet with its syrup."""
    sheet = torte.layers[0]
    inside = [x for x in torte.layers[1:] if x.role == "filling"]
    coats = [x for x in torte.layers if x.role == "coat"]
    across, thick = width_mm(torte), sheet.height_mm or 0.0
    middle = across / 2
    coat_mm = sum(x.height_mm or 0.0 for x in coats)
    pitch = thick + sum(x.height_mm or 0.0 for x in inside)
    outer, inner = spiral.band(
        middle - coat_mm, length_mm=_rolled_mm(torte), thick_mm=thick, pitch_mm=pitch
    )
    ground = inside[0].material if inside else sheet.material
    found = [_disc(middle, middle, coats[-1].material, ident) if coats else ""]
    found.append(_disc(middle, middle - coat_mm, ground, ident))
    edge = spiral.path([*outer, *reversed(inner)], x=middle, y=middle) + "Z"
    found.append(f'<path d="{edge}" {fill(sheet.material, ident)}/>')
    if any(layer.role == "syrup" for layer in torte.layers):
        found.append(_soaked_band(outer, inner, thick, middle, ident))
    found.append(f'<path d="{edge}" fill="none" stroke="{GRAIN}" stroke-width="{_CUT}"/>')
    used = tuple(dict.fromkeys(layer.material for layer in torte.layers))
    marks = tuple(_roll_marks(torte, outer, inner, middle))
    return Shapes("".join(found), marks, ((0.0, across),), used)


def _rolled_mm(torte: Torte) -> float:
    """Side of the sheet that is rolled up."""
    outline = torte.layers[0].outline
    if outline is None or torte.roll_width_cm is None:
        return 0.0
    return outline.area_cm2 / torte.roll_width_cm * MM_PER_CM


def _disc(middle: float, radius: float, material: str, ident: str) -> str:
    place = f'cx="{middle:.2f}" cy="{middle:.2f}" r="{radius:.2f}"'
    line = f'<circle {place} fill="none" stroke="{GRAIN}" stroke-width="{_CUT}"/>'
    return f"<circle {place} {fill(material, ident)}/>{line}"


def _soaked_band(
    outer: list[spiral.Point], inner: list[spiral.Point], thick: float, middle: float, ident: str
) -> str:
    """Syrup on the face that is rolled inwards."""
    share = min(1.0, SYRUP_DEPTH_MM / thick) if thick else 0.0
    deep = [
        (ix + (ox - ix) * share, iy + (oy - iy) * share)
        for (ox, oy), (ix, iy) in zip(outer, inner, strict=True)
    ]
    edge = spiral.path([*deep, *reversed(inner)], x=middle, y=middle) + "Z"
    tint = f'<path d="{edge}" class="m-syrup" fill="#eec565" opacity="0.6"/>'
    return f'{tint}<path d="{edge}" {fill("syrup", ident)}/>'


def _roll_marks(
    torte: Torte, outer: list[spiral.Point], inner: list[spiral.Point], middle: float
) -> Iterator[Mark]:
    """Labels of a roll point at its right side, one under the other."""
    start = next((i for i, (x, y) in enumerate(outer) if x > 0 > y), 0)
    depth = {"coat": -0.1, "piece": 0.35, "syrup": 0.88, "filling": 1.3}
    for step, layer in enumerate(sorted(torte.layers, key=lambda x: depth[x.role])):
        place = min(start + _LABEL_STEP * step, len(outer) - 1)
        (ox, oy), (ix, iy) = outer[place], inner[place]
        share = depth[layer.role]
        words = layer.word
        if layer.role != "syrup":
            words = f"{words}, {as_text(layer.height_mm or 0.0, 1)} mm"
        x, y = ox + (ix - ox) * share, oy + (iy - oy) * share
        leaves = middle + math.sqrt(max(middle**2 - y**2, x**2))
        yield Mark(layer, middle + x, middle + y, leaves, words)
