"""Water between layers, drawn: grams taken above the line and given below it, over the hours."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape

from krume.base import Interval, as_text
from krume.publish.plot import ADVANCE, LINE, TYPE, words_at

_WIDE, _NARROW = (860.0, 380.0), (328.0, 330.0)
_LEFT, _ABOVE, _BELOW = 60.0, 22.0, 50.0
_DASHES = ("", "8 5", "2 4", "11 4 2 4", "5 3", "1 5")
_BARS = 9.0
_TICK = 4.0
_ROW = TYPE * 1.25
_TICKS = 5
_NICE = (1.0, 2.0, 5.0)
_DAY = 24


@dataclass(frozen=True, slots=True)
class WaterLine:
    """One kind of layer: its word, its change over the hours, and the doubt at the end [g]."""

    word: str
    change_g: tuple[float, ...]
    end_g: Interval


@dataclass(frozen=True, slots=True)
class WaterCourse:
    """What is drawn: lines over hours, and from when it is best [h], None where at once."""

    hours: tuple[float, ...]
    lines: tuple[WaterLine, ...]
    best_from_h: Interval | None = None


@dataclass(frozen=True, slots=True)
class _Place:
    wide: float
    high: float
    right: float
    last_h: float
    low_g: float
    high_g: float
    step_g: float
    narrow: bool

    def x(self, hour: float) -> float:
        return _LEFT + (self.wide - _LEFT - self.right) * hour / self.last_h

    def y(self, grams: float) -> float:
        part = (grams - self.low_g) / (self.high_g - self.low_g)
        return self.high - _BELOW - (self.high - _ABOVE - _BELOW) * part


def moisture_drawing(course: WaterCourse, *, ident: str, narrow: bool = False) -> str:
    """The lines as SVG; colours are the page's own classes, ids in it begin with `ident`."""
    place = _place(course, narrow=narrow)
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {place.wide:g} {place.high:g}" '
        f'role="img" aria-labelledby="{ident}-name {ident}-what">',
        f'<title id="{ident}-name">{escape(moisture_sentence(course))}</title>',
        f'<desc id="{ident}-what">{escape(_described(course))}</desc>',
        *_axes(place),
        *_best(course, place),
        *_lines(course, place),
        *_ends(course, place),
        "</svg>",
    ]
    return "".join(parts)


def moisture_sentence(course: WaterCourse) -> str:
    """The drawing in one sentence."""
    said = [f"{line.word} {_moves(line.end_g.best)}" for line in course.lines]
    return f"Water between the layers over {as_text(course.hours[-1], 0)} hours: {'; '.join(said)}."


def _moves(grams: float) -> str:
    if abs(grams) < 0.5:
        return "stays as it is"
    return f"{'takes' if grams > 0 else 'gives'} {as_text(abs(grams), 0)} g"


def _described(course: WaterCourse) -> str:
    days = [at for at, hour in enumerate(course.hours) if hour % _DAY == 0]
    read = (
        f"{line.word}: "
        + ", ".join(
            f"{as_text(line.change_g[at], 0)} g after {as_text(course.hours[at], 0)} h"
            for at in days
        )
        + f", between {as_text(line.end_g.low, 0)} and {as_text(line.end_g.high, 0)} at the end"
        for line in course.lines
    )
    return f"Above the line water is taken, below it given. {'. '.join(read)}."


def _place(course: WaterCourse, *, narrow: bool) -> _Place:
    wide, high = _NARROW if narrow else _WIDE
    words = 0 if narrow else max((len(line.word) for line in course.lines), default=0)
    right = words * TYPE * ADVANCE * 1.12 + _BARS * len(course.lines) + 14
    lows = [min(line.end_g.low, *line.change_g) for line in course.lines]
    highs = [max(line.end_g.high, *line.change_g) for line in course.lines]
    step = tick_g(max(highs, default=1.0) - min(lows, default=0.0))
    return _Place(
        wide, high, right, course.hours[-1],
        math.floor(min(0.0, *lows) / step) * step, math.ceil(max(step, *highs) / step) * step,
        step, narrow,
    )  # fmt: skip


def tick_g(span_g: float) -> float:
    """A round step that parts a span into about five.

    >>> tick_g(240.0), tick_g(7.0), tick_g(0.0)
    (50.0, 2.0, 1.0)
    """
    if span_g <= 0:
        return 1.0
    ten = 10.0 ** math.floor(math.log10(span_g / _TICKS))
    wanted = span_g / _TICKS / ten
    return ten * next((nice for nice in _NICE if nice >= wanted), 10.0)


def _axes(place: _Place) -> Iterator[str]:
    """Hours below, grams on the left, and the line of no change."""
    bottom, right = place.high - _BELOW, place.x(place.last_h)
    yield f'<path class="d-line" stroke-width="{LINE}" d="M{_LEFT} {_ABOVE - 6}V{bottom:.1f}"/>'
    zero = place.y(0.0)
    yield f'<path class="d-line" stroke-width="1.5" d="M{_LEFT} {zero:.1f}H{right:.1f}"/>'
    step, grams = place.step_g, place.low_g
    while grams <= place.high_g + step / 2:
        y = place.y(grams)
        yield f'<path class="d-line" stroke-width="1" d="M{_LEFT} {y:.1f}h-7"/>'
        sign = "+" if grams > 0 else ""
        said = f"{sign}{as_text(grams, 1)}".replace("-", "\N{MINUS SIGN}")
        yield words_at(_LEFT - 11, y + 5, said, "d-text-2", anchor="end")
        grams += step
    for hour in range(0, int(place.last_h) + 1, 12):
        x, long = place.x(hour), 9 if hour % _DAY == 0 else 5
        yield f'<path class="d-line" stroke-width="1" d="M{x:.1f} {bottom:.1f}v{long}"/>'
        if hour % _DAY == 0:
            yield words_at(x, bottom + 24, str(hour), "d-text-2", anchor="middle")
    yield words_at(place.wide - 4, bottom + 42, "hours", "d-text-2", anchor="end")
    yield words_at(_LEFT + 6, _ABOVE - 8, "g taken", "d-text-2")
    yield words_at(_LEFT + 6, bottom - 6, "g given", "d-text-2", halo=True)


def _best(course: WaterCourse, place: _Place) -> Iterator[str]:
    """From when it is best, as a bar on the hours."""
    if course.best_from_h is None:
        return
    bottom = place.high - _BELOW
    low, best, high = (
        place.x(min(hour, place.last_h))
        for hour in (course.best_from_h.low, course.best_from_h.best, course.best_from_h.high)
    )
    yield f'<path class="d-line" stroke-width="5" d="M{low:.1f} {bottom:.1f}H{high:.1f}"/>'
    yield (
        f'<path class="d-hair" stroke-width="1" stroke-dasharray="2 4" '
        f'd="M{best:.1f} {_ABOVE}V{bottom:.1f}"/>'
    )
    words = f"best from about {as_text(course.best_from_h.best, 0)} h"
    yield words_at(_LEFT, place.high - 8, words, "d-text d-bold")


def _lines(course: WaterCourse, place: _Place) -> Iterator[str]:
    for at, line in enumerate(course.lines):
        pairs = zip(course.hours, line.change_g, strict=True)
        points = "L".join(f"{place.x(h):.1f} {place.y(g):.1f}" for h, g in pairs)
        dashes = _DASHES[at % len(_DASHES)]
        dashed = f' stroke-dasharray="{dashes}"' if dashes else ""
        yield f'<path class="d-line" stroke-width="{LINE}"{dashed} d="M{points}"/>'


def _ends(course: WaterCourse, place: _Place) -> Iterator[str]:
    """The doubt of each line at its end, side by side, and the lines' words."""
    edge = place.x(place.last_h)
    for at, line in enumerate(course.lines):
        x = edge + _BARS * (at + 0.5)
        low, high = place.y(line.end_g.low), place.y(line.end_g.high)
        bar = f"M{x:.1f} {low:.1f}V{high:.1f}M{x - 3:.1f} {low:.1f}h6M{x - 3:.1f} {high:.1f}h6"
        yield f'<path class="d-line" stroke-width="1" d="{bar}"/>'
        at_best = f"M{x - _TICK:.1f} {place.y(line.end_g.best):.1f}h{2 * _TICK:g}"
        yield f'<path class="d-line" stroke-width="3" d="{at_best}"/>'
    spots = _words(course, place)
    rows = apart([y for _, y in spots], _ROW, place.high - _BELOW)
    for line, (x, _), y in zip(course.lines, spots, rows, strict=True):
        yield words_at(x, y, line.word, "d-text d-semi", halo=True)


def _words(course: WaterCourse, place: _Place) -> list[tuple[float, float]]:
    """Where the lines' words stand: behind their ends, or on a phone over or under each line.

    On a phone the outermost line of a side has its word outside, after a day; one between it and
    the zero has its own after two, where the lines have parted.
    """
    if not place.narrow:
        x = place.x(place.last_h) + _BARS * len(course.lines) + 6
        return [(x, place.y(line.end_g.best) + 5) for line in course.lines]
    last = len(course.hours) - 1
    one, two = (
        next((k for k, hour in enumerate(course.hours) if hour >= _DAY * days), last)
        for days in (1, 2)
    )
    ends = [line.change_g[one] for line in course.lines]
    spots: list[tuple[float, float]] = []
    for line, end in zip(course.lines, ends, strict=True):
        is_outer = end == (max(ends) if end >= 0 else min(ends))
        at, out = (one, 0.8) if is_outer else (two, 0.4)
        down = -_ROW * out if end >= 0 else _ROW * out * 2
        spots.append((place.x(course.hours[at]), place.y(line.change_g[at]) + down))
    return spots


def apart(wanted: Sequence[float], row: float, most: float) -> list[float]:
    """Places of words near where they are wanted, none nearer to another than a row.

    >>> apart([10.0, 12.0, 60.0], 18.0, 100.0)
    [10.0, 28.0, 60.0]
    """
    order = sorted(range(len(wanted)), key=lambda at: wanted[at])
    found = list(wanted)
    before = -math.inf
    for at in order:
        before = found[at] = max(wanted[at], before + row)
    after = most + row
    for at in reversed(order):
        after = found[at] = min(found[at], after - row)
    return found
