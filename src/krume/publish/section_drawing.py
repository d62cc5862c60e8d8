"""The cut cake at chosen minutes: isotherms in its tin, the rise, the crust, all on one scale."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape
from itertools import pairwise
from typing import TYPE_CHECKING

from krume.base import as_text
from krume.publish.isotherms import Panel, Point, Warmer, panels, warmer_than
from krume.publish.plot import cut_to
from krume.size import Tin

if TYPE_CHECKING:
    from krume.bake import Around, Section

LEVELS_C = (40.0, 60.0, 80.0)
"""Isotherms below the wanted core, which is the last and the heaviest of them."""
_TINTS = ("#fffdf6", "#fdf6df", "#f3dfae", "#eec565", "#d6b283")
_DASHES = ("1 4", "6 4", "")
_FRAME = 328.0
_SIDE = 22.0
_CAPTION = 26.0
_FOOT = 12.0
_GAP = 20.0
_TYPE, _SMALL = 15.0, 13.0
_WALL, _FLOOR = 4.0, 2.0
_MOST_SIGNS = 24
_LABEL_ROOM = 17.0
_LABEL_EDGE = 6.0
_LEAST_APART = 6.0
_MM = 10.0
_LEAST_HIGH = 42.0
_MOST_STRETCH = 4
_JACKETS = {"wrapped": "3 2", "water": "1 3"}
_UNDERS = {
    "tray": ((7.0, 1.5),),
    "insulated": ((6.5, 1.5), (9.5, 1.5)),
    "stone": ((8.0, 5.0),),
}
_PORES = ((2.0, 2.2, 1.1), (7.4, 1.6, 0.7), (4.8, 5.4, 0.9), (9.8, 6.2, 1.2), (1.4, 7.8, 0.7))
_PORE_CELL = (11, 9)


@dataclass(frozen=True, slots=True)
class CakeCut:
    """One cut to draw: its words stand above it, `start_cm` is the batter's depth at the door.

    `core_c` is the coldest place then, `wanted_c` the core the bake waits for; `colour` is the
    top's, as a screen shows it.
    """

    section: "Section"
    tin: Tin
    start_cm: float
    core_c: float
    wanted_c: float
    colour: str
    words: str = ""
    around: "Around | None" = None


@dataclass(frozen=True, slots=True)
class _Frame:
    """Room of one cut: pixels per centimetre, and where axis and floor of the tin lie."""

    scale: float
    stretch: int
    axis: float
    floor: float

    @property
    def upright(self) -> float:
        """Pixels per centimetre of height."""
        return self.scale * self.stretch

    def at(self, point: Point) -> Point:
        return self.axis + point[0] * self.scale, self.floor - point[1] * self.upright

    def path(self, points: Sequence[Point]) -> str:
        placed = (self.at(each) for each in points)
        return "M" + "L".join(f"{x:.1f} {y:.1f}" for x, y in placed)


def cuts_drawing(
    cuts: Sequence[CakeCut], *, ident: str, columns: int = 1, like: Sequence[CakeCut] = ()
) -> str:
    """Cuts as one SVG, in so many columns, all to one scale; ids in it begin with `ident`.

    `like` are cuts in other drawings, to whose scale and height these are drawn.
    """
    columns = max(1, min(columns, len(cuts)))
    all_of_them = (*cuts, *like)
    scale, stretch = _scale(all_of_them), cuts_stretch(all_of_them)
    high = _CAPTION + _FOOT + scale * stretch * max(_high_cm(each) for each in all_of_them)
    rows = math.ceil(len(cuts) / columns)
    wide, tall = columns * (_FRAME + _GAP) - _GAP, rows * (high + _GAP) - _GAP
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide:g} {tall:.0f}" role="img" '
        f'aria-labelledby="{ident}-name {ident}-what">',
        f'<title id="{ident}-name">{escape(cuts_sentence(cuts))}</title>',
        f'<desc id="{ident}-what">{escape(cuts_described(cuts))}</desc>',
        _pores(ident),
    ]
    for k, each in enumerate(cuts):
        x, y = (k % columns) * (_FRAME + _GAP), (k // columns) * (high + _GAP)
        frame = _Frame(scale, stretch, x + _FRAME / 2, y + high - _FOOT)
        parts += [_caption(each, x, y), *_cake(each, frame, ident), *_tin(each, frame)]
    return "".join([*parts, "</svg>"])


def cuts_stretch(cuts: Sequence[CakeCut]) -> int:
    """How many times as high as it is wide a cake is drawn: 1, but for what is rolled thin."""
    tallest = max(each.section.height_cm[-1] for each in cuts) * _scale(cuts)
    return min(_MOST_STRETCH, max(1, math.ceil(_LEAST_HIGH / tallest)))


def cuts_sentence(cuts: Sequence[CakeCut]) -> str:
    """The drawing in one sentence."""
    minutes = list(dict.fromkeys(as_text(each.section.time_min, 0) for each in cuts))
    said = f"{', '.join(minutes[:-1])} and {minutes[-1]}" if len(minutes) > 1 else minutes[0]
    return f"The cake cut through its middle at {said} minutes, with lines of equal temperature."


def cuts_described(cuts: Sequence[CakeCut]) -> str:
    """What is seen in each cut, in words."""
    return " ".join(_told(each) for each in cuts)


def _told(cut: CakeCut) -> str:
    section = cut.section
    share = 100 * _warm_share(cut)
    high = 10 * section.height_cm[-1]
    return (
        f"{_heading(cut)}: coldest {as_text(cut.core_c, 0)} °C, hottest "
        f"{as_text(max(max(row) for row in section.temp_c), 0)} °C; "
        f"{as_text(share, 0)} % of it at the core's {as_text(cut.wanted_c, 0)} °C or more; "
        f"drawn {as_text(high, 0)} mm high, the dry top {as_text(section.crust_mm, 1)} mm."
    )


def _heading(cut: CakeCut) -> str:
    minutes = f"{as_text(cut.section.time_min, 0)} min"
    return f"{minutes}, {cut.words}" if cut.words else minutes


def _warm_share(cut: CakeCut) -> float:
    """Share of the cake at the wanted core or above, rings weighed by their area."""
    section = cut.section
    edges = section.radius_cm
    rings = [b * b - a * a for a, b in pairwise(edges)]
    heights = section.height_cm
    rows = [b - a for a, b in pairwise(heights)]
    warm = sum(
        ring * row
        for row, temps in zip(rows, section.temp_c, strict=True)
        for ring, temp in zip(rings, temps, strict=True)
        if temp >= cut.wanted_c
    )
    return warm / (sum(rings) * sum(rows))


def _scale(cuts: Sequence[CakeCut]) -> float:
    """One scale for all: the widest tin fills its frame."""
    return (_FRAME - 2 * _SIDE) / (2 * max(each.section.radius_cm[-1] for each in cuts))


def _high_cm(cut: CakeCut) -> float:
    return max(cut.section.height_cm[-1], cut.tin.height_cm or 0.0)


def _caption(cut: CakeCut, x: float, y: float) -> str:
    core = f"coldest {as_text(cut.core_c, 0)} °C"
    name = cut_to(cut.words or _heading(cut), _MOST_SIGNS)
    return _text(x, y + _TYPE, name, "d-text d-bold") + _text(
        x + _FRAME, y + _TYPE, core, "d-text-2", anchor="end"
    )


def _levels(cut: CakeCut) -> tuple[float, ...]:
    below = tuple(each for each in LEVELS_C if each < cut.wanted_c - _LEAST_APART)
    return (*below, cut.wanted_c)


def _cake(cut: CakeCut, frame: _Frame, ident: str) -> Iterator[str]:
    levels = _levels(cut)
    placed: list[tuple[Point, float]] = []
    for panel in panels(cut.section):
        found = [(level, warmer_than(panel, level)) for level in levels]
        yield f'<path fill="{_TINTS[0]}" d="{frame.path(panel.outline)}z"/>'
        for k, (_, warmer) in enumerate(found):
            yield from _painted(warmer, frame, _TINTS[len(_TINTS) - len(levels) + k])
        yield from _pored(found[-1][1], frame, ident)
        for k, (_, warmer) in enumerate(found):
            yield from _isotherms(warmer, frame, k, is_core=k == len(found) - 1)
        yield from _crust(cut, panel, frame)
        if panel.x_cm[0] <= 0:
            placed += _labels(found, panel, frame)
    for (x, y), level in placed:
        yield _level_text(x, y, level, is_core=level == levels[-1])


def _painted(warmer: Warmer, frame: _Frame, tint: str) -> Iterator[str]:
    loops = "".join(f"{frame.path(loop)}z" for loop in warmer.loops if len(loop) > 2)
    if loops:
        yield f'<path fill="{tint}" fill-rule="evenodd" d="{loops}"/>'


def _pored(warmer: Warmer, frame: _Frame, ident: str) -> Iterator[str]:
    """Pores where the core's temperature is reached: holes are baked."""
    loops = "".join(f"{frame.path(loop)}z" for loop in warmer.loops if len(loop) > 2)
    if loops:
        yield f'<path fill="url(#{ident}-pores)" fill-rule="evenodd" d="{loops}"/>'


def _isotherms(warmer: Warmer, frame: _Frame, rank: int, *, is_core: bool) -> Iterator[str]:
    lines = "".join(frame.path(line) for line in warmer.lines)
    if not lines:
        return
    dash = "" if is_core or not _DASHES[rank] else f' stroke-dasharray="{_DASHES[rank]}"'
    yield f'<path class="g-line" stroke-width="{2 if is_core else 1}"{dash} d="{lines}"/>'


def _crust(cut: CakeCut, panel: Panel, frame: _Frame) -> Iterator[str]:
    """The dry top in the colour it has, between two lines."""
    left, top = frame.at((panel.x_cm[0], panel.z_cm[-1]))
    wide = (panel.x_cm[-1] - panel.x_cm[0]) * frame.scale
    deep = max(cut.section.crust_mm / _MM * frame.upright, 1.0)
    yield (
        f'<rect x="{left:.1f}" y="{top:.1f}" width="{wide:.1f}" height="{deep:.1f}" '
        f'fill="{cut.colour}"/>'
    )
    yield f'<path class="g-line" stroke-width="1" d="M{left:.1f} {top + deep:.1f}h{wide:.1f}"/>'
    yield f'<path class="d-line" stroke-width="2" d="M{left:.1f} {top:.1f}h{wide:.1f}"/>'


def _tin(cut: CakeCut, frame: _Frame) -> Iterator[str]:
    """Walls as high as they are known to be, the floor, and a tick for each centimetre."""
    section, top = cut.section, cut.tin.height_cm or cut.section.height_cm[-1]
    outer, hole = section.radius_cm[-1], section.radius_cm[0]
    half = _WALL / 2 / frame.scale
    yield from _around(cut, frame, top)
    for side in (-1, 1):
        walls = [side * (outer + half)] + ([side * (hole - half)] if hole > 0 else [])
        for x in walls:
            yield _wall(frame, x, top)
        low = -half / frame.stretch
        floor = [(side * (outer + 2 * half), low), (side * max(hole - 2 * half, 0.0), low)]
        is_hoop = cut.tin.shape == "ring"
        thick = _FLOOR if is_hoop else _WALL
        yield f'<path class="d-line" stroke-width="{thick:g}" d="{frame.path(floor)}"/>'
    ticks = "".join(
        f"M{frame.axis - outer * frame.scale - 2 * _WALL:.1f} {frame.at((0, cm))[1]:.1f}"
        f"h-{8 if cm % 5 == 0 else 5}"
        for cm in range(int(_high_cm(cut)) + 1)
    )
    yield f'<path class="d-hair" stroke-width="1" d="{ticks}"/>'
    yield _started(cut, frame)


def _started(cut: CakeCut, frame: _Frame) -> str:
    """A wedge outside the wall where the batter stood at the door."""
    x, y = frame.at((cut.section.radius_cm[-1], cut.start_cm))
    if cut.around is not None and cut.around.jacket in _JACKETS:
        x += 2 * _WALL
    return f'<path class="d-ink" d="M{x + _WALL + 3:.1f} {y:.1f}l9 -5v10z"/>'


def _around(cut: CakeCut, frame: _Frame, top: float) -> Iterator[str]:
    """A wet strip or the water beside the walls, and what stands under the floor."""
    if cut.around is None:
        return
    reach = cut.section.radius_cm[-1] * frame.scale + 2 * _WALL
    high, dash = frame.at((0.0, top))[1], _JACKETS.get(cut.around.jacket)
    if dash is not None:
        walls = "".join(
            f"M{frame.axis + side * reach:.1f} {high:.1f}V{frame.floor:.1f}" for side in (-1, 1)
        )
        dashed = f'stroke-width="{_WALL:g}" stroke-dasharray="{dash}"'
        yield f'<path class="d-line" {dashed} d="{walls}"/>'
    for below, thick in _UNDERS.get(cut.around.under, ()):
        line = f"M{frame.axis - reach:.1f} {frame.floor + below:.1f}h{2 * reach:.1f}"
        yield f'<path class="d-line" stroke-width="{thick:g}" d="{line}"/>'


def _wall(frame: _Frame, x: float, top: float) -> str:
    points = [(x, 0.0), (x, top)]
    return f'<path class="d-line" stroke-width="{_WALL:g}" d="{frame.path(points)}"/>'


def _labels(
    found: Sequence[tuple[float, Warmer]], panel: Panel, frame: _Frame
) -> list[tuple[Point, float]]:
    """A place on each isotherm where its label is farthest from the others; none where too near."""
    spots = {level: _spots(warmer, panel, frame) for level, warmer in found}
    placed: list[tuple[Point, float]] = []
    for level in sorted(spots, reverse=True):
        others = [p for other, points in spots.items() if other != level for p in points]
        taken = [point for point, _ in placed]
        best = max(spots[level], key=lambda p: _room(p, others, taken), default=None)
        if best is not None and _room(best, others, taken) >= _LABEL_ROOM / 2:
            placed.append((best, level))
    return placed


def _spots(warmer: Warmer, panel: Panel, frame: _Frame) -> list[Point]:
    """Points of an isotherm in the left half that leave room for a label."""
    left, bottom = frame.at((panel.x_cm[0], panel.z_cm[0]))
    right, top = frame.at((min(panel.x_cm[-1], 0.0), panel.z_cm[-1]))
    points = [frame.at(point) for line in warmer.lines for point in line[::2] if point[0] <= 0]
    return [
        (x, y)
        for x, y in points
        if left + 1.6 * _LABEL_EDGE < x < right - _LABEL_EDGE
        and top + _LABEL_EDGE < y < bottom - _LABEL_EDGE
    ]


def _room(point: Point, others: Sequence[Point], taken: Sequence[Point]) -> float:
    near = min((_apart(point, each) for each in others), default=_FRAME)
    labels = min((_apart(point, each) / 2 for each in taken), default=_FRAME)
    return min(near, labels)


def _apart(a: Point, b: Point) -> float:
    """Distance, half as much along the line as across: a label is wider than it is high."""
    return math.hypot((a[0] - b[0]) / 1.6, a[1] - b[1])


def _level_text(x: float, y: float, level: float, *, is_core: bool) -> str:
    words = escape(as_text(level, 0))
    weight = "800" if is_core else "600"
    shape = (
        f'x="{x:.1f}" y="{y + _SMALL * 0.36:.1f}" font-size="{_SMALL:g}" text-anchor="middle" '
        f'font-weight="{weight}"'
    )
    halo = 'fill="none" stroke="#fdf6df" stroke-width="4" stroke-linejoin="round"'
    return f'<text {shape} {halo}>{words}</text><text {shape} class="g-solid">{words}</text>'


def _pores(ident: str) -> str:
    wide, high = _PORE_CELL
    rings = "".join(f'<circle cx="{x}" cy="{y}" r="{r}"/>' for x, y, r in _PORES)
    return (
        f'<defs><pattern id="{ident}-pores" patternUnits="userSpaceOnUse" width="{wide}" '
        f'height="{high}"><g class="g-line" stroke-width="0.7">{rings}</g></pattern></defs>'
    )


def _text(x: float, y: float, words: str, look: str, *, anchor: str = "start") -> str:
    shape = f'x="{x:.1f}" y="{y:.1f}" font-size="{_TYPE:g}" text-anchor="{anchor}"'
    return f'<text {shape} class="{look}">{escape(words)}</text>'
