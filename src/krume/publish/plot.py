"""The ruled edges of a chart of degrees over minutes, and where a point of it lies."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape

WIDE, NARROW = (860.0, 380.0), (328.0, 300.0)
LEFT, RIGHT, ABOVE, BELOW = 44.0, 12.0, 26.0, 46.0
TYPE = 15.0
LINE = 2.0
WEDGE = 11.0
ADVANCE = 0.52
"""Mean width of a sign over the size of its type, on the wide side."""
_FIVE, _TEN = 5, 10
_DEGREES = 20
_HEADROOM = 8
_LEAST_TICK = 4.0
_AFTER = 1.12
"""How far the line of minutes goes past the last of them, over that."""


@dataclass(frozen=True, slots=True)
class Plot:
    """From minutes and degrees to the drawing."""

    wide: float
    high: float
    most_min: float
    most_c: float

    def x(self, minute: float) -> float:
        """Place of a minute."""
        return LEFT + (self.wide - LEFT - RIGHT) * minute / self.most_min

    def y(self, degrees_c: float) -> float:
        """Place of a temperature."""
        return self.high - BELOW - (self.high - ABOVE - BELOW) * degrees_c / self.most_c

    def point(self, minute: float, degrees_c: float) -> str:
        """Place of both, as a path has it."""
        return f"{self.x(minute):.1f} {self.y(degrees_c):.1f}"

    def shown(
        self, time_min: Sequence[float], temp_c: Sequence[float]
    ) -> list[tuple[float, float]]:
        """The points of a curve that lie in the drawing, its last one at the edge."""
        inside = [each for each in zip(time_min, temp_c, strict=True) if each[0] <= self.most_min]
        if len(inside) < len(time_min):
            inside.append((self.most_min, at_minute(self.most_min, time_min, temp_c)))
        return inside

    def path(self, points: Sequence[tuple[float, float]]) -> str:
        """A line through points."""
        return "M" + "L".join(self.point(*each) for each in points)


def at_minute(at_min: float, times: Sequence[float], temps: Sequence[float]) -> float:
    """Temperature of a curve at a minute, straight between its points, constant beyond them."""
    if at_min <= times[0]:
        return temps[0]
    for k in range(1, len(times)):
        if at_min <= times[k]:
            part = (at_min - times[k - 1]) / (times[k] - times[k - 1])
            return temps[k - 1] + (temps[k] - temps[k - 1]) * part
    return temps[-1]


def plot_of(last_min: float, hottest_c: float, *, narrow: bool) -> Plot:
    """Room for minutes up to the last and degrees up to the hottest."""
    wide, high = NARROW if narrow else WIDE
    most = math.ceil(last_min * _AFTER / _FIVE) * _FIVE
    return Plot(wide, high, most, math.ceil((hottest_c + _HEADROOM) / _DEGREES) * _DEGREES)


def axes(plot: Plot) -> Iterator[str]:
    """The two ruled edges: minutes below, degrees on the left."""
    bottom, right = plot.y(0), plot.wide - RIGHT
    lines = f"M{LEFT} {ABOVE - 6}V{bottom:.1f}H{right}"
    yield f'<path class="d-line" stroke-width="{LINE}" d="{lines}"/>'
    ticks = []
    every = _TEN if plot.x(_TEN) - plot.x(0) > 3 * TYPE else 2 * _TEN
    step = 1 if plot.x(1) - plot.x(0) >= _LEAST_TICK else _FIVE
    for minute in range(0, int(plot.most_min) + 1, step):
        long = 10 if minute % _TEN == 0 else 7 if minute % _FIVE == 0 else 4
        ticks.append(f"M{plot.x(minute):.1f} {bottom:.1f}v{long}")
        if minute % every == 0:
            yield words_at(plot.x(minute), bottom + 26, str(minute), "d-text-2", anchor="middle")
    for degrees in range(0, int(plot.most_c) + 1, 10):
        long = 8 if degrees % 50 == 0 else 4
        ticks.append(f"M{LEFT} {plot.y(degrees):.1f}h-{long}")
        if degrees % 50 == 0 and degrees:
            yield words_at(LEFT - 11, plot.y(degrees) + 5, str(degrees), "d-text-2", anchor="end")
    yield f'<path class="d-line" stroke-width="1" d="{"".join(ticks)}"/>'
    yield words_at(right, bottom + 42, "minutes", "d-text-2", anchor="end")
    yield words_at(LEFT - 11, ABOVE - 8, "°C", "d-text-2", anchor="end")


def words_at(
    x: float, y: float, words: str, look: str, *, anchor: str = "start", halo: bool = False
) -> str:
    """Words in the drawing; with a halo they stay readable over lines."""
    shape = f'x="{x:.1f}" y="{y:.1f}" font-size="{TYPE:g}" text-anchor="{anchor}"'
    said = escape(words)
    under = f'<text {shape} class="d-halo">{said}</text>' if halo else ""
    return f'{under}<text {shape} class="{look}">{said}</text>'


def cut_to(words: str, most: int) -> str:
    """Words cut at a sign where they are longer than that."""
    return words if len(words) <= most else f"{words[: most - 1].rstrip()}…"
