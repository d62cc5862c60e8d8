"""Lines of equal temperature through a cut cake, and what lies within them.

Plain geometry: centimetres, x from the axis (both sides), z upwards from the floor of the tin.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from krume.bake import Section

Point = tuple[float, float]
_Edge = tuple[int, int, int]
_FINER = 3
_OUTSIDE = -1e9
"""Temperature beside the cake: every line closes along the cake's edge."""
_FLAT = 1e-6


@dataclass(frozen=True, slots=True)
class Panel:
    """A rectangle of the cut: temperatures at points, rows from the bottom, x from the left."""

    x_cm: tuple[float, ...]
    z_cm: tuple[float, ...]
    temp_c: tuple[tuple[float, ...], ...]

    @property
    def outline(self) -> tuple[Point, ...]:
        """The corners of the rectangle."""
        (left, right), (low, high) = (self.x_cm[0], self.x_cm[-1]), (self.z_cm[0], self.z_cm[-1])
        return ((left, low), (right, low), (right, high), (left, high))


@dataclass(frozen=True, slots=True)
class Warmer:
    """What is at least as warm as a level: closed loops, and the parts of them inside the cake."""

    loops: tuple[tuple[Point, ...], ...]
    lines: tuple[tuple[Point, ...], ...]


def panels(section: "Section") -> tuple[Panel, ...]:
    """The cut of a cake as one rectangle, or as two beside the hole of a tube."""
    middles = _middles(section.radius_cm)
    right_x = (section.radius_cm[0], *middles, section.radius_cm[-1])
    z = (section.height_cm[0], *_middles(section.height_cm), section.height_cm[-1])
    most = max(max(row) for row in section.temp_c)
    across = [_to_the_edges(right_x, row, most) for row in section.temp_c]
    columns = [_to_the_edges(z, column, most) for column in zip(*across, strict=True)]
    rows = list(zip(*columns, strict=True))
    if section.radius_cm[0] > 0:
        right = _finer(Panel(right_x, z, tuple(rows)))
        return (_mirrored(right), right)
    half = right_x[1:]
    both = tuple((*reversed(row[1:]), *row[1:]) for row in rows)
    return (_finer(Panel((*(-x for x in reversed(half)), *half), z, both)),)


def warmer_than(panel: Panel, level_c: float) -> Warmer:
    """Where a panel is at least as warm as a level, by straight lines between its points."""
    if level_c > max(map(max, panel.temp_c)):
        return Warmer((), ())
    if level_c <= min(map(min, panel.temp_c)):
        return Warmer((panel.outline,), ())
    nexts = _joined(panel, level_c)
    loops = []
    while nexts:
        loops.append(_loop(nexts))
    points = {edge: _crossing(panel, edge, level_c) for loop in loops for edge in loop}
    lines = [line for loop in loops for line in _inside(panel, loop)]
    return Warmer(
        tuple(_plain([points[edge] for edge in loop]) for loop in loops),
        tuple(tuple(points[edge] for edge in line) for line in lines),
    )


def _to_the_edges(at: Sequence[float], of: Sequence[float], most: float) -> tuple[float, ...]:
    """Temperatures with those at both edges: straight on outwards, never above the hottest cell."""
    first = of[0] + (of[0] - of[1]) * (at[1] - at[0]) / (at[2] - at[1])
    last = of[-1] + (of[-1] - of[-2]) * (at[-1] - at[-2]) / (at[-2] - at[-3])
    return (min(first, most), *of, min(last, most))


def _middles(edges: Sequence[float]) -> tuple[float, ...]:
    return tuple((a + b) / 2 for a, b in pairwise(edges))


def _mirrored(panel: Panel) -> Panel:
    rows = tuple(tuple(reversed(row)) for row in panel.temp_c)
    return Panel(tuple(-x for x in reversed(panel.x_cm)), panel.z_cm, rows)


def _finer(panel: Panel) -> Panel:
    """More points between the given ones, by a curve that never leaves the range of its ends."""
    x, z = _between(panel.x_cm), _between(panel.z_cm)
    rows = [_curve(panel.x_cm, row, x) for row in panel.temp_c]
    columns = [_curve(panel.z_cm, column, z) for column in zip(*rows, strict=True)]
    return Panel(x, z, tuple(zip(*columns, strict=True)))


def _between(at: Sequence[float]) -> tuple[float, ...]:
    found = [a + (b - a) * part / _FINER for a, b in pairwise(at) for part in range(_FINER)]
    return (*found, at[-1])


def _curve(at: Sequence[float], of: Sequence[float], wanted: Sequence[float]) -> tuple[float, ...]:
    """Cubic through the points, flat where they turn: monotone pieces stay monotone."""
    steps = [max(b - a, _FLAT) for a, b in pairwise(at)]
    slopes = [(b - a) / step for a, b, step in zip(of, of[1:], steps, strict=False)]
    turns = [slopes[0], *(_slope(*pair) for pair in pairwise(slopes)), slopes[-1]]
    found = []
    k = 0
    for place in wanted:
        while k < len(steps) - 1 and place > at[k + 1]:
            k += 1
        part, step = (place - at[k]) / steps[k], steps[k]
        rest = 1 - part
        found.append(
            of[k] * (1 + 2 * part) * rest**2
            + of[k + 1] * (1 + 2 * rest) * part**2
            + step * part * rest * (turns[k] * rest - turns[k + 1] * part)
        )
    return tuple(found)


def _slope(before: float, after: float) -> float:
    """Harmonic mean of two slopes of one sign, else none."""
    return 2 * before * after / (before + after) if before * after > 0 else 0.0


def _value(panel: Panel, row: int, column: int) -> float:
    """Temperature of a point; one row and column of outside stand all around."""
    if 0 < row <= len(panel.z_cm) and 0 < column <= len(panel.x_cm):
        return panel.temp_c[row - 1][column - 1]
    return _OUTSIDE


def _place(panel: Panel, row: int, column: int) -> Point:
    at = min(max(column - 1, 0), len(panel.x_cm) - 1)
    up = min(max(row - 1, 0), len(panel.z_cm) - 1)
    return panel.x_cm[at], panel.z_cm[up]


def _joined(panel: Panel, level_c: float) -> dict[_Edge, list[_Edge]]:
    """Which crossings of a level follow each other, over all squares of four points."""
    nexts: dict[_Edge, list[_Edge]] = {}
    none = [False] * (len(panel.x_cm) + 2)
    is_in = [
        none,
        *([False, *(temp >= level_c for temp in row), False] for row in panel.temp_c),
        none,
    ]
    for row in range(len(is_in) - 1):
        low, high = is_in[row], is_in[row + 1]
        for column in range(len(low) - 1):
            if low[column] == low[column + 1] == high[column] == high[column + 1]:
                continue
            corners = (low[column], low[column + 1], high[column + 1], high[column])
            for one, other in _crossed(row, column, corners):
                nexts.setdefault(one, []).append(other)
                nexts.setdefault(other, []).append(one)
    return nexts


def _crossed(
    row: int, column: int, corners: tuple[bool, bool, bool, bool]
) -> Iterator[tuple[_Edge, _Edge]]:
    """Pairs of crossed sides of a square; warm corners across a cool middle stay apart."""
    sides = ((0, row, column), (1, row, column + 1), (0, row + 1, column), (1, row, column))
    crossed = [side for k, side in enumerate(sides) if corners[k] != corners[(k + 1) % 4]]
    if len(crossed) == 2:
        yield crossed[0], crossed[1]
    elif corners[0]:
        yield sides[3], sides[0]
        yield sides[1], sides[2]
    else:
        yield sides[0], sides[1]
        yield sides[2], sides[3]


def _loop(nexts: dict[_Edge, list[_Edge]]) -> list[_Edge]:
    """One closed chain of crossings, taken out of those that are left."""
    start = next(iter(nexts))
    loop, at = [start], start
    while nexts.get(at):
        follows = nexts[at].pop()
        nexts[follows].remove(at)
        loop.append(follows)
        at = follows
    for edge in loop:
        if not nexts.get(edge):
            nexts.pop(edge, None)
    return loop[:-1] if loop[0] == loop[-1] else loop


def _ends(edge: _Edge) -> tuple[tuple[int, int], tuple[int, int]]:
    upright, row, column = edge
    return (row, column), (row + upright, column + 1 - upright)


def _crossing(panel: Panel, edge: _Edge, level_c: float) -> Point:
    one, other = _ends(edge)
    a, b = _value(panel, *one), _value(panel, *other)
    (ax, az), (bx, bz) = _place(panel, *one), _place(panel, *other)
    part = (level_c - a) / (b - a)
    return ax + (bx - ax) * part, az + (bz - az) * part


def _inside(panel: Panel, loop: list[_Edge]) -> Iterator[list[_Edge]]:
    """The runs of a loop that do not follow the cake's own edge."""
    is_edge = [any(_value(panel, *end) == _OUTSIDE for end in _ends(edge)) for edge in loop]
    if not any(is_edge):
        yield [*loop, loop[0]]
        return
    first = is_edge.index(True)
    turned = [*loop[first:], *loop[: first + 1]]
    edges = [*is_edge[first:], *is_edge[: first + 1]]
    run = [turned[0]]
    for edge, at_edge in zip(turned[1:], edges[1:], strict=True):
        run.append(edge)
        if at_edge:
            if len(run) > 2:
                yield run
            run = [edge]


def _plain(points: list[Point]) -> tuple[Point, ...]:
    """Points without those that lie on the straight line of their neighbours."""
    apart = [each for k, each in enumerate(points) if math.dist(each, points[k - 1]) > _FLAT]
    kept = []
    for k, (x, z) in enumerate(apart):
        (ax, az), (bx, bz) = apart[k - 1], apart[(k + 1) % len(apart)]
        if abs((x - ax) * (bz - az) - (z - az) * (bx - ax)) > _FLAT:
            kept.append((x, z))
    return tuple(kept)
