"""A bake drawn: core and top over minutes, the doubt as hatch, the rules where each is met."""

from collections.abc import Iterator
from dataclasses import dataclass
from html import escape

from krume.base import Interval, as_text
from krume.publish.plot import (
    ABOVE,
    ADVANCE,
    LEFT,
    LINE,
    RIGHT,
    TYPE,
    WEDGE,
    Plot,
    at_minute,
    axes,
    plot_of,
    words_at,
)

_MARK = 5.0
_NAMED = 0.45
"""Where on the way to the end the curves are named."""
_IN_THE_CRUMB = ("core", "set")


@dataclass(frozen=True, slots=True)
class BakeCourse:
    """What is drawn: the likeliest bake, and its minutes where their doubt is worked out.

    `rules` are the words of core, set and colour with the minute each is met.
    """

    time_min: tuple[float, ...]
    core_c: tuple[float, ...]
    top_c: tuple[float, ...]
    likely_min: float
    core_wanted_c: float
    last: str
    minutes: Interval | None = None
    rules: tuple[tuple[str, float], ...] = ()

    @property
    def end_min(self) -> float:
        """The last minute that is drawn."""
        return self.likely_min if self.minutes is None else self.minutes.high

    @property
    def hottest_c(self) -> float:
        """The highest temperature that is drawn."""
        tops = [at_minute(self.end_min, self.time_min, self.top_c)]
        tops += [
            top
            for minute, top in zip(self.time_min, self.top_c, strict=True)
            if minute <= self.end_min
        ]
        return max(*tops, self.core_wanted_c)


def bake_drawing(course: BakeCourse, *, ident: str, narrow: bool = False) -> str:
    """A bake as SVG; colours are the page's own classes, ids in it begin with `ident`.

    The hatch is the same curve run as fast and as slow as the doubt in the minutes allows.
    """
    plot = plot_of(course.end_min, course.hottest_c, narrow=narrow)
    names = f"{ident}-name {ident}-what"
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {plot.wide:g} {plot.high:g}" '
        f'role="img" aria-labelledby="{names}">',
        f'<title id="{ident}-name">{escape(bake_sentence(course))}</title>',
        f'<desc id="{ident}-what">{escape(_described(course))}</desc>',
        *_doubt(course, plot, ident),
        *axes(plot),
        *_wanted(course, plot),
        *_curves(course, plot),
        *_rules(course, plot),
        *_last(course, plot),
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
    met = "".join(f" {word} met at {as_text(minute, 1)} min." for word, minute in course.rules)
    return f"In °C: {'; '.join(read)}.{met}"


def _end(course: BakeCourse) -> int:
    return len(course.time_min) - 1


def _span(span: Interval) -> str:
    return f"{as_text(span.low, 0)} to {as_text(span.high, 0)}"


def _stretched(course: BakeCourse, over: float) -> list[tuple[float, float]]:
    """The core's curve run as many times as slow, up to its end."""
    pairs = zip(course.time_min, course.core_c, strict=True)
    return [(minute * over, core) for minute, core in pairs if minute <= course.likely_min]


def _doubt(course: BakeCourse, plot: Plot, ident: str) -> Iterator[str]:
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
    edge = " ".join(plot.point(*each) for each in (*fast, *reversed(slow)))
    yield f'<path fill="url(#{ident}-hatch)" d="M{edge}z"/>'
    for each in (fast, slow):
        yield f'<path class="d-hair" stroke-width="1" d="{plot.path(each)}"/>'


def _wanted(course: BakeCourse, plot: Plot) -> Iterator[str]:
    y = plot.y(course.core_wanted_c)
    line = f"M{LEFT} {y:.1f}H{plot.wide - RIGHT}"
    yield f'<path class="d-hair" stroke-width="1" stroke-dasharray="2 4" d="{line}"/>'


def _curves(course: BakeCourse, plot: Plot) -> Iterator[str]:
    core = plot.path(plot.shown(course.time_min, course.core_c))
    top = plot.path(plot.shown(course.time_min, course.top_c))
    yield f'<path class="d-line" stroke-width="{LINE}" d="{core}"/>'
    yield f'<path class="d-line" stroke-width="{LINE}" stroke-dasharray="7 5" d="{top}"/>'
    words = f"core wants {as_text(course.core_wanted_c, 0)}"
    yield words_at(LEFT + 8, plot.y(course.core_wanted_c) - 6, words, "d-text-2", halo=True)
    minute = course.likely_min * _NAMED
    x, y = plot.x(minute), plot.y(at_minute(minute, course.time_min, course.core_c))
    yield words_at(x + 12, y + 20, "core", "d-text d-semi", halo=True)
    y = plot.y(at_minute(minute, course.time_min, course.top_c))
    yield words_at(x - 12, y - 10, "top", "d-text d-semi", anchor="end", halo=True)


def _rules(course: BakeCourse, plot: Plot) -> Iterator[str]:
    """Each rule on its curve where it is met: core a ring, set a square, colour a ring on top."""
    below = 0
    for word, minute in sorted(course.rules, key=lambda rule: rule[1]):
        on_top = word not in _IN_THE_CRUMB
        temps = course.top_c if on_top else course.core_c
        x, y = plot.x(minute), plot.y(at_minute(minute, course.time_min, temps))
        yield _mark(word, x, y)
        if word == course.last or (on_top and course.last == "colour"):
            continue
        said = f"{word} at {as_text(minute, 0)}"
        if on_top:
            yield words_at(x - 10, y - 10, said, "d-text", anchor="end", halo=True)
        else:
            below += 1
            at = min(x + 10, plot.wide - len(said) * TYPE * ADVANCE)
            yield words_at(at, y + 4 + 18 * below, said, "d-text", halo=True)


def _mark(word: str, x: float, y: float) -> str:
    if word == "set":
        size = f'width="{2 * _MARK:g}" height="{2 * _MARK:g}"'
        shape = f'<rect x="{x - _MARK:.1f}" y="{y - _MARK:.1f}" {size} '
    else:
        shape = f'<circle cx="{x:.1f}" cy="{y:.1f}" r="{_MARK:g}" '
    return f'{shape}class="d-mark" stroke-width="{LINE}"/>'


def _last(course: BakeCourse, plot: Plot) -> Iterator[str]:
    """The rule that came last as an upright line; its minutes as wedges that stand on the line."""
    x, bottom = plot.x(course.likely_min), plot.y(0)
    yield f'<path class="d-line" stroke-width="1.5" d="M{x:.1f} {ABOVE - 4}V{bottom:.1f}"/>'
    words = f"{course.last} last, {as_text(course.likely_min, 0)} min"
    room = len(words) * TYPE * ADVANCE
    at = x - 6 - room if x - LEFT > room else min(x + 6, plot.wide - room)
    yield words_at(at, ABOVE - 8, words, "d-text d-bold")
    span = course.minutes
    ends = (course.likely_min,) if span is None else (span.low, span.high)
    yield from wedges(plot, ends, bottom)


def wedges(plot: Plot, ends: tuple[float, ...], bottom: float) -> Iterator[str]:
    """One wedge for a minute that is settled, two joined for an interval, their minutes beside."""
    if len(ends) > 1:
        low, high = plot.x(ends[0]), plot.x(ends[1])
        yield f'<path class="d-line" stroke-width="4" d="M{low:.1f} {bottom - 7:.1f}H{high:.1f}"/>'
    for k, each in enumerate(ends):
        x = plot.x(each)
        left = x - WEDGE / 2
        yield f'<path class="d-ink" d="M{left:.1f} {bottom - 13:.1f}h{WEDGE}l-{WEDGE / 2} 13z"/>'
        if len(ends) > 1:
            anchor, label = ("end", x - 9) if k == 0 else ("start", x + 9)
            said = as_text(each, 0)
            yield words_at(label, bottom - 5, said, "d-text d-bold", anchor=anchor, halo=True)
