"""A bake drawn: core and top over minutes, the doubt as hatch, the rule that came last."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from html import escape

from krume.base import Interval, as_text

_WIDE, _NARROW = (860.0, 380.0), (328.0, 300.0)
_LEFT, _RIGHT, _ABOVE, _BELOW = 44.0, 12.0, 26.0, 46.0
_TYPE = 15.0
_LINE = 2.0
_WEDGE = 11.0
_FIVE, _TEN = 5, 10
_DEGREES = 20
_AFTER = 1.12
"""How far the line of minutes goes past the last of them, over that."""


@dataclass(frozen=True, slots=True)
class BakeCourse:
    """What is drawn: the likeliest bake, and its minutes where their doubt is worked out."""

    time_min: tuple[float, ...]
    core_c: tuple[float, ...]
    top_c: tuple[float, ...]
    likely_min: float
    core_wanted_c: float
    last: str
    minutes: Interval | None = None


@dataclass(frozen=True, slots=True)
class _Place:
    """From minutes and degrees to the drawing."""

    wide: float
    high: float
    most_min: float
    most_c: float

    def x(self, minute: float) -> float:
        return _LEFT + (self.wide - _LEFT - _RIGHT) * minute / self.most_min

    def y(self, degrees_c: float) -> float:
        return self.high - _BELOW - (self.high - _ABOVE - _BELOW) * degrees_c / self.most_c

    def point(self, minute: float, degrees_c: float) -> str:
        return f"{self.x(minute):.1f} {self.y(degrees_c):.1f}"


def bake_drawing(course: BakeCourse, *, ident: str, narrow: bool = False) -> str:
    """A bake as SVG; colours are the page's own classes, ids in it begin with `ident`.

    The hatch is the same curve run as fast and as slow as the doubt in the minutes allows.
    """
    place = _place(course, *(_NARROW if narrow else _WIDE))
    names = f"{ident}-name {ident}-what"
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {place.wide:g} {place.high:g}" '
        f'role="img" aria-labelledby="{names}">',
        f'<title id="{ident}-name">{escape(bake_sentence(course))}</title>',
        f'<desc id="{ident}-what">{escape(_described(course))}</desc>',
        *_doubt(course, place, ident),
        *_axes(place),
        *_wanted(course, place),
        *_curves(course, place),
        *_last(course, place),
        "</svg>",
    ]
    return "".join(parts)


def bake_sentence(course: BakeCourse) -> str:
    """The drawing in one sentence."""
    done = f"about {as_text(course.likely_min, 0)} minutes"
    if course.minutes is not None:
        done = f"{_span(course.minutes)} minutes, most likely {as_text(course.likely_min, 0)}"
    return f"Core and top of the cake over the minutes: done in {done}; {course.last} came last."


def _described(course: BakeCourse) -> str:
    every = [k for k, _ in enumerate(course.time_min) if k % 8 == 0 or k == _end(course)]
    read = (
        f"{as_text(course.time_min[k], 0)} min core {as_text(course.core_c[k], 0)}, "
        f"top {as_text(course.top_c[k], 0)}"
        for k in every
    )
    return f"In °C: {'; '.join(read)}."


def _end(course: BakeCourse) -> int:
    return len(course.time_min) - 1


def _span(span: Interval) -> str:
    return f"{as_text(span.low, 0)} to {as_text(span.high, 0)}"


def _place(course: BakeCourse, wide: float, high: float) -> _Place:
    last = course.likely_min if course.minutes is None else course.minutes.high
    most = math.ceil(last * _AFTER / _FIVE) * _FIVE
    hottest = max(*course.top_c, *course.core_c, course.core_wanted_c)
    return _Place(wide, high, most, math.ceil(hottest / _DEGREES) * _DEGREES)


def _stretched(course: BakeCourse, over: float) -> list[tuple[float, float]]:
    """The core's curve run as many times as slow, up to its end."""
    pairs = zip(course.time_min, course.core_c, strict=True)
    return [(minute * over, core) for minute, core in pairs if minute <= course.likely_min]


def _doubt(course: BakeCourse, place: _Place, ident: str) -> Iterator[str]:
    """Hatch between the fastest and the slowest curve, each a hairline."""
    span = course.minutes
    if span is None or course.likely_min <= 0:
        return
    fast = _stretched(course, span.low / course.likely_min)
    slow = _stretched(course, span.high / course.likely_min)
    yield (
        f'<defs><pattern id="{ident}-hatch" patternUnits="userSpaceOnUse" width="6" height="6">'
        '<path class="d-hair" stroke-width="1.2" d="M-1 7L7-1M-1 1l2-2M5 7l2-2"/>'
        "</pattern></defs>"
    )
    edge = " ".join(place.point(*each) for each in (*fast, *reversed(slow)))
    yield f'<path fill="url(#{ident}-hatch)" d="M{edge}z"/>'
    for each in (fast, slow):
        yield f'<path class="d-hair" stroke-width="1" d="{_path(each, place)}"/>'


def _path(points: list[tuple[float, float]], place: _Place) -> str:
    return "M" + "L".join(place.point(*each) for each in points)


def _axes(place: _Place) -> Iterator[str]:
    """The two ruled edges: minutes below, degrees on the left."""
    bottom, right = place.y(0), place.wide - _RIGHT
    lines = f"M{_LEFT} {_ABOVE - 6}V{bottom:.1f}H{right}"
    yield f'<path class="d-line" stroke-width="{_LINE}" d="{lines}"/>'
    ticks = []
    every = _TEN if place.x(_TEN) - place.x(0) > 3 * _TYPE else 2 * _TEN
    for minute in range(int(place.most_min) + 1):
        long = 10 if minute % _TEN == 0 else 7 if minute % _FIVE == 0 else 4
        ticks.append(f"M{place.x(minute):.1f} {bottom:.1f}v{long}")
        if minute % every == 0:
            yield _text(place.x(minute), bottom + 26, str(minute), "d-text-2", anchor="middle")
    for degrees in range(0, int(place.most_c) + 1, 10):
        long = 8 if degrees % 50 == 0 else 4
        ticks.append(f"M{_LEFT} {place.y(degrees):.1f}h-{long}")
        if degrees % 50 == 0 and degrees:
            yield _text(_LEFT - 11, place.y(degrees) + 5, str(degrees), "d-text-2", anchor="end")
    yield f'<path class="d-line" stroke-width="1" d="{"".join(ticks)}"/>'
    yield _text(right, bottom + 42, "minutes", "d-text-2", anchor="end")
    yield _text(_LEFT - 11, _ABOVE - 8, "°C", "d-text-2", anchor="end")


def _wanted(course: BakeCourse, place: _Place) -> Iterator[str]:
    y = place.y(course.core_wanted_c)
    right = place.wide - _RIGHT
    line = f"M{_LEFT} {y:.1f}H{right}"
    yield f'<path class="d-hair" stroke-width="1" stroke-dasharray="2 4" d="{line}"/>'
    words = f"core {as_text(course.core_wanted_c, 0)} wanted"
    yield _text(right, y + 17, words, "d-text-2", anchor="end", halo=True)


def _curves(course: BakeCourse, place: _Place) -> Iterator[str]:
    core = list(zip(course.time_min, course.core_c, strict=True))
    top = list(zip(course.time_min, course.top_c, strict=True))
    yield f'<path class="d-line" stroke-width="{_LINE}" d="{_path(core, place)}"/>'
    dashed = 'stroke-dasharray="7 5"'
    yield f'<path class="d-line" stroke-width="{_LINE}" {dashed} d="{_path(top, place)}"/>'
    middle = len(core) // 2
    x, y = place.x(core[middle][0]), place.y(core[middle][1])
    yield _text(x + 12, y + 20, "core", "d-text d-semi", halo=True)
    x, y = place.x(top[middle][0]), place.y(top[middle][1])
    yield _text(x - 12, y - 10, "top", "d-text d-semi", anchor="end", halo=True)


def _last(course: BakeCourse, place: _Place) -> Iterator[str]:
    """The rule that came last as an upright line; its minutes as wedges that stand on the line."""
    x, bottom = place.x(course.likely_min), place.y(0)
    yield f'<path class="d-line" stroke-width="1.5" d="M{x:.1f} {_ABOVE - 4}V{bottom:.1f}"/>'
    words = f"{course.last} last, {as_text(course.likely_min, 0)} min"
    yield _text(x - 6, _ABOVE - 8, words, "d-text d-bold", anchor="end")
    span = course.minutes
    ends = (course.likely_min,) if span is None else (span.low, span.high)
    if span is not None:
        low, high = place.x(span.low), place.x(span.high)
        yield f'<path class="d-line" stroke-width="4" d="M{low:.1f} {bottom - 7:.1f}H{high:.1f}"/>'
    for each in ends:
        left = place.x(each) - _WEDGE / 2
        yield f'<path class="d-ink" d="M{left:.1f} {bottom - 13:.1f}h{_WEDGE}l-{_WEDGE / 2} 13z"/>'
        label = place.x(each)
        if span is not None:
            anchor = "end" if each == span.low else "start"
            label += -9 if each == span.low else 9
            words = as_text(each, 0)
            yield _text(label, bottom - 5, words, "d-text d-bold", anchor=anchor, halo=True)


def _text(
    x: float, y: float, words: str, look: str, *, anchor: str = "start", halo: bool = False
) -> str:
    shape = f'x="{x:.1f}" y="{y:.1f}" font-size="{_TYPE:g}" text-anchor="{anchor}"'
    said = escape(words)
    under = f'<text {shape} class="d-halo">{said}</text>' if halo else ""
    return f'{under}<text {shape} class="{look}">{said}</text>'
