"""The oven's loads on one line of time: it runs down, and now is one wedge on it."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from html import escape

from krume.publish.signs import printable
from krume.publish.timetable_drawing import spread

_WIDE, _HIGH = 328.0, 372.0
_TOP, _BOTTOM = 10.0, 362.0
_LINE_X, _LEFT, _RIGHT = 60.0, 70.0, 182.0
_LABELS = 194.0
_ROW = 20.0
_SMALL, _WORD, _NAME = 15.0, 18.0, 21.0
_BEFORE_MIN, _AFTER_MIN, _LEAST_MIN, _LATELY_MIN = 15, 20, 75, 45
_ADVANCE = 0.5
_FIGURE_ADVANCE = 0.56
_ROUND_MIN = 5
_GAP = 4.0


@dataclass(frozen=True, slots=True)
class OvenBar:
    """One load as drawn; times are local, None is not known. `out_at` is None while it is in."""

    number: int
    words: str
    in_at: datetime
    out_at: datetime | None
    check_at: datetime | None
    latest_at: datetime | None
    note: str = ""


@dataclass(frozen=True, slots=True)
class _Scale:
    first: datetime
    minutes: float

    def y(self, at: datetime) -> float:
        past = (at - self.first).total_seconds() / 60
        return min(_BOTTOM, max(_TOP, _TOP + self.per_min * past))

    @property
    def per_min(self) -> float:
        return (_BOTTOM - _TOP) / self.minutes

    def shows(self, at: datetime) -> bool:
        return self.first <= at <= self.first + timedelta(minutes=self.minutes)


@dataclass(frozen=True, slots=True)
class _Label:
    """A label beside the bars: where it points, its heavy word and its plain ones."""

    y: float
    heavy: str
    plain: str


def oven_drawing(bars: Sequence[OvenBar], now: datetime, *, ident: str) -> str:
    """Loads as SVG for a phone; solid is in, hatched may come out, open is out."""
    scale = _scale(bars, now)
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_WIDE:g} {_HIGH:g}" '
        f'role="img" aria-label="{escape(oven_sentence(bars, now))}">',
        f'<defs><pattern id="{ident}-hatch" patternUnits="userSpaceOnUse" width="6" height="6">'
        '<path class="d-line" stroke-width="1.6" d="M-1 7L7-1M-1 1l2-2M5 7l2-2"/></pattern></defs>',
        *_axis(scale, now),
        *_bars(bars, now, scale, ident),
        *_labels(bars, scale),
        *_now(now, scale),
        "</svg>",
    ]
    return "".join(parts)


def oven_sentence(bars: Sequence[OvenBar], now: datetime) -> str:
    """The drawing in words."""
    loads = [f"Load {bar.number}, {bar.words}, {_told(bar)}." for bar in bars]
    return " ".join([f"It is {_clock(now)}.", *(loads or ["No load is in the oven."])])


def _told(bar: OvenBar) -> str:
    if bar.out_at is not None:
        return f"came out at {_clock(bar.out_at)}{', ' if bar.note else ''}{bar.note}"
    told = f"is in since {_clock(bar.in_at)}"
    if bar.check_at is None or bar.latest_at is None:
        return f"{told}; its minutes are not known"
    return f"{told}; first check {_clock(bar.check_at)}, latest out {_clock(bar.latest_at)}"


def _clock(at: datetime) -> str:
    return f"{at.hour}:{at.minute:02d}"


def _scale(bars: Sequence[OvenBar], now: datetime) -> _Scale:
    """From a little before what is in, to a little after what comes out last."""
    inside = [bar.in_at for bar in bars if bar.out_at is None]
    lately = now - timedelta(minutes=_LATELY_MIN)
    out = [bar.out_at for bar in bars if bar.out_at is not None and bar.out_at >= lately]
    begin = [now - timedelta(minutes=_BEFORE_MIN), *inside, *out]
    first = min(begin) - timedelta(minutes=_ROUND_MIN)
    first = first.replace(second=0, microsecond=0)
    ends = [bar.latest_at for bar in bars if bar.out_at is None and bar.latest_at is not None]
    last = max([now, *ends]) + timedelta(minutes=_AFTER_MIN)
    minutes = (last - first).total_seconds() / 60
    return _Scale(first, max(_LEAST_MIN, math.ceil(minutes)))


def _axis(scale: _Scale, now: datetime) -> Iterator[str]:
    """Ticks every five minutes; the hours and halves are named where now does not stand."""
    every = timedelta(minutes=_ROUND_MIN)
    at = scale.first + timedelta(minutes=-scale.first.minute % _ROUND_MIN)
    ticks = []
    while scale.shows(at):
        y = scale.y(at)
        long = 12 if at.minute % 30 == 0 else 7 if at.minute % 15 == 0 else 4
        ticks.append(f"M{_LINE_X:g} {y:.1f}h-{long}")
        if at.minute % 30 == 0 and abs(y - scale.y(now)) > _ROW:
            yield _text(44.0, y + 5, _clock(at), _SMALL, "d-text-2", anchor="end")
        at += every
    yield f'<path class="d-line" stroke-width="1" d="{"".join(ticks)}"/>'
    yield f'<path class="d-line" stroke-width="2" d="M{_LINE_X:g} {_TOP:g}V{_BOTTOM:g}"/>'


def _columns(bars: Sequence[OvenBar], now: datetime) -> dict[int, int]:
    """A column for each load, so that those in at one time stand beside each other."""
    ends: list[datetime] = []
    placed = {}
    for bar in sorted(bars, key=lambda bar: bar.in_at):
        end = bar.out_at or max(bar.latest_at or now, now)
        free = next((k for k, until in enumerate(ends) if until <= bar.in_at), len(ends))
        ends[free : free + 1] = [end]
        placed[bar.number] = free
    return placed


def _bars(bars: Sequence[OvenBar], now: datetime, scale: _Scale, ident: str) -> Iterator[str]:
    shown = [bar for bar in bars if bar.out_at is None or scale.shows(bar.out_at)]
    columns = _columns(shown, now)
    count = max(columns.values(), default=0) + 1
    wide = (_RIGHT - _LEFT - _GAP * (count - 1)) / count
    for bar in shown:
        x = _LEFT + columns[bar.number] * (wide + _GAP)
        yield from _out(bar, scale, x, wide) if bar.out_at else _in(bar, now, scale, x, wide, ident)


def _out(bar: OvenBar, scale: _Scale, x: float, wide: float) -> Iterator[str]:
    """An open frame: it is out."""
    top, end = scale.y(bar.in_at), scale.y(bar.out_at or bar.in_at)
    across = f"h{wide - 2:.1f}"
    if scale.shows(bar.in_at):
        path = f"M{x + 1:.1f} {top:.1f}V{end:.1f}{across}V{top:.1f}z"
    else:
        path = f"M{x + 1:.1f} {top:.1f}V{end:.1f}{across}V{top:.1f}"
    yield f'<path class="d-hair" stroke-width="2" d="{path}"/>'
    if end - top > _ROW and wide > 4 * _SMALL:
        yield _text(x + 10, end - 7, f"Load {bar.number}", _SMALL, "d-text-2")


def _in(
    bar: OvenBar, now: datetime, scale: _Scale, x: float, wide: float, ident: str
) -> Iterator[str]:
    """Solid up to the first check, hatched up to the latest out, each with its bar across."""
    top = scale.y(bar.in_at)
    check = scale.y(bar.check_at or now)
    end = scale.y(bar.latest_at) if bar.latest_at is not None else check
    shape = f'x="{x:.1f}" y="{top:.1f}" width="{wide:.1f}" height="{check - top:.1f}"'
    yield f'<rect class="d-ink" {shape}/>'
    if end > check:
        shape = f'x="{x:.1f}" y="{check:.1f}" width="{wide:.1f}" height="{end - check:.1f}"'
        yield f'<rect fill="url(#{ident}-hatch)" {shape}/>'
        frame = f'x="{x + 1:.1f}" y="{check:.1f}" width="{wide - 2:.1f}" height="{end - check:.1f}"'
        yield f'<rect class="d-line" stroke-width="2" {frame}/>'
        across = f"M{x - 4:.1f} {check:.1f}h{wide + 8:.1f}M{x - 4:.1f} {end:.1f}h{wide + 8:.1f}"
        yield f'<path class="d-line" stroke-width="3" d="{across}"/>'
    room = check - top
    name = f"Load {bar.number}" if wide > 4 * _NAME else f"{bar.number}"
    if room > 1.3 * _NAME:
        yield _text(x + 10, top + _NAME + 4, name, _NAME, "d-on-ink d-bold")
    if room > 1.3 * _NAME + _ROW:
        words = _fitting(bar.words, wide - 16)
        yield _text(x + 10, top + _NAME + 4 + _ROW, words, _SMALL, "d-on-ink")


def _labels(bars: Sequence[OvenBar], scale: _Scale) -> Iterator[str]:
    """First check and latest out beside the bars; what came out with its core."""
    inside = [bar for bar in bars if bar.out_at is None]
    found: list[_Label] = []
    for bar in bars:
        check, latest = ("first check", "latest out")
        if len(inside) > 1:
            check, latest = f"check {bar.number}", f"latest {bar.number}"
        if bar.out_at is not None and scale.shows(bar.out_at):
            tail = f", {bar.note}" if bar.note else ""
            plain = f"out {_clock(bar.out_at)}{tail}"
            found.append(_Label(scale.y(bar.out_at), "", plain))
        elif bar.out_at is None and bar.check_at is not None and bar.latest_at is not None:
            found.append(_Label(scale.y(bar.check_at), _clock(bar.check_at), check))
            found.append(_Label(scale.y(bar.latest_at), _clock(bar.latest_at), latest))
    found.sort(key=lambda label: label.y)
    places = spread([label.y for label in found], _ROW, low=_TOP + 8, high=_BOTTOM - 4)
    for label, y in zip(found, places, strict=True):
        if label.heavy:
            yield _text(_LABELS, y + 6, label.heavy, _WORD, "d-text d-bold")
        x = _LABELS + _WORD * _FIGURE_ADVANCE * len(label.heavy) + (4 if label.heavy else 0)
        look = "d-text" if label.heavy else "d-text-2"
        yield _text(x, y + 6, _fitting(label.plain, _WIDE - x), _SMALL, look)


def _now(now: datetime, scale: _Scale) -> Iterator[str]:
    """One wedge on the line; the page's script moves it on by whole minutes."""
    y = scale.y(now)
    yield (
        f'<g id="oven-now" data-y="{y:.2f}" data-step="{scale.per_min:.4f}" '
        f'data-end="{_BOTTOM:g}" transform="translate(0 {y:.2f})">'
        '<path class="d-ink" d="M62 0l-11-8v16z"/>'
        f'<path class="d-line" stroke-width="2" d="M{_LINE_X:g} 0H{_LEFT:g}"/>'
        '<path class="d-line" stroke-width="2" stroke-dasharray="2 3" '
        f'd="M{_RIGHT:g} 0H{_LABELS:g}"/>'
    )
    yield _text(46.0, 6.0, _clock(now), 17.0, "d-text d-bold", anchor="end") + "</g>"


def _fitting(words: str, room: float) -> str:
    """Words cut at a sign where they are wider than their room."""
    most = max(1, int(room / (_SMALL * _ADVANCE)))
    return words if len(words) <= most else f"{words[: most - 1].rstrip()}…"


def _text(x: float, y: float, words: str, size: float, look: str, *, anchor: str = "start") -> str:
    said = escape(printable(words).text)
    return (
        f'<text x="{x:.1f}" y="{y:.1f}" font-size="{size:g}" class="{look}" '
        f'text-anchor="{anchor}">{said}</text>'
    )
