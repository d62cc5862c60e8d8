"""Two tins beside each other: both cores and tops on one line of minutes."""

from collections.abc import Iterator
from dataclasses import dataclass
from html import escape

from krume.base import as_text
from krume.publish.bake_drawing import BakeCourse, wedges
from krume.publish.plot import (
    ABOVE,
    ADVANCE,
    LEFT,
    LINE,
    RIGHT,
    TYPE,
    Plot,
    at_minute,
    axes,
    cut_to,
    plot_of,
    words_at,
)

_ROW = 22.0
_ROOM_FOR_NAMES_C = 14.0
_PEARL = 3.2
_EVERY_MIN = 5.0
_MOST_PEARLS = 14
_NAMED = 0.78
"""Where on the way of the slower bake the curves are named."""


@dataclass(frozen=True, slots=True)
class NamedCourse:
    """A bake and the short name of its tin; `is_pearled` sets rings on its curves."""

    name: str
    course: BakeCourse
    is_pearled: bool = False


def beside_drawing(
    own: NamedCourse, other: NamedCourse, said: str, *, ident: str, narrow: bool = False
) -> str:
    """Both bakes as one SVG; the second tin's curves carry rings. `said` is the difference."""
    both = (own, other)
    plot = plot_of(
        max(each.course.end_min for each in both),
        max(each.course.hottest_c for each in both) + _ROOM_FOR_NAMES_C,
        narrow=narrow,
    )
    title = f"{own.name} and {other.name} beside each other, core and top over the minutes. {said}"
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {plot.wide:g} {plot.high:g}" '
        f'role="img" aria-labelledby="{ident}-name {ident}-what">',
        f'<title id="{ident}-name">{escape(title)}</title>',
        f'<desc id="{ident}-what">{escape(" ".join(_told(each) for each in both))}</desc>',
        *axes(plot),
        *_wanted(both, plot),
    ]
    for row, each in enumerate(both):
        parts += _curves(each, plot)
        parts += _end(each, plot, row)
    parts += _names(both, plot)
    return "".join([*parts, "</svg>"])


def _told(each: NamedCourse) -> str:
    course = each.course
    span = course.minutes
    done = f"most likely {as_text(course.likely_min, 0)} minutes"
    if span is not None:
        done = f"{as_text(span.low, 0)} to {as_text(span.high, 0)} minutes, {done}"
    return f"{each.name}: {done}, {course.last} last."


def _wanted(both: tuple[NamedCourse, NamedCourse], plot: Plot) -> Iterator[str]:
    """The wanted cores; one line where both want the same."""
    for wanted in sorted({each.course.core_wanted_c for each in both}):
        y = plot.y(wanted)
        line = f"M{LEFT} {y:.1f}H{plot.wide - RIGHT}"
        yield f'<path class="d-hair" stroke-width="1" stroke-dasharray="2 4" d="{line}"/>'


def _curves(each: NamedCourse, plot: Plot) -> Iterator[str]:
    course = each.course
    until = course.likely_min
    core = _until(until, course.time_min, course.core_c)
    top = _until(until, course.time_min, course.top_c)
    yield f'<path class="d-line" stroke-width="{LINE}" d="{plot.path(core)}"/>'
    dashed = 'stroke-dasharray="7 5"'
    yield f'<path class="d-line" stroke-width="{LINE}" {dashed} d="{plot.path(top)}"/>'
    if each.is_pearled:
        step = _EVERY_MIN if until / _EVERY_MIN <= _MOST_PEARLS else 2 * _EVERY_MIN
        for k in range(1, int(until / step) + 1):
            for temps in (course.core_c, course.top_c):
                x, y = plot.x(k * step), plot.y(at_minute(k * step, course.time_min, temps))
                yield f'<circle cx="{x:.1f}" cy="{y:.1f}" r="{_PEARL}" class="d-mark"/>'


def _until(
    end: float, times: tuple[float, ...], temps: tuple[float, ...]
) -> list[tuple[float, float]]:
    inside = [each for each in zip(times, temps, strict=True) if each[0] < end]
    return [*inside, (end, at_minute(end, times, temps))]


def _end(each: NamedCourse, plot: Plot, row: int) -> Iterator[str]:
    """Where it is done, and its minutes: the second tin's stand one row higher."""
    course = each.course
    bottom = plot.y(0) - (0.0 if course.minutes is None else row * _ROW)
    x, high = plot.x(course.likely_min), plot.y(course.core_wanted_c)
    dash = ' stroke-dasharray="1 3"' if each.is_pearled else ""
    yield f'<path class="d-line" stroke-width="1.5"{dash} d="M{x:.1f} {high:.1f}V{bottom:.1f}"/>'
    span = course.minutes
    yield from wedges(plot, (course.likely_min,) if span is None else (span.low, span.high), bottom)


def _names(both: tuple[NamedCourse, NamedCourse], plot: Plot) -> Iterator[str]:
    """Each tin's name above, with a piece of its line before it."""
    for row, each in enumerate(both):
        y = ABOVE + 4 + row * 19
        yield f'<path class="d-line" stroke-width="{LINE}" d="M{LEFT + 10} {y - 5}h30"/>'
        if each.is_pearled:
            yield f'<circle cx="{LEFT + 25:g}" cy="{y - 5:g}" r="{_PEARL}" class="d-mark"/>'
        minutes = f"{as_text(each.course.likely_min, 0)} min"
        most = int((plot.wide - LEFT - 48) / (TYPE * ADVANCE))
        words = cut_to(f"{minutes}, {each.name}", most)
        yield words_at(LEFT + 48, y, words, "d-text d-semi", halo=True)
    course = max((each.course for each in both), key=lambda course: course.likely_min)
    minute = course.likely_min * _NAMED
    x, y = plot.x(minute), plot.y(at_minute(minute, course.time_min, course.core_c))
    yield words_at(x + 12, y + 22, "core", "d-text-2", halo=True)
    y = plot.y(at_minute(minute, course.time_min, course.top_c))
    yield words_at(x + 12, y + 22, "top", "d-text-2", halo=True)
